import { emptySheet } from "../../src/workbook/sheet-spec.ts";
import { at, formula, refusal, value } from "./look.ts";
import type { Stage } from "./stage.ts";

const empty = (...names: string[]) => ({ sheets: names.map(emptySheet), names: [] });

/** What is selected, and where there is room: new sheets. */
export function placing(stage: () => Stage): void {
  test("what is selected is one cell after one was selected", async () => {
    const { host } = stage();
    await host.select(at("Summary 2", 2, 2));
    expect(await host.selection()).toEqual({ sheet: "Summary 2", row: 2, column: 2, rows: 1, columns: 1 });
  });

  test("added sheets stand behind the others in the order given, empty, and can be written to", async () => {
    const { host } = stage();
    await host.addSheets(empty("Run-in log", "Limits"));
    await host.write([{ sheet: "Limits", row: 2, column: 1, cells: [[0.05, "=Bores!B2"]] }]);
    const book = await host.read();
    expect(book.sheets.map((sheet) => sheet.name)).toEqual(["Bores", "Empty", "Summary 2", "Run-in log", "Limits"]);
    expect(book.sheets[3]!.values.flat().every((cell) => cell === null)).toBe(true);
    expect([value(book, at("Limits", 2, 1)), formula(book, at("Limits", 2, 2))]).toEqual([0.05, "=Bores!B2"]);
  });

  test("a name that a sheet has already, in whatever letters, is refused, and no sheet is added", async () => {
    const { host } = stage();
    const sentence = 'There is a sheet "$" in this workbook already: rename it, or work in a new workbook. Nothing was added.';
    expect((await refusal(host.addSheets(empty("Limits", "bores")))).toLowerCase()).toBe(sentence.replace("$", "bores").toLowerCase());
    expect((await host.read()).sheets.map((sheet) => sheet.name)).toEqual(["Bores", "Empty", "Summary 2"]);
  });
}
