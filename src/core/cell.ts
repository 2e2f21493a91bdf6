/**
 * What a cell can hold, as every host is made to say it: a number, text, a truth value, nothing
 * (`null`, `undefined` or `""`), or an error that the sheet itself put there.
 */
export interface CellError {
  /** The sheet's own code, such as `#DIV/0!`. */
  error: string;
  /** The sentence that goes with it, where the host has one. */
  message?: string;
}

/** Characters of the longest text that a cell holds. */
export const LONGEST_TEXT = 32_767;

export type Cell = number | string | boolean | null | undefined | CellError;

/** A rectangular block of cells, row by row. */
export type Block = Cell[][];

/** What a host may hand over for one argument: one cell, or a block of them. */
export type Argument = Cell | Block;

/** What a function leaves in a cell: a number, text, or `""` for "nothing to say yet". */
export type Result = number | string;

const ERROR_CODE = /^#(?:NULL!|DIV\/0!|VALUE!|REF!?|NAME\?|NUM!|N\/A|SPILL!|CALC!|FIELD!|BLOCKED!|CONNECT!|UNKNOWN!|BUSY!|GETTING_DATA|ERROR|CYCLE|BAD_EXPR)$/;

/** True for text that is a sheet's error code, which some hosts pass in place of an error. */
export function isErrorCode(text: string): boolean {
  return text.charCodeAt(0) === 35 && ERROR_CODE.test(text);
}

export function isCellError(cell: unknown): cell is CellError {
  return typeof cell === "object" && cell !== null && typeof (cell as CellError).error === "string";
}

/** True for a cell that holds nothing, in any of the three ways hosts say so. */
export function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || cell === "" || (typeof cell === "string" && cell.trim() === "");
}
