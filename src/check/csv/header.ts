import { type Columns, canBeJudged, readHeadings } from "../../vocabulary/headings.ts";
import { type EncodingOptions, joined, NOTHING, utf8 } from "./encoding.ts";
import { Scanner } from "./scanner.ts";

/** Which columns there are. */
export interface HeaderColumns extends Columns {
  delimiter: string;
  /** Number of headings. */
  width: number;
}

/** What the headings of a file of readings tell about the rest. */
export interface Header extends HeaderColumns {
  /** Number of the line after the headings. */
  nextLine: number;
  /** What comes after the headings, as UTF-8; it can be read once. */
  bytes: AsyncIterable<Uint8Array>;
}

const DELIMITERS = [",", ";", "\t", "|"];
/** A line of headings is shorter; a longer first line is no table of readings. */
const LONGEST_HEAD = 65_536;
const LONG = 4096;
/** A first line by which some spreadsheets name the delimiter. */
const DELIMITER_LINE = /^\s*sep=(.)\s*$/i;

/** What the headings must name for the file to be of use; says what is lacking. */
export type Wanted = (columns: Columns) => string | undefined;

const toBeJudged: Wanted = (columns) =>
  canBeJudged(columns)
    ? undefined
    : `no heading for ${columns.at.value === undefined ? "the value" : unlimited(columns)}; the table needs value and lower or upper, and where known engine, cylinder, characteristic, position, unit, uncertainty`;

const unlimited = ({ oneSided }: Columns): string => `a lower or upper limit${oneSided === undefined ? "" : ` (${oneSided.trim()} does not say which)`}`;

/** Reads as far as the headings, finds out the delimiter from them, and hands on the rest. Runs in browsers too. */
export async function readHeader(
  input: AsyncIterable<Uint8Array>,
  encoding: EncodingOptions = {},
  wanted: Wanted = toBeJudged,
): Promise<Header | { unread: string }> {
  const chunks = utf8(input, encoding);
  const head = await headerOf(chunks, wanted);
  // Nobody reads on, so that the file can be closed.
  if ("unread" in head) await chunks.return(undefined);
  return head;
}

async function headerOf(chunks: AsyncGenerator<Uint8Array>, wanted: Wanted): Promise<Header | { unread: string }> {
  let bytes = NOTHING;
  let line = 1;
  let delimiters: readonly string[] = DELIMITERS;
  let isLast = false;
  for (;;) {
    const isWhole = isLast || bytes.length >= LONGEST_HEAD;
    const heads = delimiters.map((delimiter) => headerBy(delimiter, bytes.subarray(0, LONGEST_HEAD), line, isWhole));
    if (!isWhole && heads.includes(undefined)) {
      // A long line that comes in small pieces is not gone through again for each of them.
      const due = bytes.length > LONG ? bytes.length * 1.25 : 0;
      do {
        const next = await chunks.next();
        if (next.done) isLast = true;
        else bytes = joined(bytes, next.value);
      } while (!isLast && bytes.length < due);
      continue;
    }
    if (bytes.length === 0) return { unread: "is empty" };
    const best = mostKnown(heads);
    // Only what is read as headings: how much has come beyond them is chance.
    if (bytes.subarray(0, best?.record.to ?? LONGEST_HEAD).includes(0)) return { unread: "is no text file" };
    const text = best?.record.raw();
    const [, delimiter] = DELIMITER_LINE.exec(text ?? "") ?? [];
    if (best === undefined || (text?.trim() !== "" && delimiter === undefined)) {
      const lacking = best && wanted(best.columns);
      if (best && lacking === undefined) return { ...best.columns, nextLine: best.record.nextLine, bytes: following(bytes.subarray(best.record.next), chunks) };
      return { unread: `has in line ${line} ${heads.includes(undefined) ? "a quote that is opened and never closed" : lacking}` };
    }
    if (delimiter !== undefined) delimiters = [delimiter];
    line = best.record.nextLine;
    bytes = bytes.subarray(best.record.next);
  }
}

/** The headings as they are under one delimiter. */
interface HeaderBy {
  record: Scanner;
  columns: HeaderColumns;
}

/** Nothing where the line does not end in these bytes: a quote is open in it, or more has to come. */
function headerBy(delimiter: string, bytes: Uint8Array, line: number, isWhole: boolean): HeaderBy | undefined {
  const record = new Scanner(delimiter, line);
  record.feed(bytes);
  if (isWhole) record.end();
  if (!record.advance()) return undefined;
  return { record, columns: { ...readHeadings(record.texts()), delimiter, width: record.fields } };
}

/** The delimiter under which most headings are known. */
function mostKnown(heads: readonly (HeaderBy | undefined)[]): HeaderBy | undefined {
  let best: HeaderBy | undefined;
  for (const head of heads) if (head && (!best || knownIn(head) > knownIn(best))) best = head;
  return best;
}

const knownIn = ({ columns: { at } }: HeaderBy): number => Object.keys(at).length;

/** Why a record cannot be told field by field: it has not as many as there are headings. */
export function misfitOf(record: readonly string[], { width, delimiter }: HeaderColumns): string | undefined {
  if (record.length >= width && record.slice(width).every((field) => field.trim() === "")) return undefined;
  const hint = record.length > width && delimiter === "," ? ": is there a decimal comma outside quotes?" : "";
  return `the line has ${record.length} fields where there are ${width} headings${hint}`;
}

async function* following(bytes: Uint8Array, chunks: AsyncGenerator<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    yield bytes;
    yield* chunks;
  } finally {
    await chunks.return(undefined);
  }
}
