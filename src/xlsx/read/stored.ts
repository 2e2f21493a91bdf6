import type { Cell } from "../../core/cell.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../../workbook/port.ts";
import type { SheetFile, WorkbookFile } from "../model.ts";

/**
 * A workbook as the program that saved it left it: the values of formulas are those in the file, and
 * nothing is calculated here. For places that have no calculating engine of their own.
 */
export const storedSnapshot = ({ sheets }: WorkbookFile, name: string): WorkbookSnapshot => ({ name, sheets: sheets.map(sheetOf) });

function sheetOf({ name, cells }: SheetFile): SheetSnapshot {
  const rows = cells.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const columns = cells.reduce((most, { column }) => Math.max(most, column + 1), 0);
  const blank = (): null[] => new Array(columns).fill(null);
  const values: Cell[][] = Array.from({ length: rows }, blank);
  const formulas: (string | null)[][] = Array.from({ length: rows }, blank);
  for (const { row, column, value, formula } of cells) {
    values[row]![column] = value;
    if (formula !== undefined) formulas[row]![column] = `=${formula}`;
  }
  return { name, row: 0, column: 0, values, formulas };
}

/** Formulas without a value in the file: nobody has calculated it yet. */
export const uncalculated = ({ sheets }: WorkbookFile): number =>
  sheets.reduce((sum, { cells }) => sum + cells.filter(({ formula, value }) => formula !== undefined && value === null).length, 0);
