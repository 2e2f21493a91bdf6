import { byWorst, type CheckResult, type Finding } from "../finding.ts";
import type { EncodingOptions } from "./encoding.ts";
import type { DecimalSign } from "./fields.ts";
import { readHeader } from "./header.ts";
import { readRecords } from "./records.ts";
import { CsvRows, type Listeners, numberColumnsOf } from "./rows.ts";
import { Scanner } from "./scanner.ts";

export type { RefusedRecord } from "./rows.ts";
export type { DecimalSign };

export interface CsvOptions extends Listeners, EncodingOptions {
  /** Name of the file, which stands for the sheet in the cells of findings. */
  name?: string;
  /** Sign before the decimals. A comma is read only when it is asked for. */
  decimal?: DecimalSign;
}

/** `unread` says why the file, or the rest of it, could not be read; it completes "this file …". */
export interface CsvCheck extends CheckResult {
  unread?: string;
}

/**
 * Checks readings in long form, one a line, as they stream by: memory stays the same however many
 * there are. With `found` each finding is handed on as soon as it is known, in no order but that,
 * and none are kept; without it they come with the result, worst first. What cannot be read is
 * refused with its line; nothing is guessed.
 */
export async function checkCsv(
  input: AsyncIterable<Uint8Array>,
  { name = "", decimal = ".", encoding, noted, ...listeners }: CsvOptions = {},
): Promise<CsvCheck> {
  const head = await readHeader(input, { encoding, noted });
  if ("unread" in head) return { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0, unread: head.unread };
  const findings: Finding[] = [];
  const rows = new CsvRows(name, head, decimal, { ...listeners, found: listeners.found ?? ((finding) => void findings.push(finding)) });
  const records = new Scanner(head.delimiter, head.nextLine, numberColumnsOf(head), decimal);
  const unread = await readRecords(head.bytes, records, () => rows.add(records));
  rows.finish();
  const result = { ...rows.counts(), findings: findings.sort((a, b) => byWorst(a, b) || a.line! - b.line!) };
  return unread === undefined ? result : { ...result, unread };
}
