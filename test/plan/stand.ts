import type { CellAddress, CellArea } from "../../src/workbook/address.ts";
import type { Edit, WorkbookSnapshot } from "../../src/workbook/port.ts";
import { type Typed, workbook } from "../check/workbook.ts";

/** A workbook that plans are made from and written into, calculated by the bench's engine after each step. */
export type Sheets = Record<string, Typed>;

/** `area("Bores", "C4:D6")`, and the same of one cell. */
export function area(sheet: string, range: string): CellArea {
  const [from, to = from] = range.split(":").map((name) => at(sheet, name));
  return { ...from!, rows: to!.row - from!.row + 1, columns: to!.column - from!.column + 1 };
}

/** A cell by its name, with columns of one letter. */
export const at = (sheet: string, name: string): CellAddress => ({ sheet, row: Number(name.slice(1)) - 1, column: name.charCodeAt(0) - 65 });

/** The sheets with the edits in them, as one call of `write` leaves them. */
export function filled(sheets: Sheets, edits: readonly Edit[]): Sheets {
  const changed = structuredClone(sheets);
  for (const { sheet, row, column, cells } of edits) {
    const rows = changed[sheet]!;
    for (const [r, line] of cells.entries()) {
      for (const [c, content] of line.entries()) {
        if (content === null) continue;
        while (rows.length <= row + r) rows.push([]);
        const target = rows[row + r]!;
        while (target.length <= column + c) target.push(null);
        target[column + c] = content === "" ? null : (content as number | string);
      }
    }
  }
  return changed;
}

/** What the cells of a range show; `null` for a cell that shows nothing. */
export function shown(snapshot: WorkbookSnapshot, { sheet, row, column, rows, columns }: CellArea): unknown[][] {
  const page = snapshot.sheets.find(({ name }) => name === sheet)!;
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => nothing(page.values[row + r - page.row]?.[column + c - page.column])),
  );
}

export const calculated = (sheets: Sheets): WorkbookSnapshot => workbook(sheets);

const nothing = (cell: unknown): unknown => (cell === "" || cell === undefined ? null : cell);
