import type { Argument, Block, Cell } from "../core/cell.ts";
import { NAMESPACE, type Spec } from "../core/define.ts";
import { MOST_AXES } from "../core/inputs.ts";
import { cellsOf, type WorkbookCells } from "../formula/workbook-cells.ts";
import { type CellArea, cellName, placeName } from "../workbook/address.ts";
import type { PlannedContent } from "./placement.ts";

/** An input of a plan: a range that somebody picked in the workbook, or what was typed for it. */
export type PlanInput = CellArea | Block | Cell;

export const isArea = (given: PlanInput): given is CellArea => typeof given === "object" && given !== null && "rows" in given && "sheet" in given;

/** The input as a function takes it, with the cells of a range as they stand. */
export function argumentOf(book: WorkbookCells, given: PlanInput): Argument {
  if (!isArea(given)) return given;
  return given.rows === 1 && given.columns === 1 ? book.value(given) : book.block(given);
}

/** The input as a block of cells, whatever its size. */
export function blockOf(book: WorkbookCells, given: PlanInput): Block {
  const argument = argumentOf(book, given);
  return Array.isArray(argument) ? argument : [[argument]];
}

/** One bore as the arguments of a function of readings and axes, also where all its readings stand in one row. */
export function oneBore(book: WorkbookCells, readings: PlanInput): PlanInput[] {
  const block = blockOf(book, readings);
  // On one axis a row is read height by height.
  return block.length === 1 && block[0]!.length > MOST_AXES ? [readings, 1] : [readings];
}

/** The numbers among the cells of an input, where 0 stands for a blank cell as it does for every length. */
export const inputLengths = (book: WorkbookCells, given: PlanInput): (number | null)[] =>
  blockOf(book, given)
    .flat()
    .map((cell) => (typeof cell === "number" && cell !== 0 ? cell : null));

/** A reference as a formula on `sheet` needs it: `C4:D6`, or `'Bore book'!C4:H9` for another sheet. */
export function reference(area: CellArea, sheet: string): string {
  const first = area.sheet === sheet ? cellName(area) : placeName(area);
  return area.rows === 1 && area.columns === 1 ? first : `${first}:${cellName({ row: area.row + area.rows - 1, column: area.column + area.columns - 1 })}`;
}

/** A reference to each cell of a range, row by row. */
export const referencesTo = (area: CellArea, sheet: string): PlannedContent[] =>
  [...cellsOf(area)].map((cell) => ({ formula: `=${reference({ ...cell, rows: 1, columns: 1 }, sheet)}` }));

/** An argument of a formula: an input, or a piece of formula that stands for one. */
type Expression = PlanInput | { formula: string };

/** `=HATCH.NAME(…)` with these arguments, for a cell of `sheet`. */
export const formulaOf = (spec: Spec, inputs: readonly Expression[], sheet: string): string => `=${callOf(spec, inputs, sheet)}`;

/** The same without the sign in front, to stand inside another formula. Arguments left blank at the end are left out. */
export function callOf(spec: Spec, inputs: readonly Expression[], sheet: string): string {
  const texts = inputs.map((given) => expressionText(given, sheet));
  return `${NAMESPACE}.${spec.name}(${texts.slice(0, texts.findLastIndex(Boolean) + 1).join(", ")})`;
}

function expressionText(given: Expression, sheet: string): string {
  if (typeof given === "object" && given !== null && "formula" in given) return given.formula;
  if (isArea(given)) return reference(given, sheet);
  if (!Array.isArray(given)) return literal(given);
  return `{${given.map((line) => line.map((cell) => literal(cell) || '""').join(",")).join(";")}}`;
}

/** Small numbers are written out: an exponent is not read by every host. */
function literal(cell: Cell): string {
  if (typeof cell === "number") return /e/i.test(String(cell)) ? cell.toFixed(12).replace(/\.?0+$/, "") : String(cell);
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return typeof cell === "string" && cell.trim() !== "" ? `"${cell.replaceAll('"', '""')}"` : "";
}
