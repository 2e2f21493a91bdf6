import type { Rectangle } from "./address.ts";

/**
 * Sheets as data: what stands where, how it looks, what may be typed. Whoever writes them, into a
 * file or through a host, finds everything here and decides nothing. Rows and columns count from 0.
 */
export interface WorkbookSpec {
  /** In the order of the tabs. */
  sheets: readonly SheetSpec[];
  names: readonly NameSpec[];
}

export interface SheetSpec {
  name: string;
  /** Of the columns from A on, in characters. */
  widths: number[];
  /** Rows and columns that stay in view, and are printed on every page. */
  frozen: { rows: number; columns: number };
  cells: CellSpec[];
  tables: TableSpec[];
  validations: Validation[];
  /** Cells that show verdicts: their fill repeats the word. */
  verdicts: Rectangle[];
  merges: Rectangle[];
  print: { paper: "A4" | "letter"; isLandscape: boolean };
}

/** How a cell looks: what people type stands out from what is calculated. */
export type CellStyle = "title" | "note" | "head" | "label" | "typed" | "result" | "plain";

export interface CellSpec {
  row: number;
  column: number;
  /** A formula starts with `=`, in the names that people type; `""` is a cell that is only styled. */
  content: number | string;
  style: CellStyle;
  /** Number format code, such as `0.000`. */
  format?: string;
}

/** A table of the sheet; `row` and `column` are its first heading. */
export interface TableSpec {
  name: string;
  row: number;
  column: number;
  /** Rows below the headings. */
  rows: number;
  headings: string[];
  /** Buttons in its headings by which rows are picked out. */
  hasFilter?: boolean;
}

/** What may be typed into a cell. Nothing at all always may. */
export type Rule =
  | { kind: "above zero" | "at least zero" | "number" | "date" }
  /** Nothing at all: its formula stays. */
  | { kind: "calculated" }
  | { kind: "one of"; words: readonly string[] }
  | { kind: "listed"; name: string };

export interface Validation {
  area: Rectangle;
  rule: Rule;
  /** Said when something else is typed. */
  sentence: string;
}

export interface NameSpec {
  name: string;
  /** What it stands for, without `=`. */
  formula: string;
}

/** A sheet with this name and nothing on it. */
export const emptySheet = (name: string): SheetSpec => ({
  name,
  widths: [],
  frozen: { rows: 0, columns: 0 },
  cells: [],
  tables: [],
  validations: [],
  verdicts: [],
  merges: [],
  print: { paper: "A4", isLandscape: false },
});

/** The tables of a sheet as a workbook file has them: without totals. */
export const tablePlaces = ({ tables }: SheetSpec) =>
  tables.map(({ name, row, column, rows, headings }) => ({
    name,
    area: { row, column, rows: rows + 1, columns: headings.length },
    headerRows: 1,
    totalsRows: 0,
    columns: [...headings],
  }));

/** The cells of a sheet with something in them, from A1; `null` is nothing. */
export function cellContents({ cells }: SheetSpec): (number | string | null)[][] {
  const filled = cells.filter(({ content }) => content !== "");
  const rows = filled.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const columns = filled.reduce((most, { column }) => Math.max(most, column + 1), 0);
  const block = Array.from({ length: rows }, () => new Array<number | string | null>(columns).fill(null));
  for (const { row, column, content } of filled) block[row]![column] = content;
  return block;
}
