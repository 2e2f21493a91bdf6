import * as engine from "@odoo/o-spreadsheet";
import { specs } from "../../src/functions/index.ts";
import { benchHost, fillAt, keptTexts } from "../../src/sheet/bench.ts";
import type { EnginePicture } from "../../src/sheet/bench-picture.ts";
import { extendEngine, type PluginEngine } from "../../src/sheet/bench-plugins.ts";
import { emptySheet } from "../../src/sheet/described.ts";
import { type FormulaEngine, registerFunctions } from "../../src/sheet/engine.ts";
import { typedText } from "../../src/sheet/engine-text.ts";
import { hostContract } from "./contract.ts";
import type { Called, ContractCell, ContractSheet, Stage } from "./stage.ts";
import { wornOnBench } from "./worn.ts";

console.debug = () => {};
// The engine is made for browsers, which all have this; Node has it from 21.
(Object as { groupBy?: unknown }).groupBy ??= <T>(items: Iterable<T>, keyOf: (item: T) => string) => {
  const groups: Record<string, T[]> = {};
  for (const item of items) {
    groups[keyOf(item)] ??= [];
    groups[keyOf(item)]!.push(item);
  }
  return groups;
};
registerFunctions(specs, engine as unknown as FormulaEngine);
extendEngine(engine as unknown as PluginEngine);

function content(cell: ContractCell): string {
  if (cell === null || cell === undefined) return "";
  if (typeof cell !== "object") return typedText(cell);
  if ("formula" in cell) return cell.formula;
  if ("date" in cell) return String(cell.date);
  return "error" in cell ? cell.error : "";
}

function modelOf(sheets: ContractSheet[], { names = [] }: Called = {}): engine.Model {
  const data = sheets.map(({ name, cells }, i) => ({
    id: `sheet${i}`,
    name,
    colNumber: 8,
    rowNumber: 12,
    cells: Object.fromEntries(cells.flatMap((line, row) => line.map((cell, column) => [engine.helpers.toXC(column, row), content(cell)]))),
  }));
  const namedRanges = Object.fromEntries(names.map(({ name, formula }) => [name, formula.slice(1).replaceAll("$", "")]));
  return new engine.Model({ version: "19.3.2", sheets: data, namedRanges });
}

function pictureFrom(model: engine.Model, sheetId: string, { id, row, col, width, height }: ReturnType<engine.Model["getters"]["getFigures"]>[number]) {
  const { name, description, path } = model.getters.getImage(id) as unknown as EnginePicture;
  const corner = { sheet: model.getters.getSheetName(sheetId), row, column: col };
  return { corner, picture: { name, description, png: path.replace("data:image/png;base64,", ""), width, height } };
}

function stageOver(model: engine.Model): Stage {
  const { getters } = model;
  const place = (cell: { sheet: string; row: number; column: number }) => ({ sheetId: getters.getSheetIdByName(cell.sheet)!, col: cell.column, row: cell.row });
  return {
    host: benchHost(model, "book"),
    fill: async (cell) => fillAt(model, place(cell)) || null,
    paint: async (cell, fillColor) => {
      const { sheetId, col, row } = place(cell);
      model.dispatch("SET_FORMATTING", { sheetId, target: [{ left: col, right: col, top: row, bottom: row }], style: { fillColor } });
    },
    type: async (cell, text) => void model.dispatch("UPDATE_CELL", { ...place(cell), content: String(text) }),
    undo: async () => void model.dispatch("REQUEST_UNDO"),
    protect: async (sheet) => void model.dispatch("LOCK_SHEET", { sheetId: getters.getSheetIdByName(sheet)! }),
    selected: async () => {
      const { sheetId, col, row } = getters.getActivePosition();
      return { sheet: getters.getSheetName(sheetId), row, column: col };
    },
    again: async () => benchHost(model, "book"),
    worn: async (sheet) => wornOnBench(model, sheet),
    pictures: async () => getters.getSheetIds().flatMap((id) => getters.getFigures(id).map((figure) => pictureFrom(model, id, figure))),
  };
}

hostContract("bench", async (sheets, called) => stageOver(modelOf(sheets, called)), ["undo", "protect", "selected", "again", "looks", "pictures"]);

const small = (): ContractSheet[] => [{ name: "Bores", cells: [[73.01], [73.02]] }];
const cell = (row: number) => ({ sheet: "Bores", row, column: 0 });

describe("marks on the bench", () => {
  test("move with a row that is put in above them", async () => {
    const model = modelOf(small());
    const { host, fill } = stageOver(model);
    await host.mark([{ cell: cell(1), tone: "outside" }]);
    model.dispatch("ADD_COLUMNS_ROWS", { dimension: "ROW", sheetId: "sheet0", sheetName: "Bores", base: 0, position: "before", quantity: 1 });
    expect(await host.unmark()).toBe(1);
    expect([await fill(cell(1)), await fill(cell(2))]).toEqual([null, null]);
  });

  test("go with their row, and are then no longer counted", async () => {
    const model = modelOf(small());
    const { host } = stageOver(model);
    await host.mark([{ cell: cell(1), tone: "outside" }]);
    model.dispatch("REMOVE_COLUMNS_ROWS", { dimension: "ROW", sheetId: "sheet0", sheetName: "Bores", elements: [1] });
    expect(await host.unmark()).toBe(0);
  });

  test("leave alone a cell that somebody has coloured since", async () => {
    const { host, fill, paint } = stageOver(modelOf(small()));
    await host.mark([{ cell: cell(0), tone: "outside" }]);
    await paint(cell(0), "#00FF00");
    expect(await host.unmark()).toBe(1);
    expect(await fill(cell(0))).toBe("#00FF00");
  });

  test("come back as marks when taking them off is undone", async () => {
    const { host, undo } = stageOver(modelOf(small()));
    await host.mark([{ cell: cell(0), tone: "outside" }]);
    await host.unmark();
    await undo!();
    expect(await host.unmark()).toBe(1);
  });

  test("are remembered in the workbook's data", async () => {
    const model = modelOf(small());
    const { host } = stageOver(model);
    await host.mark([{ cell: cell(0), tone: "outside" }]);
    const { host: later, fill } = stageOver(new engine.Model(model.exportData()));
    expect(await later.unmark()).toBe(1);
    expect(await fill(cell(0))).toBeNull();
  });
});

describe("writing on the bench", () => {
  test("beyond the last row makes the sheet larger, in the same step", async () => {
    const model = modelOf(small());
    const { host, undo } = stageOver(model);
    await host.write([{ sheet: "Bores", row: 40, column: 20, cells: [[1.5]] }]);
    expect((await host.read()).sheets[0]!.values[40]![20]).toBe(1.5);
    await undo!();
    expect([model.getters.getNumberRows("sheet0"), model.getters.getNumberCols("sheet0")]).toEqual([12, 8]);
  });

  test.each(["73,020", "73.04", "1/2", "12:30", "TRUE", "#N/A is no error", "'quoted", "5%", "2.5e3"])("keeps the text %s as text", async (text) => {
    const { host } = stageOver(modelOf(small()));
    await host.write([{ sheet: "Bores", row: 0, column: 1, cells: [[text]] }]);
    expect((await host.read()).sheets[0]!.values[0]![1]).toBe(text);
  });

  test("a quote inside the text of a formula is calculated and read back as written", async () => {
    const { host } = stageOver(modelOf(small()));
    const formula = '=A1&" of ""No. 2"""';
    await host.write([{ sheet: "Bores", row: 0, column: 1, cells: [[formula]] }]);
    const { values, formulas } = (await host.read()).sheets[0]!;
    expect([values[0]![1], formulas[0]![1]]).toEqual(['73.01 of "No. 2"', formula]);
  });
});

describe("places on the bench", () => {
  test("added sheets are one step back", async () => {
    const model = modelOf(small());
    const { host, undo } = stageOver(model);
    await host.addSheets({ sheets: [emptySheet("Limits"), emptySheet("Run-in log")], names: [] });
    await undo!();
    expect((await host.read()).sheets.map(({ name }) => name)).toEqual(["Bores"]);
  });

  test("a selected range is read whole", async () => {
    const model = modelOf(small());
    model.selection.selectZone({ cell: { col: 1, row: 2 }, zone: { left: 1, right: 3, top: 2, bottom: 4 } });
    expect(await benchHost(model).selection()).toEqual({ sheet: "Bores", row: 2, column: 1, rows: 3, columns: 3 });
  });
});

test("formulas below one another may refer to a range of one cell and then to a larger one, and are one step back", async () => {
  const model = modelOf(small());
  const { host, undo } = stageOver(model);
  await host.write([{ sheet: "Bores", row: 0, column: 1, cells: [["=SUM(A1:A1)"], ["=SUM(A1:A2)"]] }]);
  expect((await host.read()).sheets[0]!.values.map((line) => line[1])).toEqual([73.01, 146.03]);
  await undo!();
  expect((await host.read()).sheets[0]!.values.map((line) => line[1] ?? null)).toEqual([null, null]);
});

test("what is kept is no step of the history, and can be handed to whoever saves", async () => {
  const model = modelOf(small());
  const { host } = stageOver(model);
  await host.keep("layout", "{}");
  expect(model.getters.canUndo()).toBe(false);
  expect([...keptTexts(model)]).toEqual([["layout", "{}"]]);
});

test("a hidden sheet is not selected but refused in a sentence", async () => {
  const model = modelOf([...small(), { name: "Limits", cells: [[1]] }]);
  model.dispatch("HIDE_SHEET", { sheetId: "sheet1" });
  await expect(benchHost(model).select({ sheet: "Limits", row: 0, column: 0 })).rejects.toThrow('The sheet "Limits" is hidden: show it first.');
});
