import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { parse } from "csv-parse";
import { readHead } from "./csv/head.ts";
import type { DecimalSign } from "./csv/numbers.ts";
import { recordsFrom } from "./csv/records.ts";
import { CsvRows } from "./csv/rows.ts";
import type { CheckResult } from "./finding.ts";

export type { DecimalSign };

export interface CsvOptions {
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
 * there are, apart from the findings. What cannot be read is refused with its line; nothing is guessed.
 */
export async function checkCsv(input: AsyncIterable<Uint8Array>, { name = "", decimal = ".", progress }: CsvOptions = {}): Promise<CsvCheck> {
  const head = await readHead(input, progress);
  if ("unread" in head) return { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0, unread: head.unread };
  const rows = new CsvRows(name, head, decimal);
  const { options, brokenOff } = recordsFrom(head.delimiter, head.nextLine, (record, line) => rows.add(record, line));
  try {
    await pipeline(Readable.from(head.rest), parse(options).resume());
  } catch (error) {
    return { ...rows.result(), unread: brokenOff(error) };
  }
  return rows.result();
}
