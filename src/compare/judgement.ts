import { decimal, isAbove } from "../core/decimal.ts";
import { smallestNumber } from "../core/grouped.ts";
import { COVERAGE_FACTOR } from "../functions/wear/change-params.ts";
import { mayHide } from "../functions/wear/difference-words.ts";
import { studentQuantile } from "../math/distributions.ts";
import { type Doubt, type Ruling, tested } from "../math/gauge-rule.ts";
import { holm } from "../math/holm.ts";

export const COMPARISON_VERDICTS = ["differs", "same within", "cannot tell"] as const;
export type ComparisonVerdict = (typeof COMPARISON_VERDICTS)[number];

/** Each kind of line is a family of its own: what is looked at together is adjusted together. */
const FAMILIES = ["places", "means", "differences by place", "mean differences", "groups"] as const;
export type Family = (typeof FAMILIES)[number];

/** A difference with what is known of it, before it is judged beside its like. */
export interface Estimate {
  difference: number;
  /** How many places it is the mean of. */
  n: number;
  /** `null` where no uncertainty is known: nothing can be told of it. */
  doubt: Doubt | null;
  /** A second doubt by which it must differ as well, with the narrower interval of the two. */
  other?: Doubt;
  /** The standard uncertainty in it that no mean makes smaller. */
  common: number;
  matters: number | undefined;
}

/** What a difference comes to, with the numbers behind it; `null` where no uncertainty is known. */
export interface LineJudgement {
  family: Family;
  level: "place" | "mean" | "group";
  n: number;
  by: Ruling | null;
  /** `null` for the normal law. */
  degreesOfFreedom: number | null;
  /** Expanded uncertainty of the difference, k = 2, and of the part that no mean makes smaller. */
  uncertainty: number | null;
  commonUncertainty: number | null;
  /** Interval at 95 %. */
  lower: number | null;
  upper: number | null;
  p: number | null;
  pAdjusted: number | null;
  /** Larger than its own uncertainty. */
  beyondGauge: boolean | null;
  matters: number | null;
  withinMatters: boolean | null;
  /** The largest difference that may still hide. */
  mayHide: number | null;
  /** The smallest true difference that would be seen nine times in ten by these gauges, among so many lines. */
  toSee: number | null;
  verdict: ComparisonVerdict;
}

export const CONFIDENCE = 0.95;
const LEVEL = 1 - CONFIDENCE;
const POWER = 0.9;
/** Share of unchanged sizes that lie beyond their own uncertainty, U with k = 2. */
export const BEYOND_BY_CHANCE = 0.0455;

/**
 * Judges lines of one kind together. A line *differs* when its chance, adjusted by Holm for all of them, is
 * at most 0.05 and it lies beyond its gauge: a place beyond its own U, a mean beyond what all its readings
 * share. It is the *same within* what matters by two tests on one side at 5 %, not adjusted. Otherwise
 * nobody can tell. Without an uncertainty a line cannot be told and counts for nothing in the family.
 */
export function judgeFamily(family: Family, estimates: readonly Estimate[]): LineJudgement[] {
  const level = family === "groups" ? "group" : family === "places" || family === "differences by place" ? "place" : "mean";
  const judged = estimates.flatMap((estimate) => (estimate.doubt === null ? [] : [chanceOf(estimate, estimate.doubt)]));
  const adjusted = holm(judged);
  let next = 0;
  return estimates.map((estimate) => {
    const { n, doubt } = estimate;
    if (doubt === null) return { ...UNKNOWN, family, level, n, matters: estimate.matters ?? null };
    return judgementOf(estimate, doubt, family, level, adjusted[next++]!, judged.length);
  });
}

/** p of an estimate: by both doubts the larger. */
const chanceOf = ({ difference, other }: Estimate, doubt: Doubt): number =>
  Math.max(...[doubt, ...(other === undefined ? [] : [other])].map((one) => tested(difference, one, CONFIDENCE).p));

const UNKNOWN = {
  by: null,
  degreesOfFreedom: null,
  uncertainty: null,
  commonUncertainty: null,
  lower: null,
  upper: null,
  p: null,
  pAdjusted: null,
  beyondGauge: null,
  withinMatters: null,
  mayHide: null,
  toSee: null,
  verdict: "cannot tell",
} as const satisfies Partial<LineJudgement>;

function judgementOf(estimate: Estimate, doubt: Doubt, family: Family, level: LineJudgement["level"], pAdjusted: number, lines: number): LineJudgement {
  const { difference, n, common, matters, other = doubt } = estimate;
  const { lower, upper } = tested(difference, doubt, CONFIDENCE);
  const p = chanceOf(estimate, doubt);
  const deviation = Math.sqrt(doubt.variance);
  const [uncertainty, commonUncertainty] = [deviation, common].map((u) => decimal(COVERAGE_FACTOR * u)) as [number, number];
  const beyondGauge = isAbove(Math.abs(difference), uncertainty);
  const isBeyond = level === "place" ? beyondGauge : isAbove(Math.abs(difference), commonUncertainty);
  const differs = isBeyond && pAdjusted <= LEVEL;
  const hidden = Math.max(mayHide(difference, doubt, CONFIDENCE), mayHide(difference, other, CONFIDENCE));
  const withinMatters = matters === undefined ? null : !isAbove(decimal(hidden), matters);
  const { degreesOfFreedom, by } = doubt;
  const first = studentQuantile(1 - LEVEL / lines, degreesOfFreedom);
  const seen = (level === "place" ? Math.max(COVERAGE_FACTOR, first) : first) + studentQuantile(2 * POWER - 1, degreesOfFreedom);
  return {
    family,
    level,
    n,
    by,
    degreesOfFreedom: Number.isFinite(degreesOfFreedom) ? degreesOfFreedom : null,
    uncertainty,
    commonUncertainty,
    lower,
    upper,
    p,
    pAdjusted,
    beyondGauge,
    matters: matters ?? null,
    withinMatters,
    mayHide: hidden,
    toSee: seen * deviation,
    verdict: differs ? "differs" : withinMatters ? "same within" : "cannot tell",
  };
}

/** How many lines of a family came to what. */
export interface FamilyCounts {
  lines: number;
  /** With a known uncertainty. */
  judged: number;
  beyondGauge: number;
  expectedByChance: number;
  differs: number;
  sameWithin: number;
  cannotTell: number;
}

export function countsOf(judgements: readonly LineJudgement[]): FamilyCounts {
  const count = (is: (one: LineJudgement) => boolean): number => judgements.filter(is).length;
  const judged = count(({ uncertainty }) => uncertainty !== null);
  return {
    lines: judgements.length,
    judged,
    beyondGauge: count(({ beyondGauge }) => beyondGauge === true),
    expectedByChance: decimal(BEYOND_BY_CHANCE * judged),
    differs: count(({ verdict }) => verdict === "differs"),
    sameWithin: count(({ verdict }) => verdict === "same within"),
    cannotTell: count(({ verdict }) => verdict === "cannot tell"),
  };
}

/** The strictest of the smallest differences that matter; none where one has none. */
export const strictestOf = (sizes: readonly (number | undefined)[]): number | undefined =>
  sizes.includes(undefined) ? undefined : smallestNumber(sizes as number[]);
