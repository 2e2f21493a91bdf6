import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { CsvError, parse } from "csv-parse";
import { linesIn, readHead } from "./csv/head.ts";
import type { DecimalSign } from "./csv/numbers.ts";
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

/** A longer record is a quote that was never closed. */
const LONGEST_RECORD = 1_000_000;

/**
 * Checks readings in long form, one a line, as they stream by: memory stays the same however many
 * there are, apart from the findings. What cannot be read is refused with its line; nothing is guessed.
 */
export async function checkCsv(input: AsyncIterable<Uint8Array>, { name = "", decimal = ".", progress }: CsvOptions = {}): Promise<CsvCheck> {
  const head = await readHead(input, progress);
  if ("unread" in head) return { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0, unread: head.unread };
  const rows = new CsvRows(name, head, decimal);
  let line = head.nextLine;
  const parser = parse({
    delimiter: head.delimiter,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_quotes: true,
    relax_column_count: true,
    skip_empty_lines: false,
    max_record_size: LONGEST_RECORD,
    // Taken as they are parsed: records waiting in the stream would be lost with an error further on.
    on_record: (record: string[]) => {
      rows.add(record, line);
      line += 1 + breaksIn(record);
      return null;
    },
  });
  try {
    await pipeline(Readable.from(head.rest), parser.resume());
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { ...rows.result(), unread: `breaks off: in line ${line} a quote is opened and never closed, so nothing from there on can be read` };
  }
  return rows.result();
}

/** Line breaks inside quoted fields. */
function breaksIn(record: readonly string[]): number {
  let breaks = 0;
  for (const field of record) if (field.includes("\n") || field.includes("\r")) breaks += linesIn(field) - 1;
  return breaks;
}
