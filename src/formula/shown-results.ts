import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import { CHECK_PREFIX } from "../core/sentences.ts";
import type { CellAddress } from "../workbook/address.ts";

/** Why a cell shows something else than its formula gives, as far as that can be told from its cells. */
export type WrongResultReason = "a blank taken for 0" | "another wrong result" | "an error among its cells" | "not calculated since";

/** A cell of ours that shows something else than its formula gives from the cells as they stand. */
export interface WrongResult {
  cell: CellAddress;
  shown: Cell;
  right: Cell;
  why: WrongResultReason;
  /** The blank, the error or the other result. */
  because?: CellAddress;
}

/** Why a cell has no value at present. */
export type NoResultReason = "still calculating" | "functions not known" | "no room";

export interface NoResult {
  cell: CellAddress;
  why: NoResultReason;
}

/** What hosts show while a function of ours has not answered, has not been found, or has no room for its results. */
const NO_RESULT: Readonly<Record<string, NoResultReason>> = {
  "#BUSY!": "still calculating",
  "#GETTING_DATA": "still calculating",
  "#NAME?": "functions not known",
  "#SPILL!": "no room",
};

export const noResultOf = (shown: Cell): NoResultReason | undefined => (isCellError(shown) ? NO_RESULT[shown.error] : undefined);

/** No two results that a person takes for the same are further apart, as parts of the larger; differences of readings keep some noise of their own. */
const SHARE = 1e-9;
const NOISE = 1e-12;

/** Whether a cell shows what its formula gives. A reference to a blank cell shows as 0; LibreOffice shows a fault alone as text. */
export function isSameResult(right: Cell, shown: Cell): boolean {
  if (right === null || right === undefined) return isBlank(shown) || shown === 0;
  if (isBlank(right)) return isBlank(shown);
  if (isCellError(right)) return isCellError(shown) || (typeof shown === "string" && shown.startsWith(CHECK_PREFIX));
  if (typeof right === "number" && typeof shown === "number") {
    return Math.abs(right - shown) <= Math.max(SHARE * Math.max(Math.abs(right), Math.abs(shown)), NOISE);
  }
  return right === shown;
}
