import type { CellAddress } from "../../../src/workbook/address.ts";
import type { Called, ContractSheet } from "../stage.ts";

/** A fill as Excel keeps it; a cell without one has `null`. */
export interface Look {
  color: string;
  pattern?: string;
  patternColor?: string;
}

export interface BookCell {
  value: number | string | boolean;
  type: "Double" | "String" | "Boolean" | "Error";
  formula: string | null;
}

/** Something that Excel was told of a sheet's looks. */
export interface Note {
  /** Of which cells. */
  on: string;
  what: string;
  value: unknown;
}

interface Sheet {
  id: string;
  name: string;
  visibility: "Visible" | "Hidden" | "VeryHidden";
  protected: boolean;
  cells: Map<string, BookCell>;
  looks: Map<string, Look>;
  notes: Note[];
  pictures: Record<string, unknown>[];
}

const key = (row: number, column: number): string => `${row},${column}`;

/** The workbook behind the mocked Excel: cells, looks and parts, and steps back through them. */
export class ExcelBook {
  name = "build-sheet.xlsx";
  sheets: Sheet[] = [];
  readonly parts: { id: string; xml: string }[] = [];
  active: CellAddress | null = null;
  selected = { rows: 1, columns: 1 };
  syncs = 0;
  /** Pictures that were put in so far. */
  made = 0;
  /** How far the formula in a cell spills: rows and columns, itself included. */
  readonly #spills = new Map<string, [rows: number, columns: number]>();
  readonly #past: { sheets: Sheet[]; called: Called }[] = [];
  /** No sheet can be added. */
  isProtected = false;

  constructor(
    sheets: readonly ContractSheet[],
    public called: Called = {},
  ) {
    for (const { name, cells } of sheets) {
      this.addSheet(name);
      cells.forEach((line, row) => {
        line.forEach((cell, column) => {
          this.#fill({ sheet: name, row, column }, cell);
        });
      });
    }
  }

  #fill(at: CellAddress, cell: ContractSheet["cells"][number][number]): void {
    if (typeof cell !== "object" || cell === null) {
      if (cell !== null && cell !== undefined) this.put(at, { value: cell, type: typeOf(cell), formula: null });
    } else if ("date" in cell) this.put(at, { value: cell.date, type: "Double", formula: null });
    else if ("spilled" in cell) this.#spill(at, cell.spilled as number);
    else if ("formula" in cell) {
      const { value } = cell;
      if (typeof value === "object" && value !== null) this.put(at, { value: value.error, type: "Error", formula: cell.formula });
      else this.put(at, { value: value ?? "", type: typeOf(value ?? ""), formula: cell.formula });
    }
  }

  /** A cell that the formula above it fills. */
  #spill(at: CellAddress, value: number): void {
    let anchor = { ...at, row: at.row - 1 };
    while (!this.cell(anchor)?.formula) anchor = { ...anchor, row: anchor.row - 1 };
    this.put(at, { value, type: "Double", formula: null });
    this.#spills.set(`${anchor.sheet}!${key(anchor.row, anchor.column)}`, [at.row - anchor.row + 1, 1]);
  }

  spill({ sheet, row, column }: CellAddress): [rows: number, columns: number] | undefined {
    return this.#spills.get(`${sheet}!${key(row, column)}`);
  }

  /** A cell that a formula fills, the formula's own included. */
  isSpilled({ sheet, row, column }: CellAddress): boolean {
    for (let above = row; above >= 0; above--) {
      const [down] = this.spill({ sheet, row: above, column }) ?? [0];
      if (above + down > row) return true;
    }
    return false;
  }

  /** A cell's own formula, or with `spilled` that of the one that fills it. */
  formula(at: CellAddress, spilled: boolean): string | null {
    const own = this.cell(at)?.formula ?? null;
    if (own !== null || !spilled) return own;
    for (let row = at.row - 1; row >= 0; row--) {
      const anchor = { ...at, row };
      const [down] = this.spill(anchor) ?? [0];
      if (row + down > at.row) return this.cell(anchor)!.formula;
    }
    return null;
  }

  /** By its name, in whatever letters, as Excel looks it up. */
  sheet(name: string): Sheet | undefined {
    return this.sheets.find((one) => one.name.toLowerCase() === name.toLowerCase());
  }

  cell({ sheet, row, column }: CellAddress): BookCell | undefined {
    return this.sheet(sheet)?.cells.get(key(row, column));
  }

  put({ sheet, row, column }: CellAddress, cell: BookCell): void {
    const { cells } = this.sheet(sheet)!;
    if (cell.formula === null && cell.value === "") cells.delete(key(row, column));
    else cells.set(key(row, column), cell);
  }

  /** What a person types, or a program writes as if typed. */
  type(at: CellAddress, typed: unknown): void {
    if (typed === null) return;
    if (typeof typed !== "string") this.put(at, { value: typed as number, type: typeOf(typed), formula: null });
    else if (typed.startsWith("=")) this.put(at, { value: 0, type: "Double", formula: typed });
    else if (typed.startsWith("'")) this.put(at, { value: typed.slice(1), type: "String", formula: null });
    else if (typed !== "" && Number.isFinite(Number(typed.replace(",", "."))))
      this.put(at, { value: Number(typed.replace(",", ".")), type: "Double", formula: null });
    else this.put(at, { value: typed, type: "String", formula: null });
  }

  look({ sheet, row, column }: CellAddress): Look | null {
    return this.sheet(sheet)?.looks.get(key(row, column)) ?? null;
  }

  setLook({ sheet, row, column }: CellAddress, look: Look | null): void {
    if (look) this.sheet(sheet)!.looks.set(key(row, column), look);
    else this.sheet(sheet)!.looks.delete(key(row, column));
  }

  /** Top, left, bottom and right of the cells with content; `undefined` for a sheet without any. */
  used(name: string): [number, number, number, number] | undefined {
    const places = [...this.sheet(name)!.cells.keys()].map((place) => place.split(",").map(Number) as [number, number]);
    if (places.length === 0) return undefined;
    const rows = places.map(([row]) => row);
    const columns = places.map(([, column]) => column);
    return [Math.min(...rows), Math.min(...columns), Math.max(...rows), Math.max(...columns)];
  }

  activate(at: CellAddress, rows = 1, columns = 1): void {
    this.active = at;
    this.selected = { rows, columns };
  }

  addSheet(name: string): void {
    this.sheets.push({
      id: `{sheet-${this.sheets.length}}`,
      name,
      visibility: "Visible",
      protected: false,
      cells: new Map(),
      looks: new Map(),
      notes: [],
      pictures: [],
    });
  }

  deleteSheet(name: string): void {
    this.sheets = this.sheets.filter((sheet) => sheet.name !== name);
    this.called = { ...this.called, ...(this.called.tables ? { tables: this.called.tables.filter((table) => table.sheet !== name) } : {}) };
  }

  /** Excel makes one step of each sync that changed something. */
  remember(): void {
    const copied = (sheet: Sheet) => ({
      ...sheet,
      cells: new Map(sheet.cells),
      looks: new Map(sheet.looks),
      notes: [...sheet.notes],
      pictures: [...sheet.pictures],
    });
    this.#past.push({ sheets: this.sheets.map(copied), called: this.called });
  }

  undo(): void {
    Object.assign(this, this.#past.pop());
  }
}

function typeOf(value: unknown): BookCell["type"] {
  if (typeof value === "boolean") return "Boolean";
  return typeof value === "number" ? "Double" : "String";
}
