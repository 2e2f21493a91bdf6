import { isCellError } from "../core/cell.ts";
import { keyOf, MOST_COLUMNS } from "../workbook/address.ts";
import type { CellFile, SpillSize, WorkbookFile } from "../xlsx/model.ts";
import { refuseExhausted } from "./grid-model.ts";
import type { SheetRectangle } from "./references.ts";
import { GridSheets } from "./references.ts";
import type { Computed, ComputedCell } from "./results.ts";
import { isFormula, type RefusedFormulas } from "./results.ts";
import { BLANK_CELL, type ComputedValue, NeedsModel, type ReadyFormula, RuntimeValue, settled, TemplateCache } from "./template-cache.ts";

/** Formulas that wait for one another, each in the next. Those further down are put in order first, one after the other. */
const DEEPEST = 100;
/** What stands in a cell that rests on itself; `calculate` says it in words. */
const CIRCULAR = new RuntimeValue("#CYCLE");
/** How far beyond its sheet a result may reach: the grid makes at least that much room. */
const ROOM = { rows: 200, columns: 50 };
/** Cells from which a block is kept for the next formula that asks for it. */
const KEPT_FROM = 32;

/** A cell that holds something. The value of a formula is `undefined` until it has run. */
interface Slot {
  sheet: number;
  row: number;
  column: number;
  /** `undefined` for a cell that a result has spilled into. */
  cell?: CellFile;
  value: RuntimeValue | undefined;
  /** Whose result has spilled into it. */
  from?: Slot;
  /** How far its own result has spilled. */
  spillSize?: SpillSize;
}

export class Evaluation implements Computed {
  readonly hurried = false;
  /** A formula was found to wait for itself. */
  hasCycle = false;
  readonly #slots: Map<number, Slot>[];
  readonly #formulas: Slot[] = [];
  /** Formulas in cycles that filled more than one cell when the file was saved: their error stands in all of these. */
  readonly #circularArrays: Slot[] = [];
  readonly #grids: GridSheets;
  readonly #templates: TemplateCache;
  readonly #open = new Set<Slot>();
  readonly #blocks = new Map<string, RuntimeValue[][]>();
  /** Cells that were read as blank, sheet by sheet. */
  readonly #blanks: Set<number>[];
  /** The formulas whose results have spilled into these cells the time before. */
  readonly #expected: Map<number, Slot>[];
  #stale = false;
  /** How many rows of formulas are being put in order, one inside the other. */
  #rows = 0;

  constructor(
    book: WorkbookFile,
    private readonly circular: ReadonlySet<CellFile>,
  ) {
    this.#grids = new GridSheets(book);
    this.#templates = new TemplateCache(book, this.#grids, { cell: (area) => this.#read(area.sheet, area.top, area.left), block: (area) => this.#block(area) });
    this.#slots = book.sheets.map(({ cells }, sheet) => new Map(cells.map((cell) => [keyOf(cell), this.#slotOf(cell, sheet)])));
    this.#blanks = book.sheets.map(() => new Set());
    this.#expected = book.sheets.map(() => new Map());
  }

  get refused(): RefusedFormulas {
    return this.#templates.refused;
  }

  /** Runs every formula; false when some have run too early. */
  settles(): boolean {
    this.#stale = false;
    for (const slot of this.#circularArrays) this.#spread(slot, filledWith(CIRCULAR, slot.cell!.array!));
    for (const slot of this.#formulas) this.#valueOf(slot);
    return !this.#stale;
  }

  /** Forgets what formulas came to, but not which of them spill where. */
  again(): this {
    for (const slot of this.#formulas) slot.value = undefined;
    for (const [sheet, slots] of this.#slots.entries()) {
      for (const [key, { from }] of slots) {
        if (!from) continue;
        this.#expected[sheet]!.set(key, from);
        slots.delete(key);
      }
      this.#blanks[sheet]!.clear();
    }
    this.#blocks.clear();
    return this;
  }

  *values(sheet: number): Generator<ComputedCell> {
    for (const { row, column, cell, value } of this.#slots[sheet]!.values())
      yield { row, column, cell, value: value!.value, isError: value!.isError, message: value!.message };
  }

  spillSize(sheet: number, row: number, column: number): SpillSize | undefined {
    return this.#slots[sheet]!.get(row * MOST_COLUMNS + column)?.spillSize;
  }

  #slotOf(cell: CellFile, sheet: number): Slot {
    const { row, column, value } = cell;
    const isCircular = this.circular.has(cell);
    const runs = !isCircular && (isFormula(cell) || isCellError(value));
    const slot: Slot = { sheet, row, column, cell, value: isCircular ? CIRCULAR : runs ? undefined : typed(value) };
    if (runs) this.#formulas.push(slot);
    if (isCircular && cell.array) this.#circularArrays.push(slot);
    return slot;
  }

  #read(sheet: number, row: number, column: number): RuntimeValue {
    const key = row * MOST_COLUMNS + column;
    const slot = this.#slots[sheet]!.get(key);
    if (slot) return slot.value ?? this.#valueOf(slot);
    const expected = this.#expected[sheet]!.get(key);
    if (expected && !expected.value) {
      this.#valueOf(expected);
      return this.#read(sheet, row, column);
    }
    this.#blanks[sheet]!.add(key);
    return BLANK_CELL;
  }

  #block(area: SheetRectangle): RuntimeValue[][] {
    const { sheet, top, left, bottom, right } = area;
    const isKept = (bottom - top + 1) * (right - left + 1) >= KEPT_FROM;
    const name = isKept ? `${sheet},${top},${left},${bottom},${right}` : "";
    const kept = isKept ? this.#blocks.get(name) : undefined;
    if (kept) return kept;
    const block: RuntimeValue[][] = [];
    for (let column = left; column <= right; column++) {
      const line: RuntimeValue[] = [];
      for (let row = top; row <= bottom; row++) line.push(this.#read(sheet, row, column));
      block.push(line);
    }
    if (isKept) this.#blocks.set(name, block);
    return block;
  }

  #valueOf(slot: Slot): RuntimeValue {
    if (slot.value) return slot.value;
    this.#enter(slot);
    if (this.#open.size > DEEPEST) this.#prepare(slot);
    return this.#run(slot, this.#templates.of(slot.cell!, slot.sheet));
  }

  #enter(slot: Slot): void {
    if (this.#open.has(slot)) {
      this.hasCycle = true;
      throw new NeedsModel();
    }
    this.#open.add(slot);
  }

  #run(slot: Slot, { compiled, areas }: ReadyFormula): RuntimeValue {
    const given = compiled.run(areas);
    refuseExhausted();
    slot.value = Array.isArray(given) ? this.#spread(slot, given) : settled(given);
    this.#open.delete(slot);
    return slot.value;
  }

  /** Runs all that a formula waits for, the furthest first: a row of any length takes no more room than a short one. */
  #prepare(slot: Slot): void {
    if (++this.#rows > DEEPEST) throw new NeedsModel();
    const row = [this.#step(slot)];
    for (let step = row.at(-1); step; step = row.at(-1)) {
      const { value: next } = step.waits.next();
      if (next) {
        this.#enter(next);
        row.push(this.#step(next));
      } else {
        row.pop();
        if (step.slot !== slot) this.#run(step.slot, step.runnable);
      }
    }
    this.#rows--;
  }

  #step(slot: Slot): { slot: Slot; runnable: ReadyFormula; waits: Iterator<Slot, undefined> } {
    const runnable = this.#templates.of(slot.cell!, slot.sheet);
    return { slot, runnable, waits: this.#unsettled(runnable.areas) };
  }

  /** The cells of the areas that have yet to run, told one by one: some will have by the time that their turn comes. */
  *#unsettled(areas: readonly SheetRectangle[]): Generator<Slot, undefined> {
    for (const { sheet, top, left, bottom, right } of areas) {
      const slots = this.#slots[sheet]!;
      for (let column = left; column <= right; column++) {
        for (let row = top; row <= bottom; row++) {
          const slot = slots.get(row * MOST_COLUMNS + column);
          if (slot && !slot.value) yield slot;
        }
      }
    }
    return undefined;
  }

  /** Leaves a block in the cells below and beside its formula, and gives the formula's own value. */
  #spread(from: Slot, block: ComputedValue[][]): RuntimeValue {
    const { sheet, row, column } = from;
    const rows = block[0]?.length ?? 0;
    const { rows: mostRows, columns: mostColumns } = this.#grids.all[sheet]!;
    if (rows === 0 || block.some((line) => line.length !== rows)) throw new NeedsModel();
    if (row + rows > mostRows + ROOM.rows || column + block.length > mostColumns + ROOM.columns) throw new NeedsModel();
    for (const [c, line] of block.entries()) {
      for (const [r, given] of line.entries()) if (r + c > 0) this.#spill({ sheet, row: row + r, column: column + c, value: settled(given), from });
    }
    from.spillSize = { rows, columns: block.length };
    return settled(block[0]![0]!);
  }

  #spill(slot: Slot): void {
    const key = keyOf(slot);
    const slots = this.#slots[slot.sheet]!;
    if (slots.has(key)) throw new NeedsModel();
    slots.set(key, slot);
    if (this.#blanks[slot.sheet]!.has(key)) this.#stale = true;
  }
}

/** What is typed, as the grid's cells hold it. */
function typed(value: CellFile["value"]): RuntimeValue {
  if (value === null || value === undefined || value === "" || isCellError(value)) throw new NeedsModel();
  // The grid reads numbers from text, and takes the largest and smallest for text.
  if (typeof value === "number" && value !== 0 && !(Math.abs(value) < 1e300 && Math.abs(value) > 1e-300)) throw new NeedsModel();
  return settled({ value });
}

const filledWith = (value: RuntimeValue, { rows, columns }: SpillSize): RuntimeValue[][] =>
  Array.from({ length: columns }, () => new Array<RuntimeValue>(rows).fill(value));
