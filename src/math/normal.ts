import normalCumulative from "@stdlib/stats-base-dists-normal-cdf";

/** Share of the standard normal below `z`. */
export const normalBelow = (z: number): number => normalCumulative(z, 0, 1);

/**
 * Probability that the measured thing lies between `lower` and `upper` when it is spread about `value` normally with the standard
 * deviation `u` > 0; a limit not given lies endlessly far away. Source: JCGM 106:2012, 7.4.
 */
export function conformanceProbability(value: number, lower: number | undefined, upper: number | undefined, u: number): number {
  const below = ((lower ?? Number.NEGATIVE_INFINITY) - value) / u;
  const above = ((upper ?? Number.POSITIVE_INFINITY) - value) / u;
  // Both far above 0 would leave the difference of two numbers next to 1; mirrored they are small and exact.
  return below > 0 ? normalBelow(-below) - normalBelow(-above) : normalBelow(above) - normalBelow(below);
}
