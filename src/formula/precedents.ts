import { isBlank } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { type CellAddress, type CellArea, placeName } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { evaluateFormula, type FormulaContext, referencedArea } from "./evaluate.ts";
import { callsOf } from "./own-calls.ts";
import { type AstExpression, parseFormula, references } from "./parse.ts";
import { cellsOf, type WorkbookCells } from "./workbook-cells.ts";

/** Formulas that lead to formulas that lead to formulas; a chain in a build sheet is short. */
const LONGEST_CHAIN = 20;

/** The area that an argument refers to, or nothing when it is worked out otherwise. */
export function argumentArea(node: AstExpression | null | undefined, context: FormulaContext): CellArea | undefined {
  const area = node ? referencedArea(node, context) : undefined;
  return area !== undefined && "rows" in area ? area : undefined;
}

/** The cell to mend where `cell` holds a fault: back through our functions to the input that none of them can take. */
export function firstFaultyCell(origins: SpillSources, cell: CellAddress, chain = 0): CellAddress {
  const origin = origins.of(cell);
  if (!origin || chain > LONGEST_CHAIN) return cell;
  const { book } = origins;
  for (const { spec, args, context } of callsOf(book, origin.at, origin.formula)) {
    for (const [i, { name, param }] of spec.inputs.entries()) {
      const area = argumentArea(args[i], context);
      const bad = area && firstOf(origin, area, (inside) => param.take(book.value(inside), name) instanceof Fault);
      if (bad && placeName(bad) !== placeName(cell)) return firstFaultyCell(origins, bad, chain + 1);
    }
  }
  return cell;
}

/** The blank cell because of which `cell` is blank: back through whatever its formula refers to. */
export function firstBlankCell(origins: SpillSources, cell: CellAddress, chain = 0): CellAddress {
  const origin = origins.of(cell);
  if (!origin || chain > LONGEST_CHAIN) return cell;
  const { book } = origins;
  for (const node of references(parseFormula(origin.formula))) {
    const area = argumentArea(node, { book, sheet: origin.at.sheet, cell: origin.at });
    const blank = area && firstOf(origin, area, (inside) => isBlank(book.value(inside)));
    if (blank && placeName(blank) !== placeName(cell)) return firstBlankCell(origins, blank, chain + 1);
  }
  return cell;
}

/** Ranges of more cells are not followed further back; what is looked for is found in them all the same. */
const MOST_FOLLOWED = 10_000;

/** Which of some cells other cells rest on: back through whatever their formulas refer to, each cell looked at once. */
export class RestsOn {
  readonly #known = new Map<string, ReadonlySet<string>>();

  constructor(
    readonly origins: SpillSources,
    readonly wanted: readonly CellAddress[],
  ) {}

  /** Places of those that this cell rests on, itself included. */
  of(cell: CellAddress, chain = 0): ReadonlySet<string> {
    const place = placeName(cell);
    const known = this.#known.get(place);
    if (known) return known;
    const found = new Set<string>();
    // Also what a cycle comes back to.
    this.#known.set(place, found);
    for (const area of [{ ...cell, rows: 1, columns: 1 }, ...this.#inputsOf(cell)]) {
      for (const one of this.wanted) if (isInside(one, area)) found.add(placeName(one));
      if (chain > LONGEST_CHAIN || area.rows * area.columns > MOST_FOLLOWED) continue;
      for (const inside of cellsOf(area)) if (this.origins.isResult(inside)) for (const one of this.of(inside, chain + 1)) found.add(one);
    }
    return found;
  }

  #inputsOf(cell: CellAddress): CellArea[] {
    const origin = this.origins.of(cell);
    if (!origin) return [];
    const context = { book: this.origins.book, sheet: origin.at.sheet, cell: origin.at };
    return references(parseFormula(origin.formula)).flatMap((node) => {
      const area = argumentArea(node, context);
      return area ? [partFor(origin, area)] : [];
    });
  }
}

const isInside = ({ sheet, row, column }: CellAddress, area: CellArea): boolean =>
  sheet === area.sheet && row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;

/** The first cell for which `holds`, of those of the area that this cell of the block gets its input from. */
function firstOf(origin: SpillSource, area: CellArea, holds: (cell: CellAddress) => boolean): CellAddress | undefined {
  for (const cell of cellsOf(partFor(origin, area))) if (holds(cell)) return cell;
  return undefined;
}

/** Blocks are worked out row by row and column by column; a block of labelled rows has one row more for its head. */
function partFor({ block, row, column }: SpillSource, area: CellArea): CellArea {
  const head = block.rows - area.rows;
  const byRow = area.rows > 1 && (head === 0 || head === 1) && row >= head;
  const byColumn = area.columns > 1 && area.columns === block.columns;
  return {
    sheet: area.sheet,
    row: byRow ? area.row + row - head : area.row,
    column: byColumn ? area.column + column : area.column,
    rows: byRow ? 1 : area.rows,
    columns: byColumn ? 1 : area.columns,
  };
}

/** Which formula a cell's content comes from, and which cell of that formula's block it is. */
export interface SpillSource {
  at: CellAddress;
  formula: string;
  block: CellArea;
  row: number;
  column: number;
}

/** Finds the formula behind a cell, also where it has spilled there from another one. */
export class SpillSources {
  #spilled: Map<string, SpillSource> | undefined;

  constructor(readonly book: WorkbookCells) {}

  of(cell: CellAddress): SpillSource | undefined {
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
    const spilled = new Map<string, SpillSource>();
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

  #trace(at: CellAddress, formula: string, spilled: Map<string, SpillSource>): void {
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
