import { LAYOUT_SHEET, layoutInCells } from "../workbook/layout-sheet.ts";
import { LAYOUT_ON_SHEET } from "../workbook/storage.ts";
import type { WorkbookFile } from "./model.ts";

/** A workbook as it was read, without the sheet on which we keep its layout: that is one of the texts that it keeps. */
export function withoutLayoutSheet(book: WorkbookFile): WorkbookFile {
  const at = book.sheets.findIndex(({ name }) => name === LAYOUT_SHEET);
  if (at < 0 || book.sheets.length === 1) return book;
  const column = book.sheets[at]!.cells.filter((cell) => cell.column === 0 && cell.formula === undefined).map(({ value }) => value);
  const layout = layoutInCells(LAYOUT_SHEET, column);
  if (layout === undefined) return book;
  const moved = (sheet: number): number => (sheet > at ? sheet - 1 : sheet);
  return {
    ...book,
    sheets: book.sheets.filter((_, i) => i !== at),
    names: book.names.filter(({ sheet }) => sheet !== at).map((name) => (name.sheet === undefined ? name : { ...name, sheet: moved(name.sheet) })),
    tables: book.tables.filter(({ sheet }) => sheet !== at).map((table) => ({ ...table, sheet: moved(table.sheet) })),
    storedTexts: new Map([...book.storedTexts, [LAYOUT_ON_SHEET, layout]]),
  };
}
