import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import { excelHost } from "../../../src/hosts/excel/host.ts";
import { repairFormulas } from "../../../src/pane/check/repair.ts";
import { isRefusal } from "../../../src/workbook/port.ts";
import { at } from "../look.ts";
import type { ContractSheet } from "../stage.ts";
import { ExcelBook } from "./book.ts";
import { type MockOptions, mockExcel } from "./mock.ts";
import { RichApiError } from "./mock-object.ts";

// Custom functions answer after onChanged; a cell shows #BUSY! until then, and #NAME? where the functions are
// not registered (Microsoft, "Custom functions: receive and handle data", "Custom functions troubleshooting").
const formula = (text: string, value: unknown) => ({ formula: text, value: value as number });
const SHEET = (leak: unknown, verdict: unknown): ContractSheet[] => [
  {
    name: "Tests",
    cells: [
      ["Cylinder", "Supply", "Held", "Leak", "Verdict", "Upper"],
      [1, 80, 40, formula("=HATCH.LEAKDOWN(B2,C2)", leak), formula("=HATCH.VERDICT(D2,,F2)", verdict), 20],
    ],
  },
];

function open(sheets: ContractSheet[], options: MockOptions = {}) {
  const book = new ExcelBook(sheets);
  const excel = mockExcel(book, options);
  return { book, excel, host: excelHost(excel.run) };
}

const kindsIn = async (host: ReturnType<typeof excelHost>) => checkWorkbook(await host.read()).findings.map(({ kind }) => kind);

test("a change is told when it is made, and once more when our functions have answered it", async () => {
  const { excel, host } = open(SHEET(50, "over"));
  let told = 0;
  const stop = await host.watch(() => told++);
  const turn = () => new Promise((resolve) => setTimeout(resolve, 5));
  excel.changed();
  await turn();
  expect(told).toBe(1);
  excel.calculated();
  await turn();
  expect(told).toBe(2);
  stop();
  excel.changed();
  excel.calculated();
  await turn();
  expect(told).toBe(2);
});

test.each([
  ["what they were before the change", 10, "within", ["wrong result", "wrong result", "outside limit"]],
  ["nothing yet", { error: "#BUSY!" }, { error: "#BUSY!" }, ["outside limit", "no result"]],
  ["that Excel does not know them", { error: "#NAME?" }, { error: "#NAME?" }, ["outside limit", "no result"]],
  ["what they give", 50, "over", ["outside limit"]],
])("a reading outside its limit is found while the cells show %s", async (_, leak, verdict, kinds) => {
  expect(await kindsIn(open(SHEET(leak, verdict)).host)).toEqual(kinds);
});

describe("formulas that Excel has left unresolved", () => {
  const NAME = { error: "#NAME?" };
  const stored = (): ContractSheet[] => {
    const [sheet] = SHEET(NAME, NAME);
    const rows = sheet!.cells.map((line) => [...line]);
    rows.push([2, 80, 70, formula("=_xldudf_HATCH_LEAKDOWN(B3,C3)", NAME), formula("=NOSUCH(D3)", NAME), 20]);
    return [{ name: "Tests", cells: rows }];
  };

  test("are entered again as people type them, all in one step, and how many there were is said; others are left alone", async () => {
    const { book, host } = open(stored());
    expect(await repairFormulas(host)).toBe(3);
    expect([1, 2].flatMap((row) => [3, 4].map((column) => book.cell(at("Tests", row, column)))).map((cell) => [cell?.formula, cell?.value])).toEqual([
      ["=HATCH.LEAKDOWN(B2,C2)", 0],
      ["=HATCH.VERDICT(D2,,F2)", 0],
      ["=HATCH.LEAKDOWN(B3,C3)", 0],
      ["=NOSUCH(D3)", "#NAME?"],
    ]);
    book.undo();
    expect(book.cell(at("Tests", 2, 3))).toMatchObject({ formula: "=_xldudf_HATCH_LEAKDOWN(B3,C3)", value: "#NAME?" });
    expect(book.cell(at("Tests", 1, 4))).toMatchObject({ value: "#NAME?" });
  });

  test("where there are none, nothing is written", async () => {
    const { book, host } = open(SHEET(50, "over"));
    expect(await repairFormulas(host)).toBe(0);
    expect(book.cell(at("Tests", 1, 3))?.value).toBe(50);
  });

  test("stay as they were when Excel fails on the way, and the sentence says so", async () => {
    const { book, host } = open(stored(), { failing: { sync: 5, error: new RichApiError("GeneralException", "inside"), done: 1 } });
    const refused = await repairFormulas(host).catch((error: unknown) => (isRefusal(error) ? error.message : error));
    expect(refused).toBe("Excel could not do this: inside (GeneralException) Nothing was changed.");
    expect(book.cell(at("Tests", 2, 3))?.formula).toBe("=_xldudf_HATCH_LEAKDOWN(B3,C3)");
  });
});

describe("a workbook that is more than Excel hands over at once", () => {
  const SHEETS = ["Engine A", "Empty", "Engine B"].map((name, s) => ({
    name,
    cells: name === "Empty" ? [] : Array.from({ length: 900 }, (_, r) => [73 + r / 1e6, s, formula(`=HATCH.CLEARANCE(A${r + 1},B${r + 1})`, 0.05)]),
  }));

  test("is read in parts, to the same cells", async () => {
    const [whole, inParts] = [open(SHEETS), open(SHEETS, { mostCells: 3000 })];
    const asked = await inParts.host.read();
    expect(asked).toEqual(await whole.host.read());
    // Parts of 20,000 and of 10,000 cells hold both sheets and are too large; of 5,000 each sheet is one.
    expect([whole.book.syncs, inParts.book.syncs]).toEqual([2, 2 + 3 + 3 + 4]);
  });

  test("in smaller parts where those are still too large", async () => {
    const { host } = open(SHEETS, { mostCells: 1000 });
    expect((await host.read()).sheets.map(({ values }) => values.length)).toEqual([900, 0, 900]);
  });

  test("and refused in a sentence where no part is small enough", async () => {
    await expect(open(SHEETS, { mostCells: 10 }).host.read()).rejects.toThrow("This workbook is more than Excel hands over at once");
  });
});
