import { MOST_COLUMNS, MOST_ROWS } from "../workbook/address.ts";

/** What a reference covers, by first and last row and column, as formula parsers and the grid say it; everything else has a `Rectangle`. */
export interface Edges {
  top: number;
  left: number;
  bottom: number;
  right: number;
}

/** The smallest range that has both in it. */
export const edgesAround = (a: Edges, b: Edges): Edges => ({
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
});

/**
 * A formula taken apart in one quick pass: the text that it has in common with the formulas filled down
 * and across from it, and the cells and ranges that it names, in reading order.
 */
interface FormulaTemplate {
  /** The formula with a mark in place of each cell and range. */
  key: string;
  areas: Edges[];
}

const CELL = "\u0001";
const RANGE = "\u0002";
/** What is longer than any formula of a sheet is read by nobody. */
const LONGEST = 8000;
const MOST_LETTERS = 3;
const MOST_DIGITS = 7;

const [QUOTE, APOSTROPHE, DOLLAR, COLON, BRACKET, MARK] = [..."\"'$:(!"].map((sign) => sign.charCodeAt(0)) as [number, number, number, number, number, number];

/** Signs that words are made of: a cell's name among more of them is part of another word. */
const IN_WORDS = Uint8Array.from({ length: 128 }, (_, code) => (/[\w.$\\?]/.test(String.fromCharCode(code)) ? 1 : 0));
const isInWord = (code: number): boolean => IN_WORDS[code] === 1;
const isDigit = (code: number): boolean => code >= 48 && code <= 57;
/** The place of a letter in the alphabet from 1, capital or small; of no other sign. */
const letterOf = (code: number): number => ((code >= 65 && code <= 90) || (code >= 97 && code <= 122) ? code & 31 : 0);

/** `undefined` for a formula in which something only looks like a cell, or a range is one cell: those are templates of their own. */
export function formulaTemplate(formula: string): FormulaTemplate | undefined {
  if (formula.length > LONGEST) return undefined;
  const areas: Edges[] = [];
  let key = "";
  /** What lies before is in the key. */
  let from = 0;
  /** Where a cell has ended that has not become a range. */
  let cellEnd = -1;
  for (let at = 0; at < formula.length; ) {
    const code = formula.charCodeAt(at);
    if (code === QUOTE || code === APOSTROPHE) at = endOfQuoted(formula, at, code);
    else if (!isInWord(code)) at++;
    else {
      const end = endOfWord(formula, at);
      const cell = cellIn(formula, at, end);
      if (cell === null) return undefined;
      if (cell) {
        const last = areas.at(-1);
        if (last && cellEnd === at - 1 && formula.charCodeAt(cellEnd) === COLON) {
          if (last.top === cell.top && last.left === cell.left) return undefined;
          areas[areas.length - 1] = edgesAround(last, cell);
          key = key.slice(0, -1) + RANGE;
          cellEnd = -1;
        } else {
          areas.push(cell);
          key += formula.slice(from, at) + CELL;
          cellEnd = end;
        }
        from = end;
      }
      at = end;
    }
    if (at < 0) return undefined;
  }
  return { key: key + formula.slice(from), areas };
}

/** Where text or a sheet's name in quotes ends, inside which two quotes stand for one; −1 where it does not. */
function endOfQuoted(formula: string, from: number, quote: number): number {
  for (let at = from + 1; at < formula.length; at++) {
    if (formula.charCodeAt(at) !== quote) continue;
    if (formula.charCodeAt(at + 1) !== quote) return at + 1;
    at++;
  }
  return -1;
}

function endOfWord(formula: string, from: number): number {
  let at = from + 1;
  while (isInWord(formula.charCodeAt(at))) at++;
  return at;
}

/** The cell that a word names, `undefined` for another word, `null` for a cell beyond the end of every sheet. */
function cellIn(formula: string, from: number, end: number): Edges | null | undefined {
  let at = from;
  if (formula.charCodeAt(at) === DOLLAR) at++;
  const letters = at;
  let column = 0;
  for (let letter = letterOf(formula.charCodeAt(at)); letter > 0; letter = letterOf(formula.charCodeAt(++at))) column = column * 26 + letter;
  if (at === letters || at > letters + MOST_LETTERS) return undefined;
  if (formula.charCodeAt(at) === DOLLAR) at++;
  const digits = at;
  let row = 0;
  for (; at < end && isDigit(formula.charCodeAt(at)); at++) row = row * 10 + formula.charCodeAt(at) - 48;
  if (at !== end || at === digits || at > digits + MOST_DIGITS || formula.charCodeAt(digits) === 48) return undefined;
  const next = formula.charCodeAt(end);
  // What is followed so is a function or a sheet.
  if (next === BRACKET || next === MARK) return undefined;
  return row > MOST_ROWS || column > MOST_COLUMNS ? null : { top: row - 1, left: column - 1, bottom: row - 1, right: column - 1 };
}
