import { isBlank } from "../core/cell.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { evaluateFormula } from "./evaluate.ts";
import { type Area, type Book, cellsOf } from "./workbook-cells.ts";

/** Which formula a cell's content comes from, and which cell of that formula's block it is. */
export interface Origin {
  at: CellAddress;
  formula: string;
  block: Area;
  row: number;
  column: number;
}

/** Finds the formula behind a cell, also where it has spilled there from another one. */
export class Origins {
  #spilled: Map<string, Origin> | undefined;

  constructor(readonly book: Book) {}

  of(cell: CellAddress): Origin | undefined {
    const formula = this.book.formula(cell);
    if (formula !== null) return { at: cell, formula, block: { ...cell, rows: 1, columns: 1 }, row: 0, column: 0 };
    if (!this.#spilled) for (const _ of this.prepare());
    return this.#spilled!.get(placeName(cell));
  }

  /** True for what a formula has left in the cell. */
  isResult(cell: CellAddress): boolean {
    if (this.book.formula(cell) !== null) return true;
    if (!this.#spilled) for (const _ of this.prepare());
    return this.#spilled!.size > 0 && this.#spilled!.has(placeName(cell));
  }

  /** Finds out beforehand what has spilled, row by row of the workbook, for whoever wants to do something in between. */
  *prepare(): Generator<void> {
    const spilled = new Map<string, Origin>();
    for (const sheet of this.book.sheets) {
      for (const [r, line] of sheet.formulas.entries()) {
        for (let c = 0; c < line.length; c++) {
          const formula = line[c]!;
          if (formula === null || !mayHaveSpilled(sheet, r, c)) continue;
          this.#trace({ sheet: sheet.name, row: sheet.row + r, column: sheet.column + c }, formula, spilled);
        }
        yield;
      }
    }
    this.#spilled = spilled;
  }

  #trace(at: CellAddress, formula: string, spilled: Map<string, Origin>): void {
    const result = evaluateFormula(formula, { book: this.book, sheet: at.sheet, cell: at });
    if (!Array.isArray(result)) return;
    const block = { ...at, rows: result.length, columns: result[0]?.length ?? 0 };
    for (const cell of cellsOf(block)) {
      if (this.book.formula(cell) === null) spilled.set(placeName(cell), { at, formula, block, row: cell.row - at.row, column: cell.column - at.column });
    }
  }
}

/** Only a formula with content of no formula right of it or below it can have spilled. */
const mayHaveSpilled = (sheet: SheetSnapshot, r: number, c: number): boolean => isContent(sheet, r + 1, c) || isContent(sheet, r, c + 1);

const isContent = ({ values, formulas }: SheetSnapshot, r: number, c: number): boolean => (formulas[r]?.[c] ?? null) === null && !isBlank(values[r]?.[c]);
