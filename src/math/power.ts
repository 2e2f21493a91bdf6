import { studentQuantile } from "./distributions.ts";
import { combined, type Doubt, doubtOfOne, halfWidth, weighed } from "./gauge-rule.ts";
import { normalBelow } from "./normal.ts";

/** How an estimate from several values will be judged by the gauge rule, and what the values will really scatter by. */
export interface Design {
  /** What the estimate has of one value's variance: 1/n for a mean of n, 2/n for the difference of two such means. */
  weight: number;
  degreesOfFreedom: number;
  /** Standard uncertainty of one value by its gauge, as far as it is its own; 0 where only the scatter counts. */
  u: number;
  /** What the values really scatter by. */
  scatter: number;
  /** Standard uncertainty that no number of values makes smaller. */
  common: number;
  /** Chance, on both sides together, at which the estimate is said to differ. */
  level: number;
  /** The estimate must be larger than this too. */
  floor?: number;
  /** It is the difference of two groups of equal numbers, judged by Welch's degrees of freedom: of few values often half as many. */
  isWelch?: boolean;
}

/** Farther out than so many standard deviations nothing comes. */
const FAR = 9;
/** From here on the scatter is known as well as anybody needs: the normal law. */
const MANY_DEGREES_OF_FREEDOM = 1e6;
/** Parts into which the scatters that may be seen are cut, for Simpson's rule. */
const PARTS = 400;
/** The same for the shares that the first of two groups has of the spread that is seen. */
const SHARES = 8;

/** What an estimate must exceed for some share of the scatters that may be seen. */
type Bar = readonly [share: number, bar: number];

/**
 * Chance that a true difference is said to differ. The scatter that will be seen follows chi with its degrees of
 * freedom and decides how large an estimate must be; the estimate itself follows the normal law, independent of it.
 * The chance is the normal one, summed over the scatters. With u 0 this is the power of Student's t test (J. Neyman,
 * J. R. Statist. Soc. Suppl. 2 (1935) 107), both of its sides counted.
 */
export const powerOf = (design: Design, difference: number): number => chanceOver(barsOf(design, difference), deviationOf(design), difference);

/** The smallest true difference that is said to differ with the chance `power`, looked for up to `most`; `undefined` where none up to there is. */
export function smallestSeen(design: Design, power: number, most: number): number | undefined {
  const [bars, deviation] = [barsOf(design, most), deviationOf(design)];
  if (chanceOver(bars, deviation, most) < power) return undefined;
  let [low, high] = [0, most];
  while (high - low > high * 1e-10) {
    const middle = (low + high) / 2;
    if (chanceOver(bars, deviation, middle) < power) low = middle;
    else high = middle;
  }
  return high;
}

const deviationOf = ({ weight, scatter, common }: Design): number => Math.sqrt(weight * scatter ** 2 + common ** 2);

const chanceOver = (bars: readonly Bar[], deviation: number, difference: number): number =>
  bars.reduce((sum, [share, bar]) => sum + share * (normalBelow((difference - bar) / deviation) + normalBelow((-difference - bar) / deviation)), 0);

/** The bars that differences up to `most` can reach, each with its share of the scatters. */
function barsOf(design: Design, most: number): Bar[] {
  const { weight, degreesOfFreedom: k, u, scatter, common, level, floor = 0 } = design;
  const bar = (doubt: Doubt): number => Math.max(floor, halfWidth(combined([weighed(doubt, weight)], common), 1 - level));
  const byGauge = bar(doubtOfOne(0, 0, Math.max(u, k > MANY_DEGREES_OF_FREEDOM ? scatter : 0)));
  if (k === 0 || k > MANY_DEGREES_OF_FREEDOM) return [[1, byGauge]];
  // Without a common part all scatters have one quantile, and the rule is a product.
  const alone = common === 0 ? studentQuantile(1 - level, k) * Math.sqrt(weight) : undefined;
  const byWelch = design.isWelch ? welchQuantiles(k / 2, 1 - level) : undefined;
  const byScatter = (seen: number): number => (alone === undefined ? bar(doubtOfOne(seen, k, 0)) : Math.max(floor, alone * seen));
  // In y = √k × seen ÷ scatter, whose density is that of chi.
  const peak = Math.sqrt(Math.max(k - 1, 0));
  const density = (y: number): number => (y === 0 ? (k === 1 ? 1 : 0) : Math.exp((k - 1) * Math.log(y / (peak || 1)) - (y ** 2 - peak ** 2) / 2));
  const [start, end] = [Math.max(0, peak - FAR), peak + FAR];
  const whole = sharesOver(density, start, end).reduce((sum, [, share]) => sum + share, 0);
  const turn = Math.min(Math.max((Math.sqrt(k) * u) / scatter, start), end);
  const below = sharesOver(density, start, turn).reduce((sum, [, share]) => sum + share, 0);
  const seenAt = (y: number): number => (scatter * y) / Math.sqrt(k);
  const last = lastWithin((y) => byScatter(seenAt(y)) <= most + FAR * deviationOf(design), turn, end);
  const scatters = sharesOver(density, turn, last);
  if (byWelch !== undefined) {
    const reached = ([y, share]: Bar) =>
      byWelch.map(([part, quantile]): Bar => [(share * part) / whole, Math.max(floor, quantile * Math.sqrt(weight) * seenAt(y))]);
    return scatters.flatMap(reached);
  }
  return [[below / whole, byGauge], ...scatters.map(([y, share]): Bar => [share / whole, byScatter(seenAt(y))])];
}

/**
 * The quantiles by which Welch's test judges two groups of equal numbers and true spread, each with its share of the cases. With
 * R the first group's share of both variances seen, its degrees of freedom are k ÷ (R² + (1 − R)²), k those of one group; R follows
 * the beta law (k/2, k/2), whatever both come to together. In θ, R = sin² θ, its density is (sin θ cos θ)^(k − 1), alike on both sides of ½.
 */
function welchQuantiles(k: number, confidence: number): [share: number, quantile: number][] {
  const parts = sharesOver((angle) => (Math.sin(angle) * Math.cos(angle)) ** (k - 1), 0, Math.PI / 4, SHARES);
  const whole = parts.reduce((sum, [, share]) => sum + share, 0);
  return parts.map(([angle, share]) => {
    const first = Math.sin(angle) ** 2;
    return [share / whole, studentQuantile(confidence, k / (first ** 2 + (1 - first) ** 2))];
  });
}

/** The farthest place up to which a rising bar stays within reach. */
function lastWithin(isWithin: (y: number) => boolean, from: number, to: number): number {
  if (isWithin(to)) return to;
  let [low, high] = [from, to];
  for (let halvings = 0; halvings < 40; halvings++) {
    const middle = (low + high) / 2;
    if (isWithin(middle)) low = middle;
    else high = middle;
  }
  return high;
}

/** Simpson's rule: the places between two ends, each with its share of the area under a density. */
function sharesOver(density: (y: number) => number, from: number, to: number, parts = PARTS): [y: number, share: number][] {
  if (!(to > from)) return [];
  const step = (to - from) / parts;
  return Array.from({ length: parts + 1 }, (_, i) => {
    const y = from + i * step;
    return [y, (density(y) * step * (i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2)) / 3];
  });
}

/** The z that a normal value stays below with this chance. */
export const normalQuantile = (chance: number): number =>
  chance < 0.5 ? -studentQuantile(1 - 2 * chance, Number.POSITIVE_INFINITY) : studentQuantile(2 * chance - 1, Number.POSITIVE_INFINITY);
