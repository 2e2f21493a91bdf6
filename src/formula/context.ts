import type { CellAddress } from "../workbook/address.ts";
import type { Places } from "./read.ts";
import { type Book, EMPTY_BOOK } from "./workbook-cells.ts";

/** The formula needs something that this reader does not know; its value is unknown, not wrong. */
export class CannotTell {
  constructor(readonly why: string) {}
}

export interface FormulaContext {
  book: Book;
  /** Sheet on which the formula stands, for references that name none. */
  sheet: string;
  /** Its cell, for references to its own row or column. */
  cell?: Pick<CellAddress, "row" | "column"> | undefined;
  /** Where its references lead, if its tree is that of another formula of its shape. */
  places?: Places | undefined;
}

export const NOWHERE: FormulaContext = { book: EMPTY_BOOK, sheet: "" };
