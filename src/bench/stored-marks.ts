import type { Model } from "@odoo/o-spreadsheet";
import { storedTexts } from "../hosts/bench/host.ts";
import { type MarkedCell, rememberedMarks } from "../hosts/bench/plugins.ts";
import { MARKED, type StoredMark, storedMarks } from "../workbook/storage.ts";

/** The texts kept in a workbook, with the memory of its marks among them. */
export function withMarks(model: Model): ReadonlyMap<string, string> {
  const texts = new Map(storedTexts(model));
  const marks = rememberedMarks(model).map(({ sheetId, col, row, fill, earlier }): StoredMark => {
    return { cell: { sheet: model.getters.getSheetName(sheetId), row, column: col }, before: earlier || null, mark: fill };
  });
  if (marks.length > 0) texts.set(MARKED, JSON.stringify(marks));
  return texts;
}

/** Takes the memory of marks out of the texts kept in a file, for the grid. What cannot be read is no memory. */
export function takeMarks(texts: Map<string, string>, sheetIds: ReadonlyMap<string, string>): MarkedCell[] {
  const marks = storedMarks(texts);
  texts.delete(MARKED);
  return marks.flatMap(({ cell, before, mark }) => {
    const sheetId = sheetIds.get(cell.sheet);
    return sheetId === undefined ? [] : [{ sheetId, col: cell.column, row: cell.row, fill: mark, earlier: before ?? "" }];
  });
}
