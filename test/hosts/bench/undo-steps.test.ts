import { Model } from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { forgetOldSteps, type GridHistory } from "../../../src/hosts/bench/undo-steps.ts";
import { modelOf } from "./stage.ts";

const STEPS_OF_THE_ENGINE = 99;
const historyOf = (model: Model) => (model as unknown as { session: GridHistory }).session;
const kept = (model: Model) => historyOf(model).revisions.tree.branches.reduce((sum, { operations }) => sum + operations.length, 0);
const type = (model: Model, row: number, content: string, col = 0) =>
  model.dispatch("UPDATE_CELL", { sheetId: model.getters.getSheetIds()[0]!, col, row, content });
const shown = (model: Model) => {
  const [sheetId] = model.getters.getSheetIds();
  const rows = Array.from({ length: model.getters.getNumberRows(sheetId!) }, (_, row) => row);
  return rows.map((row) => [0, 1, 2].map((col) => model.getters.getCellText({ sheetId: sheetId!, col, row }, { showFormula: true })));
};

test("after five hundred edits the engine keeps no more than what can be taken back and one round more, and takes back as many as before", () => {
  const model = modelOf([{ name: "Bores", cells: [[0]] }]);
  for (let n = 1; n <= 500; n++) type(model, 0, String(n));
  expect(kept(model)).toBeLessThanOrEqual(2 * STEPS_OF_THE_ENGINE + 3);
  expect(historyOf(model).processedRevisions.size).toBeLessThan(STEPS_OF_THE_ENGINE + 3);
  let taken = 0;
  while (model.getters.canUndo() && taken < 1000) {
    model.dispatch("REQUEST_UNDO");
    taken++;
  }
  expect(shown(model)[0]![0]).toBe(String(500 - taken));
  expect(taken).toBe(STEPS_OF_THE_ENGINE);
});

type Deed = { deed: "type"; row: number; col: number; text: string } | { deed: "row" | "undo" | "redo" | "remove" };
const deeds = fc.array(
  fc.oneof(
    {
      weight: 4,
      arbitrary: fc.record({ deed: fc.constant("type" as const), row: fc.nat(4), col: fc.nat(2), text: fc.constantFrom("1", "2", "=A1", "=SUM(A1:B3)") }),
    },
    { weight: 4, arbitrary: fc.record({ deed: fc.constantFrom("row", "undo", "undo", "redo", "remove") }) },
  ),
  { minLength: 20, maxLength: 120 },
) as fc.Arbitrary<Deed[]>;

function act(model: Model, done: Deed): void {
  const sheetId = model.getters.getSheetIds()[0]!;
  if (done.deed === "type") type(model, done.row, done.text, done.col);
  else if (done.deed === "row") model.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName: "Bores", dimension: "ROW", base: 1, quantity: 1, position: "before" });
  else if (done.deed === "remove") model.dispatch("REMOVE_COLUMNS_ROWS", { sheetId, sheetName: "Bores", dimension: "ROW", elements: [1] });
  else model.dispatch(done.deed === "undo" ? "REQUEST_UNDO" : "REQUEST_REDO");
}

// The engine as it comes is the measure: whatever is done and taken back, both show the same after each step.
test("edits, rows put in and taken out, steps back and forth: as where nothing is let go", () => {
  fc.assert(
    fc.property(deeds, fc.integer({ min: 1, max: 7 }), (all, every) => {
      const data = { version: "19.3.2", sheets: [{ id: "s", name: "Bores", colNumber: 4, rowNumber: 8, cells: {} }] };
      const [plain, short] = [new Model(data), new Model(data)];
      // What every model here has is taken off the plain one.
      const { subscriptions } = historyOf(plain) as unknown as { subscriptions: Record<string, { owner: unknown }[]> };
      for (const name of Object.keys(subscriptions)) subscriptions[name] = subscriptions[name]!.filter(({ owner }) => owner !== historyOf(plain));
      forgetOldSteps(historyOf(short), every);
      for (const one of all) {
        act(plain, one);
        act(short, one);
        expect(shown(short)).toEqual(shown(plain));
        expect([short.getters.canUndo(), short.getters.canRedo()]).toEqual([plain.getters.canUndo(), plain.getters.canRedo()]);
      }
    }),
    { numRuns: 12 },
  );
}, 60_000);
