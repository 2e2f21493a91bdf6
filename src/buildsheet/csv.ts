import { readHead } from "./csv/head.ts";
import type { DecimalSign } from "./csv/numbers.ts";
import { CsvRows, type Listeners } from "./csv/rows.ts";
import { Scanner } from "./csv/scanner.ts";
import type { CheckResult } from "./finding.ts";

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

/**
 * Checks readings in long form, one a line, as they stream by: memory stays the same however many
 * there are. With `found` each finding is handed on as soon as it is known, in no order but that,
 * and none are kept; without it they come with the result, worst first. What cannot be read is
 * refused with its line; nothing is guessed.
 */
export async function checkCsv(input: AsyncIterable<Uint8Array>, { name = "", decimal = ".", progress, ...listeners }: CsvOptions = {}): Promise<CsvCheck> {
  const head = await readHead(input, progress);
  if ("unread" in head) return { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0, unread: head.unread };
  const rows = new CsvRows(name, head, decimal, listeners);
  const records = new Scanner(head.delimiter, head.nextLine);
  for await (const chunk of head.bytes) {
    records.feed(chunk);
    while (records.next()) rows.add(records);
    if (records.isOpen) break;
  }
  records.end();
  while (records.next()) rows.add(records);
  if (!records.isOpen) return rows.result();
  const unread = `breaks off: in line ${records.brokenLine} a quote is opened and never closed, so nothing from there on can be read`;
  return { ...rows.result(), unread };
}
