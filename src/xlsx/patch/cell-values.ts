import { areaText, keyOf } from "../../workbook/address.ts";
import type { CalculatedWorkbook, CellFile, WorkbookFile } from "../model.ts";
import type { SheetChanges } from "./sheet-changes.ts";

/**
 * What the cells of a sheet are to hold that formulas fill: every formula's value, and for array
 * formulas the cells that their results reach. A formula without the mark of one fills its own cell
 * alone, whatever it comes to. Left alone are formulas of which the file says more than we know.
 */
export function valueChanges(book: WorkbookFile, sheet: number, calculated: CalculatedWorkbook): Pick<SheetChanges, "values" | "formulas" | "reaches"> {
  const changes = { values: new Map(), formulas: 0, reaches: new Map() } as Pick<SheetChanges, "values" | "formulas" | "reaches">;
  const { values: results } = calculated.sheets[sheet]!;
  const unknown = calculated.unknown();
  for (const cell of book.sheets[sheet]!.cells) {
    if (cell.formula === undefined || unknown.has(cell)) continue;
    const { row, column } = cell;
    changes.formulas++;
    const stored = cell.array ?? { rows: 1, columns: 1 };
    const reach = reachOf(cell, calculated);
    for (let r = 0; r < Math.max(stored.rows, reach.rows); r++) {
      for (let c = 0; c < Math.max(stored.columns, reach.columns); c++) {
        const within = r < reach.rows && c < reach.columns;
        if (!within && (r >= stored.rows || c >= stored.columns)) continue;
        const value = within ? (results[row + r]?.[column + c] ?? null) : null;
        // A formula always comes to something: to blank text where there is nothing.
        changes.values.set(keyOf({ row: row + r, column: column + c }), r + c === 0 ? (value ?? "") : value);
      }
    }
    if (reach.rows === stored.rows && reach.columns === stored.columns) continue;
    changes.reaches.set(keyOf(cell), areaText({ sheet: "", row, column, ...reach }).slice(3));
  }
  return changes;
}

/** The cells that a formula fills now. */
function reachOf(cell: CellFile, { reaches }: CalculatedWorkbook): { rows: number; columns: number } {
  if (!cell.array) return { rows: 1, columns: 1 };
  return cell.array.grows ? (reaches.get(cell) ?? { rows: 1, columns: 1 }) : cell.array;
}
