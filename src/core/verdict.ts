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
  if (upper !== undefined && isAbove(value, upper - uncertainty)) return "not proven";
  if (lower !== undefined && isBelow(value, lower + uncertainty)) return "not proven";
  if (near <= 0) return "within";
  const close = (upper !== undefined && !isAbove(upper - value, near)) || (lower !== undefined && !isAbove(value - lower, near));
  return close ? "near limit" : "within";
}

/** The verdict with the limit that decides it: the one that is passed, otherwise the nearest. */
export function judge(value: number, limits: Limits, uncertainty = 0, near = 0): Judgement | undefined {
  const nearest = marginOf(value, limits);
  const verdict = verdictOf(value, limits.lower, limits.upper, uncertainty, near);
  if (!nearest || !verdict) return undefined;
  // Whatever is under stands nearest to the lower limit; over it can be farther from the upper one where the limits stand the wrong way round.
  if (verdict === "over") return { verdict, margin: decimal(limits.upper! - value), side: "upper", limit: limits.upper! };
  return { verdict, ...nearest };
}
