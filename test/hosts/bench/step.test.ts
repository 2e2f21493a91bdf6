import { type GridCommand, step } from "../../../src/hosts/bench/plugins.ts";
import { at, refusal, value } from "../look.ts";
import { DESCRIBED } from "../spec-sample.ts";
import { modelOf, stageOver } from "./stage.ts";

const small = () => modelOf([{ name: "Bores", cells: [[73.01], [73.02], [{ formula: "=A1+A2", value: null }]] }]);

const A1 = { left: 0, top: 0, right: 0, bottom: 0 };
const GOOD: readonly GridCommand[] = [
  { type: "UPDATE_CELL", sheetId: "sheet0", col: 0, row: 0, content: "74" },
  { type: "CREATE_SHEET", sheetId: "new", name: "Limits", position: 1 },
  { type: "UPDATE_CELL", sheetId: "new", col: 0, row: 0, content: "=Bores!A3", format: "0.00" },
  { type: "SET_FORMATTING", sheetId: "sheet0", target: [A1], style: { fillColor: "#FF0000" } },
  { type: "ADD_COLUMNS_ROWS", dimension: "ROW", sheetId: "sheet0", sheetName: "Bores", base: 0, position: "before", quantity: 2 },
  { type: "CREATE_NAMED_RANGE", name: "First", ranges: [{ _sheetId: "new", _zone: A1 }] },
  { type: "FREEZE_ROWS", sheetId: "new", quantity: 1 },
];
const REFUSED: GridCommand = { type: "CREATE_SHEET", sheetId: "sheet0", name: "Bores", position: 0 };
const FAILING: GridCommand = { type: "SET_FORMATTING", sheetId: "sheet0", target: null, style: {} };

describe.each([
  ["refused", REFUSED, "The grid refused a part of this (DuplicatedSheetId), so nothing of it was done."],
  ["met by a failure of the grid", FAILING, ""],
])("a step of which one part is %s", (_, bad, sentence) => {
  test.each(GOOD.map((_command, n) => n).concat(GOOD.length))("leaves everything as it was when %i parts were done before", (n) => {
    const model = small();
    model.dispatch("UPDATE_CELL", { sheetId: "sheet0", col: 1, row: 0, content: "1" });
    model.dispatch("UPDATE_CELL", { sheetId: "sheet0", col: 1, row: 0, content: "2" });
    model.dispatch("REQUEST_UNDO");
    const before = model.exportData();
    expect(() => step(model, [...GOOD.slice(0, n), bad, ...GOOD.slice(n)])).toThrow(sentence);
    expect({ ...model.exportData(), revisionId: before.revisionId }).toEqual(before);
    expect(model.getters.getEvaluatedCell({ sheetId: "sheet0", col: 0, row: 2 }).value).toBeCloseTo(146.03, 9);
    // What the person did before can still be taken back and done again, and work goes on.
    model.dispatch("REQUEST_REDO");
    expect(model.getters.getEvaluatedCell({ sheetId: "sheet0", col: 1, row: 0 }).value).toBe(2);
    step(model, GOOD);
    expect(model.getters.getEvaluatedCell({ sheetId: "new", col: 0, row: 0 }).value).toBeCloseTo(147.02, 9);
    model.dispatch("REQUEST_UNDO");
    expect(model.getters.getEvaluatedCell({ sheetId: "sheet0", col: 0, row: 2 }).value).toBeCloseTo(146.03, 9);
  });
});

test("writing over a part of merged cells is refused in a sentence, and nothing is written", async () => {
  const model = small();
  model.dispatch("ADD_MERGE", { sheetId: "sheet0", target: [{ left: 2, top: 2, right: 3, bottom: 3 }] });
  const { host } = stageOver(model);
  const written = host.write([{ sheet: "Bores", row: 0, column: 3, cells: [[1], [2], [3]] }]);
  expect(await refusal(written)).toMatch(/^The grid refused a part of this \(\w+\), so nothing of it was done\.$/);
  expect(value(await host.read(), at("Bores", 0, 3))).toBeNull();
});

test("while the sheet in view is protected nothing is added, and its name is said", async () => {
  const model = small();
  model.dispatch("LOCK_SHEET", { sheetId: "sheet0" });
  const { host } = stageOver(model);
  expect(await refusal(host.addSheets(DESCRIBED))).toContain('The sheet "Bores" is protected');
  expect((await host.read()).sheets).toHaveLength(1);
});

test("formulas that a person pastes below one another may refer to a range of one cell and then to a larger one", () => {
  const model = small();
  model.dispatch("PASTE_FROM_OS_CLIPBOARD", {
    target: [{ left: 1, top: 0, right: 1, bottom: 0 }],
    clipboardContent: { text: "=SUM(A1:A1)\n=SUM(A1:A2)" },
  });
  const shown = () => [0, 1].map((row) => model.getters.getEvaluatedCell({ sheetId: "sheet0", col: 1, row }).value);
  expect(shown()).toEqual([73.01, 146.03]);
  model.dispatch("REQUEST_UNDO");
  expect(shown()).toEqual([null, null]);
  model.dispatch("REQUEST_REDO");
  expect(shown()).toEqual([73.01, 146.03]);
});
