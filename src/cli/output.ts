import { once } from "node:events";
import { writeSync } from "node:fs";
import { UNREADABLE } from "./exit-codes.ts";
import { refusalOf } from "./safe-file.ts";
import { streams } from "./streams.ts";

/**
 * Writes a line to standard output, and waits where the reader is slower. A reader that has gone,
 * as `head` does, ends the program quietly.
 */
export const print = (line: string): Promise<void> => write(`${line}\n`);

/** Characters that are written together, as each writing costs more than a line. */
const PIECE = 1 << 16;

export async function printAll(lines: Iterable<string>): Promise<void> {
  let text = "";
  for (const line of lines) {
    text += `${line}\n`;
    if (text.length < PIECE) continue;
    await write(text);
    text = "";
  }
  if (text !== "") await write(text);
}

let waiting = "";

/** Takes a line for standard output where nobody can wait. It leaves with others, at the latest with what is printed next or at `readerIsReady`. */
export function printSoon(line: string): void {
  waiting += `${line}\n`;
  if (waiting.length >= PIECE) sendWaiting();
}

export function sendWaiting(): void {
  const text = waiting;
  waiting = "";
  if (text !== "") streams().stdout.write(text);
}

/** Resolves when a reader that was slower has come up; nothing where there is nothing to wait for. */
export function readerIsReady(): Promise<void> | undefined {
  sendWaiting();
  const { stdout } = streams();
  return stdout.writableNeedDrain ? once(stdout, "drain").then(() => {}) : undefined;
}

async function write(text: string): Promise<void> {
  sendWaiting();
  const { stdout } = streams();
  if (!stdout.write(text)) await once(stdout, "drain");
}

/** Whatever the sentence holds of somebody else's text steers no terminal. */
export function complain(sentence: string): void {
  streams().stderr.write(`crosshatch: ${printable(sentence)}\n`);
}

/** A reader that has gone ends the program quietly; a disk that is full, or a device that fails, is said where that is still possible. */
export function endWithReader(): void {
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit();
    try {
      // At once, as nothing is waited for any more.
      writeSync(process.stderr.fd, `crosshatch: ${refusalOf("standard output", error).message}\n`);
    } finally {
      process.exit(UNREADABLE);
    }
  });
  process.stderr.on("error", ({ code }: NodeJS.ErrnoException) => process.exit(code === "EPIPE" ? undefined : UNREADABLE));
}

/**
 * Signs that steer a terminal, or that turn the direction of writing and so make text read as what
 * it is not. Text from files never reaches the terminal with them.
 */
const STEERING = /[\p{Cc}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/gu;
/** Text that has none of them for sure; most has not. */
const PLAIN = /^[\x20-\x7e]*$/;
const BREAKS = /[\t\n\r\v\f\u0085\u2028\u2029]+/g;

/** Text as one harmless line. */
export const printable = (text: string): string => text.replace(BREAKS, " ").replace(STEERING, "");

/** A value as one line of JSON; what steers a terminal is written as an escape, so that nothing is lost. */
export function jsonLine(value: unknown): string {
  const text = JSON.stringify(value);
  return PLAIN.test(text) ? text : text.replace(STEERING, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/** A column takes as much as it needs, up to this. */
const WIDEST = 44;

/** Makes the widths fit one more row. */
export function widthsOf(row: readonly string[], widths: number[], widest = WIDEST): void {
  for (const [i, cell] of row.entries()) widths[i] = Math.max(widths[i] ?? 0, Math.min(cell.length, widest));
}

export const alignedRow = (row: readonly string[], widths: readonly number[]): string =>
  row
    .map((cell, i) => (i === row.length - 1 ? cell : cell.padEnd(widths[i]!)))
    .join("  ")
    .trimEnd();

/** Rows as columns that stand below one another. */
export function aligned(rows: readonly (readonly string[])[], widest = WIDEST): string[] {
  const widths: number[] = [];
  for (const row of rows) widthsOf(row, widths, widest);
  return rows.map((row) => alignedRow(row, widths));
}

/** `1 row`, `12,345 rows`. */
export const countText = (count: number, one: string, many = `${one}s`): string => `${count.toLocaleString("en")} ${count === 1 ? one : many}`;
