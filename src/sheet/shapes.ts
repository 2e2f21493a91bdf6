import { columnOf } from "./address.ts";
import { type Box, MOST_COLUMNS, MOST_ROWS } from "./xlsx/place.ts";

/**
 * A formula taken apart in one quick pass: the text that it has in common with the formulas filled down
 * and across from it, and the cells and ranges that it names, in reading order.
 */
export interface Shape {
  /** The formula with a mark in place of each cell and range. */
  key: string;
  areas: Box[];
}

/** Text and quoted sheet names, which are passed over, or a cell's name that is part of no other word. */
const PARTS = /"(?:[^"]|"")*"|'(?:[^']|'')*'|(?<![\w.$\\?])\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})(?![\w.(!\\?])/g;
const CELL = "\u0001";
const RANGE = "\u0002";
/** What is longer than any formula of a sheet is read by nobody. */
const LONGEST = 8000;

/** `undefined` for a formula in which something only looks like a cell, or a range is one cell: those are shapes of their own. */
export function shapeOf(formula: string): Shape | undefined {
  if (formula.length > LONGEST) return undefined;
  const areas: Box[] = [];
  let key = "";
  let from = 0;
  let end = -1;
  for (const part of formula.matchAll(PARTS)) {
    if (part[1] === undefined) continue;
    const row = Number(part[2]) - 1;
    const column = columnOf(part[1]);
    if (row >= MOST_ROWS || column >= MOST_COLUMNS) return undefined;
    const last = areas.at(-1);
    if (last && end === part.index - 1 && formula[end] === ":" && key.endsWith(CELL)) {
      if (last.top === row && last.left === column) return undefined;
      key = `${key.slice(0, -1)}${RANGE}`;
      areas[areas.length - 1] = {
        top: Math.min(last.top, row),
        left: Math.min(last.left, column),
        bottom: Math.max(last.bottom, row),
        right: Math.max(last.right, column),
      };
    } else {
      key += formula.slice(from, part.index) + CELL;
      areas.push({ top: row, left: column, bottom: row, right: column });
    }
    end = from = part.index + part[0].length;
  }
  return { key: key + formula.slice(from), areas };
}
