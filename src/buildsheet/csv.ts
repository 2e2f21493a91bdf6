import { byWorst, type CheckResult, type Finding } from "../check/finding.ts";
import { Batch } from "./csv/batch.ts";
import { BesideLike } from "./csv/beside.ts";
import { readHead } from "./csv/head.ts";
import type { DecimalSign } from "./csv/numbers.ts";
import { InOrder, suspected } from "./csv/order.ts";
import { readRecords } from "./csv/records.ts";
import { CsvRows, type Listeners, numbersOf } from "./csv/rows.ts";
import { Scanner } from "./csv/scanner.ts";

export type { Refused } from "./csv/rows.ts";
export type { DecimalSign };

export interface CsvOptions extends Listeners {
  /** Name of the file, which stands for the sheet in the cells of findings. */
  name?: string;
  /** Sign before the decimals. A comma is read only when it is asked for. */
  decimal?: DecimalSign;
  /** Told how many bytes have been read, chunk by chunk. */
  progress?: (bytes: number) => void;
}

/** `unread` says why the file, or the rest of it, could not be read; it completes "this file …". */
export interface CsvCheck extends CheckResult {
  unread?: string;
}

/** Few enough to be gone before the memory is cleared of what is not used any more. */
const AT_ONCE = 1000;

/**
 * Checks readings in long form, one a line, as they stream by: memory stays the same however many
 * there are. With `found` each finding is handed on as soon as it is known, in no order but that,
 * and none are kept; without it they come with the result, worst first. What cannot be read is
 * refused with its line; nothing is guessed.
 */
export async function checkCsv(input: AsyncIterable<Uint8Array>, { name = "", decimal = ".", progress, ...listeners }: CsvOptions = {}): Promise<CsvCheck> {
  const head = await readHead(input, progress);
  if ("unread" in head) return { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0, unread: head.unread };
  const findings: Finding[] = [];
  const told = new InOrder(listeners.found ?? ((finding) => void findings.push(finding)));
  const batch = new Batch();
  const rows = new CsvRows(name, head, decimal, batch, { ...listeners, found: (finding) => told.ofRow(finding, batch.length) });
  const beside = new BesideLike((suspicion, subject, at) => told.ofLike(suspected(suspicion, subject), at), rows.subjectOf);
  const records = new Scanner(head.delimiter, head.nextLine, numbersOf(head), decimal);
  const settle = (): void => {
    beside.take(batch, records.bytes);
    batch.clear();
    told.tell();
  };
  const take = (): void => {
    rows.add(records);
    if (batch.length + told.waiting > AT_ONCE) settle();
  };
  const unread = await readRecords(head.bytes, records, take, settle);
  beside.finish();
  told.tell();
  const result = { ...rows.counts(), findings: findings.sort((a, b) => byWorst(a, b) || a.line! - b.line!) };
  return unread === undefined ? result : { ...result, unread };
}
