import { Readable } from "node:stream";
import type { JudgedRows } from "../check/finding.ts";
import { type CsvReadingOptions, readingsOfCsv } from "../compare/from-csv.ts";
import { contentOfReadings } from "../report/gather/mapped.ts";
import type { ReportPage } from "./checked.ts";

/** Bytes of a file that may be drawn; a longer one is too long to be printed anyway. */
const MOST_BYTES = 1 << 22;

/** The bytes of a file of readings as they are read, kept for its page in a report as long as they are few. */
export class ReportReadings {
  #chunks: Buffer[] = [];
  #size = 0;

  add(chunk: Uint8Array): void {
    this.#size += chunk.length;
    if (this.#size <= MOST_BYTES) this.#chunks.push(Buffer.from(chunk));
    else this.#chunks = [];
  }

  async page(name: string, written: Pick<CsvReadingOptions, "decimal" | "encoding">, { rows, counts, most }: JudgedRows, rowsIn: number): Promise<ReportPage> {
    const isDrawn = rowsIn <= most && this.#size <= MOST_BYTES;
    const { readings } = isDrawn ? await readingsOfCsv(Readable.from(this.#chunks), { name, ...written }) : { readings: [] };
    return { judged: { rows, counts }, content: contentOfReadings(readings) };
  }
}
