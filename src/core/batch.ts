import type { Block, Result } from "./cell.ts";
import { slack } from "./decimal.ts";
import type { Spec } from "./define.ts";
import { Fault } from "./fault.ts";
import { BLANK, type Param } from "./param.ts";

/**
 * The quick way through a large block. Numbers well inside their bounds need none of the care that
 * `lift` takes of each element, so they are copied into typed arrays some rows at a time, and
 * `compute` reads them through a view whose properties stand for fixed slots. Whatever is not such a
 * number (a blank, text, a value next to a bound) goes back to `lift`; the results are the same.
 */
export interface BatchLane {
  name: string;
  rows: number;
  columns: number;
  /** The param and its cells, where these are numbers taken one by one from a range. */
  param?: Param<unknown>;
  block?: Block | undefined;
  take(row: number, column: number): unknown;
}

/** Elements below which setting up is not worth it, and elements in one go (they stay in the processor's cache). */
export const BATCH_FROM = 64;
const BATCH_SIZE = 1024;

// `compute` is pure and never calls back, so one set of slots serves every function.
const SLOTS = 6;
const NUMBERS = new Float64Array(SLOTS);
const FIXED: unknown[] = [];
// One function a slot, made once: the compiler can then see through a view inside compute.
const READ_NUMBER = [() => NUMBERS[0], () => NUMBERS[1], () => NUMBERS[2], () => NUMBERS[3], () => NUMBERS[4], () => NUMBERS[5]];
const views = new WeakMap<Spec, Map<string, Record<string, unknown>>>();

/** An object for `compute` whose properties read the slots, the ranging params by number. */
function viewOf(spec: Spec, lanes: readonly BatchLane[], ranging: readonly BatchLane[]): Record<string, unknown> {
  const known = views.get(spec) ?? new Map<string, Record<string, unknown>>();
  views.set(spec, known);
  const key = ranging.map(({ name }) => name).join();
  let view = known.get(key);
  if (view) return view;
  view = {};
  for (const [i, lane] of lanes.entries()) {
    const slot = ranging.indexOf(lane);
    Object.defineProperty(view, lane.name, { enumerable: true, get: slot < 0 ? () => FIXED[i] : READ_NUMBER[slot] });
  }
  known.set(key, view);
  return view;
}

/** Bounds inside which a number needs no second look: open ones drawn in by what decimals forgive. */
function plainBounds({ bounds, zeroIsBlank }: Param<unknown>): { least: number; most: number } {
  const { low = -Number.MAX_VALUE, lowOpen, high = Number.MAX_VALUE, highOpen } = bounds;
  const least = lowOpen || zeroIsBlank ? low + 2 * slack(low, low) : low;
  return { least, most: highOpen ? high - 2 * slack(high, high) : high };
}

/** Copies the lane's elements of some rows; NaN where one needs a closer look. */
function fill(buffer: Float64Array, lane: BatchLane, firstRow: number, rows: number, columns: number, least: number, most: number): void {
  const block = lane.block!;
  let e = 0;
  for (let r = firstRow; r < firstRow + rows; r++) {
    const line = block[lane.rows === 1 ? 0 : r]!;
    const across = lane.columns !== 1;
    for (let c = 0; c < columns; c++) {
      const cell = line[across ? c : 0];
      buffer[e++] = typeof cell === "number" && cell >= least && cell <= most ? cell : Number.NaN;
    }
  }
}

/** What a batch needs of the block it fills. */
export interface BatchTarget {
  out: Result[][];
  /** Puts the result of an element that needs a closer look. */
  closer(row: number, column: number): void;
}

/**
 * Computes every element of the block into `out`. Returns false, with nothing done, for inputs that
 * do not lend themselves.
 */
export function runBatch(spec: Spec, lanes: readonly BatchLane[], rows: number, columns: number, { out, closer }: BatchTarget): boolean {
  const ranging = lanes.filter((lane) => lane.rows * lane.columns > 1);
  if (ranging.length > SLOTS || ranging.some(({ block }) => !block)) return false;
  const fixed = lanes.map((lane) => (ranging.includes(lane) ? undefined : lane.take(0, 0)));
  // A blank or faulty input that is shared by all elements is lift's to say.
  if (fixed.some((taken) => taken === BLANK || taken instanceof Fault)) return false;
  for (const [i, taken] of fixed.entries()) FIXED[i] = taken;
  const view = viewOf(spec, lanes, ranging);
  const bounds = ranging.map(({ param }) => plainBounds(param!));
  const height = Math.max(1, Math.floor(BATCH_SIZE / columns));
  const buffers = ranging.map(() => new Float64Array(Math.min(height, rows) * columns));
  const [first, second, third] = [buffers[0]!, buffers[1] ?? buffers[0]!, buffers[2] ?? buffers[0]!];
  for (let from = 0; from < rows; from += height) {
    const count = Math.min(height, rows - from);
    for (const [i, lane] of ranging.entries()) fill(buffers[i]!, lane, from, count, columns, bounds[i]!.least, bounds[i]!.most);
    for (let r = 0; r < count; r++) {
      const line = out[from + r]!;
      let c = 0;
      while (c < columns) {
        c = computeLine(spec.compute, view, first, second, third, buffers, r * columns, c, columns, line);
        if (c < columns) closer(from + r, c++);
      }
    }
  }
  return true;
}

/** Computes elements of one line from `column` on; stops at the first that needs a closer look and says which. */
function computeLine(
  compute: Spec["compute"],
  view: Record<string, unknown>,
  first: Float64Array,
  second: Float64Array,
  third: Float64Array,
  buffers: readonly Float64Array[],
  start: number,
  column: number,
  columns: number,
  line: Result[],
): number {
  const more = buffers.length > 3;
  for (let c = column; c < columns; c++) {
    const e = start + c;
    const a = first[e]!;
    const b = second[e]!;
    const d = third[e]!;
    if (Number.isNaN(a + b + d)) return c;
    NUMBERS[0] = a;
    NUMBERS[1] = b;
    NUMBERS[2] = d;
    if (more && !fillMore(buffers, e)) return c;
    const made = compute(view);
    if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as Result;
    else return c;
  }
  return columns;
}

function fillMore(buffers: readonly Float64Array[], e: number): boolean {
  let sum = 0;
  for (let i = 3; i < buffers.length; i++) sum += NUMBERS[i] = buffers[i]![e]!;
  return !Number.isNaN(sum);
}
