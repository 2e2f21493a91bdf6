import { type Stand, stand } from "./stand.ts";

let bench: Stand;
beforeAll(async () => {
  bench = await stand();
}, 120_000);
afterAll(() => bench?.close());

test("a block that is calculated anew twelve hundred times is still calculated", async () => {
  const { page } = await bench.page();
  const shown = await page.evaluate(() => {
    const { model } = window.crosshatchBench!;
    const put = (col: number, row: number, content: string) => model.dispatch("UPDATE_CELL", { sheetId: "edits", col, row, content });
    model.dispatch("CREATE_SHEET", { sheetId: "edits", name: "Edits", position: 0, cols: 5, rows: 1010 });
    for (let row = 0; row < 1000; row++) put(0, row, "73.02");
    put(2, 0, "=HATCH.CLEARANCE(A1:A1000,73)");
    for (let i = 0; i < 1200; i++) {
      put(0, 0, String(73 + i / 10_000));
      model.getters.getEvaluatedCell({ sheetId: "edits", col: 2, row: 0 });
    }
    return [0, 999].map((row) => {
      const { value, message } = model.getters.getEvaluatedCell({ sheetId: "edits", col: 2, row });
      return message ?? value;
    });
  });
  expect(shown).toEqual([0.1199, 0.02]);
}, 120_000);
