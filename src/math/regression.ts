import { allEqual, mean, sum } from "./statistics.ts";

export interface FittedLine {
  slope: number;
  intercept: number;
  /** Where the line is known best: the means of x and y. */
  centre: { x: number; y: number };
  /** Sum of squared departures of x from its mean. */
  spreadOfX: number;
  /** Points less the two that a line takes. */
  degreesOfFreedom: number;
  /** Standard deviation of the points about the line; NaN without degrees of freedom. */
  residual: number;
  /** Standard deviation of the slope; NaN without degrees of freedom. */
  slopeDeviation: number;
}

/**
 * Least-squares line through points, about their centre so that large x or y cost no digits.
 *
 * @returns undefined when all x are the same, through which no line of y on x goes.
 */
export function lineThrough(x: readonly number[], y: readonly number[]): FittedLine | undefined {
  const centre = { x: mean(x), y: mean(y) };
  const dx = x.map((value) => value - centre.x);
  const spreadOfX = sum(dx.map((d) => d * d));
  if (allEqual(x) || !(spreadOfX > 0)) return undefined;
  const dy = y.map((value) => value - centre.y);
  const slope = sum(dx.map((d, i) => d * dy[i]!)) / spreadOfX;
  const degreesOfFreedom = x.length - 2;
  const residual = Math.sqrt(sum(dx.map((d, i) => (dy[i]! - slope * d) ** 2)) / degreesOfFreedom);
  return { slope, intercept: centre.y - slope * centre.x, centre, spreadOfX, degreesOfFreedom, residual, slopeDeviation: residual / Math.sqrt(spreadOfX) };
}

/**
 * Use at which the line reaches `level`, with the interval in which a single reading may first do
 * so: the roots of (level − ŷ(x))² = t² s² (1 + 1/n + (x − x̄)²/S), which is inverse prediction.
 *
 * @returns undefined when the slope is not distinguishable from zero at this t: the roots then
 *   enclose everything, or nothing.
 */
export function inversePrediction(line: FittedLine, level: number, t: number): { at: number; earliest: number; latest: number } | undefined {
  const { slope, centre, spreadOfX, residual, degreesOfFreedom } = line;
  const doubt = (t * residual) ** 2;
  const lead = slope ** 2 - doubt / spreadOfX;
  // Relative to the slope itself, so that rounding cannot make a meaningless slope pass.
  if (!(lead > slope ** 2 * 1e-12)) return undefined;
  const rise = level - centre.y;
  const points = degreesOfFreedom + 2;
  const half = Math.sqrt(doubt * (lead * (1 + 1 / points) + rise ** 2 / spreadOfX));
  const middle = slope * rise;
  return { at: centre.x + rise / slope, earliest: centre.x + (middle - half) / lead, latest: centre.x + (middle + half) / lead };
}
