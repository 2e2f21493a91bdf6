import type { Cell } from "../../core/cell.ts";
import { areaOf, type CellArea } from "../../workbook/address.ts";
import type { Abilities, AbilityNotes, NameSnapshot, SheetHost, SheetSnapshot, TableSnapshot, WorkbookSnapshot } from "../../workbook/port.ts";
import { hiddenSheet, noSheet } from "../../workbook/refusals.ts";
import { asHostRefusal, makeEdit, type RunExcel, type UndoableEdit } from "./change.ts";
import { replaceMarks } from "./marks.ts";
import { addSheets, isOfPrinting } from "./sheets.ts";
import { loadText, storeText } from "./storage.ts";
import { insertPicture, write } from "./write.ts";

/**
 * Waits while a cell is being typed into rather than failing. Excel makes one undo step of each sync
 * that changes something, so every change is made in one sync.
 */
const runExcel: RunExcel = (batch) => Excel.run({ delayForCellEdit: true }, batch);

export const EXCEL_ABILITIES: Abilities = {
  "other names": "yes",
  tables: "yes",
  styles: "yes",
  "print set-up": "yes",
  pictures: "yes",
  undo: "yes",
  protection: "yes",
  "active cell": "yes",
};

export const EXCEL_NOTES: AbilityNotes = {
  "print set-up": "left out where Excel refuses it, as without a printer",
  pictures: "PNG, with a name and alternative text",
  undo: "one step, with each sync that changes (not proven); Excel says how many are kept",
  "all or nothing": "what was done is taken back by a second look; if Excel does not let it, the sentence lists the cells that changed and those that did not",
};

/** The workbook that is open in Excel. */
export function excelHost(run: RunExcel = runExcel): SheetHost {
  const asked: RunExcel = async (batch) => {
    try {
      return await run(batch);
    } catch (error) {
      throw asHostRefusal(error);
    }
  };
  // What is kept is read, changed and put back as one text: two at a time would lose what one of them put there.
  let turn: Promise<unknown> = Promise.resolve();
  const inTurn = <Result>(prepare: (context: Excel.RequestContext) => Promise<UndoableEdit<Result>>): Promise<Result> => {
    const done = turn.then(() => makeEdit(run, prepare));
    turn = done.catch(() => {});
    return done;
  };
  return {
    abilities: EXCEL_ABILITIES,
    read: () => asked(readWorkbook),
    select: (place) =>
      asked(async (context) => {
        const { sheet: name, row, column, rows, columns } = areaOf(place);
        const sheet = context.workbook.worksheets.getItemOrNullObject(name);
        sheet.load("visibility");
        await context.sync();
        if (sheet.isNullObject) throw noSheet(name);
        if (sheet.visibility !== "Visible") throw hiddenSheet(name);
        sheet.activate();
        sheet.getRangeByIndexes(row, column, rows, columns).select();
        await context.sync();
      }),
    selection: () => asked(selection),
    async addSheets(added) {
      try {
        await makeEdit(run, (context) => addSheets(context, added));
      } catch (error) {
        if (!isOfPrinting(error)) throw error;
        await makeEdit(run, (context) => addSheets(context, added, false));
      }
    },
    write: (edits) => makeEdit(run, (context) => write(context, edits)),
    insertPicture: (corner, picture) => makeEdit(run, (context) => insertPicture(context, corner, picture)),
    mark: async (marks) => void (await inTurn((context) => replaceMarks(context, marks))),
    unmark: () => inTurn((context) => replaceMarks(context, [])),
    watch: (changed) =>
      asked(async (context) => {
        let watching = true;
        const watch = context.workbook.worksheets.onChanged.add(async () => {
          if (watching) changed();
        });
        await context.sync();
        return () => {
          watching = false;
          watch.remove();
          // Nobody waits for the end of a watch; if Excel is gone by then, so is the watch.
          watch.context.sync().catch(() => {});
        };
      }),
    loadText: (key) => asked((context) => loadText(context, key)),
    storeText: (key, value) => inTurn((context) => storeText(context, key, value)),
  };
}

/** Two syncs whatever the size: the sheets, then everything on them; a third where something may have spilled. */
async function readWorkbook(context: Excel.RequestContext): Promise<WorkbookSnapshot> {
  const { workbook } = context;
  const { worksheets } = workbook;
  workbook.load("name");
  worksheets.load("items/name");
  askForNames(workbook);
  await context.sync();
  const called = askForPlaces(workbook, worksheets.items);
  const used = worksheets.items.map((sheet) => {
    // Cells with content only: formats alone can reach down to the last row of a sheet.
    const range = sheet.getUsedRangeOrNullObject(true);
    range.load("rowIndex,columnIndex,values,valueTypes,formulas");
    return { sheet, range };
  });
  await context.sync();
  const sheets = used.map(({ sheet, range }) => snapshotOf(sheet.name, range));
  await takeOffSpilled(
    context,
    used.map(({ sheet }) => sheet),
    sheets,
  );
  return { name: workbook.name, sheets, names: called.names(), tables: called.tables() };
}

function snapshotOf(name: string, range: Excel.Range): SheetSnapshot {
  if (range.isNullObject) return { name, row: 0, column: 0, values: [], formulas: [] };
  const { rowIndex: row, columnIndex: column, values: raw, valueTypes: types, formulas: written } = range;
  const values = raw.map((line, r) => line.map((value, c) => cellOf(value, types[r]![c]!)));
  const formulas = written.map((line, r) => line.map((text, c) => formulaOf(text, raw[r]![c])));
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

async function selection(context: Excel.RequestContext): Promise<CellArea> {
  const range = context.workbook.getSelectedRange();
  range.load("rowIndex,columnIndex,rowCount,columnCount,worksheet/name");
  await context.sync();
  return { sheet: range.worksheet.name, row: range.rowIndex, column: range.columnIndex, rows: range.rowCount, columns: range.columnCount };
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
