import { translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx";
import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import { evaluateFormula } from "../formula/evaluate.ts";
import { parseFormula, references } from "../formula/parse.ts";
import { argumentArea } from "../formula/precedents.ts";
import { cellsOf, type WorkbookCells } from "../formula/workbook-cells.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { namesLimitOrStatistic } from "../vocabulary/headings.ts";
import { type CellAddress, cellName } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { type FindingCollector, unjudged } from "./collect.ts";

/** As far as a run of cells is looked along, to each side. */
const REACH = 40;
/** Alike formulas on one side that make a typed number at the end of their run suspicious. */
const ENOUGH = 3;
const LONGEST = 8192;

/** Formulas along a run, each counted from its own place; `undefined` for a typed number. */
type Run = readonly (string | undefined)[];

type Step = readonly [row: number, column: number];
const DOWN: Step = [1, 0];
const ACROSS: Step = [0, 1];

/**
 * Numbers typed where a formula stood: the cells on both sides of one in its column, or in its row,
 * hold one and the same formula, counted from where each stands, and far more cells of the run do so
 * than hold numbers; or it ends a run of at least three of them and there is something for the
 * formula to work with. A number that the formulas beside it use themselves is their input.
 */
export class OverwrittenFormulas {
  readonly #relative = new Map<string, string>();

  constructor(
    readonly book: WorkbookCells,
    readonly labels: SheetLabels,
    readonly report: FindingCollector,
  ) {}

  /** One row of a sheet, by its place in the snapshot. */
  look(sheet: SheetSnapshot, r: number): void {
    const { values, formulas } = sheet;
    const line = values[r]!;
    for (let c = 0; c < line.length; c++) {
      const value = line[c];
      if (typeof value !== "number" || formulas[r]![c] !== null || !isBesideFormula(formulas, r, c)) continue;
      const found = this.#alike(sheet, r, c, DOWN) ?? this.#alike(sheet, r, c, ACROSS);
      if (found === undefined) continue;
      this.#tell({ sheet: sheet.name, row: sheet.row + r, column: sheet.column + c }, value, found);
    }
  }

  /** The formula that the cells beside this one share, as it would stand here. */
  #alike(sheet: SheetSnapshot, r: number, c: number, step: Step): string | undefined {
    const [down, across] = step;
    if (!isWorkedOut(sheet, r - down, c - across) && !isWorkedOut(sheet, r + down, c + across)) return undefined;
    const cells = [runFrom(sheet, r, c, step, -1), runFrom(sheet, r, c, step, 1)];
    const formulas = cells.flat().filter(Boolean).length;
    const typed = 1 + cells.flat().length - formulas;
    if (formulas < 2 * typed) return undefined;
    const [before, after] = cells.map((run) => run.map((cell) => cell && this.#from(cell))) as unknown as [Run, Run];
    const shared = before[0] ?? after[0];
    const counts = (run: Run) => run.filter((one) => one === shared).length;
    const alike = counts(before) + counts(after);
    const isBetween = before[0] === shared && after[0] === shared;
    const ends = (run: Run, other: Run) => other.length === 0 && run.slice(0, ENOUGH).filter((one) => one === shared).length === ENOUGH;
    const isEnd = step === DOWN && (ends(before, after) ? isLikeRow(sheet, r, r - 1) : ends(after, before) && isLikeRow(sheet, r, r + 1));
    if (!(isBetween || isEnd) || alike < 2 * typed) return undefined;
    const here = { sheet: sheet.name, row: sheet.row + r, column: sheet.column + c };
    const formula = translateFormulaToA1(shared!, cellName(here));
    const neighbours = [-1, 1].flatMap((side) => {
      const [row, column] = [r + side * step[0], c + side * step[1]];
      return sheet.formulas[row]?.[column] ? [{ sheet: sheet.name, row: sheet.row + row, column: sheet.column + column }] : [];
    });
    if (neighbours.some((neighbour) => this.#uses(neighbour, here))) return undefined;
    const isSure = isBetween && step === DOWN && alike >= ENOUGH;
    return isSure || this.#hasInputs(formula, here) ? formula : undefined;
  }

  /** A cell's formula, counted from its own place. */
  #from(cell: CellAddress): string {
    const formula = this.book.formula(cell)!;
    const place = `${cellName(cell)}|${cell.sheet}`;
    const known = this.#relative.get(place);
    if (known !== undefined) return known;
    const relative = formula.length > LONGEST ? formula : translateFormulaToR1C1(formula, cellName(cell));
    this.#relative.set(place, relative);
    return relative;
  }

  #uses(neighbour: CellAddress, cell: CellAddress): boolean {
    return this.#areas(this.book.formula(neighbour)!, neighbour).some(
      ({ sheet, row, column, rows, columns }) =>
        sheet === cell.sheet && cell.row >= row && cell.row < row + rows && cell.column >= column && cell.column < column + columns,
    );
  }

  /** Every range that the formula would take here holds a number at least. */
  #hasInputs(formula: string, here: CellAddress): boolean {
    const areas = this.#areas(formula, here);
    const { book } = this;
    return areas.length > 0 && areas.every((area) => [...cellsOf(area)].some((cell) => typeof book.value(cell) === "number"));
  }

  #areas(formula: string, { sheet, row, column }: CellAddress) {
    const context = { book: this.book, sheet, cell: { row, column } };
    return references(parseFormula(formula)).flatMap((node) => argumentArea(node, context) ?? []);
  }

  #tell(cell: CellAddress, value: number, formula: string): void {
    const would = evaluateFormula(formula, { book: this.book, sheet: cell.sheet, cell });
    const wouldGive = typeof would === "number" ? would : null;
    this.report.find("overwritten formula", unjudged({ cell, label: this.labels.of(cell) }, value), { formula, wouldGive });
  }
}

const isBesideFormula = (formulas: SheetSnapshot["formulas"], r: number, c: number): boolean =>
  Boolean(formulas[r - 1]?.[c] ?? formulas[r + 1]?.[c] ?? formulas[r]![c - 1] ?? formulas[r]![c + 1]);

/** The row begins as its neighbour does, and none of its words says that it holds limits or averages: what is typed there is meant. */
function isLikeRow({ values }: SheetSnapshot, r: number, neighbour: number): boolean {
  const first = values[neighbour]!.findIndex((cell) => !isBlank(cell));
  return typeof values[r]![first] === typeof values[neighbour]![first] && !values[r]!.some((cell) => typeof cell === "string" && namesLimitOrStatistic(cell));
}

/** Cells with formulas from a cell on; `undefined` for a typed number. It ends where there is neither. */
function runFrom(sheet: SheetSnapshot, r: number, c: number, [down, across]: Step, side: 1 | -1): (CellAddress | undefined)[] {
  const run: (CellAddress | undefined)[] = [];
  for (let i = 1; i <= REACH; i++) {
    const [at, along] = [r + side * i * down, c + side * i * across];
    if (isWorkedOut(sheet, at, along)) run.push({ sheet: sheet.name, row: sheet.row + at, column: sheet.column + along });
    else if (typeof sheet.values[at]?.[along] === "number" && !sheet.formulas[at]?.[along]) run.push(undefined);
    else break;
  }
  return run;
}

/** Words that formulas give, as verdicts do, are not what a number was typed over. */
const isWorkedOut = ({ values, formulas }: SheetSnapshot, r: number, c: number): boolean => Boolean(formulas[r]?.[c]) && isNumeric(values[r]?.[c]);

const isNumeric = (value: Cell): boolean => typeof value === "number" || isBlank(value) || isCellError(value);
