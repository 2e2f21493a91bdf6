import type { Block, Cell } from "../../core/cell.ts";
import { type CellAddress, cellName } from "../../sheet/address.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../../sheet/sheet-host.ts";

/** A rectangle of cells on one sheet. Rows and columns count from 0. */
export interface Area extends CellAddress {
  rows: number;
  columns: number;
}

/** A workbook's snapshot, looked up by cell. Sheet names are the same in capitals and small letters. */
export class Book {
  readonly sheets: readonly SheetSnapshot[];
  readonly #byName: ReadonlyMap<string, SheetSnapshot>;

  constructor(snapshot: Pick<WorkbookSnapshot, "sheets">) {
    this.sheets = snapshot.sheets;
    this.#byName = new Map(snapshot.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
  }

  sheet(name: string): SheetSnapshot | undefined {
    return this.#byName.get(name.toLowerCase());
  }

  value({ sheet, row, column }: CellAddress): Cell {
    const page = this.sheet(sheet);
    return page?.values[row - page.row]?.[column - page.column] ?? null;
  }

  formula({ sheet, row, column }: CellAddress): string | null {
    const page = this.sheet(sheet);
    return page?.formulas[row - page.row]?.[column - page.column] ?? null;
  }

  block({ sheet, row, column, rows, columns }: Area): Block {
    const page = this.sheet(sheet);
    const block: Block = new Array(rows);
    for (let r = 0; r < rows; r++) {
      const source = page?.values[row + r - page.row];
      const line: Cell[] = new Array(columns);
      for (let c = 0; c < columns; c++) line[c] = source?.[column + c - page!.column] ?? null;
      block[r] = line;
    }
    return block;
  }
}

/** A workbook without sheets, for formulas that hold their numbers themselves. */
export const EMPTY_BOOK = new Book({ sheets: [] });

/** The cells of an area, row by row. */
export function* cellsOf({ sheet, row, column, rows, columns }: Area): Generator<CellAddress> {
  for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) yield { sheet, row: row + r, column: column + c };
}

/** `C4:D6`, or `C4` for one cell. */
export function showArea({ row, column, rows, columns }: Omit<Area, "sheet">): string {
  const first = cellName({ row, column });
  return rows === 1 && columns === 1 ? first : `${first}:${cellName({ row: row + rows - 1, column: column + columns - 1 })}`;
}
