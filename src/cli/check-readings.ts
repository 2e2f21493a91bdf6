import { createHash } from "node:crypto";
import { closeSync, openSync, readSync } from "node:fs";
import { basename } from "node:path";
import { setFlagsFromString } from "node:v8";
import { type CsvCheck, checkCsv } from "../check/csv/check-csv.ts";
import { type Finding, JudgedRows } from "../check/finding.ts";
import { namedSubject } from "../report/gather/identity.ts";
import { Tallies } from "../report/summary-facts.ts";
import { type CheckedFile, type CheckFilesOptions, STANDARD_INPUT, unchanged, unread } from "./checked.ts";
import { queriedRows, Unanswered } from "./query.ts";
import { streams } from "./streams.ts";
import { WorstFirst } from "./worst-first.ts";

/** Bytes that are read at a time. */
const CHUNK = 1 << 18;

/** What stands for the name of the file where rows come from a query. */
const QUERY = "query";

/** Told how many bytes more have been read. */
type Told = (bytes: number) => void;

/** A file of readings, or standard input, as it streams by. */
export async function checkReadings(file: string, options: CheckFilesOptions, told: Told): Promise<CheckedFile> {
  if (file === STANDARD_INPUT) return await checkStream(file, file, streams().stdin, options);
  const entry = options.ledger?.entryOf(file);
  if (entry && (await hashOf(file)) === entry.hash) return unchanged(file, entry);
  const { forReport = false, ledger, decimal } = options;
  const hash = createHash("sha256");
  // What draws a page takes its time to load.
  const kept = forReport ? new (await import("./report-readings.ts")).ReportReadings() : undefined;
  async function* input(): AsyncGenerator<Uint8Array> {
    for await (const chunk of chunksOf(file)) {
      kept?.add(chunk);
      if (forReport || ledger) hash.update(chunk);
      yield chunk;
      told(chunk.length);
    }
  }
  const judged = forReport ? new JudgedRows() : undefined;
  const checked = await checkStream(file, basename(file), input(), options, judged);
  const page = judged && (await kept?.page(basename(file), { decimal, encoding: options.encoding }, judged, checked.result.rowsIn));
  return { ...checked, ...(page ? { page } : {}), ...(forReport || ledger ? { hash: hash.digest("hex") } : {}) };
}

/** Rows that DuckDB selects. */
export async function checkQuery(sql: string, options: CheckFilesOptions): Promise<CheckedFile> {
  try {
    return await checkStream(QUERY, QUERY, queriedRows(sql, options.decimal), options);
  } catch (error) {
    if (!(error instanceof Unanswered)) throw error;
    return unread(QUERY, error.message);
  }
}

async function checkStream(
  file: string,
  name: string,
  input: AsyncIterable<Uint8Array>,
  { decimal, encoding, sorted, passOn, refused, breathe, ledger, forReport }: CheckFilesOptions,
  judged?: JudgedRows,
): Promise<CheckedFile> {
  async function* breathing(): AsyncGenerator<Uint8Array> {
    for await (const chunk of input) {
      yield chunk;
      await breathe?.();
    }
  }
  const findings = new WorstFirst(sorted, passOn && ((finding) => passOn(file, finding)));
  const tallies = ledger || forReport ? new Tallies() : undefined;
  const keep = (finding: Finding): void => {
    findings.add(finding);
    tallies?.add(finding.kind, namedSubject(finding.label));
  };
  const notes: string[] = [];
  const { unread: why, ...counts }: CsvCheck = await checkCsv(breathing(), {
    name,
    decimal,
    encoding,
    noted: (sentence) => void notes.push(sentence),
    found: keep,
    refused: refused && ((row) => refused(file, row)),
    judged: judged?.take,
  });
  findings.sort();
  const facts = tallies && { tallies: tallies.all, sizes: [], more: tallies.more };
  return { file, result: { ...counts, findings }, notes, facts, ...(why ? { unread: why } : {}) };
}

export async function hashOf(file: string): Promise<string> {
  const hash = createHash("sha256");
  for await (const chunk of chunksOf(file)) hash.update(chunk);
  return hash.digest("hex");
}

/** The bytes of a file, always in the same room: a chunk is to be used before the next is asked for. */
async function* chunksOf(file: string): AsyncGenerator<Uint8Array> {
  // Read at once: waiting for a thread to do it takes longer than the reading.
  const handle = openSync(file, "r");
  try {
    const room = Buffer.allocUnsafeSlow(CHUNK);
    for (;;) {
      const count = readSync(handle, room, 0, CHUNK, null);
      if (count === 0) return;
      yield room.subarray(0, count);
    }
  } finally {
    closeSync(handle);
  }
}

/** The newest release of Node in which this was tried; one that does not know the word would say so on standard error. */
const TRIED = 24;

/**
 * Keeps the room for what is new as small as it is by now. By itself it grows to 48 MB, which does
 * nothing for readings: hardly anything stays of them. It counts for all threads, so it is not for
 * workbooks, which need the room.
 */
export function keepYoungSpace(): void {
  if (Number.parseInt(process.versions.node, 10) <= TRIED) setFlagsFromString("--semi-space-growth-factor=1");
}
