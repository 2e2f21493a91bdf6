import { type Cell, isBlank, isCellError } from "../../src/core/cell.ts";
import { cellName, columnOf } from "../../src/workbook/address.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import type { CellFile, WorkbookFile } from "../../src/xlsx/model.ts";
import { Defect } from "./outcome.ts";

/** A cell that was changed: its sheet by place. */
export interface ChangedCell {
  sheet: number;
  row: number;
  column: number;
}

interface Case {
  before: WorkbookFile;
  after: WorkbookFile;
  places: readonly ChangedCell[];
  was: WorkbookSnapshot;
  is: WorkbookSnapshot;
}

/** A formula of which nothing in its reach was changed keeps its value to the last digit. */
export function expectUntouched({ before, after, places, was, is }: Case): void {
  const touched = reached(before, after, places, [was, is]);
  for (const [sheet, { cells, name }] of after.sheets.entries()) {
    for (const cell of cells) {
      if (cell.formula === undefined || touched.has(key(sheet, cell))) continue;
      const [old, now] = [was, is].map(({ sheets }) => JSON.stringify(sheets[sheet]!.values[cell.row]?.[cell.column]));
      if (old !== now) throw new Defect(`${name}!${cellName(cell)} =${cell.formula.slice(0, 200)} was not touched, was ${old} and is ${now}`);
    }
  }
}

const key = (sheet: number, { row, column }: { row: number; column: number }): string => `${sheet}!${row},${column}`;

/** The changed cells and all that may depend on them; what cannot be followed counts as dependent. */
function reached(before: WorkbookFile, after: WorkbookFile, places: readonly ChangedCell[], snapshots: readonly WorkbookSnapshot[]): Set<string> {
  const touched = new Set(places.map((place) => key(place.sheet, place)));
  const formulas = [before, after].flatMap(({ sheets }) =>
    sheets.flatMap(({ cells }, sheet) =>
      cells.filter(({ formula }) => formula !== undefined).map((cell) => ({ sheet, cell, areas: areasOf(cell.formula!, sheet, after) })),
    ),
  );
  const spilled = snapshots.map(({ sheets }) => sheets.map(({ values }, sheet) => spilledPlaces(values, sheet, [before, after])));
  // A function that gives a block fills the blank cells beside it also where the file does not mark its formula as one that does.
  for (const { sheet, cell } of formulas) if (touched.has(key(sheet, cell))) for (const one of spilled) for (const place of one[sheet]!) touched.add(place);
  // Whatever stands on the sheet may have got into the way of a block there, or out of it.
  const sheets = new Set(places.map(({ sheet }) => sheet));
  const hasBlocks = after.sheets.map((_, sheet) => snapshots.some(({ sheets: pages }, i) => spilled[i]![sheet]!.length > 0 || isCrowded(pages[sheet]!.values)));
  for (let grown = -1; grown !== touched.size; ) {
    grown = touched.size;
    for (const { sheet, cell, areas } of formulas) {
      const isBlock = cell.array !== undefined && sheets.has(sheet) && hasBlocks[sheet]!;
      if (!isBlock && areas !== undefined && !areas.some((area) => meets(area, touched))) continue;
      touched.add(key(sheet, cell));
      if (cell.array) for (const one of spilled) for (const place of one[sheet]!) touched.add(place);
      if (cell.array) sheets.add(sheet);
    }
  }
  return touched;
}

/** True when a block found no room on the sheet. */
const isCrowded = (values: readonly (readonly Cell[])[]): boolean => values.some((line) => line.some((cell) => isCellError(cell) && cell.error === "#SPILL!"));

function spilledPlaces(values: readonly (readonly Cell[])[], sheet: number, books: readonly WorkbookFile[]): string[] {
  const own = new Set(books.flatMap(({ sheets }) => sheets[sheet]!.cells.map((cell: CellFile) => key(sheet, cell))));
  return values.flatMap((line, row) =>
    line.flatMap((value, column) => (isBlank(value) || own.has(key(sheet, { row, column })) ? [] : [key(sheet, { row, column })])),
  );
}

interface Area {
  sheet: number;
  top: number;
  left: number;
  bottom: number;
  right: number;
}

const REFERENCE = /(?:'((?:[^']|'')+)'!|([A-Za-z_]\w*)!)?\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?/g;

/** What a formula refers to, or `undefined` where that cannot be told from plain references alone. */
function areasOf(formula: string, sheet: number, book: WorkbookFile): Area[] | undefined {
  const bare = formula.replaceAll(/"(?:[^"]|"")*"/g, '""');
  const areas: Area[] = [];
  const rest = bare.replaceAll(REFERENCE, (_, quoted: string | undefined, plain: string | undefined, left: string, top: string, right = left, bottom = top) => {
    const named = (quoted?.replaceAll("''", "'") ?? plain)?.toLowerCase();
    const on = named === undefined ? sheet : book.sheets.findIndex(({ name }) => name.toLowerCase() === named);
    const rows = [Number(top) - 1, Number(bottom) - 1];
    const columns = [columnOf(left), columnOf(right)];
    areas.push({ sheet: on, top: Math.min(...rows), bottom: Math.max(...rows), left: Math.min(...columns), right: Math.max(...columns) });
    return "";
  });
  // Names, tables, whole columns, spill references and operators on references are not followed.
  const odd = rest.replaceAll(/[A-Za-z_][\w.]*\(|\d+(?:\.\d+)?(?:e[+-]?\d+)?|\b(?:TRUE|FALSE)\b/g, "");
  return /[A-Za-z_#:[\]@$]/.test(odd) || /OFFSET|INDIRECT/.test(rest) ? undefined : areas;
}

function meets({ sheet, top, left, bottom, right }: Area, touched: ReadonlySet<string>): boolean {
  for (const place of touched) {
    const [, s, r, c] = /^(\d+)!(\d+),(\d+)$/.exec(place)!;
    if (Number(s) === sheet && Number(r) >= top && Number(r) <= bottom && Number(c) >= left && Number(c) <= right) return true;
  }
  return false;
}
