import type { Cell, Result } from "../src/core/cell.ts";
import { STYLES } from "../src/workbook/styles.ts";
import { writeXlsx } from "../src/xlsx/write/workbook.ts";
import type { FileCell, NewSheetFile } from "../src/xlsx/write/workbook-file.ts";

/** How a sample cell looks: what people type stands out from what is calculated; `wrapped`, `number` and `verdict` make a table of long words. */
export type SampleStyle =
  | "title"
  | "note"
  | "head"
  | "label"
  | "typed"
  | "typed3"
  | "words"
  | "result"
  | "result3"
  | "wrapped"
  | "number"
  | "verdict"
  | "master";

export interface SampleCell {
  address: string;
  content: number | string;
  look: SampleStyle;
  /** The block into which the formula spills, `F4:F9`. */
  spill?: string;
  /** The content is text, even where it starts with `=`. */
  isText?: boolean;
  /** How a number is shown, in place of what the look says: `0.000`. */
  format?: string;
}

export interface SampleSheet {
  name: string;
  widths: readonly number[];
  /** Rows that stay in view. */
  frozen: number;
  cells: SampleCell[];
  /** Cells of one column that are shaded unless they hold this, also while they hold an error. */
  flagged?: { cells: string; unless: string | number };
}

/** Calculated values by sheet and address, so that a viewer without the functions shows numbers too. */
export type CalculatedCell = (sheet: string, address: string) => Cell;

const { border } = STYLES.result;

const LOOKS: Readonly<Record<SampleStyle, Pick<FileCell, "style" | "format">>> = {
  title: { style: "title" },
  note: { style: "note" },
  head: { style: "head" },
  label: { style: "label" },
  typed: { style: "typed" },
  typed3: { style: "typed", format: "0.000" },
  // Words that run on over the empty cells beside them, which a border would stop.
  words: { style: "plain" },
  result: { style: "result" },
  result3: { style: "result", format: "0.000" },
  wrapped: { style: { border, isLeft: true, isWrapped: true, isTop: true } },
  number: { style: { border, isTop: true } },
  verdict: { style: { border, isBold: true, isTop: true } },
  master: { style: { isBold: true, size: 16 } },
};

export function writeWorkbook(sheets: readonly SampleSheet[], title: string, calculated: CalculatedCell): Uint8Array {
  return writeXlsx({ title, names: [], sheets: sheets.map((sheet) => sheetFile(sheet, calculated)) });
}

function sheetFile({ name, widths, frozen, cells, flagged }: SampleSheet, calculated: CalculatedCell): NewSheetFile {
  return {
    ...{ name, widths: [...widths], frozen: { rows: frozen, columns: 0 } },
    cells: cells.flatMap((cell) => fileCells(cell, (address) => (calculated(name, address) ?? "") as Result)),
    ...{ tables: [], validations: [], verdicts: [], print: { paper: "A4", isLandscape: true } },
    // A note wraps in its own cell otherwise.
    merges: cells.filter(({ look }) => look === "note").map(({ address }) => ({ ...placeOf(address), rows: 1, columns: widths.length })),
    heights: heightsOf(cells, widths),
    ...(flagged ? { shaded: shadedUnless(flagged) } : {}),
  };
}

/** The cell of a sample, and the cells of the block into which it spills. */
function fileCells({ address, content, look, spill, isText = false, format }: SampleCell, calculated: (address: string) => Result): FileCell[] {
  const style = { ...LOOKS[look], ...(isText ? { format: "@" } : {}), ...(format ? { format } : {}) };
  const isFormula = typeof content === "string" && content.startsWith("=") && !isText;
  const head: FileCell = { ...placeOf(address), content, ...style, isText, ...(isFormula ? { value: calculated(address) } : {}) };
  if (!spill) return [head];
  const [first, ...others] = cellsOf(spill);
  const [top, last] = [placeOf(first!), placeOf(others.at(-1) ?? first!)];
  const block = { rows: last.row - top.row + 1, columns: last.column - top.column + 1 };
  return [{ ...head, block }, ...others.map((inside) => ({ ...placeOf(inside), content: calculated(inside), ...style }))];
}

const LINE_HEIGHT = 15;

/** Rows as high as their wrapped words need; a width counts digits, which letters do not exceed on average. */
function heightsOf(cells: readonly SampleCell[], widths: readonly number[]): Map<number, number> {
  const heights = new Map<number, number>();
  for (const { address, content, look } of cells) {
    if (look !== "wrapped" && look !== "head") continue;
    const { row, column } = placeOf(address);
    const lines = Math.ceil(String(content).length / (widths[column]! - 1));
    heights.set(row, Math.max(heights.get(row) ?? LINE_HEIGHT, lines * LINE_HEIGHT));
  }
  return heights;
}

function shadedUnless({ cells, unless }: NonNullable<SampleSheet["flagged"]>): NonNullable<NewSheetFile["shaded"]> {
  const inside = cellsOf(cells);
  const { row, column } = placeOf(inside[0]!);
  const formula = `NOT(IFERROR(${inside[0]}=${JSON.stringify(unless)},FALSE))`;
  return { area: { row, column, rows: inside.length, columns: 1 }, formula };
}

/** `C4` counted from 0; columns of one letter. */
const placeOf = (address: string): { row: number; column: number } => ({ row: Number(address.slice(1)) - 1, column: address.charCodeAt(0) - 65 });

/** The addresses of a block row by row: `A1:B2` gives A1, B1, A2, B2. */
function cellsOf(range: string): string[] {
  const found = /^([A-Z])(\d+):([A-Z])(\d+)$/.exec(range);
  if (!found) throw new Error(`${range} is not a block of single-letter columns`);
  const [, left, top, right, bottom] = found as unknown as [string, string, string, string, string];
  const all: string[] = [];
  for (let row = Number(top); row <= Number(bottom); row++) {
    for (let column = left.charCodeAt(0); column <= right.charCodeAt(0); column++) all.push(`${String.fromCharCode(column)}${row}`);
  }
  return all;
}
