import type { Block, Result } from "./cell.ts";
import { slack } from "./decimal.ts";
import type { Spec } from "./define.ts";
import { Fault } from "./fault.ts";
import { BLANK, type Param } from "./param.ts";

/**
 * The quick way through a large block. Numbers well inside their bounds need none of the care that
 * `lift` takes of each element: a loop made for that function alone (`src/functions/loops.ts`) reads
 * them from the host's own rows, hands them to its compute and makes the rows of results, so that the
 * compiler can join all of it. Whatever is not such a number (a blank, text, a value next to a bound)
 * goes back to `lift`; the results are the same.
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

/** One input as a loop reads it. */
export interface Feed {
  block: Block;
  /** 1 where each row of results has cells of its own, 0 where all share the first row. */
  down: number;
  /** All bits where each column of results has cells of its own, none where all share the first column: the cell at `column & across`. */
  across: number;
  /** Bounds inside which a number needs no second look. */
  least: number;
  most: number;
  /** Shared by all elements, and not given. */
  isLeftOut: boolean;
  /** What all elements share, as it has been taken. */
  fixed: unknown;
}

/** Computes one row of results; an element that needs a closer look is asked of `closer`. */
export type Loop = (
  compute: Spec["compute"],
  feeds: readonly Feed[],
  row: number,
  columns: number,
  closer: (row: number, column: number) => Result,
) => Result[];

/** Elements below which setting up is not worth it. */
export const BATCH_FROM = 64;

/** Bounds inside which a number needs no second look: open ones drawn in by what decimals forgive. */
function plainBounds({ bounds, zeroIsBlank }: Param<unknown>): { least: number; most: number } {
  const { low = -Number.MAX_VALUE, lowOpen, high = Number.MAX_VALUE, highOpen } = bounds;
  const least = lowOpen || zeroIsBlank ? low + 2 * slack(low, low) : low;
  return { least, most: highOpen ? high - 2 * slack(high, high) : high };
}

function ranging({ block, rows, columns, param }: BatchLane): Feed {
  return { block: block!, down: rows === 1 ? 0 : 1, across: columns === 1 ? 0 : -1, ...plainBounds(param!), isLeftOut: false, fixed: undefined };
}

/** An input that all elements share has been taken already. */
function shared(taken: unknown): Feed {
  const block = [[typeof taken === "number" ? taken : undefined]];
  return { block, down: 0, across: 0, least: -Number.MAX_VALUE, most: Number.MAX_VALUE, isLeftOut: taken === undefined, fixed: taken };
}

/** The results of a whole block; `undefined` for a function without a loop of its own and for inputs that do not lend themselves. */
export function runBatch(
  { compute, loop }: Spec,
  lanes: readonly BatchLane[],
  rows: number,
  columns: number,
  closer: (row: number, column: number) => Result,
): Result[][] | undefined {
  if (!loop) return undefined;
  const feeds: Feed[] = [];
  for (const lane of lanes) {
    if (lane.rows * lane.columns > 1) {
      if (!lane.block) return undefined;
      feeds.push(ranging(lane));
      continue;
    }
    const taken = lane.take(0, 0);
    // A blank or faulty input that is shared by all elements is lift's to say.
    if (taken === BLANK || taken instanceof Fault) return undefined;
    feeds.push(shared(taken));
  }
  const out: Result[][] = new Array(rows);
  for (let row = 0; row < rows; row++) out[row] = loop(compute, feeds, row, columns, closer);
  return out;
}
