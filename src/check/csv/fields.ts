import type { Cell } from "../../core/cell.ts";

export type DecimalSign = "." | ",";

const NUMBERS: Readonly<Record<DecimalSign, RegExp>> = {
  ".": /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i,
  ",": /^[+-]?(?:\d+,?\d*|,\d+)(?:e[+-]?\d+)?$/i,
};

/** A field as a cell: a number where it is written as one, nothing where it is empty, text otherwise. */
export function cellOf(field: string, sign: DecimalSign): Cell {
  const text = field.trim();
  if (text === "") return null;
  return NUMBERS[sign].test(text) ? Number(sign === "," ? text.replace(",", ".") : text) : text;
}

/** What to say of a number that is written with the other decimal sign: it is not guessed at. */
export function wrongSign(name: string, cell: Cell, sign: DecimalSign): string | undefined {
  if (typeof cell !== "string" || !NUMBERS[sign === "," ? "." : ","].test(cell)) return undefined;
  return sign === "."
    ? `${name} holds "${cell}": a decimal comma is read only when a locale that writes so is given`
    : `${name} holds "${cell}" with a point: the locale given writes a decimal comma`;
}

/** Up to here whole numbers, and up to the power beside it powers of ten, are exact, so that their quotient is the nearest double, as `Number` gives it. */
const MOST_DIGITS = 15;
const POWERS = Float64Array.from({ length: MOST_DIGITS + 1 }, (_, i) => 10 ** i);

/** A number as most are written, straight from the bytes; `NaN` for all else, which is not to say that it is none. */
export function plainNumber(bytes: Uint8Array, from: number, to: number, sign: DecimalSign): number {
  const mark = sign === "." ? 0x2e : 0x2c;
  const isNegative = bytes[from] === 0x2d;
  let digits = 0;
  let decimals = -1;
  let whole = 0;
  for (let i = isNegative ? from + 1 : from; i < to; i++) {
    const digit = bytes[i]! - 0x30;
    if (digit >= 0 && digit <= 9) {
      whole = whole * 10 + digit;
      digits++;
      if (decimals >= 0) decimals++;
    } else if (bytes[i] === mark && decimals < 0) decimals = 0;
    else return Number.NaN;
  }
  const size = scaled(whole, digits, Math.max(0, decimals));
  return isNegative ? -size : size;
}

/** So many digits read as a whole number, the last of them decimals; `NaN` where that would not be the nearest double. */
export function scaled(whole: number, digits: number, decimals: number): number {
  if (digits === 0 || digits > MOST_DIGITS) return Number.NaN;
  return decimals > 0 ? whole / POWERS[decimals]! : whole;
}
