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

/** Distance to the nearest limit, negative outside, as a decimal; undefined with no limit. Halfway counts as the upper one. */
export function marginOf(value: number, { lower, upper }: Limits): { margin: number; side: "lower" | "upper"; limit: number } | undefined {
  const below = upper === undefined ? Number.POSITIVE_INFINITY : decimal(upper - value);
  const above = lower === undefined ? Number.POSITIVE_INFINITY : decimal(value - lower);
  if (upper !== undefined && !(above < below)) return { margin: below, side: "upper", limit: upper };
  return lower === undefined ? undefined : { margin: above, side: "lower", limit: lower };
}

/**
 * Judges a value against limits typed by the shop; a value on a limit is within it. With an
 * expanded uncertainty U the default rule of ISO 14253-1 holds: conformity is proven inside the
 * limits drawn in by U, non-conformity outside the limits let out by U, and nothing in between.
 * `near` is a distance from a limit inside which a value that is within is called near.
 *
 * @returns undefined when there is no limit to judge by.
 */
export function judge(value: number, limits: Limits, uncertainty = 0, near = 0): Judgement | undefined {
  const nearest = marginOf(value, limits);
  if (!nearest) return undefined;
  const { lower, upper } = limits;
  if (upper !== undefined && isAbove(value, upper + uncertainty)) return { verdict: "over", ...distance(value, upper, "upper") };
  if (lower !== undefined && isBelow(value, lower - uncertainty)) return { verdict: "under", ...distance(value, lower, "lower") };
  const proven = (upper === undefined || !isAbove(value, upper - uncertainty)) && (lower === undefined || !isBelow(value, lower + uncertainty));
  if (!proven) return { verdict: "not proven", ...nearest };
  return { verdict: near > 0 && !isAbove(nearest.margin, near) ? "near limit" : "within", ...nearest };
}

function distance(value: number, limit: number, side: "lower" | "upper") {
  return { margin: decimal(side === "upper" ? limit - value : value - limit), side, limit };
}
