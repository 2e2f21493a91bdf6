import { CsvError, type Options } from "csv-parse/sync";
import { type Head, linesIn } from "./head.ts";
import { brokenOff, LONGEST_RECORD, Scanner } from "./scanner.ts";

/** How the lines after the headings are taken apart. */
export interface Records {
  options: Options;
  /** Why the rest of the text could not be read; other errors than the parser's are thrown on. */
  brokenOff(error: unknown, text: string): string;
}

/** Each record goes to `add` with the number of its line. */
export function recordsFrom(delimiter: string, firstLine: number, add: (record: string[], line: number) => void): Records {
  let line = firstLine;
  const options: Options = {
    delimiter,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_quotes: true,
    relax_column_count: true,
    skip_empty_lines: false,
    max_record_size: LONGEST_RECORD,
    // Taken as they are parsed: records waiting in the stream would be lost with an error further on.
    on_record: (record: string[]) => {
      add(record, line);
      line += 1 + breaksIn(record);
      return null;
    },
  };
  return {
    options,
    brokenOff(error, text) {
      if (!(error instanceof CsvError)) throw error;
      const records = new Scanner(delimiter, firstLine);
      records.feed(Buffer.from(text));
      records.end();
      while (records.advance());
      return brokenOff(records.isOpen ? records.broken : { line, isQuote: false });
    },
  };
}

/** Why a record cannot be told field by field: it has not as many as there are headings. */
export function misfitOf(record: readonly string[], { width, delimiter }: Pick<Head, "width" | "delimiter">): string | undefined {
  if (record.length >= width && record.slice(width).every((field) => field.trim() === "")) return undefined;
  const hint = record.length > width && delimiter === "," ? ": is there a decimal comma outside quotes?" : "";
  return `the line has ${record.length} fields where there are ${width} headings${hint}`;
}

/** Line breaks inside quoted fields. */
function breaksIn(record: readonly string[]): number {
  let breaks = 0;
  for (const field of record) if (field.includes("\n") || field.includes("\r")) breaks += linesIn(field) - 1;
  return breaks;
}
