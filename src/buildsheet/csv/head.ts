import { parse } from "csv-parse/sync";
import { type Columns, canBeJudged, readHeadings } from "../headers.ts";

/** What the first line of a file of readings tells about the rest. */
export interface Head extends Columns {
  delimiter: string;
  /** Number of headings. */
  width: number;
  /** Number of the line after the headings. */
  nextLine: number;
  /** The text after the headings. */
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

/** Reads as far as the headings, finds out the delimiter from them, and hands on the rest. */
export async function readHead(
  input: AsyncIterable<Uint8Array>,
  progress?: (bytes: number) => void,
  wanted: Wanted = toBeJudged,
): Promise<Head | { unread: string }> {
  const chunks = decoded(input, progress)[Symbol.asyncIterator]();
  let text = "";
  let line = 1;
  let declared: string | undefined;
  for (;;) {
    const end = endOfLine(text);
    if (end === undefined && text.length < LONGEST_HEAD) {
      const next = await chunks.next();
      if (!next.done) {
        text += next.value;
        continue;
      }
    }
    if (text.includes("\0")) return { unread: "is no text file" };
    const first = text.slice(0, end?.from ?? text.length);
    const after = end === undefined ? "" : text.slice(end.to);
    const [, delimiter] = DELIMITER_LINE.exec(first.trim()) ?? [];
    if (first.trim() !== "" && delimiter === undefined) {
      const head = columnsOf(first, declared ? [declared] : DELIMITERS, wanted);
      return "unread" in head ? { unread: `has in line ${line} ${head.unread}` } : { ...head, nextLine: line + linesIn(first), rest: following(after, chunks) };
    }
    if (end === undefined) return { unread: "is empty" };
    declared ??= delimiter;
    line++;
    text = after;
  }
}

async function* following(text: string, chunks: AsyncIterator<string>): AsyncGenerator<string> {
  yield text;
  for (let next = await chunks.next(); !next.done; next = await chunks.next()) yield next.value;
}

/** Bytes as text: UTF-8, or UTF-16 where a byte order mark says so. The mark itself is dropped. */
async function* decoded(input: AsyncIterable<Uint8Array>, progress?: (bytes: number) => void): AsyncGenerator<string> {
  let decoder: TextDecoder | undefined;
  let bytes = 0;
  for await (const chunk of input) {
    decoder ??= new TextDecoder(chunk[0] === 0xff && chunk[1] === 0xfe ? "utf-16le" : chunk[0] === 0xfe && chunk[1] === 0xff ? "utf-16be" : "utf-8");
    bytes += chunk.length;
    progress?.(bytes);
    yield decoder.decode(chunk, { stream: true });
  }
  if (decoder) yield decoder.decode();
}

/** Where the first line ends, line breaks in quotes apart. A lone CR at the end of the text may be half a CRLF. */
function endOfLine(text: string): { from: number; to: number } | undefined {
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === "\n") return { from: i, to: i + 1 };
    else if (!quoted && sign === "\r" && i + 1 < text.length) return { from: i, to: text[i + 1] === "\n" ? i + 2 : i + 1 };
  }
  return undefined;
}

export const linesIn = (text: string): number => text.split(/\r\n|\n|\r/).length;

type HeadColumns = Columns & { delimiter: string; width: number };

/** The delimiter under which most headings are known. */
function columnsOf(line: string, delimiters: readonly string[], wanted: Wanted): HeadColumns | { unread: string } {
  let best: HeadColumns | undefined;
  for (const delimiter of delimiters) {
    const headings = (parse(line, { delimiter, relax_quotes: true, relax_column_count: true }) as string[][])[0] ?? [];
    const columns = { ...readHeadings(headings), delimiter, width: headings.length };
    if (!best || Object.keys(columns.at).length > Object.keys(best.at).length) best = columns;
  }
  const unread = wanted(best!);
  return unread === undefined ? best! : { unread };
}
