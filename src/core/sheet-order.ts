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
