import { SheetFault } from "./own-function.ts";

/** Digits that a sheet keeps of a number: what stands behind them is only how binary numbers hold decimals. */
const DIGITS = 15;

const tidy = (value: number): number => Number(value.toPrecision(DIGITS));

type Direction = "nearest" | "up" | "down";

/** A number with so many decimals: the nearest, a half away from 0; or away from 0; or towards it. By its decimals, so that 1.005 becomes 1.01. */
export function toPlaces(value: number, places: number, direction: Direction): number {
  if (value === 0) return 0;
  if (!Number.isFinite(value)) return value;
  const [mantissa, exponent] = Math.abs(value)
    .toExponential(DIGITS - 1)
    .split("e") as [string, string];
  // The digits as one whole number, which has no more of them than a double holds exactly.
  const digits = Number(mantissa.replace(".", ""));
  const behind = DIGITS - 1 - Number(exponent) - places;
  if (behind <= 0) return value;
  const isAllBehind = behind > DIGITS;
  const step = isAllBehind ? Number.POSITIVE_INFINITY : 10 ** behind;
  const rest = isAllBehind ? digits : digits % step;
  const isRaised = direction === "up" ? rest > 0 : direction === "nearest" && 2 * rest >= step;
  const kept = (isAllBehind ? 0 : (digits - rest) / step) + (isRaised ? 1 : 0);
  return kept === 0 ? 0 : Math.sign(value) * Number(`${kept}e${-places}`);
}

/** The multiple of `step` that `whole` makes of the quotient: 2.8 is 56 times 0.05, and no less. */
const toMultiple = (value: number, step: number, whole: (quotient: number) => number): number => tidy(whole(tidy(value / step)) * step);

/** Up or down by the size of `step`; below 0 towards 0 or away from it. */
function byMode(value: number, step: number, isUp: boolean, isAway: boolean): number {
  if (step === 0) return 0;
  const whole = value >= 0 ? (isUp ? Math.ceil : Math.floor) : isAway ? Math.floor : Math.ceil;
  return toMultiple(value, Math.abs(step), whole);
}

/** The nearest multiple, a half away from 0. */
function nearestMultiple(value: number, step: number): number | undefined {
  if (value === 0 || step === 0) return 0;
  if (value > 0 !== step > 0) return undefined;
  return toMultiple(value, step, (quotient) => toPlaces(quotient, 0, "nearest"));
}

/** What is left of a number beyond whole steps, with no more decimals than a sheet keeps of the number itself. */
function remainder(value: number, step: number): number {
  const left = value - toMultiple(value, step, Math.floor);
  return toPlaces(left, DIGITS - 1 - (value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)))), "nearest");
}

/** What a function gives for plain numbers, an argument that is left out being its default; `undefined` where the grid's own is to answer, with a fault. */
interface Rounding {
  defaults: readonly (number | undefined)[];
  of(...args: number[]): number | SheetFault | undefined;
}

const places = (direction: Direction): Rounding => ({ defaults: [undefined, 0], of: (value, to) => toPlaces(value!, Math.trunc(to!), direction) });

const multiple = (whole: (quotient: number) => number): Rounding => ({
  defaults: [undefined, 1],
  of: (value, step) => (step === 0 || (value! > 0 && step! < 0) ? undefined : toMultiple(value!, step!, whole)),
});

const floor = multiple(Math.floor);
const NO_STEP = new SheetFault("#DIV/0!", "There are no multiples of 0 to round down to.");

/**
 * Functions that round, as office programs give them on decimals; the grid multiplies and divides the binary numbers, by which
 * ROUND(1.005,2) is 1 and FLOOR(2.8,0.05) 2.75. Checked against LibreOffice: test/reference/rounding.
 */
export const ROUNDING: Readonly<Record<string, Rounding>> = {
  ROUND: places("nearest"),
  ROUNDUP: places("up"),
  ROUNDDOWN: places("down"),
  TRUNC: places("down"),
  INT: { defaults: [undefined], of: (value) => Math.floor(tidy(value!)) },
  CEILING: multiple(Math.ceil),
  FLOOR: { ...floor, of: (value, step) => (step === 0 && value !== 0 ? NO_STEP : floor.of(value!, step!)) },
  "CEILING.MATH": { defaults: [undefined, 1, 0], of: (value, step, mode) => byMode(value!, step!, true, mode !== 0) },
  "CEILING.PRECISE": { defaults: [undefined, 1], of: (value, step) => byMode(value!, step!, true, false) },
  "ISO.CEILING": { defaults: [undefined, 1], of: (value, step) => byMode(value!, step!, true, false) },
  "FLOOR.MATH": { defaults: [undefined, 1, 0], of: (value, step, mode) => byMode(value!, step!, false, mode === 0) },
  "FLOOR.PRECISE": { defaults: [undefined, 1], of: (value, step) => byMode(value!, step!, false, true) },
  MROUND: { defaults: [undefined, undefined], of: (value, step) => nearestMultiple(value!, step!) },
  MOD: { defaults: [undefined, undefined], of: (value, by) => (by === 0 ? undefined : remainder(value!, by!)) },
};
