import { LONGEST_TEXT } from "../../core/cell.ts";
import { roughCount } from "../../core/number-text.ts";
import { broadcastsOver, type CallCost, type CallInput, callCost, type GridDeclaration, type GridValue, sizeOf, valuesIn } from "./call-cost.ts";
import { COUNTING, countedSteps, type GridParts, notHere } from "./own-function.ts";

/**
 * What one part of a formula may come to, and all calls of one calculation together. A short formula
 * can ask for more cells than there is memory, or for more work than anybody waits for: the grid
 * would begin, and nothing could be said any more.
 */
export interface WorkLimits {
  /** Cells of one block. */
  block: number;
  /** Cells of all blocks that are there at the same time. */
  live: number;
  /**
   * What all calls together may take, counted by the work of reading one cell of the sheet (some 0.3 µs): cells that are read or
   * filled, steps of functions that take many.
   */
  work: number;
  /** Seconds of one calculation, where all else has failed to tell how long it would take. */
  seconds: number;
  /** Characters of one text: the most that a cell of other sheets holds. */
  text: number;
}

/** `work` is about a minute on the machine on which it was measured (2 cores of 2024). */
export const WORK_LIMITS: WorkLimits = { block: 500_000, live: 1_000_000, work: 200_000_000, seconds: 600, text: LONGEST_TEXT };

/** A range that is there already is looked through so many times as fast as it was read. */
const SEEN = 20;
/** After so many calls the clock is looked at. */
const CALLS_A_LOOK = 4096;

type Run = (this: unknown, ...args: CallInput[]) => CallInput;

interface LimitedRegistry {
  content: Record<string, GridDeclaration>;
  /** What formulas call: each function of `content`, wrapped. */
  mapping: Record<string, Run>;
}

const done = new WeakMap<object, LimitedFunctions>();

/** Puts the grid's functions, ours among them, under bounds, once all of them are there. Doing it again changes nothing. */
export function applyWorkLimits(engine: GridParts, bounds: WorkLimits = WORK_LIMITS): LimitedFunctions {
  const registry = engine.registries.functionRegistry as unknown as LimitedRegistry;
  let bounded = done.get(registry);
  if (!bounded) {
    bounded = new LimitedFunctions(engine, bounds);
    for (const [name, run] of Object.entries(registry.mapping)) registry.mapping[name] = bounded.run(name, run, registry.content[name]!);
    done.set(registry, bounded);
  }
  return bounded;
}

/** Patterns of which some never come to an end, however short they and the text are. */
const NEVER_ENDING = new Set(["REGEXTEST", "REGEXEXTRACT", "REGEXREPLACE"]);

/** The grid's own words for an exception inside a function, which send people to its makers. */
const isOwnFault = (cell: GridValue | undefined): boolean =>
  cell?.value === "#ERROR" && String((cell as { message?: unknown }).message).startsWith("An unexpected error");

/** The day after the last of the calendar of sheets. Functions of dates count on from day to day or year to year. */
const PAST_DAYS = 2_958_466;
const BEYOND = "This is no day that a sheet knows: they end with the year 9999.";
const BEYOND_BESIDE_OTHERS = notHere(`${BEYOND} Which of the faults of these inputs comes out is not told here.`);
const isNoNumber = (arg: CallInput): boolean => !Array.isArray(arg) && ["string", "boolean"].includes(typeof arg?.value);
const isBeyondDates = (arg: CallInput): boolean => numbersIn(arg).some((number) => Math.abs(number) >= PAST_DAYS);
const numbersIn = (arg: CallInput): number[] => [...valuesIn(arg)].filter((value) => typeof value === "number");

class LimitedFunctions {
  #work = 0;
  #live = 0;
  #made = new WeakSet<object>();
  /** Ranges that have been looked through, and blocks that functions have made. */
  #seen = new WeakSet<object>();
  #bounds: WorkLimits;
  #calls = 0;
  #start = Date.now();
  /** Why something was not calculated, the first time since the start. A function that passes errors over would not tell. */
  refused: string | undefined;
  /** What all formulas together have run out of, so that what is left of the calculation is worth nothing. */
  exhausted: "work" | "cells" | "time" | undefined;

  constructor(
    private readonly engine: GridParts,
    private readonly usual: WorkLimits,
  ) {
    this.#bounds = usual;
  }

  /** A new calculation starts. */
  restart(work = this.usual.work): void {
    this.#bounds = { ...this.usual, work };
    this.exhausted = undefined;
    this.#calls = 0;
    this.#start = Date.now();
    this.#work = 0;
    this.#live = 0;
    this.#made = new WeakSet();
    this.#seen = new WeakSet();
    countedSteps();
    this.refused = undefined;
  }

  run(name: string, run: Run, { args: declared, category = "", steps }: GridDeclaration): Run {
    const lifting: boolean[][] = [];
    const bounded = this;
    const isOfDates = /^date/i.test(category);
    const counts = COUNTING.has(name);
    return function (this: unknown, ...args) {
      if (isOfDates && args.some(isBeyondDates)) return bounded.#error(args.some(isNoNumber) ? BEYOND_BESIDE_OTHERS : BEYOND, "#NUM!");
      lifting[args.length] ??= args.map((_, i) => broadcastsOver(name, declared, i));
      bounded.#taken(args);
      const fresh = bounded.#fresh(args, lifting[args.length]!);
      const looked = counts ? () => 0 : (range: CallInput) => sizeOf(range) / SEEN;
      const cost = callCost(name, args, lifting[args.length]!, steps, looked);
      cost.work += fresh;
      const refusal = bounded.#refusal(name, cost);
      if (refusal) return refusal;
      const result = run.apply(this, args);
      bounded.#work += countedSteps();
      return bounded.#kept(bounded.#tamed(result));
    };
  }

  /** Cells of ranges that have not been looked through before: each has to be asked for what it holds. */
  #fresh(args: readonly CallInput[], lifted: readonly boolean[]): number {
    let cells = 0;
    for (const [i, arg] of args.entries()) {
      if (!Array.isArray(arg) || lifted[i] || this.#seen.has(arg)) continue;
      this.#seen.add(arg);
      cells += sizeOf(arg);
    }
    return cells;
  }

  #refusal(name: string, { cells, work, text }: CallCost): GridValue | undefined {
    const bounds = this.#bounds;
    if (NEVER_ENDING.has(name)) return this.#refuse(notHere("Search patterns of this kind are not worked out here: some never come to an end."));
    if (cells > bounds.block)
      return this.#refuse(`This would fill ${roughCount(cells)} cells, and at most ${roughCount(bounds.block)} are calculated at a time.`);
    if (++this.#calls % CALLS_A_LOOK === 0 && Date.now() - this.#start > 1000 * bounds.seconds) this.exhausted = "time";
    if (this.exhausted === "time") return this.#refuse(`The formulas here take longer than ${bounds.seconds} seconds.`);
    if (cells > 1 && this.#live + cells > bounds.live)
      return this.#exhaust("cells", `The blocks that formulas fill here come to more than ${roughCount(bounds.live)} cells together.`);
    if (text > bounds.text) return this.#refuse(this.#tooLong());
    // What is refused is not worked, and must not take the others with it.
    if (this.#work + work > bounds.work) return this.#exhaust("work", "The formulas here take more work together than is done at a time.");
    this.#work += work;
    return undefined;
  }

  /** A block is there until the call that takes it has run; what no call takes stays on the sheet. */
  #kept(result: CallInput): CallInput {
    if (Array.isArray(result)) {
      this.#live += sizeOf(result);
      this.#made.add(result);
      this.#seen.add(result);
    }
    return result;
  }

  #taken(args: readonly CallInput[]): void {
    for (const arg of args) if (Array.isArray(arg) && this.#made.delete(arg)) this.#live -= sizeOf(arg);
  }

  /** Without numbers that are none, and texts that no cell holds. */
  #tamed(result: CallInput): CallInput {
    if (!Array.isArray(result)) return this.#cell(result);
    return result.every((column) => column.every((cell) => this.#isSound(cell))) ? result : result.map((column) => column.map((cell) => this.#cell(cell)));
  }

  #cell(cell: GridValue | undefined): GridValue | undefined {
    if (this.#isSound(cell)) return cell;
    if (typeof cell!.value === "number") return this.#error("This comes to no number that a cell can hold.", "#NUM!");
    return this.#error(isOwnFault(cell) ? "This part of the formula led to a fault in its function." : this.#tooLong());
  }

  #isSound(cell: GridValue | undefined): boolean {
    const value = cell?.value;
    if (typeof value === "number") return Number.isFinite(value);
    return typeof value !== "string" || (value.length <= this.#bounds.text && !isOwnFault(cell));
  }

  #tooLong(): string {
    return `This text would be longer than the ${roughCount(this.#bounds.text)} characters that a cell holds.`;
  }

  #exhaust(what: "work" | "cells", why: string): GridValue {
    this.exhausted ??= what;
    return this.#refuse(why);
  }

  #refuse(why: string): GridValue {
    this.refused ??= why;
    return this.#error(why);
  }

  #error(why: string, code = "#VALUE!"): GridValue {
    return new this.engine.EvaluationError(why, code) as GridValue;
  }
}
