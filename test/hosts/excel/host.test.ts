import { excelHost } from "../../../src/hosts/excel/host.ts";
import { buildSheetSpec } from "../../../src/setup/build-sheet.ts";
import type { CellAddress } from "../../../src/workbook/address.ts";
import { LAYOUT_SHEET } from "../../../src/workbook/layout-sheet.ts";
import { type CellMark, HostRefusal, MARK_FILL } from "../../../src/workbook/port.ts";
import { LAYOUT_ON_SHEET, storageXml } from "../../../src/workbook/storage.ts";
import { DESCRIBED } from "../spec-sample.ts";
import { BOOK, type ContractSheet } from "../stage.ts";
import { ExcelBook } from "./book.ts";
import { type MockOptions, mockExcel } from "./mock.ts";
import { RichApiError } from "./mock-object.ts";

const at = (sheet: string, row: number, column: number): CellAddress => ({ sheet, row, column });
const B2 = at("Bores", 1, 1);
const outside = (cell: CellAddress): CellMark => ({ cell, tone: "outside" });

function open(sheets: ContractSheet[] = BOOK, options: MockOptions = {}) {
  const book = new ExcelBook(sheets);
  return { book, host: excelHost(mockExcel(book, options).run) };
}

/** How many syncs an act takes. */
async function syncs(book: ExcelBook, act: () => Promise<unknown>): Promise<number> {
  const before = book.syncs;
  await act();
  return book.syncs - before;
}

const SHEETS = Array.from({ length: 40 }, (_, i) => ({ name: `Engine ${i}`, cells: Array.from({ length: 50 }, () => [73.01, 73.02, 73]) }));

test("a workbook is read in two syncs, however many sheets it has", async () => {
  const { book, host } = open(SHEETS);
  expect(await syncs(book, () => host.read())).toBe(2);
});

test("names and tables come with the same two syncs, and a name that has lost its cells is left out", async () => {
  const table = { name: "Readings", area: { row: 0, column: 0, rows: 50, columns: 3 }, headerRows: 1, totalsRows: 0, columns: ["1", "2", "3"] };
  const tables = SHEETS.map(({ name }, i) => ({ ...table, name: `Readings${i}`, sheet: name }));
  const names = SHEETS.map(({ name }) => ({ name: "Standard", sheet: name, formula: "=73" }));
  const book = new ExcelBook(SHEETS, { tables, names: [...names, { name: "Lost", formula: "#REF!" }] });
  const host = excelHost(mockExcel(book).run);
  const before = book.syncs;
  const snapshot = await host.read();
  expect(book.syncs - before).toBe(2);
  expect([snapshot.tables, snapshot.names]).toEqual([tables, names]);
});

test("where formulas may have spilled, one more sync asks for all of them", async () => {
  const { book, host } = open(BOOK, { spilled: "the anchor's formula" });
  expect(await syncs(book, () => host.read())).toBe(3);
});

test("one formula copied down with fixed references stays a formula in every cell", async () => {
  const copied = { formula: "=HATCH.VERSION()", value: "0.1.0" };
  const { host } = open([{ name: "About", cells: [[copied], [copied], [copied]] }]);
  expect((await host.read()).sheets[0]!.formulas).toEqual([[copied.formula], [copied.formula], [copied.formula]]);
});

test("a write takes one sync to look at the sheets, one at the cells and one to write; marks one more to see what is remembered", async () => {
  const { book, host } = open();
  const edits = [B2, at("Summary 2", 0, 0)].map((cell) => ({ ...cell, cells: [[1, 2]] }));
  expect(await syncs(book, () => host.write(edits))).toBe(3);
  expect(await syncs(book, () => host.mark([outside(B2), outside(at("Summary 2", 1, 2))]))).toBe(3);
  expect(await syncs(book, () => host.mark([outside(B2)]))).toBe(4);
  expect(await syncs(book, () => host.unmark())).toBe(4);
  expect(await syncs(book, () => host.select(B2))).toBe(2);
});

test("nothing to unmark takes one look", async () => {
  const { book, host } = open();
  expect(await syncs(book, () => host.unmark())).toBe(1);
});

test("the workbook says its name", async () => {
  expect((await open().host.read()).name).toBe("build-sheet.xlsx");
});

test("text is written as text, whatever Excel would make of it", async () => {
  const { book, host } = open();
  await host.write([{ ...B2, cells: [["73,02"], ["3/4"], ["0012"], ["'so'"]] }]);
  expect([1, 2, 3, 4].map((row) => book.cell(at("Bores", row, 1))?.value)).toEqual(["73,02", "3/4", "0012", "'so'"]);
});

test("rows of an edit may differ in length: what is not given is left alone", async () => {
  const { book, host } = open();
  await host.write([{ sheet: "Bores", row: 1, column: 1, cells: [[1], [2, 3], []] }]);
  expect([book.cell(B2)?.value, book.cell(at("Bores", 1, 2))?.value, book.cell(at("Bores", 2, 2))?.value, book.cell(at("Bores", 3, 1))?.value]).toEqual([
    1,
    73,
    3,
    true,
  ]);
});

test("an edit without cells writes nothing", async () => {
  const { book, host } = open();
  await host.write([
    { ...B2, cells: [] },
    { ...B2, cells: [[]] },
  ]);
  expect(book.cell(B2)?.value).toBe(73.01);
});

test("text that looks like a formula or an error is text", async () => {
  const { book, host } = open();
  book.type(at("Empty", 0, 0), "'=B2");
  book.type(at("Empty", 0, 1), "'#DIV/0!");
  const { values, formulas } = (await host.read()).sheets[1]!;
  expect([values, formulas]).toEqual([[["=B2", "#DIV/0!"]], [[null, null]]]);
});

test("a cell that the person filled after it was marked keeps that fill", async () => {
  const { book, host } = open();
  await host.mark([outside(B2)]);
  book.setLook(B2, { color: "#00FF00" });
  expect(await host.unmark()).toBe(1);
  expect(book.look(B2)).toEqual({ color: "#00FF00" });
});

test("marks whose colours were undone in Excel are none", async () => {
  const { book, host } = open();
  await host.mark([outside(B2)]);
  expect(await host.hasMarks()).toBe(true);
  book.setLook(B2, null);
  expect(await host.hasMarks()).toBe(false);
});

test("a white cell becomes white again, a cell without a fill gets none, a pattern its pattern", async () => {
  const { book, host } = open();
  const [white, plain, hatched] = [at("Bores", 0, 0), at("Bores", 0, 1), at("Bores", 0, 2)];
  book.setLook(white, { color: "#FFFFFF" });
  book.setLook(hatched, { color: "#FFFF00", pattern: "Gray50", patternColor: "#000000" });
  await host.mark([white, plain, hatched].map(outside));
  expect([white, plain, hatched].map((cell) => book.look(cell))).toEqual(Array(3).fill({ color: MARK_FILL.outside }));
  await host.unmark();
  expect([white, plain, hatched].map((cell) => book.look(cell))).toEqual([
    { color: "#FFFFFF" },
    null,
    { color: "#FFFF00", pattern: "Gray50", patternColor: "#000000" },
  ]);
});

test("marks come off a sheet that was renamed, and are forgotten with one that was deleted", async () => {
  const { book, host } = open();
  await host.mark([outside(B2), outside(at("Summary 2", 1, 2))]);
  book.sheet("Bores")!.name = "Bores of engine 2";
  book.sheets.splice(2, 1);
  expect(await host.unmark()).toBe(2);
  expect(book.look(at("Bores of engine 2", 1, 1))).toBeNull();
  expect(await host.unmark()).toBe(0);
});

test("marks that another host remembered in the file come off, and its other texts stay", async () => {
  const { book, host } = open();
  const marks = [
    { cell: B2, before: "#00FF00", mark: "#F4B6B0" },
    { cell: at("Bores", 2, 1), before: null, mark: "#F4B6B0" },
    { cell: at("Gone", 0, 0), before: null, mark: "#F4B6B0" },
  ];
  book.parts.push({
    id: "{0}",
    xml: storageXml(
      new Map([
        ["layout", "B2:C5"],
        ["marked", JSON.stringify(marks)],
      ]),
    ),
  });
  for (const { cell, mark } of marks.slice(0, 2)) book.setLook(cell, { color: mark });
  expect(await host.unmark()).toBe(3);
  expect([book.look(B2), book.look(at("Bores", 2, 1))]).toEqual([{ color: "#00FF00" }, null]);
  expect(await host.loadText("layout")).toBe("B2:C5");
});

test.each(["not json", "{}", '[{"cell":{"sheet":"Bores","row":-1,"column":0},"before":null,"mark":"#F4B6B0"},null,7]'])(
  "a memory of marks that cannot be read, %s, is none",
  async (text) => {
    const { book, host } = open();
    book.parts.push({ id: "{0}", xml: storageXml(new Map([["marked", text]])) });
    expect(await host.unmark()).toBe(0);
  },
);

test("marks on a sheet that was protected since are refused with its name", async () => {
  const { book, host } = open();
  await host.mark([outside(B2)]);
  book.sheet("Bores")!.protected = true;
  await expect(host.unmark()).rejects.toThrow('The sheet "Bores" is protected: take the protection off, or work on a copy, and try again.');
});

test("selecting on a hidden sheet says that it is hidden", async () => {
  const { book, host } = open();
  book.sheet("Bores")!.visibility = "Hidden";
  await expect(host.select(B2)).rejects.toThrow('The sheet "Bores" is hidden: show it, and try again.');
});

test("what is kept is one part of the workbook, which another program can read", async () => {
  const { book, host } = open();
  await host.storeText("layout", "B2:C5 & <more>");
  await host.storeText("other", "x");
  expect(book.parts).toEqual([{ id: "{0}", xml: '<kept xmlns="urn:crosshatch:kept">{"layout":"B2:C5 &amp; &lt;more&gt;","other":"x"}</kept>' }]);
});

describe("a layout that is kept once more on a sheet", () => {
  const names = (book: ExcelBook) => book.sheets.map(({ name, visibility }) => [name, visibility]);

  test("stands on a very hidden one, is written anew, shorter and longer, and goes with it", async () => {
    const { book, host } = open();
    const before = names(book);
    expect(await host.loadText(LAYOUT_ON_SHEET)).toBeNull();
    for (const layout of ["first", `long ${"=x".repeat(12_000)} `, "second "]) {
      await host.storeText(LAYOUT_ON_SHEET, layout);
      expect(names(book)).toEqual([...before, [LAYOUT_SHEET, "VeryHidden"]]);
      expect(await host.loadText(LAYOUT_ON_SHEET)).toBe(layout);
    }
    expect((await host.read()).sheets.map(({ name }) => name)).toEqual(before.map(([name]) => name));
    expect(book.parts).toEqual([]);
    await host.storeText(LAYOUT_ON_SHEET, "");
    expect(names(book)).toEqual(before);
  });

  test("a person's own sheet of that name is read, and never written to", async () => {
    const { book, host } = open([...BOOK, { name: LAYOUT_SHEET, cells: [["mine"]] }]);
    await host.storeText(LAYOUT_ON_SHEET, "layout");
    expect(await host.loadText(LAYOUT_ON_SHEET)).toBeNull();
    expect((await host.read()).sheets.find(({ name }) => name === LAYOUT_SHEET)?.values).toEqual([["mine"]]);
    await host.storeText(LAYOUT_ON_SHEET, "");
    expect(book.sheet(LAYOUT_SHEET)).toBeDefined();
  });

  test("what Excel does not let stand is as before, and is said", async () => {
    const { book, host } = open(BOOK, { failing: { sync: 2, error: new RichApiError("AccessDenied", "") } });
    const before = names(book);
    await expect(host.storeText(LAYOUT_ON_SHEET, "layout")).rejects.toThrow(
      "a sheet or the workbook is protected, or open for reading only. Nothing was changed.",
    );
    expect(names(book)).toEqual(before);
  });
});

test.each([
  ["AccessDenied", "Excel does not allow this here: a sheet or the workbook is protected, or open for reading only."],
  ["InvalidOperationInCellEditMode", "A cell is being typed into: finish it with Enter or leave it with Esc, then try again."],
  [
    "ResponsePayloadSizeLimitExceeded",
    "This workbook is more than Excel hands over at once: check a copy with fewer sheets, or check the file with the command line.",
  ],
  ["GeneralException", "Excel could not do this: something inside (GeneralException)"],
])("Excel's answer %s is a refusal in a sentence", async (code, sentence) => {
  const { host } = open(BOOK, { failing: { sync: 2, error: new RichApiError(code, "something inside"), andAfter: true } });
  const refused = host.read();
  await expect(refused).rejects.toThrow(sentence);
  await expect(refused).rejects.toBeInstanceOf(HostRefusal);
});

test("a mistake of ours is not taken for a refusal", async () => {
  const { host } = open(BOOK, { failing: { sync: 1, error: new TypeError("x is not a function") } });
  await expect(host.read()).rejects.toBeInstanceOf(TypeError);
});

test("the mocked Excel throws on a property read before it is loaded and synced", async () => {
  const { run } = mockExcel(new ExcelBook(BOOK));
  await run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject("Bores");
    expect(() => sheet.name).toThrow("property was not loaded");
    sheet.load("name");
    expect(() => sheet.name).toThrow("context.sync() was not called");
    await context.sync();
    expect(sheet.name).toBe("Bores");
    expect(() => sheet.visibility).toThrow("property was not loaded");
    expect(() => context.workbook.worksheets.items).toThrow("not loaded and synced");
  });
});

test("a selected range is its rows and columns, in one sync; several ranges at once are refused in a sentence", async () => {
  const { book, host } = open();
  book.activate(B2, 3, 2);
  expect(await syncs(book, () => host.selection())).toBe(1);
  expect(await host.selection()).toEqual({ ...B2, rows: 3, columns: 2 });
  const several = open(BOOK, { failing: { sync: 1, error: new RichApiError("InvalidSelection", "The current selection is invalid.") } });
  await expect(several.host.selection()).rejects.toThrow("Select one range of cells: several ranges at once, or a picture, are not read.");
});

// Excel on the web takes requests of up to 5 MB (Microsoft, resource limits and performance optimization for Office Add-ins).
test("the largest build sheet is set up in two syncs, well within what Excel takes at once", async () => {
  const { book, host } = open([{ name: "Sheet1", cells: [] }]);
  const largest = buildSheetSpec({ cylinders: 16, heights: 5, axes: 4, valves: 5, unit: "in", secondReadings: true, without: [] });
  expect(await syncs(book, () => host.addSheets(largest))).toBe(2);
  expect(book.sheets.map(({ name }) => name)).toEqual(["Sheet1", ...largest.sheets.map(({ name }) => name)]);
  const told = book.sheets.flatMap(({ notes }) => notes);
  expect(told.length).toBeLessThan(10_000);
  const asked = JSON.stringify([told, book.sheets.map(({ cells }) => [...cells])]).length;
  expect(asked).toBeLessThan(5_000_000 / 2);
});

test("sheets are added in two syncs", async () => {
  const { book, host } = open();
  expect(await syncs(book, () => host.addSheets(DESCRIBED))).toBe(2);
});
