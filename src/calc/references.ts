import { parseA1Ref, parseStructRef } from "@borgar/fx/xlsx";
import { type Edges, edgesAround } from "../formula/template.ts";
import { columnLetters, isIn, MOST_COLUMNS, MOST_ROWS } from "../workbook/address.ts";
import { partOfTable } from "../workbook/table-references.ts";
import type { Table, WorkbookFile } from "../xlsx/model.ts";

/** A formula that the grid cannot calculate as other sheets do. `code` is what its cell shows; the message completes "this formula …". */
export class Untranslatable extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }

  get sentence(): string {
    return `This formula ${this.message}.`;
  }
}

/** Where a formula stands: its sheet by place in the workbook, its row and column from 0. */
export interface Site {
  sheet: number;
  row: number;
  column: number;
}

/** What a reference covers. Whole columns and rows go to the sheet's end. */
export interface SheetRectangle extends Edges {
  sheet: number;
}

export const isOneCell = ({ top, bottom, left, right }: Edges): boolean => top === bottom && left === right;

/** `A1:B3` or `Sheet!A1` as an area; `undefined` when the text is no reference of that kind. */
export function areaOfReference(text: string, site: Site, book: WorkbookFile): SheetRectangle | undefined {
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
export function areaOfTable(text: string, site: Site, book: WorkbookFile): SheetRectangle {
  const parsed = parseStructRef(text);
  if (!parsed) throw new Untranslatable("#REF!", `has a reference to a table that cannot be read (${text})`);
  const table = parsed.table ? book.tables.find(({ name }) => name.toLowerCase() === parsed.table!.toLowerCase()) : tableAt(site, book);
  if (!table) throw new Untranslatable("#REF!", `names a table that the workbook does not have (${parsed.table})`);
  const part = partOfTable(table, parsed, site.row);
  if ("why" in part) throw new Untranslatable(part.code, part.why);
  const { row: top, column: left, rows, columns } = part;
  return { sheet: table.sheet, top, left, bottom: top + rows - 1, right: left + columns - 1 };
}

const tableAt = ({ sheet, row, column }: Site, { tables }: WorkbookFile): Table | undefined =>
  tables.find((table) => table.sheet === sheet && isIn({ row, column }, table.area));

/**
 * The one cell that stands for a range where one value is wanted, as sheets choose it: that in the
 * formula's own row of a column, or own column of a row ("implicit intersection").
 */
export function intersectWith(area: SheetRectangle, { row, column }: Site): SheetRectangle | undefined {
  if (isOneCell(area)) return area;
  if (area.left === area.right && row >= area.top && row <= area.bottom) return { ...area, top: row, bottom: row };
  if (area.top === area.bottom && column >= area.left && column <= area.right) return { ...area, left: column, right: column };
  return undefined;
}

/** The cells that two areas have in common. */
export function commonArea(a: SheetRectangle, b: SheetRectangle): SheetRectangle | undefined {
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
export function areaAround(a: SheetRectangle, b: SheetRectangle): SheetRectangle | undefined {
  if (a.sheet !== b.sheet) return undefined;
  return { sheet: a.sheet, ...edgesAround(a, b) };
}

/** `B2` or `B2:C5`. */
function areaName({ top, left, bottom, right }: Edges): string {
  const first = `${columnLetters(left)}${top + 1}`;
  return top === bottom && left === right ? first : `${first}:${columnLetters(right)}${bottom + 1}`;
}

/** How far beyond what a sheet holds a reference makes it larger. References that go on are cut: there is nothing. */
const REACH = { rows: 2000, columns: 100 };

interface GridSheet {
  /** The sheet's name in the grid. */
  name: string;
  rows: number;
  columns: number;
  readonly mostRows: number;
  readonly mostColumns: number;
}

/** The grid's sheets: their names and how large they have to be. It visits every cell, so none larger than needed. */
export class GridSheets {
  readonly all: readonly GridSheet[];
  /** A reference was cut since this was last set to false. */
  cut = false;

  constructor({ sheets }: WorkbookFile) {
    const taken = new Set(sheets.map((sheet) => sheet.name.toLowerCase()));
    this.all = sheets.map(({ name, cells }) => {
      let rows = 1;
      let columns = 1;
      for (const { row, column, array } of cells) {
        rows = Math.max(rows, row + (array?.rows ?? 1));
        columns = Math.max(columns, column + (array?.columns ?? 1));
      }
      return { name: engineSheetName(name, taken), rows, columns, mostRows: rows + REACH.rows, mostColumns: columns + REACH.columns };
    });
  }

  /** Makes room for results below and beside what is there. */
  widen(rows: number, columns: number): void {
    for (const grid of this.all) {
      grid.rows += rows;
      grid.columns += columns;
    }
  }

  /** True when the area lies where the sheet is or can be made to reach. */
  holds({ sheet, bottom, right }: SheetRectangle): boolean {
    const { mostRows, mostColumns } = this.all[sheet]!;
    return bottom < mostRows && right < mostColumns;
  }

  /** What is left of an area that goes on beyond the grid. */
  cutTo({ sheet, top, left, bottom, right }: SheetRectangle): SheetRectangle {
    const { rows, columns } = this.all[sheet]!;
    return { sheet, top, left, bottom: Math.max(top, Math.min(bottom, rows - 1)), right: Math.max(left, Math.min(right, columns - 1)) };
  }

  /** An area as the grid names it in a formula on the sheet `home`, which looks into it unless its `place` is enough. */
  name(area: SheetRectangle, home: number, _place = false): string {
    const grid = this.all[area.sheet]!;
    if (this.holds(area)) {
      grid.rows = Math.max(grid.rows, area.bottom + 1);
      grid.columns = Math.max(grid.columns, area.right + 1);
    } else this.cut = true;
    const range = areaName(this.holds(area) ? area : this.cutTo(area));
    return area.sheet === home ? range : `'${grid.name}'!${range}`;
  }
}

/** The grid cannot read a sheet's name with an apostrophe in it. */
function engineSheetName(name: string, taken: Set<string>): string {
  if (!name.includes("'")) return name;
  const bare = name.replaceAll("'", "’");
  let unused = bare;
  for (let n = 2; taken.has(unused.toLowerCase()); n++) unused = `${bare} ${n}`;
  taken.add(unused.toLowerCase());
  return unused;
}
