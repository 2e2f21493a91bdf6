import * as engine from "@odoo/o-spreadsheet";
import { BENCH_ABILITIES, benchHost, storedTexts } from "../../../src/hosts/bench/host.ts";
import { emptySheet } from "../../../src/workbook/sheet-spec.ts";
import { hostContract } from "../contract.ts";
import type { ContractSheet } from "../stage.ts";
import { modelOf, stageOver } from "./stage.ts";

hostContract("bench", async (sheets, called) => stageOver(modelOf(sheets, called)), BENCH_ABILITIES);

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
  await host.storeText("layout", "{}");
  expect(model.getters.canUndo()).toBe(false);
  expect([...storedTexts(model)]).toEqual([["layout", "{}"]]);
});

test("a hidden sheet is not selected but refused in a sentence", async () => {
  const model = modelOf([...small(), { name: "Limits", cells: [[1]] }]);
  model.dispatch("HIDE_SHEET", { sheetId: "sheet1" });
  await expect(benchHost(model).select({ sheet: "Limits", row: 0, column: 0 })).rejects.toThrow('The sheet "Limits" is hidden: show it, and try again.');
});
