import { parseA1Ref, parseStructRef } from "@borgar/fx/xlsx";
import { around, type Box, columnLetters, MOST_COLUMNS, MOST_ROWS } from "../workbook/address.ts";
import { partOfTable } from "../workbook/table-references.ts";
import type { Table, WorkbookFile } from "../xlsx/model.ts";
import { Untranslatable } from "./untranslatable.ts";

/** Where a formula stands: its sheet by place in the workbook, its row and column from 0. */
export interface Site {
  sheet: number;
  row: number;
  column: number;
}

/** What a reference covers. Whole columns and rows go to the sheet's end. */
export interface Area extends Box {
  sheet: number;
}

export const isOneCell = ({ top, bottom, left, right }: Box): boolean => top === bottom && left === right;

/** `A1:B3` or `Sheet!A1` as an area; `undefined` when the text is no reference of that kind. */
export function areaOfReference(text: string, site: Site, book: WorkbookFile): Area | undefined {
  const parsed = parseA1Ref(text);
  if (!parsed || !("range" in parsed) || !parsed.range) return undefined;
  const { top, left, bottom, right } = parsed.range;
  return {
    sheet: sheetOf(parsed.workbookName, parsed.sheetName, site, book),
    top: top ?? 0,
    left: left ?? 0,
    bottom: bottom ?? MOST_ROWS - 1,
    right: right ?? MOST_COLUMNS - 1,
  };
}

/** The sheet that a reference names, by its place; that of the formula when it names none. */
export function sheetOf(workbook: string | undefined, name: string | undefined, site: Site, book: WorkbookFile): number {
  // Files name the workbook itself with the number 0.
  if (workbook && workbook !== "0") throw new Untranslatable("#REF!", "takes a value from another workbook, which is not read");
  if (!name) return site.sheet;
  const place = book.sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  if (place >= 0) return place;
  if (name.includes(":")) throw new Untranslatable("#REF!", `takes values from a row of sheets (${name}), which is not calculated here`);
  throw new Untranslatable("#REF!", `names a sheet that the workbook does not have (${name})`);
}

/** `Readings[Bore]`, `Readings[[#This Row],[Bore]]` and the like as an area. */
export function areaOfTable(text: string, site: Site, book: WorkbookFile): Area {
  const parsed = parseStructRef(text);
  if (!parsed) throw new Untranslatable("#REF!", `has a reference to a table that cannot be read (${text})`);
  const table = parsed.table ? book.tables.find(({ name }) => name.toLowerCase() === parsed.table!.toLowerCase()) : tableAt(site, book);
  if (!table) throw new Untranslatable("#REF!", `names a table that the workbook does not have (${parsed.table})`);
  const part = partOfTable(table, parsed, site.row);
  if ("why" in part) throw new Untranslatable(part.code, part.why);
  return { sheet: table.sheet, ...part };
}

const tableAt = ({ sheet, row, column }: Site, { tables }: WorkbookFile): Table | undefined =>
  tables.find((table) => table.sheet === sheet && row >= table.top && row <= table.bottom && column >= table.left && column <= table.right);

/**
 * The one cell that stands for a range where one value is wanted, as sheets choose it: that in the
 * formula's own row of a column, or own column of a row ("implicit intersection").
 */
export function intersectWith(area: Area, { row, column }: Site): Area | undefined {
  if (isOneCell(area)) return area;
  if (area.left === area.right && row >= area.top && row <= area.bottom) return { ...area, top: row, bottom: row };
  if (area.top === area.bottom && column >= area.left && column <= area.right) return { ...area, left: column, right: column };
  return undefined;
}

/** The cells that two areas have in common. */
export function commonArea(a: Area, b: Area): Area | undefined {
  const common = {
    sheet: a.sheet,
    top: Math.max(a.top, b.top),
    left: Math.max(a.left, b.left),
    bottom: Math.min(a.bottom, b.bottom),
    right: Math.min(a.right, b.right),
  };
  return a.sheet === b.sheet && common.top <= common.bottom && common.left <= common.right ? common : undefined;
}

/** The smallest area around two. */
export function areaAround(a: Area, b: Area): Area | undefined {
  if (a.sheet !== b.sheet) return undefined;
  return { sheet: a.sheet, ...around(a, b) };
}

/** `B2` or `B2:C5`. */
export function areaName({ top, left, bottom, right }: Box): string {
  const first = `${columnLetters(left)}${top + 1}`;
  return top === bottom && left === right ? first : `${first}:${columnLetters(right)}${bottom + 1}`;
}
