import { compareDecimals, decimal } from "./decimal.ts";

/** As many as decimals are compared by. */
const MOST = 9;
/** More decimals than anybody types: the number was worked out. */
export const MOST_TYPED = 6;
/** Significant digits of an uncertainty (JCGM 100:2008, 7.2.6: at most two). */
const DIGITS = 2;
/** A small number of so few figures was typed all the same, or rounded to them. */
const MOST_FIGURES = 4;
/** From here on numbers are written with all their digits anyway, or with an exponent. */
const LARGE = 1e15;

/** Decimals that a number is written with, up to nine. */
export function decimalsOf(value: number): number {
  const size = Math.abs(value);
  if (!(size < LARGE)) return 0;
  for (let decimals = 0; decimals < MOST; decimals++) {
    const scale = 10 ** decimals;
    if (Math.round(size * scale) / scale === size) return decimals;
  }
  return (decimal(value).toFixed(MOST).replace(/0+$/, "").split(".")[1] ?? "").length;
}

/** A number with so many decimals; never `-0`. */
export function fixed(value: number, decimals: number): string {
  if (!(Math.abs(value) < LARGE)) return String(value);
  const text = decimal(value).toFixed(Math.min(decimals, MOST));
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/**
 * How many decimals each of some numbers is told with that are compared with one another: as many as were
 * typed. What was worked out gets two more than the most that were typed, at least three, and never so
 * few that it would seem to stand on the other side of another, or on it, or that less than two of its
 * figures are left: 0.000157 is not 0.000.
 */
export function decimalsTogether(numbers: readonly number[]): number[] {
  const own = numbers.map((number) => decimalsOf(decimal(number)));
  const isTyped = own.map((decimals, i) => decimals <= MOST_TYPED || figuresOf(numbers[i]!, decimals) <= MOST_FIGURES);
  if (isTyped.every(Boolean)) return own;
  const typed = own.filter((_, i) => isTyped[i]);
  const told = (decimals: number) =>
    own.map((each, i) => (isTyped[i] ? each : Math.min(each, Math.max(decimals, each - figuresOf(numbers[i]!, each) + DIGITS))));
  let decimals = Math.max(3, 2 + Math.max(0, ...typed));
  while (decimals < MOST && !keepOrder(numbers, told(decimals))) decimals++;
  return told(decimals);
}

/** Significant figures of a number written with so many decimals. */
const figuresOf = (value: number, decimals: number): number => decimals + 1 + Math.floor(Math.log10(Math.abs(decimal(value))));

function keepOrder(numbers: readonly number[], decimals: readonly number[]): boolean {
  const shown = numbers.map((number, i) => Number(fixed(number, decimals[i]!)));
  return numbers.every((a, i) => numbers.every((b, j) => compareDecimals(shown[i]!, shown[j]!) === compareDecimals(a, b)));
}

/** A number as it was typed; one that was worked out with no more decimals than tell it from those beside it. */
export const readingText = (value: number, beside: readonly number[] = []): string => fixed(value, decimalsTogether([value, ...beside])[0]!);

/** A difference, with the decimals of what it is the difference of: 0.035 − 0.025 is `0.010`. */
export const differenceText = (difference: number, of: readonly number[]): string => fixed(difference, Math.max(...decimalsTogether(of)));

/** An uncertainty with two significant digits, or as typed where that has fewer. */
export function uncertaintyText(uncertainty: number): string {
  const size = Math.abs(uncertainty);
  if (!(size > 0) || !Number.isFinite(size)) return String(uncertainty);
  const rounded = Number(uncertainty.toPrecision(DIGITS));
  if (size < 1e-7) return String(rounded);
  // 0.00296 is 0.0030; 0.003 was typed.
  const decimals = decimal(uncertainty) === rounded ? decimalsOf(rounded) : Math.max(0, DIGITS - 1 - Math.floor(Math.log10(Math.abs(rounded))));
  return fixed(rounded, decimals);
}

/** Thousands apart by a thin space that does not break. */
export const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, "\u202f");

/** `1 finding`, `10 000 findings`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${grouped(count)} ${count === 1 ? one : many}`;

/** A large count with three significant digits, `1,500,000`. A formatter made beforehand would slow down every start. */
export const roughCount = (count: number): string => count.toLocaleString("en", { maximumSignificantDigits: 3 });

/** `22 of 24 rows checked, 2 could not be`: what goes in is counted, so that nothing gets lost unseen. */
export const rowsText = ({ rowsIn, checked }: { rowsIn: number; checked: number }, format: (count: number) => string = grouped): string =>
  doneText(rowsIn, checked, `${rowsIn === 1 ? "row" : "rows"} checked`, format);

/** `32 of 38 places compared, 6 could not be`. */
export const placesText = (all: number, done: number, format: (count: number) => string = grouped): string =>
  doneText(all, done, `${all === 1 ? "place" : "places"} compared`, format);

const doneText = (all: number, done: number, what: string, format: (count: number) => string): string =>
  `${format(done)} of ${format(all)} ${what}${all > done ? `, ${format(all - done)} could not be` : ""}`;

/**
 * What a number becomes where it is joined to text: its 15 digits, 0.1 + 0.2 being 0.3, and without an exponent down to 1E-15. Checked
 * against LibreOffice (test/reference/formulas).
 */
export function textValue(number: number): number | string {
  const tidy = Number(number.toPrecision(15));
  const text = String(tidy);
  const [digits, power] = tidy.toExponential().split("e") as [string, string];
  if (!text.includes("e")) return tidy;
  if (Number(power) < -15 || Number(power) > 0) return text.replace("e", "E");
  return `${tidy < 0 ? "-" : ""}0.${"0".repeat(-Number(power) - 1)}${digits.replace(/[-.]/g, "")}`;
}
