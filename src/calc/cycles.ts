import type { Edges } from "../formula/template.ts";
import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import { firstFrom } from "./grid/line-search.ts";
import { signatures } from "./grid-model.ts";
import type { SheetRectangle } from "./references.ts";
import { GridSheets, Untranslatable } from "./references.ts";
import { formulasOf } from "./results.ts";
import { Translator } from "./translate.ts";

/** A formula and the cells that it looks at, with its names and tables resolved. */
export interface FormulaPrecedents {
  cell: CellFile;
  sheet: number;
  areas: readonly SheetRectangle[];
}

/** The cells that a formula fills, as far as the file tells: how far a result that grows goes is not known before. */
export function filledBy({ row, column, array }: CellFile): Edges {
  const { rows, columns } = array && !array.grows ? array : { rows: 1, columns: 1 };
  return { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 };
}

export function precedentsOf(book: WorkbookFile): FormulaPrecedents[] {
  const grids = new NotingGridSheets(book);
  const translator = new Translator(book, grids, signatures());
  const formulas: FormulaPrecedents[] = [];
  for (const [cell, sheet] of formulasOf(book)) {
    if (cell.formula === undefined) continue;
    grids.areas = [];
    try {
      translator.translate(cell.formula, { sheet, row: cell.row, column: cell.column }, cell.array !== undefined);
    } catch (reason) {
      if (!(reason instanceof Untranslatable)) throw reason;
      grids.areas = [];
    }
    formulas.push({ cell, sheet, areas: grids.areas });
  }
  return formulas;
}

/** Takes note of every area that a formula looks into. */
export class NotingGridSheets extends GridSheets {
  areas: SheetRectangle[] = [];

  override name(area: SheetRectangle, home: number, place = false): string {
    if (!place) this.areas.push(area);
    return super.name(area, home, place);
  }
}

/** References from formula to formula that are followed. */
const MOST_STEPS = 20_000_000;

/** Some formulas rest on too many others for their cycles to be found. */
export class TooManySteps extends Error {}

/** A formula on the way round: it was the `index`th to be met, and leads back as far as to that of index `low`. */
interface Node {
  index: number;
  low: number;
  isOpen: boolean;
}

/**
 * The formulas that rest on themselves, each by whatever way: all of them, so that none can pass over the
 * error of another and show a number. `fills` tells which cells a formula's result stands in.
 */
export function cellsInCycles(formulas: readonly FormulaPrecedents[], fills: (formula: FormulaPrecedents) => Edges, mostSteps = MOST_STEPS): CellFile[] {
  const filled = new FilledCells(formulas, fills);
  const nodes = new Map<number, Node>();
  const open: number[] = [];
  const found: CellFile[] = [];
  let steps = 0;

  // Strongly connected components after Tarjan (SIAM J. Comput. 1, 1972), with a list in place of recursion: rows of formulas can be long.
  const enter = (at: number): { at: number; node: Node; next: Iterator<number> } => {
    const node = { index: nodes.size, low: nodes.size, isOpen: true };
    nodes.set(at, node);
    open.push(at);
    return { at, node, next: filled.readBy(formulas[at]!) };
  };
  const leave = (at: number, { index, low }: Node): void => {
    if (low !== index) return;
    const cycle = open.splice(open.lastIndexOf(at));
    for (const one of cycle) nodes.get(one)!.isOpen = false;
    if (cycle.length > 1 || [...filled.readBy(formulas[at]!)].includes(at)) found.push(...cycle.map((one) => formulas[one]!.cell));
  };

  for (const start of formulas.keys()) {
    if (nodes.has(start)) continue;
    const way = [enter(start)];
    for (let here = way.at(-1); here; here = way.at(-1)) {
      const { value: to, done } = here.next.next();
      if (++steps > mostSteps) throw new TooManySteps();
      const met = done ? undefined : nodes.get(to);
      if (met?.isOpen) here.node.low = Math.min(here.node.low, met.index);
      if (!done && !met) way.push(enter(to));
      if (!done) continue;
      way.pop();
      leave(here.at, here.node);
      const before = way.at(-1)?.node;
      if (before) before.low = Math.min(before.low, here.node.low);
    }
  }
  return found;
}

/** What formulas fill, found by area: in each column the rows in order, and whose they are. */
class FilledCells {
  readonly #columns = new Map<number, Map<number, { rows: number[]; owners: number[] }>>();

  constructor(formulas: readonly FormulaPrecedents[], fills: (formula: FormulaPrecedents) => Edges) {
    const filled = formulas.flatMap((formula, owner) => [...cellsOf(fills(formula))].map(({ row, column }) => ({ sheet: formula.sheet, row, column, owner })));
    filled.sort((a, b) => a.row - b.row);
    for (const { sheet, row, column, owner } of filled) {
      const columns = this.#columns.get(sheet) ?? new Map<number, { rows: number[]; owners: number[] }>();
      this.#columns.set(sheet, columns);
      const { rows, owners } = columns.get(column) ?? { rows: [], owners: [] };
      columns.set(column, { rows, owners });
      rows.push(row);
      owners.push(owner);
    }
  }

  /** The formulas whose results stand where this one looks. */
  *readBy({ areas }: FormulaPrecedents): Generator<number, undefined> {
    for (const area of areas) {
      const columns = this.#columns.get(area.sheet);
      if (!columns) continue;
      for (const column of columnsIn(area, columns)) {
        const { rows, owners } = columns.get(column) ?? { rows: [], owners: [] };
        for (let i = firstFrom(rows, area.top); i < rows.length && rows[i]! <= area.bottom; i++) yield owners[i]!;
      }
    }
    return undefined;
  }
}

function* cellsOf({ top, left, bottom, right }: Edges): Generator<{ row: number; column: number }> {
  for (let column = left; column <= right; column++) for (let row = top; row <= bottom; row++) yield { row, column };
}

/** The columns of the area, or those of all that lie in it, whichever are fewer. */
const columnsIn = ({ left, right }: SheetRectangle, columns: ReadonlyMap<number, unknown>): number[] =>
  right - left < columns.size
    ? Array.from({ length: right - left + 1 }, (_, i) => left + i)
    : [...columns.keys()].filter((column) => column >= left && column <= right);
