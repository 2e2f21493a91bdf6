import type { Cell } from "../../core/cell.ts";

/** What is to be changed in the cells of a sheet, each by `keyOf` its place. */
export interface SheetChanges {
  /** What formulas come to, and what stands in the cells that their results fill; `null` empties one. */
  values: Map<number, Cell>;
  /** How many of them are cells with a formula. */
  formulas: number;
  /** How far the result of a formula reaches, as its `ref` says it, where that has changed. */
  reaches: Map<number, string>;
  /** Cells that get another look. */
  looks: Set<number>;
}

/** What a sheet shares with others of its workbook. */
export interface Around {
  /** The number of the style that a cell is to have, for that of the one that it has. */
  restyle(key: number, style: number): number;
  /** The text of a number that stands for one. */
  shared(index: number): string | undefined;
}
