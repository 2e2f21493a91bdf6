import { studentQuantile, twoSidedP } from "./distributions.ts";
import { allEqual, effectiveDegreesOfFreedom, standardDeviation, type VarianceComponent } from "./statistics.ts";

/**
 * How far an estimate from a few readings may be off. Readings scatter by their gauge at least, so while
 * they do not scatter more than that the gauge's standard uncertainty u says so, by the normal law; where
 * they do, their own scatter says so, by Student's t. A scatter below u is chance: three readings that
 * happen to agree are no better known than their gauge. Sources: JCGM 100:2008 (GUM), 4.3.1 and G.3.2
 * (the two laws), G.4.1 (Welch-Satterthwaite); which of the two rules is this project's own, by simulation.
 */
export type Ruling = "gauge" | "scatter";

/** The variance of a value or of an estimate, with the law that it follows: endless degrees of freedom are the normal law. */
export interface Doubt extends VarianceComponent {
  by: Ruling;
}

/** What two roundings can make of one number, so that a scatter of just u is not above it. */
const ROUNDING = 1e-9;

/** The doubt of one value whose gauge has the standard uncertainty `u`, 0 where it is not known. Without degrees of freedom there is no scatter. */
export function doubtOfOne(scatter: number, degreesOfFreedom: number, u: number): Doubt {
  return degreesOfFreedom > 0 && scatter > u * (1 + ROUNDING)
    ? { variance: scatter ** 2, degreesOfFreedom, by: "scatter" }
    : { variance: u ** 2, degreesOfFreedom: Number.POSITIVE_INFINITY, by: "gauge" };
}

/** A doubt that counts so many times, such as 1/n for a mean of n. */
export const weighed = ({ variance, ...law }: Doubt, weight: number): Doubt => ({ ...law, variance: variance * weight });

/** The doubt of a sum or difference of independent parts; `common` is a standard uncertainty that no mean makes smaller. */
export function combined(parts: readonly Doubt[], common = 0): Doubt {
  const shares: VarianceComponent[] = [...parts, { variance: common ** 2, degreesOfFreedom: Number.POSITIVE_INFINITY }];
  const variance = shares.reduce((sum, share) => sum + share.variance, 0);
  const rules = parts.some(({ by, variance: own }) => by === "scatter" && own > 0);
  return rules
    ? { variance, degreesOfFreedom: effectiveDegreesOfFreedom(shares), by: "scatter" }
    : { variance, degreesOfFreedom: Number.POSITIVE_INFINITY, by: "gauge" };
}

/** The doubt of the mean of some values, each with the standard uncertainty `own` of its own and all with one `common` to them. */
export function doubtOfMean(values: readonly number[], own: number, common: number): Doubt {
  const scatter = allEqual(values) ? 0 : standardDeviation(values);
  return combined([weighed(doubtOfOne(scatter, values.length - 1, own), 1 / values.length)], common);
}

/** Half the width of the interval that covers the true value in this share of cases. */
export const halfWidth = ({ variance, degreesOfFreedom }: Doubt, confidence: number): number =>
  studentQuantile(confidence, degreesOfFreedom) * Math.sqrt(variance);

/** Confidence of the interval by which two tests on one side, at 1 − `confidence` each, show a difference to be less than what matters. */
export const equivalenceConfidence = (confidence: number): number => 2 * confidence - 1;

export interface Tested {
  lower: number;
  upper: number;
  /** The estimate by its standard deviation: z by the normal law, otherwise t. */
  statistic: number;
  /** Chance of one at least as far from 0 where there is nothing. */
  p: number;
}

/** An estimate with its interval, and whether it is distinguishable from 0. Wants a variance above 0. */
export function tested(estimate: number, doubt: Doubt, confidence: number): Tested {
  const half = halfWidth(doubt, confidence);
  const statistic = estimate / Math.sqrt(doubt.variance);
  return { lower: estimate - half, upper: estimate + half, statistic, p: twoSidedP(statistic, doubt.degreesOfFreedom) };
}
