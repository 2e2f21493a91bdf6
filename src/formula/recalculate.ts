import { type Block, type Cell, isBlank, isCellError } from "../core/cell.ts";
import { type CellAddress, type CellArea, keyOf, placeName } from "../workbook/address.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../workbook/port.ts";
import { CannotTell } from "./evaluate.ts";
import { callsOf, MENTIONS_US } from "./own-calls.ts";
import { isSameResult, type NoResult, noResultOf, type WrongResult } from "./shown-results.ts";
import { WorkbookCells } from "./workbook-cells.ts";
import { areasIn, firstIn, reasonFor, resultOf } from "./wrong-result-reason.ts";

type Snapshot = Pick<WorkbookSnapshot, "sheets" | "names" | "tables">;

export interface Recalculation {
  /** The workbook with the right results in place of those that it shows. */
  book: WorkbookCells;
  wrong: WrongResult[];
  without: NoResult[];
}

/**
 * Works out every formula that calls one of our functions from the cells that it names, and what rests on
 * those that show something else, as far as that can be told. Hosts may hand a blank cell over as 0, show
 * a value from before a change, or none yet. A file is calculated by whoever opens it, and says itself
 * what it keeps. Row by row, for whoever wants to do something in between.
 */
export function* recalculationSteps(snapshot: Snapshot): Generator<void, Recalculation> {
  if (snapshot.sheets.some(({ stored }) => stored)) return inFile(snapshot);
  const work = new Recalculating(snapshot);
  yield* work.lookThrough();
  work.follow();
  return work.result();
}

export function recalculated(snapshot: Snapshot): Recalculation {
  const steps = recalculationSteps(snapshot);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Of a file the snapshot holds what was calculated, and beside it what the file keeps. */
function inFile(snapshot: Snapshot): Recalculation {
  const book = new WorkbookCells(snapshot);
  const found: Recalculation = { book, wrong: [], without: [] };
  if (snapshot.sheets.every(({ stored }) => !stored?.length)) return found;
  const kept = new Patched(snapshot);
  const others = new Map<string, Set<number>>();
  for (const { name, stored = [] } of snapshot.sheets) {
    others.set(name, new Set(stored.map(({ cell }) => keyOf(cell))));
    for (const { cell, value } of stored) kept.put({ sheet: name, ...cell }, value);
  }
  const asKept = kept.book();
  for (const { name, stored = [] } of snapshot.sheets) {
    for (const { cell, formulaAt, value } of stored) {
      const at = { sheet: name, ...cell };
      const why = noResultOf(value);
      if (why) found.without.push({ cell: at, why });
      else found.wrong.push({ cell: at, shown: value, right: book.value(at), ...reasonFor({ sheet: name, ...formulaAt }, at, value, asKept, others) });
    }
  }
  return found;
}

/** A copy of the sheets that are written to, so that the snapshot stays as it was read. */
class Patched {
  readonly #sheets: SheetSnapshot[];
  readonly #own = new Set<string>();

  constructor(readonly snapshot: Snapshot) {
    this.#sheets = [...snapshot.sheets];
  }

  put({ sheet: name, row, column }: CellAddress, value: Cell): void {
    const index = this.#sheets.findIndex((sheet) => sheet.name === name);
    if (!this.#own.has(name)) {
      const { values, formulas, ...rest } = this.#sheets[index]!;
      this.#sheets[index] = { ...rest, values: values.map((line) => [...line]), formulas: formulas.map((line) => [...line]) };
      this.#own.add(name);
    }
    const { row: top, column: left, values, formulas } = this.#sheets[index]!;
    // Results that have not come yet may lie below or right of all that is there.
    const width = Math.max(values[0]?.length ?? 0, column - left + 1);
    while (values.length <= row - top) {
      values.push([]);
      formulas.push([]);
    }
    for (const lines of [values, formulas] as (Cell | string | null)[][][]) for (const line of lines) while (line.length < width) line.push(null);
    values[row - top]![column - left] = value;
  }

  /** A new one each time: what is remembered of a workbook goes by the values that it had. */
  book(): WorkbookCells {
    return new WorkbookCells({ ...this.snapshot, sheets: this.#sheets });
  }
}

/** A formula, and the cells that it refers to. */
interface Formula {
  at: CellAddress;
  areas: readonly CellArea[];
}

/** Results that rest on one another change one another; what has not settled by then goes round in a circle. */
const MOST_ROUNDS = 100;
/** What changes that late goes round with it, or rests on it. */
const LATE_ROUND = 50;

class Recalculating {
  readonly #shown: WorkbookCells;
  readonly #patched: Patched;
  #book: WorkbookCells;
  /** What has been put in place of what is shown, and the formula that gave it. */
  readonly #right = new Map<string, { cell: CellAddress; at: CellAddress; value: Cell; round: number }>();
  #round = 0;
  readonly #without: NoResult[] = [];
  #changed = new Map<string, Set<number>>();
  readonly #allChanged = new Map<string, Set<number>>();

  constructor(readonly snapshot: Snapshot) {
    this.#shown = new WorkbookCells(snapshot);
    this.#book = this.#shown;
    this.#patched = new Patched(snapshot);
  }

  *lookThrough(): Generator<void> {
    for (const { name, row, column, values, formulas } of this.snapshot.sheets) {
      for (const [r, line] of formulas.entries()) {
        for (let c = 0; c < line.length; c++) {
          const formula = line[c]!;
          if (formula === null || !MENTIONS_US.test(formula)) continue;
          const at = { sheet: name, row: row + r, column: column + c };
          const result = resultOf(at, this.#shown);
          const why = noResultOf(values[r]![c]);
          if (why && !(result instanceof CannotTell && IS_OF_NAMES.test(result.why)) && callsOf(this.#shown, at, formula).length > 0)
            this.#without.push({ cell: at, why });
          if (!(result instanceof CannotTell)) this.#compare(at, result);
        }
        yield;
      }
    }
  }

  /** Until nothing changes any more: what rests on results that have been put right. What never settles stays as it is shown. */
  follow(): void {
    if (this.#changed.size === 0) return;
    const formulas = [...this.#formulas()];
    for (; this.#round < MOST_ROUNDS && this.#changed.size > 0; this.#round++) {
      const changed = this.#changed;
      this.#changed = new Map();
      this.#book = this.#patched.book();
      for (const { at, areas } of formulas) {
        if (!areas.some((area) => firstIn(area, changed))) continue;
        const result = resultOf(at, this.#book);
        if (!(result instanceof CannotTell)) this.#compare(at, result);
      }
    }
    if (this.#changed.size > 0) this.#leaveLate();
    this.#book = this.#patched.book();
  }

  #leaveLate(): void {
    for (const [place, { cell, round }] of this.#right) {
      if (round < LATE_ROUND) continue;
      this.#patched.put(cell, this.#shown.value(cell));
      this.#right.delete(place);
    }
  }

  *#formulas(): Generator<Formula> {
    for (const { name, row, column, formulas } of this.snapshot.sheets) {
      for (const [r, line] of formulas.entries()) {
        for (let c = 0; c < line.length; c++) {
          if (line[c] === null) continue;
          const at = { sheet: name, row: row + r, column: column + c };
          yield { at, areas: areasIn(at, this.#shown) };
        }
      }
    }
  }

  #compare(at: CellAddress, result: Cell | Block): void {
    const block = Array.isArray(result) ? result : [[result]];
    const isOne = block.length === 1 && block[0]!.length === 1;
    // A formula that is entered over several cells at once stands in each of them, and none of them is its first.
    if (!isOne && isRepeated(this.#shown, at)) return;
    const first = this.#shown.value(at);
    for (const [r, line] of block.entries()) {
      for (const [c, right] of line.entries()) {
        const cell = { ...at, row: at.row + r, column: at.column + c };
        const isFirst = r === 0 && c === 0;
        if (!isFirst && this.#shown.formula(cell) !== null) continue;
        const now = this.#book.value(cell);
        // An error alone has filled no other cell: what is typed beside it stays.
        if (!isFirst && isCellError(first) && !isBlank(this.#shown.value(cell))) continue;
        if (!isSameResult(right, now)) this.#put(cell, at, right);
        else if (isCellError(right) && isCellError(now) && !now.message && right.message) this.#patched.put(cell, right);
      }
    }
  }

  #put(cell: CellAddress, at: CellAddress, value: Cell): void {
    this.#patched.put(cell, value);
    this.#right.set(placeName(cell), { cell, at, value, round: this.#round });
    for (const set of [this.#changed, this.#allChanged]) {
      const keys = set.get(cell.sheet) ?? new Set();
      set.set(cell.sheet, keys.add(keyOf(cell)));
    }
  }

  result(): Recalculation {
    const without = new Set(this.#without.map(({ cell }) => placeName(cell)));
    const wrong = [...this.#right.values()].flatMap(({ cell, at, value }): WrongResult[] => {
      const shown = this.#shown.value(cell);
      if (without.has(placeName(at)) || !MENTIONS_US.test(this.#shown.formula(at)!) || isSameResult(value, shown)) return [];
      return [{ cell, shown, right: value, ...reasonFor(at, cell, shown, this.#shown, this.#allChanged) }];
    });
    return { book: this.#patched.book(), wrong, without: this.#without };
  }
}

/** A name that is not known is not ours to know, and shows the same error. */
const IS_OF_NAMES = /\bnames? /;

const isRepeated = (book: WorkbookCells, at: CellAddress): boolean => {
  const formula = book.formula(at);
  return formula === book.formula({ ...at, row: at.row - 1 }) || formula === book.formula({ ...at, column: at.column - 1 });
};
