import { parseA1Ref, parseStructRef } from "@borgar/fx";
import { type CellAddress, type CellArea, isIn } from "../workbook/address.ts";
import { partOfTable } from "../workbook/table-references.ts";
import { type AstExpression, type Places, parseFormula, references } from "./parse.ts";
import { NO_CELLS, type WorkbookCells } from "./workbook-cells.ts";

/** The formula needs something that this reader does not know; its value is unknown, not wrong. */
export class CannotTell {
  constructor(readonly why: string) {}
}

export interface FormulaContext {
  book: WorkbookCells;
  /** Sheet on which the formula stands, for references that name none. */
  sheet: string;
  /** Its cell, for references to its own row or column. */
  cell?: Pick<CellAddress, "row" | "column"> | undefined;
  /** Where its references lead, if its tree is that of another formula of its shape. */
  places?: Places | undefined;
}

export const NOWHERE: FormulaContext = { book: NO_CELLS, sheet: "" };

/** What a name stands for, to be worked out where it was given: the same for every formula that uses it. */
export interface NamedPart {
  key: string;
  tree: AstExpression;
  context: FormulaContext;
}

/** A name of the workbook or of the sheet, or a table's name, which stands for its data. */
export function named(text: string, context: FormulaContext): NamedPart | CellArea | CannotTell {
  const { context: [scope = context.sheet, ...others] = [], name: label } = (parseA1Ref(text) ?? {}) as { context?: string[]; name?: string };
  if (label === undefined || others.length > 0) return new CannotTell(`the name ${text} leads out of the workbook`);
  const { book } = context;
  const found = book.name(label, scope);
  if (!found) return book.table(label) ? inTable(`${label}[]`, context) : new CannotTell(`the name ${text} is not known`);
  const tree = parseFormula(found.formula);
  if (!tree) return new CannotTell(`what the name ${text} stands for cannot be read`);
  if (!references(tree).every(isFixed)) return new CannotTell(`what the name ${text} stands for moves with the formula that uses it`);
  return { key: `${found.sheet ?? ""}!${label.toLowerCase()}`, tree, context: { book, sheet: found.sheet ?? "" } };
}

/** References with a sheet and a `$` before every end mean the same cells everywhere; names are followed in their turn. */
function isFixed(node: AstExpression): boolean {
  const { value, kind } = node as unknown as { value: string; kind: string };
  if (kind === "name") return true;
  if (kind === "table") return parseStructRef(value)?.table !== "" && !/@|#this row/i.test(value);
  const reference = parseA1Ref(value);
  if (!reference || !("range" in reference) || !reference.context?.length) return false;
  const { top, left, bottom, right, $top, $left, $bottom, $right } = reference.range;
  const held = (end: number | null | undefined, fixed: boolean | null | undefined) => end === null || end === undefined || fixed === true;
  return held(top, $top) && held(left, $left) && held(bottom, $bottom) && held(right, $right);
}

/** `Limits[Upper]`, `[@Upper]`, `Limits[[#This Row],[Lower]:[Upper]]`: the cells of the table. */
export function inTable(text: string, { book, sheet, cell }: FormulaContext): CellArea | CannotTell {
  const reference = parseStructRef(text);
  if (!reference) return new CannotTell(`the reference ${text} cannot be read`);
  const table = reference.table ? book.table(reference.table) : cell && tableAround(book, sheet, cell);
  if (!table) return new CannotTell(reference.table ? `the table ${reference.table} is not known` : `${text} stands in no table that is known`);
  const part = partOfTable(table, reference, cell?.row);
  if ("why" in part) return new CannotTell(`the formula ${part.why}`);
  return { sheet: table.sheet, ...part };
}

const tableAround = (book: WorkbookCells, sheet: string, { row, column }: { row: number; column: number }) =>
  book.tables.find((table) => table.sheet.toLowerCase() === sheet.toLowerCase() && isIn({ row, column }, table.area));
