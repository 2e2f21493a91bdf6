/**
 * Signs that steer a terminal, or that turn the direction of writing and so make text read as what
 * it is not. Text from files never reaches the terminal with them.
 */
const STEERING = /[\p{Cc}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/gu;
/** Text that has none of them for sure; most has not. */
const PLAIN = /^[\x20-\x7e]*$/;
const BREAKS = /[\t\n\r\v\f\u0085\u2028\u2029]+/g;

/** Text as one harmless line. */
export const plain = (text: string): string => text.replace(BREAKS, " ").replace(STEERING, "");

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
export const counted = (count: number, one: string, many = `${one}s`): string => `${count.toLocaleString("en")} ${count === 1 ? one : many}`;
