import { parse } from "csv-parse/sync";
import { type Columns, canBeJudged, readHeadings } from "../headers.ts";

/** Which columns there are. */
export interface HeadColumns extends Columns {
  delimiter: string;
  /** Number of headings. */
  width: number;
}

/** What the first line of a file of readings tells about the rest. */
export interface Head extends HeadColumns {
  /** Number of the line after the headings. */
  nextLine: number;
  /** The text after the headings, as UTF-8, in Node's own buffers: not to be had in a browser. */
  bytes: AsyncIterable<Buffer>;
  /** The same as text. Either of them can be read, once. */
  rest: AsyncIterable<string>;
}

const DELIMITERS = [",", ";", "\t", "|"];
/** A line of headings is shorter; a longer first line is no table of readings. */
const LONGEST_HEAD = 65_536;
/** A first line by which some spreadsheets name the delimiter. */
const DELIMITER_LINE = /^sep=(.)$/i;

/** What the headings must name for the file to be of use; says what is lacking. */
export type Wanted = (columns: Columns) => string | undefined;

const toBeJudged: Wanted = (columns) =>
  canBeJudged(columns)
    ? undefined
    : `no heading for ${columns.at.value === undefined ? "the value" : "a lower or upper limit"}; wanted are value and lower or upper, and as known engine, cylinder, characteristic, position, unit, uncertainty`;

/** Reads as far as the headings, finds out the delimiter from them, and hands on the rest. Runs in browsers too. */
export async function readHead(
  input: AsyncIterable<Uint8Array>,
  progress?: (bytes: number) => void,
  wanted: Wanted = toBeJudged,
): Promise<Head | { unread: string }> {
  const chunks = utf8(input, progress)[Symbol.asyncIterator]();
  let bytes = NOTHING;
  let line = 1;
  let declared: string | undefined;
  for (;;) {
    const end = endOfLine(bytes);
    if (end === undefined && bytes.length < LONGEST_HEAD) {
      const next = await chunks.next();
      if (!next.done) {
        bytes = joined(bytes, next.value);
        continue;
      }
    }
    // Only what is read as headings: how much has come beyond them is chance.
    if (bytes.subarray(0, end?.from).includes(0)) return { unread: "is no text file" };
    const first = new TextDecoder().decode(bytes.subarray(0, end?.from));
    const after = end === undefined ? NOTHING : bytes.subarray(end.to);
    const [, delimiter] = DELIMITER_LINE.exec(first.trim()) ?? [];
    if (first.trim() !== "" && delimiter === undefined) {
      const head = columnsOf(first, declared ? [declared] : DELIMITERS, wanted);
      if ("unread" in head) return { unread: `has in line ${line} ${head.unread}` };
      const rest = following(after, chunks);
      return { ...head, nextLine: line + linesIn(first), bytes: buffersOf(rest), rest: textOf(rest) };
    }
    if (end === undefined) return { unread: "is empty" };
    declared ??= delimiter;
    line++;
    bytes = after;
  }
}

const NOTHING: Uint8Array = new Uint8Array(0);

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

async function* following(bytes: Uint8Array, chunks: AsyncIterator<Uint8Array>): AsyncGenerator<Uint8Array> {
  yield bytes;
  for (let next = await chunks.next(); !next.done; next = await chunks.next()) yield next.value;
}

/** The same bytes, not copied. */
async function* buffersOf(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Buffer> {
  for await (const { buffer, byteOffset, length } of chunks) yield Buffer.from(buffer, byteOffset, length);
}

async function* textOf(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
  for await (const chunk of chunks) yield decoder.decode(chunk, { stream: true });
  yield decoder.decode();
}

const BOM_8 = Uint8Array.of(0xef, 0xbb, 0xbf);
const BOM_16 = { "utf-16le": Uint8Array.of(0xff, 0xfe), "utf-16be": Uint8Array.of(0xfe, 0xff) };

/** Bytes as UTF-8, which they are unless a byte order mark says UTF-16. The mark itself is dropped. */
async function* utf8(input: AsyncIterable<Uint8Array>, progress?: (bytes: number) => void): AsyncGenerator<Uint8Array> {
  const encoder = new TextEncoder();
  let mark: Uint8Array | undefined = NOTHING;
  let read = 0;
  let decoder: TextDecoder | undefined;
  for await (const chunk of input) {
    read += chunk.length;
    progress?.(read);
    let bytes = chunk;
    if (mark) {
      // A mark may come in pieces.
      bytes = mark = joined(mark, bytes);
      if (bytes.length < BOM_8.length && !hasMark(bytes, BOM_16["utf-16le"]) && !hasMark(bytes, BOM_16["utf-16be"])) continue;
      for (const [encoding, sign] of Object.entries(BOM_16)) if (hasMark(bytes, sign)) decoder = new TextDecoder(encoding);
      if (hasMark(bytes, BOM_8)) bytes = bytes.subarray(BOM_8.length);
      mark = undefined;
    }
    yield decoder ? encoder.encode(decoder.decode(bytes, { stream: true })) : bytes;
  }
  if (mark?.length) yield mark;
  if (decoder) yield encoder.encode(decoder.decode());
}

const hasMark = (bytes: Uint8Array, sign: Uint8Array): boolean => sign.every((byte, at) => bytes[at] === byte);

const QUOTE = 0x22;
const LF = 0x0a;
const CR = 0x0d;

/** Where the first line ends, line breaks in quotes apart. A lone CR at the end may be half a CRLF. */
function endOfLine(bytes: Uint8Array): { from: number; to: number } | undefined {
  let quoted = false;
  for (let i = 0; i < bytes.length; i++) {
    const sign = bytes[i];
    if (sign === QUOTE) quoted = !quoted;
    else if (!quoted && sign === LF) return { from: i, to: i + 1 };
    else if (!quoted && sign === CR && i + 1 < bytes.length) return { from: i, to: bytes[i + 1] === LF ? i + 2 : i + 1 };
  }
  return undefined;
}

export const linesIn = (text: string): number => text.split(/\r\n|\n|\r/).length;

/** The delimiter under which most headings are known. */
function columnsOf(line: string, delimiters: readonly string[], wanted: Wanted): HeadColumns | { unread: string } {
  let best: HeadColumns | undefined;
  for (const delimiter of delimiters) {
    const headings = headingsOf(line, delimiter);
    if (!headings) return { unread: "a quote that is opened and never closed" };
    const columns = { ...readHeadings(headings), delimiter, width: headings.length };
    if (!best || Object.keys(columns.at).length > Object.keys(best.at).length) best = columns;
  }
  const unread = wanted(best!);
  return unread === undefined ? best! : { unread };
}

function headingsOf(line: string, delimiter: string): string[] | undefined {
  try {
    return (parse(line, { delimiter, relax_quotes: true, relax_column_count: true }) as string[][])[0] ?? [];
  } catch {
    // With quotes and widths taken as they come, only an open quote is left to complain of.
    return undefined;
  }
}
