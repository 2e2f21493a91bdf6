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
