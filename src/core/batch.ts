import type { Block, Cell, Result } from "./cell.ts";
import { slack } from "./decimal.ts";
import type { Spec } from "./define.ts";
import { Fault } from "./fault.ts";
import { BLANK, type Param } from "./param.ts";

/**
 * The quick way through a large block. Numbers well inside their bounds need none of the care that
 * `lift` takes of each element: they are copied into typed arrays some rows at a time, and a loop made
 * for that function alone (`src/functions/loops.ts`) hands them to its compute, so that the compiler
 * can join the two. Whatever is not such a number (a blank, text, a value next to a bound) goes back
 * to `lift`; the results are the same.
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

/**
 * Computes the elements `first` to `last` of a run into `line`, which starts at element `start`. Stops
 * at the first that needs a closer look and gives its number; `last` when none does.
 */
export type Loop = (
  compute: Spec["compute"],
  numbers: readonly Float64Array[],
  fixed: readonly unknown[],
  closer: Uint8Array,
  start: number,
  first: number,
  last: number,
  line: Result[],
) => number;

/** What a batch needs of the block it fills. */
export interface BatchTarget {
  out: Result[][];
  /** Puts the result of an element that needs a closer look. */
  closer(row: number, column: number): void;
}

/** Elements below which setting up is not worth it, and elements in one go (they stay in the processor's cache). */
export const BATCH_FROM = 64;
const BATCH_SIZE = 1024;

/** Bounds inside which a number needs no second look: open ones drawn in by what decimals forgive. */
function plainBounds({ bounds, zeroIsBlank }: Param<unknown>): { least: number; most: number } {
  const { low = -Number.MAX_VALUE, lowOpen, high = Number.MAX_VALUE, highOpen } = bounds;
  const least = lowOpen || zeroIsBlank ? low + 2 * slack(low, low) : low;
  return { least, most: highOpen ? high - 2 * slack(high, high) : high };
}

/** Copies the lane's elements of some rows and notes those that need a closer look. */
function fill(numbers: Float64Array, closer: Uint8Array, { block, rows, columns, param }: BatchLane, from: number, count: number, width: number): void {
  const { least, most } = plainBounds(param!);
  for (let r = 0; r < count; r++) {
    const line = block![rows === 1 ? 0 : from + r]!;
    const start = r * width;
    const cell = line[0];
    if (columns === 1 && typeof cell === "number" && cell >= least && cell <= most) numbers.fill(cell, start, start + width);
    else if (columns === 1) closer.fill(1, start, start + width);
    else fillLine(numbers, closer, line, start, width, least, most);
  }
}

function fillLine(numbers: Float64Array, closer: Uint8Array, line: readonly Cell[], start: number, width: number, least: number, most: number): void {
  for (let c = 0; c < width; c++) {
    const cell = line[c];
    if (typeof cell === "number" && cell >= least && cell <= most) numbers[start + c] = cell;
    else closer[start + c] = 1;
  }
}

/**
 * Computes every element of the block into `out`. Returns false, with nothing done, for a function
 * without a loop of its own and for inputs that do not lend themselves.
 */
export function runBatch({ compute, loop }: Spec, lanes: readonly BatchLane[], rows: number, columns: number, { out, closer }: BatchTarget): boolean {
  const ranging = lanes.filter((lane) => lane.rows * lane.columns > 1);
  if (!loop || ranging.some(({ block }) => !block)) return false;
  const fixed = lanes.map((lane) => (ranging.includes(lane) ? undefined : lane.take(0, 0)));
  // A blank or faulty input that is shared by all elements is lift's to say.
  if (fixed.some((taken) => taken === BLANK || taken instanceof Fault)) return false;
  const height = Math.min(rows, Math.max(1, Math.floor(BATCH_SIZE / columns)));
  // A number that all elements share is repeated; one that is left out is NaN, which the loop reads as such.
  const numbers = fixed.map((taken) => new Float64Array(height * columns).fill(typeof taken === "number" ? taken : Number.NaN));
  const flags = new Uint8Array(height * columns);
  for (let from = 0; from < rows; from += height) {
    const count = Math.min(height, rows - from);
    flags.fill(0);
    for (const lane of ranging) fill(numbers[lanes.indexOf(lane)]!, flags, lane, from, count, columns);
    for (let r = 0; r < count; r++) {
      const start = r * columns;
      for (let c = 0; c < columns; c++) {
        c = loop(compute, numbers, fixed, flags, start, c, columns, out[from + r]!);
        if (c < columns) closer(from + r, c);
      }
    }
  }
  return true;
}
