import type { Cell } from "../core/cell.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import type { MappedRange } from "./mapping.ts";

type Place = Pick<MappedRange, "sheet" | "row" | "column">;

/** How many headings tell a range from others. */
const MOST_SIGNS = 60;

const signOf = (cell: Cell): string => (typeof cell === "string" ? foldedHeading(cell).slice(0, 200) : typeof cell === "number" ? String(cell) : "");

/** The headings of a range, each by its distance from the first number. */
export function signatureOf(
  book: WorkbookCells,
  { sheet, row, column, rows, columns, rowHeads, columnHeads }: Omit<MappedRange, "signature">,
): MappedRange["signature"] {
  const signs: MappedRange["signature"] = [];
  const add = (r: number, c: number): void => {
    const text = signOf(book.value({ sheet, row: r, column: c }));
    if (text !== "" && signs.length < MOST_SIGNS) signs.push([r - row, c - column, text]);
  };
  for (const { at } of columnHeads) for (let c = column; c < column + columns; c++) add(at, c);
  // Without headings above, those beside have to do; below headings they are part of the data.
  if (columnHeads.length === 0) for (const { at } of rowHeads) for (let r = row; r < row + rows; r++) add(r, at);
  return signs;
}

/**
 * The range where it stands now: where it was saved, or where the same headings have been moved to.
 * Numbers under other headings are never taken for those that were meant.
 */
export function locate(book: WorkbookCells, range: MappedRange): MappedRange | { lost: string } {
  const page = book.sheet(range.sheet);
  if (!page) return { lost: `the saved layout speaks of a sheet "${range.sheet}" that is not there` };
  if (range.signature.length === 0 || fits(book, range, range)) return range;
  const found: Place[] = [];
  const [dr, dc, text] = range.signature[0]!;
  for (const [r, line] of page.values.entries()) {
    for (const [c, cell] of line.entries()) {
      const place = { sheet: range.sheet, row: page.row + r - dr, column: page.column + c - dc };
      if (signOf(cell) === text && place.row >= 0 && place.column >= 0 && fits(book, range, place)) found.push(place);
    }
  }
  if (found.length === 1) return moved(range, found[0]!);
  return { lost: "the headings here are no longer those for which the layout was saved: say again what stands here" };
}

const fits = (book: WorkbookCells, { signature }: MappedRange, { sheet, row, column }: Place): boolean =>
  signature.every(([r, c, text]) => signOf(book.value({ sheet, row: row + r, column: column + c })) === text);

function moved(range: MappedRange, { row, column }: Place): MappedRange {
  const [down, right] = [row - range.row, column - range.column];
  return {
    ...range,
    row,
    column,
    rowHeads: range.rowHeads.map((line) => ({ ...line, at: line.at + right })),
    columnHeads: range.columnHeads.map((line) => ({ ...line, at: line.at + down })),
    without: { rows: range.without.rows.map((one) => one + down), columns: range.without.columns.map((one) => one + right) },
  };
}
