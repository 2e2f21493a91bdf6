import type { Cell } from "../../src/core/cell.ts";
import { READING_FIELDS, type ReadingField } from "../../src/vocabulary/heading-words.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../../src/workbook/port.ts";

export const NOBODYS = "Quibble";

export const sheet = (values: Cell[][], name = "Readings"): SheetSnapshot => {
  const columns = Math.max(...values.map(({ length }) => length));
  const filled = values.map((line) => Array.from({ length: columns }, (_, c) => line[c] ?? null));
  return { name, row: 0, column: 0, values: filled, formulas: filled.map((line) => line.map(() => null)) };
};
export const book = (...sheets: SheetSnapshot[]): WorkbookSnapshot => ({ name: "workbook", sheets, names: [], tables: [] }) as unknown as WorkbookSnapshot;
export async function* bytes(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}
export const csvOf = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => row.map((cell) => `"${String(cell).replaceAll('"', '""')}"`).join(",")).join("\n");
export const capital = (word: string): string => `${word.charAt(0).toUpperCase()}${word.slice(1)}`;

/** Readings in which every column changes what comes out: invented, one near a limit, one too near it to be proven, one over it, one in another unit. */
export const ROWS: readonly Readonly<Record<ReadingField, Cell>>[] = Array.from({ length: 6 }, (_, i) => ({
  ...{ engine: "A", cylinder: String(i + 1), characteristic: "bore", position: "face", height: "top", axis: "thrust" },
  ...{ value: [73.01, 73.0455, 73.049, 73.06, 72.9, 73.011][i]!, lower: 73, upper: 73.05, unit: i === 5 ? "in" : "mm" },
  ...{ uncertainty: 0.004, near: 0.005, hours: 412 },
}));

/** The table with one heading of another word, and without the columns that a reader is better asked without. */
export function table(field: ReadingField, heading: string, without: readonly ReadingField[] = []): Cell[][] {
  const fields = READING_FIELDS.filter((one) => !without.includes(one));
  return [fields.map((one) => (one === field ? heading : capital(one))), ...ROWS.map((row) => fields.map((one) => row[one]))];
}

const cellsAside = (key: string, value: unknown): unknown => (key === "cell" ? undefined : value);
export const plainly = (result: unknown): unknown => JSON.parse(JSON.stringify(result, cellsAside) ?? "null");
