import type { Cell } from "../../core/cell.ts";
import type { TablePlace } from "../table-parts.ts";

/** A workbook as its file has it: nothing calculated, nothing judged. Rows and columns count from 0. */
export interface WorkbookFile {
  sheets: SheetFile[];
  names: DefinedName[];
  tables: Table[];
  /** Dates count from 1904 instead of 1900. */
  from1904: boolean;
  /** Texts of ours that are kept in the file. */
  kept: Map<string, string>;
}

export interface SheetFile {
  name: string;
  hidden: boolean;
  /** Row by row; only cells that hold something. */
  cells: CellFile[];
  hiddenRows: number[];
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
