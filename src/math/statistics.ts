/** Sum that carries the digits a plain sum drops (Neumaier). */
export function sum(values: readonly number[]): number {
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return total + lost;
}

/**
 * Mean in two passes: the second adds the mean of what is left, which takes out the rounding of the
 * first. Readings differ in their last digits, so those are what must survive.
 */
export function mean(values: readonly number[]): number {
  const first = sum(values) / values.length;
  return first + sum(values.map((value) => value - first)) / values.length;
}

/** Sum of squared departures from the mean, corrected for the rounding of the mean (Chan, Golub and LeVeque). */
export function sumOfSquares(values: readonly number[]): number {
  const centre = mean(values);
  const departures = values.map((value) => value - centre);
  return Math.max(0, sum(departures.map((d) => d * d)) - sum(departures) ** 2 / values.length);
}

/** Sample variance, n − 1 below the line; wants at least 2 values. */
export const variance = (values: readonly number[]): number => sumOfSquares(values) / (values.length - 1);

/** Sample standard deviation; wants at least 2 values. */
export const standardDeviation = (values: readonly number[]): number => Math.sqrt(variance(values));

/** True when all values are the same decimal, so that there is no spread to judge by. */
export const allEqual = (values: readonly number[]): boolean => values.every((value) => value === values[0]);

/** One variance in a sum of them, with the degrees of freedom it was found with; `Infinity` when it is known. */
export interface VarianceComponent {
  variance: number;
  degreesOfFreedom: number;
}

/** Effective degrees of freedom of a sum of independent variances (Welch-Satterthwaite); infinite when none has a spread of its own. */
export function effectiveDegreesOfFreedom(shares: readonly VarianceComponent[]): number {
  return sum(shares.map(({ variance }) => variance)) ** 2 / sum(shares.map(({ variance, degreesOfFreedom }) => variance ** 2 / degreesOfFreedom));
}
