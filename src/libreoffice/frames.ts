import { broadcast } from "../core/broadcast.ts";
import type { Argument, Cell, Result } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { CHECK_PREFIX, checkText } from "../core/sentences.ts";
import { specByName } from "../functions/index.ts";

/**
 * What goes through the pipe between the office program and the functions. A frame is its length in four
 * bytes, the lowest first, and so many bytes of content. A request is a name, the count of its arguments
 * and the arguments; an answer is its rows, its columns and its cells. Values carry a mark before them:
 *
 *     0              nothing (an argument left out)
 *     1  8 bytes     a number
 *     2  4 + n bytes text, in UTF-8, its length first
 *     3  4 + 4 bytes a block: its rows and columns; its cells follow, row by row
 *
 * The other end is `office/pythonpath/crosshatch_child.py`.
 */
export interface Request {
  /** A function in capitals, or a task in small letters. */
  name: string;
  args: Argument[];
}

const [NOTHING, NUMBER, TEXT, BLOCK] = [0, 1, 2, 3];

export function requestIn(frame: Buffer): Request {
  let at = 0;
  const past = (length: number): number => {
    at += length;
    return at - length;
  };
  const mark = (): number => frame[past(1)]!;
  const whole = (): number => frame.readUInt32LE(past(4));
  const text = (length: number): string => frame.toString("utf8", past(length), at);
  const cell = (kind: number): Cell => (kind === NUMBER ? frame.readDoubleLE(past(8)) : kind === TEXT ? text(whole()) : null);
  const argument = (): Argument => {
    const kind = mark();
    if (kind === NOTHING) return undefined;
    if (kind !== BLOCK) return cell(kind);
    const [rows, columns] = [whole(), whole()];
    return Array.from({ length: rows }, () => Array.from({ length: columns }, () => cell(mark())));
  };
  const name = text(mark());
  const args = Array.from({ length: mark() }, argument);
  return { name, args };
}

/**
 * The rows that a call leaves in its cells. The office program has no errors that carry a sentence, so that
 * a fault is text there, alone in its cell as in a block.
 */
export function answerTo({ name, args }: Request): readonly (readonly Result[])[] {
  const spec = specByName.get(name);
  if (!spec) return [[`${CHECK_PREFIX}there is no function ${name} in this version`]];
  const outcome = broadcast(spec, givenOf(args));
  if (outcome instanceof Fault) return [[checkText(outcome)]];
  return Array.isArray(outcome) ? outcome : [[outcome]];
}

/** Left out at the end is "not given"; left out in between, as in F(5;;6), is a blank. One cell is no range, but a blank one stays a block. */
function givenOf(args: readonly Argument[]): Argument[] {
  const given = args.slice(0, args.findLastIndex((one) => one !== undefined) + 1);
  return given.map((one) => (Array.isArray(one) && one.length === 1 && one[0]!.length === 1 && one[0]![0] !== "" ? one[0]![0] : one));
}

/** A whole frame, its length included. */
export function answerFrame(rows: readonly (readonly Result[])[]): Buffer {
  const columns = rows.reduce((most, line) => Math.max(most, line.length), 1);
  let size = 12;
  for (const line of rows) for (let c = 0; c < columns; c++) size += sizeOf(line[c] ?? "");
  const frame = Buffer.allocUnsafe(size);
  frame.writeUInt32LE(size - 4, 0);
  frame.writeUInt32LE(rows.length, 4);
  frame.writeUInt32LE(columns, 8);
  let at = 12;
  for (const line of rows) {
    // A sheet fills up a shorter row with 0, which would be a reading.
    for (let c = 0; c < columns; c++) at = put(frame, at, line[c] ?? "");
  }
  return frame;
}

const sizeOf = (value: Result): number => (typeof value === "number" ? 9 : 5 + Buffer.byteLength(value));

function put(frame: Buffer, at: number, value: Result): number {
  if (typeof value === "number") {
    frame[at] = NUMBER;
    return frame.writeDoubleLE(value, at + 1);
  }
  frame[at] = TEXT;
  const length = frame.write(value, at + 5);
  frame.writeUInt32LE(length, at + 1);
  return at + 5 + length;
}
