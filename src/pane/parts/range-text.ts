import { parseA1Ref } from "@borgar/fx";
import type { WorkbookCells } from "../../formula/workbook-cells.ts";
import type { PlanInput } from "../../plan/inputs.ts";
import type { CellArea } from "../../workbook/address.ts";

/** What somebody typed or took into a field, or the sentence that says why it cannot be read. */
export type ParsedInput<T> = { given: T } | { sentence: string };

/** Whole columns and the like are taken as far as the sheet's content goes. */
const LARGEST = 10_000;

export function readArea(text: string, book: WorkbookCells): ParsedInput<CellArea> {
  const reference = parseA1Ref(text.trim());
  if (!reference || !("range" in reference)) return { sentence: `${text.trim()} is no range: it must be one such as Bores!C4:D6` };
  const named = reference.context?.at(-1);
  const page = named === undefined ? (book.sheets.length === 1 ? book.sheets[0] : undefined) : book.sheet(named);
  if (!page)
    return { sentence: named === undefined ? `say on which sheet ${text.trim()} is, as in Bores!C4:D6` : `there is no sheet ${named} in this workbook` };
  const { top, left, bottom, right } = reference.range;
  const area = { sheet: page.name, row: top ?? 0, column: left ?? 0 };
  const within = { bottom: page.row + page.values.length - 1, right: page.column + (page.values[0]?.length ?? 0) - 1 };
  const size = (lastRow: number, lastColumn: number) => ({ rows: lastRow - area.row + 1, columns: lastColumn - area.column + 1 });
  const whole = size(bottom ?? Number.POSITIVE_INFINITY, right ?? Number.POSITIVE_INFINITY);
  const { rows, columns } =
    whole.rows * whole.columns <= LARGEST ? whole : size(Math.min(bottom ?? within.bottom, within.bottom), Math.min(right ?? within.right, within.right));
  if (rows < 1 || columns < 1) return { sentence: `there is nothing in ${text.trim()}` };
  if (rows * columns > LARGEST) return { sentence: `${text.trim()} holds more than ${LARGEST} cells: take the readings alone` };
  return { given: { ...area, rows, columns } };
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;
const DECIMAL_COMMA = /^[+-]?\d+,\d+$/;

/** A range, a number, or numbers one after the other; nothing at all is a blank. */
export function readGiven(text: string, book: WorkbookCells): ParsedInput<PlanInput> {
  const typed = text.trim();
  if (typed === "") return { given: null };
  const parts = typed.split(/[;\s]+|,\s+/).filter(Boolean);
  const comma = parts.find((part) => DECIMAL_COMMA.test(part));
  if (comma) return { sentence: `${comma} has a decimal comma, which is not read here: type ${comma.replace(",", ".")}` };
  if (!parts.every((part) => NUMBER.test(part))) return readArea(typed, book);
  const numbers = parts.map(Number);
  return { given: numbers.length === 1 ? numbers[0]! : [numbers] };
}
