import { isBelow } from "./decimal.ts";

/**
 * A fault of input, as data. `sentences.ts` alone turns it into words. A fault is a value: compute
 * functions return one from `refuse`, `broadcast` adds which function and where.
 */
export type FaultCode =
  | "missing"
  | "surplus"
  | "empty"
  | "shape"
  | "number-as-text"
  | "decimal-comma"
  | "text"
  | "truth"
  | "cell-error"
  | "upstream"
  | "not-finite"
  | "too-small"
  | "too-large"
  | "not-whole"
  | "not-a-choice"
  | "swapped"
  | "units"
  | "too-few"
  | "axes"
  | "unfit";

export interface FaultData {
  code: FaultCode;
  /** Worksheet name of the function, without the namespace. */
  function: string;
  /** The param at fault. */
  param: string;
  /** Where in the argument: `row 3`, `row 2, column 1`; absent when the argument is one cell. */
  at?: string;
  /** What was given. */
  got?: unknown;
  /** What is wanted: a bound, a list of choices, a sentence fragment. */
  want?: unknown;
}

export class Fault implements FaultData {
  constructor(
    readonly code: FaultCode,
    readonly param: string,
    readonly got?: unknown,
    readonly want?: unknown,
    readonly at?: string,
    readonly fn = "",
  ) {}

  get function(): string {
    return this.fn;
  }

  /** The same fault, placed: in which function and at which element. */
  placed(fn: string, at?: string): Fault {
    return new Fault(this.code, this.param, this.got, this.want, this.at ?? at, fn);
  }
}

/** For compute functions: the input is well formed but cannot be. `want` completes "param got: want". */
export function refuse(param: string, got: unknown, want: string): Fault {
  return new Fault("unfit", param, got, want);
}

/** Sizes of one thing, or of two that fit into one another, never lie further apart than a fifth of the larger. */
const FURTHEST_APART = 1.25;

/**
 * For compute functions: a fault when two sizes, one of which is at least `times` the other, cannot both
 * have been typed as they were read: a decimal point or a unit is wrong. Without `times`, when they lie
 * further apart than a fifth.
 */
export function unlike(param: string, got: number, other: string, bound: number, times = FURTHEST_APART): Fault | undefined {
  const [larger, smaller] = got > bound ? [got, bound] : [bound, got];
  return larger > smaller * times && isBelow(smaller, larger / times) ? new Fault("units", param, got, { other, bound }) : undefined;
}

/** For compute functions: the range holds fewer rows, columns or cells than the question needs. */
export function tooFew(param: string, got: string, want: string): Fault {
  return new Fault("too-few", param, got, want);
}

/** For compute functions: `param` must not be larger than `other`, and a swap is the likely reason. `unless` says when it is none. */
export function swapped(param: string, got: number, other: string, bound: number, unless?: string): Fault {
  return new Fault("swapped", param, got, { other, bound, unless });
}
