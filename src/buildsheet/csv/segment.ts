import type { Finding } from "../finding.ts";
import { groupFrom } from "../headers.ts";
import { Batch, type BatchData } from "./batch.ts";
import type { HeadColumns } from "./head.ts";
import type { DecimalSign } from "./numbers.ts";
import { type Counts, CsvRows, numbersOf, type Refused } from "./rows.ts";
import { type Broken, Scanner } from "./scanner.ts";

/** A stretch of a file of readings: the records that begin in it. */
export interface Stretch {
  from: number;
  to: number;
  /** Nobody knows yet whether a record begins at `from`: the next line break is taken for the end of one. */
  isGuess: boolean;
}

/** What came of a stretch. Lines are counted from 1; whether it was rightly begun is for the reader of the stretch before to say. */
export interface Segment {
  /** Where the first of its records begins, and where the first that is not its own; −1 where no line break was found. */
  start: number;
  end: number;
  lines: number;
  counts: Counts;
  batch: BatchData;
  /** From `start` on. */
  bytes: Buffer;
  /** What is told once for all readings like it, with what makes them alike: only the first in the file counts. */
  once: { key: string; finding: Finding }[];
  /** The record that does not end, if there is one. */
  broken?: Broken;
}

export interface SegmentReader {
  name: string;
  head: HeadColumns;
  decimal: DecimalSign;
  /** Told before anything is found: what was found before was not all, and comes again. */
  begin(): void;
  found: (finding: Finding) => void;
  refused?: ((row: Refused) => void) | undefined;
  /** Bytes of the file between these places, as far as there are any. */
  read(from: number, to: number): Buffer;
  size: number;
}

/** Bytes that are read beyond a stretch for its last record, at first and at the most. */
const BEYOND = [1 << 12, 1 << 17, 1 << 21];

/** Reads the records that begin in a stretch of a file. The same start gives the same records, whoever reads them. */
export function readSegment({ from, to, isGuess }: Stretch, reader: SegmentReader): Segment | undefined {
  for (const beyond of BEYOND) {
    const first = isGuess ? from - 1 : from;
    const bytes = reader.read(first, Math.min(reader.size, to + beyond));
    const skipped = isGuess ? afterBreak(bytes) : 0;
    if (skipped < 0 || first + skipped >= to) return undefined;
    const segment = scanned(bytes.subarray(skipped), first + skipped, to, reader);
    if (segment) return segment;
  }
  return undefined;
}

const LF = 0x0a;
const CR = 0x0d;

/** The place behind the first line break, or −1. */
function afterBreak(bytes: Buffer): number {
  for (let i = 0; i < bytes.length; i++) {
    if (bytes[i] === LF) return i + 1;
    if (bytes[i] === CR) return bytes[i + 1] === LF ? i + 2 : i + 1;
  }
  return -1;
}

/** `undefined` where the last record ends beyond the bytes. */
function scanned(bytes: Buffer, start: number, to: number, { name, head, decimal, begin, found, refused, size }: SegmentReader): Segment | undefined {
  begin();
  const batch = new Batch();
  const once: Segment["once"] = [];
  const records = new Scanner(head.delimiter, 1, numbersOf(head), decimal);
  const tell = (finding: Finding): void => {
    if (finding.kind === "coarse gauge") once.push({ key: `${groupOf(records, head)}|${finding.sentence}`, finding });
    else found(finding);
  };
  const rows = new CsvRows(name, head, decimal, batch, { found: tell, refused });
  records.feedAll(bytes);
  const isWhole = start + bytes.length >= size;
  if (isWhole) records.end();
  while (start + records.next < to && records.advance()) rows.add(records);
  const end = start + records.next;
  const isBroken = end < to && records.isOpen;
  if (end < to && !isBroken && !isWhole) return undefined;
  const segment = { start, end, lines: records.brokenLine - 1, counts: rows.counts(), batch, once, bytes: records.bytes };
  return isBroken ? { ...segment, broken: records.broken } : segment;
}

function groupOf(record: Scanner, { at }: HeadColumns): string {
  const text = (column: number | undefined): string => (column === undefined || column >= record.fields ? "" : record.text(column));
  return groupFrom({ engine: text(at.engine), characteristic: text(at.characteristic) });
}
