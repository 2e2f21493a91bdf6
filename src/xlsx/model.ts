import type { Cell } from "../core/cell.ts";
import { around, type CellPosition, columnOf, keyOf, MOST_COLUMNS, MOST_ROWS, type Rectangle } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { TablePlace } from "../workbook/table-references.ts";
import { UnreadableFile } from "./file-limits.ts";

/** A workbook as its file has it: nothing calculated, nothing judged. Rows and columns count from 0. */
export interface WorkbookFile {
  sheets: SheetFile[];
  names: DefinedName[];
  /** What of a sheet is printed, and which of its rows and columns on every page. */
  printNames?: DefinedName[];
  tables: Table[];
  /** Dates count from 1904 instead of 1900. */
  from1904: boolean;
  /** Texts of ours that are kept in the file. */
  storedTexts: Map<string, string>;
}

export interface SheetFile {
  name: string;
  hidden: boolean;
  /** Row by row; only cells that hold something. */
  cells: CellFile[];
  hiddenRows: number[];
  /** Those that a filter hides: all hidden ones while one is on, also those that were hidden by hand and lie beside it, as Excel counts. */
  filteredRows?: number[];
  /** What may be typed, by the areas of each rule as the file writes them. */
  typing?: ReadonlyMap<string, TypingRule>;
  /** How it is printed. */
  print?: readonly PrintElement[];
  /** What the last calculation left in the other cells of array formulas, by `keyOf`. */
  filled?: ReadonlyMap<number, Cell>;
}

/** A rule for typing as its file has it, without its areas; formulas in the file's spelling. */
export interface TypingRule {
  attributes: Readonly<Record<string, string>>;
  formulas: readonly string[];
}

/** An element of a sheet's set-up for printing as its file has it, with the texts within, such as a footer's. */
export interface PrintElement {
  name: string;
  attributes: Readonly<Record<string, string>>;
  within: readonly { name: string; text: string }[];
}

export interface CellFile {
  row: number;
  column: number;
  /** What the file holds as the value: typed in, or left by the program that calculated last. */
  value: Cell;
  /** The formula as people type it, without `=`. */
  formula?: string;
  /** For an array formula: how many cells it filled when it was saved, and whether it may fill more or fewer. */
  array?: { rows: number; columns: number; grows: boolean };
  /** Why the formula cannot be calculated from the file alone. */
  beyond?: string;
}

/** The cells of a sheet without those that array formulas filled, and what was left in these. */
export function apartFromFilled(all: CellFile[], keys: ReadonlySet<number>): { cells: CellFile[]; filled: Pick<SheetFile, "filled"> } {
  if (keys.size === 0) return { cells: all, filled: {} };
  const filled = new Map<number, Cell>();
  const cells = all.filter((cell) => {
    const isOwn = cell.formula !== undefined || cell.beyond !== undefined || !keys.has(keyOf(cell));
    if (!isOwn) filled.set(keyOf(cell), cell.value);
    return isOwn;
  });
  return { cells, filled: { filled } };
}

export interface DefinedName {
  name: string;
  /** The sheet on which alone it counts, by its place in `sheets`. */
  sheet?: number;
  /** What it stands for, without `=`. */
  formula: string;
}

export interface Table extends TablePlace {
  /** The sheet it stands on, by its place in `sheets`. */
  sheet: number;
  columns: string[];
}

const NAME = /^\$?([A-Za-z]{1,3})\$?([0-9]{1,7})$/;

/** `C7` as row 6 and column 2. */
export function positionIn(name: string, part: string): CellPosition {
  const [, letters, digits] = NAME.exec(name) ?? [];
  const column = columnOf(letters ?? "");
  const row = Number(digits ?? 0);
  if (column < 0 || column >= MOST_COLUMNS || row < 1 || row > MOST_ROWS)
    throw new UnreadableFile(`is damaged: ${JSON.stringify(name)} in its part ${part} is no cell`);
  return { row: row - 1, column };
}

/** `B2:C5`, or one cell, as a rectangle. */
export function rectangleIn(range: string, part: string): Rectangle {
  const [first = "", last = first] = range.split(":");
  const from = positionIn(first, part);
  const to = positionIn(last, part);
  return around({ ...from, rows: 1, columns: 1 }, { ...to, rows: 1, columns: 1 });
}

/** How many cells the result of a formula fills. */
export interface SpillSize {
  rows: number;
  columns: number;
}

/** A workbook with the values that its formulas come to. */
export interface CalculatedWorkbook {
  sheets: SheetSnapshot[];
  /** What a person should know about the calculation, in sentences. */
  notes: string[];
  /** How many cells the results of array formulas fill that may fill more or fewer. */
  spillSizes: ReadonlyMap<CellFile, SpillSize>;
  /** Formulas of which the file may say more than the calculation: not calculated here, resting on itself, or resting on such a one. */
  unknown(): ReadonlySet<CellFile>;
}
