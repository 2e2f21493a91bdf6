import type { SheetSnapshot } from "../../src/workbook/port.ts";
import { asWritten, EXAMPLES } from "../calc/examples.ts";
import { atStand } from "./stand.ts";

const at = atStand("one page");
let sheet: SheetSnapshot;

/** Where each example stands: one below the other, with room for what it fills. */
const places: number[] = [];
let rows = 0;
for (const [, gives] of EXAMPLES) {
  places.push(rows);
  rows += gives.length + 1;
}

beforeAll(async () => {
  const edits = EXAMPLES.map(([formula], i) => ({ sheet: "Examples", row: places[i]!, column: 0, cells: [[formula]] }));
  await at.page.page.evaluate(
    async ({ edits: all, rows: room }) => {
      const { host, model } = window.crosshatchBench!;
      model.dispatch("CREATE_SHEET", { sheetId: "examples", name: "Examples", position: 0 });
      // Room for the spills first: a formula that is written finds the sheet as large as it will be.
      await host.write([{ sheet: "Examples", row: room, column: 30, cells: [["end"]] }]);
      await host.write(all);
    },
    { edits, rows },
  );
  sheet = (await at.page.sheets()).find(({ name }) => name === "Examples")!;
}, 120_000);

describe("every example of every function gives on the bench what it says", () => {
  test.each(EXAMPLES.map(([formula, gives], i) => [formula, gives, i] as const))("%s", (_, gives, i) => {
    const shown = gives.map((line, r) => line.map((_cell, c) => sheet.values[places[i]! + r]![c]!));
    expect(asWritten(shown, gives)).toEqual(gives);
  });
});

test("an example is calculated when it is typed, and its formula reads as typed", async () => {
  await at.page.page.locator(".o-sheet", { hasText: "Limits" }).click();
  await at.page.type("F12", "=HATCH.TAPER({73.01,73.02;73.00,73.01})");
  await at.page.type("F14", '=IF(HATCH.CLEARANCE(73.04,73)>0.03,"open, ""so"" to say","close")');
  expect([await at.page.value("Limits!F12"), await at.page.value("Limits!F14")]).toEqual([0.01, 'open, "so" to say']);
  expect(await at.page.formula("Limits!F14")).toBe('=IF(HATCH.CLEARANCE(73.04,73)>0.03,"open, ""so"" to say","close")');
}, 60_000);

test("a fault is shown with its sentence", async () => {
  await at.page.type("F16", "=HATCH.PISTONCLEARANCE(73.02,73.06)");
  expect(await at.page.value("Limits!F16")).toEqual({
    error: "#VALUE!",
    message: "PISTONCLEARANCE: skirt 73.06 is larger than bore 73.02: are they swapped?",
  });
  await at.page.click("A1");
  const { x, y } = (await at.page.centre("F16"))!;
  await at.page.page.mouse.move(x, y);
  await at.page.page.getByText("are they swapped?").waitFor();
  await at.page.picture("fault");
}, 60_000);
