import fCumulative from "@stdlib/stats-base-dists-f-cdf";
import tCumulative from "@stdlib/stats-base-dists-t-cdf";
import tInverse from "@stdlib/stats-base-dists-t-quantile";
import { normalBelow } from "./normal.ts";

/** The library has no t with endless degrees of freedom; here it equals the normal in every digit a double holds. */
const ENDLESS_DEGREES_OF_FREEDOM = 1e15;

/** Quantiles of the normal law by their confidence: thousands of lines of a comparison ask for the same few. */
const NORMAL_QUANTILES = new Map<number, number>();
const MOST_KEPT = 1000;

/** The t that holds the middle share `confidence` between −t and t; `degreesOfFreedom` may be infinite. */
export function studentQuantile(confidence: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom < ENDLESS_DEGREES_OF_FREEDOM) return tInverse((1 + confidence) / 2, degreesOfFreedom);
  const known = NORMAL_QUANTILES.get(confidence);
  if (known !== undefined) return known;
  if (NORMAL_QUANTILES.size >= MOST_KEPT) NORMAL_QUANTILES.clear();
  const quantile = tInverse((1 + confidence) / 2, ENDLESS_DEGREES_OF_FREEDOM);
  NORMAL_QUANTILES.set(confidence, quantile);
  return quantile;
}

/** Chance of a t at least this far from 0, on either side, when there is no difference; `degreesOfFreedom` may be infinite. */
export function twoSidedP(t: number, degreesOfFreedom: number): number {
  return 2 * (degreesOfFreedom < ENDLESS_DEGREES_OF_FREEDOM ? tCumulative(-Math.abs(t), degreesOfFreedom) : normalBelow(-Math.abs(t)));
}

/** Chance of an F at least this large; by the reciprocal, because 1 − cdf loses the small ones. */
export const upperTailF = (f: number, above: number, below: number): number => (f > 0 ? fCumulative(1 / f, below, above) : 1);
