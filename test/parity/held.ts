import { typedText } from "../../src/calc/grid/grid-text.ts";
import type { Cell, CellError } from "../../src/core/cell.ts";

/** One cell of the inputs: what it holds, and what a person types for it where that is not the same. */
export interface Held {
  value: Cell;
  typed?: string;
}

/** One argument of a call; `null` is one left out. */
export type Given = {
  /** Written into the formula itself, or standing in cells that the formula refers to. */
  as: "literal" | "cells";
  rows: Held[][];
} | null;

export const held = (value: Cell): Held => ({ value });

export const EMPTY: Held = { value: null };
/** A cell whose formula says "nothing yet". */
export const EMPTY_TEXT: Held = { value: "", typed: '=""' };

const error = (code: string, typed: string): Held => ({ value: { error: code }, typed });
export const ERRORS: readonly Held[] = [
  error("#DIV/0!", "=1/0"),
  error("#N/A", "=NA()"),
  error("#NAME?", "=NOSUCHNAME()"),
  error("#REF!", "=#REF!"),
  error("#VALUE!", '="worn"+1'),
];

/** Days of this century, which a sheet holds as numbers. */
export function date(serial: number): Held {
  const day = new Date(Date.UTC(1899, 11, 30) + serial * 86_400_000);
  return { value: serial, typed: `${day.getUTCMonth() + 1}/${day.getUTCDate()}/${day.getUTCFullYear()}` };
}

export const isError = (value: Cell): value is CellError => typeof value === "object" && value !== null;

/** What a person types into a cell of the grid for it. */
export function typedInto({ value, typed }: Held): string {
  if (typed !== undefined) return typed;
  return value === null || value === undefined || isError(value) ? "" : typedText(value);
}
