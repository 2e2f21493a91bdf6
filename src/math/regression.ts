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

/** Where a line meets a level; or, where its slope may be zero, before which x it does not. */
export type Meeting =
  | { slopeIsReal: true; at: number; earliest: number; latest: number }
  /** Undefined where the level lies within the doubt of the points themselves, endless where nothing says that it is ever met. */
  | { slopeIsReal: false; notBefore: number | undefined };

/**
 * Where the line itself, not a new point, meets `level`: the ends are the roots of
 * (level − ŷ(x))² = quantile² × variance × (1/n + (x − x̄)²/S). Source: E. C. Fieller,
 * J. Royal Statistical Society B 16 (1954) 175. `variance` is that of one point.
 */
export function meetingOf(line: FittedLine, level: number, quantile: number, variance: number): Meeting {
  const { slope, centre, spreadOfX, degreesOfFreedom } = line;
  const points = degreesOfFreedom + 2;
  const lead = slope ** 2 - (quantile ** 2 * variance) / spreadOfX;
  const rise = level - centre.y;
  const along = slope * rise;
  const clear = rise ** 2 - (quantile ** 2 * variance) / points;
  const root = Math.sqrt(Math.max(along ** 2 - lead * clear, 0));
  // Relative to the slope itself, so that rounding cannot make a meaningless slope pass.
  if (lead > slope ** 2 * 1e-12)
    return { slopeIsReal: true, at: centre.x + rise / slope, earliest: centre.x + (along - root) / lead, latest: centre.x + (along + root) / lead };
  // The first x from the middle of the points on where the doubt of the line comes as far as the level: the form of the root that loses no digits.
  return { slopeIsReal: false, notBefore: clear > 0 ? centre.x + clear / (along + root) : undefined };
}
