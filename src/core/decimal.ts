/**
 * Decimal truth. A person types decimals; a computer keeps binary fractions, in which
 * 73.04 − 73.00 is 0.04000000000000625 and so "over" 0.04. Lengths, pressures and ratios that
 * people type carry far fewer than nine decimals, therefore every comparison here is made on a
 * grid of 1e-9 of the unit, and a difference of typed values is put back on that grid.
 *
 * Doubles grow coarser with their size: above about half a million units a few units in the last
 * place of the larger value take the place of the grid in a comparison, and above four million a
 * value is no longer put back on it.
 */
const GRID = 1e9;
/** Half a step of the grid: what is no farther apart than this is the same decimal. */
export const HALF_STEP = 0.5e-9;
/** Up to here rounding to the grid gives every decimal of nine places back as it was typed. */
const EXACT = 2 ** 22;

/** The decimal nearest to `x` with nine decimals: 73.04 − 73.00 gives 0.04, and −0 gives 0. */
export function decimal(x: number): number {
  if (x > EXACT || x < -EXACT) return x;
  // Adding 0 turns −0 into 0, which a sheet would show as "-0".
  return Math.round(x * GRID) / GRID + 0;
}

/** `x` counted in whole steps of the grid, for arithmetic in which equal decimals must give equal sums; `fromSteps` turns it back. */
export const toSteps = (x: number): number => Math.round(x * GRID);
export const fromSteps = (steps: number): number => steps / GRID + 0;

/** The widest gap between two doubles that still stand for the same typed decimal. */
export function slack(a: number, b: number): number {
  // The cap keeps an infinity beyond every number rather than equal to all of them.
  const coarse = Math.min(Math.max(Math.abs(a), Math.abs(b)), Number.MAX_VALUE) * (4 * Number.EPSILON);
  return Math.max(coarse, HALF_STEP);
}

/** −1, 0 or 1 as the decimal `a` is below, at or above the decimal `b`. */
export function compareDecimals(a: number, b: number): -1 | 0 | 1 {
  const gap = a - b;
  // Equal infinities differ by NaN, which fails both tests below and so counts as equal.
  const play = slack(a, b);
  return gap > play ? 1 : gap < -play ? -1 : 0;
}

/** No slack is less than half a step: nearly every comparison is settled by that alone, and the sizes need not be looked at. */
export const isAbove = (a: number, b: number): boolean => a - b > HALF_STEP && a - b > slack(a, b);
export const isBelow = (a: number, b: number): boolean => isAbove(b, a);

/**
 * −1, 0 or 1 as sheets find a number below, at or above another with `=`, `<` and the like: rounded to 15
 * significant digits for the comparison alone. So 0.1 + 0.2 is 0.3, but 73.04 − 73.00 is not 0.04, and no
 * number but 0 is 0. Our own functions compare decimals instead.
 */
export function compareAsSheets(a: number, b: number): -1 | 0 | 1 {
  if (a === b || (isNear(a, b) && a.toPrecision(15) === b.toPrecision(15))) return 0;
  return a < b ? -1 : 1;
}

/** Further apart no two numbers have 15 digits in common. */
const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= 2e-14 * Math.max(Math.abs(a), Math.abs(b));

/** −1, 0 or 1 as sheets find a text below, at or above another: letter by letter, without regard to case, signs such as `_` before letters. */
export function compareTexts(a: string, b: string): -1 | 0 | 1 {
  const [x, y] = [a.toLowerCase(), b.toLowerCase()];
  return x < y ? -1 : x > y ? 1 : 0;
}
