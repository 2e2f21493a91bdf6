import { createHash } from "node:crypto";
import { closeSync, openSync, readSync, statSync } from "node:fs";
import { basename } from "node:path";
import { Readable } from "node:stream";
import { GatheredSegments } from "../buildsheet/csv/gathered.ts";
import { type Head, readHead } from "../buildsheet/csv/head.ts";
import { inOrder } from "../buildsheet/csv/stretches.ts";
import type { Finding } from "../buildsheet/finding.ts";
import { Tallies } from "../report/facts.ts";
import { subjectOf } from "../report/gather/subjects.ts";
import type { ReadingsPool } from "./batch/readings-pool.ts";
import { WorstFirst } from "./batch/worst-first.ts";
import type { Checked, CheckFilesOptions } from "./check-files.ts";

/** Bytes of a file from which on several threads are worth their start. */
const WORTH_SPLITTING = 1 << 24;
/** Bytes of a stretch. */
const STRETCH = 1 << 19;
/** A file whose headings take more than this is left to one thread. */
const LONGEST_HEAD = 1 << 17;

/** A long file of readings on several threads, to the same findings as on one; `undefined` where one has to do it. */
export async function checkSplit(file: string, options: CheckFilesOptions, told: (bytes: number) => void, pool: ReadingsPool): Promise<Checked | undefined> {
  const { decimal, ledger, refused, asFound, forReport } = options;
  // Threads take memory that a long file needs not, so they are for whoever asks for them.
  if (options.threads === undefined || pool.threads < 2 || asFound || forReport) return undefined;
  const about = statSync(file);
  if (!about.isFile() || about.size < WORTH_SPLITTING) return undefined;
  const start = beginning(file);
  const head = await readHead(Readable.from([start]));
  if ("unread" in head || head.offset === undefined) return undefined;
  const name = basename(file);
  const hash = createHash("sha256");
  if (ledger) hash.update(start.subarray(0, head.offset));
  const findings = new WorstFirst();
  const tallies = new Tallies();
  const gathered = new GatheredSegments(name, head, decimal, (finding: Finding) => {
    findings.add(finding);
    if (ledger) tallies.add(finding.kind, subjectOf(finding.label));
  });
  const task = { path: file, name, decimal, size: about.size, head: plainHead(head), wants: { refused: refused !== undefined, tallies: ledger !== undefined } };
  const range = { from: head.offset, to: about.size, size: STRETCH, ahead: pool.ahead };
  const segments = inOrder(range, async (stretch) => {
    const answer = await pool.read({ ...task, stretch });
    if ("failed" in answer) throw Object.assign(new Error(answer.failed.message), { code: answer.failed.code });
    return answer.segment;
  });
  for await (const segment of segments) {
    const bytes = Buffer.from(segment.bytes.buffer, segment.bytes.byteOffset, segment.bytes.length);
    if (ledger) hash.update(bytes.subarray(0, segment.end - segment.start));
    const before = gathered.take({ ...segment, bytes });
    findings.addAll(segment.packed, before, { sheet: name, column: head.at.value! });
    tallies.addAll(segment.tallies.all, segment.tallies.more);
    for (const row of segment.refused) refused?.(file, { ...row, line: before + row.line });
    told(segment.end - segment.start);
  }
  const { unread, ...counts } = gathered.result();
  const facts = ledger && { tallies: tallies.all, sizes: [], more: tallies.more };
  return {
    ...{ file, result: { ...counts, findings }, notes: [], facts },
    ...(unread ? { unread } : {}),
    ...(ledger ? { hash: hash.digest("hex") } : {}),
  };
}

const plainHead = ({ at, unit, delimiter, width }: Head): Pick<Head, "at" | "unit" | "delimiter" | "width"> => ({ at, unit, delimiter, width });

function beginning(file: string): Buffer {
  const opened = openSync(file, "r");
  try {
    const bytes = Buffer.alloc(LONGEST_HEAD);
    return bytes.subarray(0, readSync(opened, bytes, 0, LONGEST_HEAD, 0));
  } finally {
    closeSync(opened);
  }
}
