import type { Block, Cell } from "../core/cell.ts";
import { type CellAddress, type CellArea, cellName, keyOf } from "../workbook/address.ts";
import type { NameSnapshot, SheetSnapshot, TableSnapshot, WorkbookSnapshot } from "../workbook/port.ts";

/** A workbook's snapshot, looked up by cell. All names are the same in capitals and small letters. */
export class WorkbookCells {
  readonly sheets: readonly SheetSnapshot[];
  readonly tables: readonly TableSnapshot[];
  readonly #byName: ReadonlyMap<string, SheetSnapshot>;
  readonly #names: ReadonlyMap<string, NameSnapshot>;
  /** Looked up last: most questions are about the sheet of the one before. */
  #last: { name: string; sheet: SheetSnapshot | undefined } | undefined;

  constructor(readonly snapshot: Pick<WorkbookSnapshot, "sheets" | "names" | "tables">) {
    this.sheets = snapshot.sheets;
    this.tables = snapshot.tables ?? [];
    this.#names = new Map((snapshot.names ?? []).map((one) => [nameKey(one.name, one.sheet), one]));
    this.#byName = new Map(snapshot.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
  }

  sheet(name: string): SheetSnapshot | undefined {
    if (this.#last?.name !== name) this.#last = { name, sheet: this.#byName.get(name.toLowerCase()) };
    return this.#last.sheet;
  }

  /** What a name means on a sheet: its own meaning there goes before that of the workbook. */
  name(name: string, sheet: string): NameSnapshot | undefined {
    return this.#names.get(nameKey(name, sheet)) ?? this.#names.get(nameKey(name));
  }

  table(name: string): TableSnapshot | undefined {
    return this.tables.find((table) => table.name.toLowerCase() === name.toLowerCase());
  }

  value({ sheet, row, column }: CellAddress): Cell {
    const page = this.sheet(sheet);
    return page?.values[row - page.row]?.[column - page.column] ?? null;
  }

  formula({ sheet, row, column }: CellAddress): string | null {
    const page = this.sheet(sheet);
    return page?.formulas[row - page.row]?.[column - page.column] ?? null;
  }

  block({ sheet, row, column, rows, columns }: CellArea): Block {
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

const nameKey = (name: string, sheet = ""): string => `${sheet}!${name}`.toLowerCase();

/** A workbook without sheets, for formulas that hold their numbers themselves. */
export const NO_CELLS = new WorkbookCells({ sheets: [] });

/** The cells of an area, row by row. */
export function* cellsOf({ sheet, row, column, rows, columns }: CellArea): Generator<CellAddress> {
  for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) yield { sheet, row: row + r, column: column + c };
}

/** Cells of a workbook, each once. */
export class CellSet {
  readonly #sheets = new Map<string, Set<number>>();

  /** False for a cell that is there already. */
  add(cell: CellAddress): boolean {
    const cells = this.#sheets.get(cell.sheet) ?? new Set();
    this.#sheets.set(cell.sheet, cells);
    const before = cells.size;
    return cells.add(keyOf(cell)).size > before;
  }

  has(cell: CellAddress): boolean {
    return this.#sheets.get(cell.sheet)?.has(keyOf(cell)) === true;
  }
}

/** `C4:D6`, or `C4` for one cell. */
export function showArea({ row, column, rows, columns }: Omit<CellArea, "sheet">): string {
  const first = cellName({ row, column });
  return rows === 1 && columns === 1 ? first : `${first}:${cellName({ row: row + rows - 1, column: column + columns - 1 })}`;
}
