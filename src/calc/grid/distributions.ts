import fCumulative from "@stdlib/stats-base-dists-f-cdf";
import normalCumulative from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import tCumulative from "@stdlib/stats-base-dists-t-cdf";
import tDensity from "@stdlib/stats-base-dists-t-pdf";
import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { declared, type GridParts, type OwnFunction, Reader, SheetFault } from "./own-function.ts";

const beyond = (why: string): SheetFault => new SheetFault("#NUM!", why);

/**
 * The value of the standard normal law below which a small share lies, by Newton's steps on the logarithm of that share, which come
 * from one side: the quantile of the library works with what is left of 1 and loses the digits of small shares.
 */
function lowQuantile(p: number): number {
  let z = -Math.sqrt(-2 * Math.log(p));
  for (let steps = 0; steps < 50; steps++) {
    const below = normalCumulative(z, 0, 1);
    const step = (Math.log(below / p) * below * Math.sqrt(2 * Math.PI)) / Math.exp((-z * z) / 2);
    z -= step;
    if (Math.abs(step) <= 1e-15 * Math.abs(z)) break;
  }
  return z;
}

/** The normal law, t and F under the names of sheets. */
export function distributionFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const make = (description: string, args: readonly string[], of: (...numbers: number[]) => number): OwnFunction =>
    declared(
      grid.helpers,
      description,
      args.map((name) => `${name} (${name.startsWith("is_") ? "boolean" : "number"})`),
      function (...given) {
        return of(...given.map((one, i) => (args[i]!.startsWith("is_") ? Number(reader.flag(one, this, false)) : reader.number(one, this))));
      },
    );
  const positive = (name: string, value: number): void => {
    if (!(value > 0)) throw beyond(`The ${name} has to be above 0.`);
  };
  const degrees = (value: number): number => {
    const whole = Math.trunc(value);
    if (whole < 1) throw beyond("The degrees of freedom have to be at least 1.");
    return whole;
  };
  const within = (p: number, isEndIn = false): void => {
    if (p <= 0 || p > 1 || (p === 1 && !isEndIn)) throw beyond("The probability has to lie between 0 and 1.");
  };
  const notBelow = (x: number): void => {
    if (x < 0) throw beyond("The value may not be below 0.");
  };

  const density = (x: number, mean: number, deviation: number): number => Math.exp(-(((x - mean) / deviation) ** 2) / 2) / (deviation * Math.sqrt(2 * Math.PI));
  const normal = (x: number, mean: number, deviation: number, isCumulative: number): number => {
    positive("standard deviation", deviation);
    return isCumulative ? normalCumulative(x, mean, deviation) : density(x, mean, deviation);
  };
  const inverse = (p: number, mean = 0, deviation = 1): number => {
    within(p);
    positive("standard deviation", deviation);
    return p < 0.02 ? mean + deviation * lowQuantile(p) : normalQuantile(p, mean, deviation);
  };
  const twoTails = (x: number, df: number): number => {
    notBelow(x);
    return 2 * tCumulative(-x, degrees(df));
  };
  const twoTailed = (p: number, df: number): number => {
    within(p, true);
    return p === 1 ? 0 : -tQuantile(p / 2, degrees(df));
  };
  const upperF = (x: number, above: number, below: number): number => {
    notBelow(x);
    const [a, b] = [degrees(above), degrees(below)];
    return x === 0 ? 1 : fCumulative(1 / x, b, a);
  };
  const confidence = (alpha: number, deviation: number, size: number): number => {
    within(alpha);
    positive("standard deviation", deviation);
    return (-normalQuantile(alpha / 2, 0, 1) * deviation) / Math.sqrt(degrees(size));
  };

  const NORMAL = make("Normal law", ["x", "mean", "deviation", "is_cumulative"], normal as never);
  const INVERSE = make("Value of the normal law below which a share lies", ["probability", "mean", "deviation"], inverse as never);
  const STANDARD = make("Value of the standard normal law below which a share lies", ["probability"], (p) => inverse(p));
  const CONFIDENCE = make("Half the width of a confidence interval, by the normal law", ["alpha", "deviation", "size"], confidence as never);
  const TWO_TAILED = make("The t beyond which, on both sides, a share lies", ["probability", "degrees_of_freedom"], twoTailed as never);
  const UPPER_F = make("Share of the F distribution above a value", ["x", "degrees_above", "degrees_below"], upperF as never);
  return {
    "NORM.DIST": NORMAL,
    NORMDIST: NORMAL,
    "NORM.S.DIST": make("Standard normal law", ["z", "is_cumulative"], (z, isCumulative) => normal(z, 0, 1, isCumulative!)),
    NORMSDIST: make("Share of the standard normal law below a value", ["z"], (z) => normal(z, 0, 1, 1)),
    "NORM.INV": INVERSE,
    NORMINV: INVERSE,
    "NORM.S.INV": STANDARD,
    NORMSINV: STANDARD,
    "T.DIST": make("The t distribution", ["x", "degrees_of_freedom", "is_cumulative"], (x, df, isCumulative) =>
      isCumulative ? tCumulative(x, degrees(df!)) : tDensity(x, degrees(df!)),
    ),
    "T.DIST.2T": make("Share of the t distribution beyond a value on both sides", ["x", "degrees_of_freedom"], twoTails as never),
    "T.DIST.RT": make("Share of the t distribution above a value", ["x", "degrees_of_freedom"], (x, df) => tCumulative(-x, degrees(df!))),
    TDIST: make("Share of the t distribution beyond a value", ["x", "degrees_of_freedom", "tails"], (x, df, tails) => {
      if (Math.trunc(tails!) !== 1 && Math.trunc(tails!) !== 2) throw beyond("The tails are 1 or 2.");
      return twoTails(x, df!) / (Math.trunc(tails!) === 1 ? 2 : 1);
    }),
    "T.INV": make("The t below which a share lies", ["probability", "degrees_of_freedom"], (p, df) => {
      within(p);
      return tQuantile(p, degrees(df!));
    }),
    "T.INV.2T": TWO_TAILED,
    TINV: TWO_TAILED,
    "F.DIST.RT": UPPER_F,
    FDIST: UPPER_F,
    "CONFIDENCE.NORM": CONFIDENCE,
    CONFIDENCE,
    "CONFIDENCE.T": make("Half the width of a confidence interval, by the t distribution", ["alpha", "deviation", "size"], (alpha, deviation, size) => {
      within(alpha);
      positive("standard deviation", deviation!);
      if (Math.trunc(size!) < 1) throw beyond("The size has to be at least 2.");
      if (Math.trunc(size!) < 2) throw new SheetFault("#DIV/0!", "The size has to be at least 2.");
      return (-tQuantile(alpha / 2, degrees(size! - 1)) * deviation!) / Math.sqrt(Math.trunc(size!));
    }),
    STANDARDIZE: make("How many standard deviations a value lies from the mean", ["x", "mean", "deviation"], (x, mean, deviation) => {
      positive("standard deviation", deviation!);
      return (x - mean!) / deviation!;
    }),
  };
}
