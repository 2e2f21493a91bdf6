import { areaOf, type CellArea } from "../../workbook/address.ts";
import type { Abilities, AbilityNotes, SheetHost } from "../../workbook/port.ts";
import { hiddenSheet, noSheet } from "../../workbook/refusals.ts";
import { asHostRefusal, makeEdit, type RunExcel, type UndoableEdit } from "./change.ts";
import { hasMarks, replaceMarks } from "./marks.ts";
import { readAll } from "./read.ts";
import { addSheets, isOfPrinting } from "./sheets.ts";
import { loadText, storeText } from "./storage.ts";
import { firstPicture, insertPicture, write } from "./write.ts";

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
  const refuse = (error: unknown): never => {
    throw asHostRefusal(error);
  };
  const asked: RunExcel = (batch) => run(batch).catch(refuse);
  // What is kept is read, changed and put back as one text: two at a time would lose what one of them put there.
  let turn: Promise<unknown> = Promise.resolve();
  const inTurn = <Result>(prepare: (context: Excel.RequestContext) => Promise<UndoableEdit<Result>>): Promise<Result> => {
    const done = turn.then(() => makeEdit(run, prepare));
    turn = done.catch(() => {});
    return done;
  };
  return {
    abilities: EXCEL_ABILITIES,
    read: () => readAll(run).catch(refuse),
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
    firstPicture: (sheet) => asked((context) => firstPicture(context, sheet)),
    mark: async (marks) => void (await inTurn((context) => replaceMarks(context, marks))),
    unmark: () => inTurn((context) => replaceMarks(context, [])),
    hasMarks: () => asked((context) => hasMarks(context)),
    watch: (changed) =>
      asked(async (context) => {
        let watching = true;
        const { worksheets } = context.workbook;
        const tell = async () => {
          if (watching) changed();
        };
        // A change is told before our functions have answered it; what they answer comes with the calculation.
        const watches = [worksheets.onChanged.add(tell), worksheets.onCalculated.add(tell)];
        await context.sync();
        return () => {
          watching = false;
          for (const watch of watches) {
            watch.remove();
            // Nobody waits for the end of a watch; if Excel is gone by then, so is the watch.
            watch.context.sync().catch(() => {});
          }
        };
      }),
    loadText: (key) => asked((context) => loadText(context, key)),
    storeText: (key, value) => inTurn((context) => storeText(context, key, value)),
  };
}

async function selection(context: Excel.RequestContext): Promise<CellArea> {
  const range = context.workbook.getSelectedRange();
  range.load("rowIndex,columnIndex,rowCount,columnCount,worksheet/name");
  await context.sync();
  return { sheet: range.worksheet.name, row: range.rowIndex, column: range.columnIndex, rows: range.rowCount, columns: range.columnCount };
}
