import { columnOf } from "../address.ts";
import { UnreadableFile } from "./unreadable.ts";

/** Rows and columns that a sheet can have at most (ECMA-376 part 1, 18.3.1.73 and 18.3.1.13). */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

export interface Place {
  row: number;
  column: number;
}

const NAME = /^\$?([A-Za-z]{1,3})\$?([0-9]{1,7})$/;

/** `C7` as row 6 and column 2. */
export function placeOf(name: string, part: string): Place {
  const [, letters, digits] = NAME.exec(name) ?? [];
  const column = columnOf(letters ?? "");
  const row = Number(digits ?? 0);
  if (column < 0 || column >= MOST_COLUMNS || row < 1 || row > MOST_ROWS)
    throw new UnreadableFile(`is damaged: ${JSON.stringify(name)} in its part ${part} is no cell`);
  return { row: row - 1, column };
}

export interface Box {
  top: number;
  left: number;
  bottom: number;
  right: number;
}

/** The smallest box that has both in it. */
export const around = (a: Box, b: Box): Box => ({
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
});

/** `B2:C5`, or one cell, as a box. */
export function boxOf(range: string, part: string): Box {
  const [first = "", last = first] = range.split(":");
  const from = placeOf(first, part);
  const to = placeOf(last, part);
  return {
    top: Math.min(from.row, to.row),
    left: Math.min(from.column, to.column),
    bottom: Math.max(from.row, to.row),
    right: Math.max(from.column, to.column),
  };
}

/** One number for a cell's place on its sheet. */
export const keyOf = ({ row, column }: Place): number => row * MOST_COLUMNS + column;
