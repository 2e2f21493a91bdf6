import type { Cell } from "../../core/cell.ts";
import { layoutInCells } from "../../workbook/layout-sheet.ts";
import type { NameSnapshot, SheetSnapshot, TableSnapshot, WorkbookSnapshot } from "../../workbook/port.ts";
import { isTooMuch, type RunExcel } from "./change.ts";

/** Cells asked for at once where a workbook is too much for one answer; of 5 MB on the web (Microsoft, "Resource limits and performance optimization for Office Add-ins"). */
const CELLS_AT_ONCE = 20_000;
/** A part of fewer cells that is still too much holds something else than readings. */
const FEWEST = 300;

/** Everything at once; where that is more than Excel hands over, in parts, each half as large as one that was too large. */
export async function readAll(run: RunExcel): Promise<WorkbookSnapshot> {
  for (let cells = Number.POSITIVE_INFINITY; ; cells = cells === Number.POSITIVE_INFINITY ? CELLS_AT_ONCE : cells / 2) {
    try {
      return await run((context) => readWorkbook(context, cells));
    } catch (error) {
      if (!isTooMuch(error) || cells < FEWEST) throw error;
    }
  }
}

/**
 * Two syncs whatever the size: the sheets, then everything on them; a third where something may have
 * spilled. With `most` cells at once, one more that asks how large the sheets are, and then as many as it takes.
 */
async function readWorkbook(context: Excel.RequestContext, most: number): Promise<WorkbookSnapshot> {
  const { workbook } = context;
  const { worksheets } = workbook;
  workbook.load("name");
  worksheets.load("items/name");
  askForNames(workbook);
  await context.sync();
  const called = askForPlaces(workbook, worksheets.items);
  const isWhole = most === Number.POSITIVE_INFINITY;
  const used = worksheets.items.map((sheet) => {
    // Cells with content only: formats alone can reach down to the last row of a sheet.
    const range = sheet.getUsedRangeOrNullObject(true);
    range.load("rowIndex,columnIndex");
    if (isWhole) range.load("values,valueTypes,formulas");
    else range.load("rowCount,columnCount");
    return { sheet, range };
  });
  await context.sync();
  const read = isWhole ? used.map(({ range }) => [range]) : await partsOf(context, used, most);
  const sheets = used.map(({ sheet, range }, i) => snapshotOf(sheet.name, range, read[i]!));
  await takeOffSpilled(
    context,
    used.map(({ sheet }) => sheet),
    sheets,
  );
  return { name: workbook.name, sheets: sheets.filter((sheet) => !isLayoutSheet(sheet)), names: called.names(), tables: called.tables() };
}

const isLayoutSheet = ({ name, row, column, values }: SheetSnapshot): boolean =>
  row + column === 0 &&
  layoutInCells(
    name,
    values.map(([first]) => first ?? null),
  ) !== undefined;

/** The content of each sheet as blocks of rows, of no more than `most` cells in one sync. */
async function partsOf(context: Excel.RequestContext, used: readonly { sheet: Excel.Worksheet; range: Excel.Range }[], most: number): Promise<Excel.Range[][]> {
  const read: Excel.Range[][] = [];
  let asked = 0;
  for (const { sheet, range } of used) {
    const parts: Excel.Range[] = [];
    read.push(parts);
    if (range.isNullObject) continue;
    const { rowIndex, columnIndex, rowCount, columnCount } = range;
    const rows = Math.max(1, Math.floor(most / columnCount));
    for (let row = 0; row < rowCount; row += rows) {
      const height = Math.min(rows, rowCount - row);
      if (asked > 0 && asked + height * columnCount > most) {
        // eslint-disable-next-line office-addins/no-context-sync-in-loop -- one answer holds no more
        await context.sync();
        asked = 0;
      }
      const part = sheet.getRangeByIndexes(rowIndex + row, columnIndex, height, columnCount);
      part.load("values,valueTypes,formulas");
      parts.push(part);
      asked += height * columnCount;
    }
  }
  await context.sync();
  return read;
}

function snapshotOf(name: string, range: Excel.Range, parts: readonly Excel.Range[]): SheetSnapshot {
  if (range.isNullObject) return { name, row: 0, column: 0, values: [], formulas: [] };
  const { rowIndex: row, columnIndex: column } = range;
  const values: Cell[][] = [];
  const formulas: (string | null)[][] = [];
  for (const { values: raw, valueTypes: types, formulas: written } of parts) {
    for (const [r, line] of raw.entries()) values.push(line.map((value, c) => cellOf(value, types[r]![c]!)));
    for (const [r, line] of written.entries()) formulas.push(line.map((text, c) => formulaOf(text, raw[r]![c])));
  }
  return { name, row, column, values, formulas };
}

function cellOf(value: unknown, type: string): Cell {
  if (type === "Error") return { error: String(value) };
  if (type === "Empty" || value === null || value === undefined) return null;
  return value as Cell;
}

/** For a cell without a formula Excel repeats its value, which may be text that starts with `=`. */
function formulaOf(written: unknown, value: unknown): string | null {
  return typeof written === "string" && written.startsWith("=") && written !== value ? written : null;
}

/**
 * Excel may show an anchor's formula in the cells that it spills into as well. A formula equal to the
 * one above or beside it is either spilled or copied with fixed references: the first of each run is
 * asked how far it spills.
 */
async function takeOffSpilled(context: Excel.RequestContext, worksheets: readonly Excel.Worksheet[], sheets: readonly SheetSnapshot[]): Promise<void> {
  const asked = sheets.flatMap((sheet, index) =>
    runStarts(sheet).map(([r, c]) => {
      const range = worksheets[index]!.getCell(sheet.row + r, sheet.column + c).getSpillingToRangeOrNullObject();
      range.load("rowCount,columnCount");
      return { sheet, r, c, range };
    }),
  );
  if (asked.length === 0) return;
  await context.sync();
  for (const { sheet, r, c, range } of asked) {
    if (range.isNullObject) continue;
    for (let row = r; row < Math.min(r + range.rowCount, sheet.formulas.length); row++) {
      const line = sheet.formulas[row]!;
      for (let column = c; column < Math.min(c + range.columnCount, line.length); column++) if (row !== r || column !== c) line[column] = null;
    }
  }
}

/** Top left cells of runs of one and the same formula. */
function runStarts({ formulas }: SheetSnapshot): [number, number][] {
  const starts: [number, number][] = [];
  formulas.forEach((line, r) => {
    line.forEach((formula, c) => {
      if (formula === null || formula === line[c - 1] || formula === formulas[r - 1]?.[c]) return;
      if (formula === line[c + 1] || formula === formulas[r + 1]?.[c]) starts.push([r, c]);
    });
  });
  return starts;
}

/** What is asked of Excel about the names and tables of a workbook, to be read after the next sync. */
interface AskedNames {
  names(): NameSnapshot[];
  tables(): TableSnapshot[];
}

/** With the first sync: which tables there are, and what the names of the whole workbook stand for. */
function askForNames(workbook: Excel.Workbook): void {
  workbook.names.load("items/name,items/formula");
  workbook.tables.load("items/name,items/showHeaders,items/showTotals");
}

/** With the second sync: where the tables are, how their columns are called, and the names of single sheets. */
function askForPlaces(workbook: Excel.Workbook, sheets: readonly Excel.Worksheet[]): AskedNames {
  const tables = workbook.tables.items.map((table) => {
    const { columns, worksheet } = table;
    const range = table.getRange();
    range.load("rowIndex,columnIndex,rowCount,columnCount");
    columns.load("items/name");
    worksheet.load("name");
    return { table, range, columns, worksheet };
  });
  for (const { names } of sheets) names.load("items/name,items/formula");
  return {
    names: () => [
      ...workbook.names.items.flatMap((item) => nameOf(item)),
      ...sheets.flatMap(({ name, names }) => names.items.flatMap((item) => nameOf(item, name))),
    ],
    tables: () =>
      tables.map(({ table, range: { rowIndex, columnIndex, rowCount, columnCount }, columns, worksheet }) => ({
        name: table.name,
        sheet: worksheet.name,
        area: { row: rowIndex, column: columnIndex, rows: rowCount, columns: columnCount },
        headerRows: table.showHeaders ? 1 : 0,
        totalsRows: table.showTotals ? 1 : 0,
        columns: columns.items.map(({ name }) => name),
      })),
  };
}

/** A name that has lost what it stood for says so by an error instead of a formula. */
const nameOf = ({ name, formula }: Excel.NamedItem, sheet?: string): NameSnapshot[] =>
  typeof formula === "string" && formula.startsWith("=") ? [{ name, formula, ...(sheet === undefined ? {} : { sheet }) }] : [];
