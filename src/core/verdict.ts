import { decimal, isAbove, isBelow } from "./decimal.ts";

/** The words a judged reading can get. They are words first; colour only repeats them. */
export const VERDICTS = ["within", "near limit", "not proven", "over", "under"] as const;
export type Verdict = (typeof VERDICTS)[number];

export interface Limits {
  lower?: number | undefined;
  upper?: number | undefined;
}

export interface Judgement {
  verdict: Verdict;
  /** Distance to the nearest limit in the unit of the value, negative outside. */
  margin: number;
  /** The limit that decides: the nearest one, or the one that is passed. */
  side: "lower" | "upper";
  limit: number;
}

const upTo = (value: number, upper: number | undefined): number => (upper === undefined ? Number.POSITIVE_INFINITY : upper - value);
const downTo = (value: number, lower: number | undefined): number => (lower === undefined ? Number.POSITIVE_INFINITY : value - lower);

/** Distance to the nearest limit, negative outside, as a decimal; undefined with no limit. */
export function marginOf(value: number, { lower, upper }: Limits): number | undefined {
  if (lower === undefined && upper === undefined) return undefined;
  return decimal(Math.min(upTo(value, upper), downTo(value, lower)));
}

/** The limit to which `marginOf` measures. Halfway counts as the upper one. */
function nearestSide(value: number, { lower, upper }: Limits): "lower" | "upper" {
  const isLower = upper === undefined || decimal(downTo(value, lower)) < decimal(upTo(value, upper));
  return isLower ? "lower" : "upper";
}

/**
 * The verdict on a value by limits typed by the shop; a value on a limit is within it. With an
 * expanded uncertainty U the default rule of ISO 14253-1 holds: conformity is proven inside the
 * limits drawn in by U, non-conformity outside the limits let out by U, and nothing in between.
 * `near` is a distance from a limit inside which a value that is within is called near.
 *
 * @returns undefined when there is no limit to judge by.
 */
export function verdictOf(value: number, lower: number | undefined, upper: number | undefined, uncertainty = 0, near = 0): Verdict | undefined {
  if (lower === undefined && upper === undefined) return undefined;
  if (upper !== undefined && isAbove(value, upper + uncertainty)) return "over";
  if (lower !== undefined && isBelow(value, lower - uncertainty)) return "under";
  if (uncertainty > 0) {
    if (upper !== undefined && isAbove(value, upper - uncertainty)) return "not proven";
    if (lower !== undefined && isBelow(value, lower + uncertainty)) return "not proven";
  }
  if (near <= 0) return "within";
  const close = (upper !== undefined && !isAbove(upper - value, near)) || (lower !== undefined && !isAbove(value - lower, near));
  return close ? "near limit" : "within";
}

/** The verdict with the limit that decides it: the one that is passed, otherwise the nearest. */
export function judge(value: number, limits: Limits, uncertainty = 0, near = 0): Judgement | undefined {
  const verdict = verdictOf(value, limits.lower, limits.upper, uncertainty, near);
  if (!verdict) return undefined;
  // Whatever is under stands nearest to the lower limit; over it can be farther from the upper one where the limits stand the wrong way round.
  const side = verdict === "over" ? "upper" : nearestSide(value, limits);
  const margin = decimal(side === "upper" ? upTo(value, limits.upper) : downTo(value, limits.lower));
  return { verdict, margin, side, limit: limits[side]! };
}
