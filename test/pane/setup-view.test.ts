import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { type CellSpec, emptySheet, type SheetSpec } from "../../src/workbook/sheet-spec.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import { atPane } from "../helpers/pane-browser.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();
beforeAll(() => mkdirSync(join(root, "test", "output"), { recursive: true }));

test("a build sheet is set up as chosen, in new sheets, by keyboard alone", async () => {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Set up" }).click();
  await page.getByRole("combobox", { name: "Cylinders" }).focus();
  await page.keyboard.type("3");
  for (let presses = 0; presses < 4; presses++) await page.keyboard.press("Tab");
  await page.keyboard.type("inches");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await page.getByText("Second readings, Both readings, Torques, Parts list, Notes, Shop, Summary.").waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await page.getByText("Sheets: 1 of 19 left out").waitFor();
  await page.keyboard.press("Space");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Enter");
  for (let presses = 0; presses < 2; presses++) await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("status").filter({ hasText: "24 new sheets: Engine, Limits, Bores," }).waitFor();
  const { sheets } = await page.evaluate(() => window.stage.host.read());
  const bores = sheets.find(({ name }) => name === "Bores")!;
  expect(bores.formulas.flat().filter((formula) => formula?.startsWith("=HATCH.TAPER("))).toHaveLength(3);
  expect(bores.values[1 - bores.row]![1]).toContain("Diameters in in");
  expect(await page.evaluate(() => window.stage.host.active())).toEqual({ sheet: "Engine", row: 0, column: 0 });
});

test("limits come from a limits book of the shop's own, by the engine model that is chosen", async () => {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Set up" }).click();
  await page.getByText("Limits from a limits book of your own").click();
  const book = (name: string, upper: number): SheetSpec => ({
    ...emptySheet(name),
    cells: [
      ["Characteristic", "Lower", "Upper", "Unit"],
      ["Taper", "", upper, "mm"],
      ["Squish", 0.03, "", "in"],
    ].flatMap((line, row) => line.map((content, column): CellSpec => ({ row, column, content, style: "plain" }))),
  });
  const bytes = Buffer.from(writeXlsx({ title: "Limits", sheets: [book("HB-3", 0.02), book("HB-4", 0.03)], names: [] }));
  await page.getByLabel("Limits book").setInputFiles({ name: "yard.xlsx", mimeType: "application/octet-stream", buffer: bytes });
  await page.getByRole("combobox", { name: "Engine model" }).selectOption({ label: "HB-4 (2 limits)" });
  await page.getByRole("button", { name: "Add these sheets" }).click();
  await page.getByRole("status").filter({ hasText: "1 limit was copied from yard.xlsx, HB-4: look them over" }).waitFor();
  await page.getByRole("status").filter({ hasText: "Squish: the limits book has it in inches, and the sheet has it in mm." }).waitFor();
  const { sheets } = await page.evaluate(() => window.stage.host.read());
  const limits = sheets.find(({ name }) => name === "Limits")!;
  expect(limits.values.find((line) => line.includes("Taper"))).toEqual(expect.arrayContaining([0.03, "Limits book yard.xlsx, HB-4"]));
  // Into the sheets that are here: 0.03 is typed by now, and stays until it is ticked.
  const upper = async () => {
    const now = await page.evaluate(() => window.stage.host.read());
    return now.sheets.find(({ name }) => name === "Limits")!.values.find((line) => line.includes("Taper"))![2];
  };
  await page.getByRole("combobox", { name: "Engine model" }).selectOption({ label: "HB-3 (2 limits)" });
  await page.getByRole("button", { name: "Copy into the sheets that are here" }).click();
  await page.getByRole("status").filter({ hasText: "0 limits were copied from yard.xlsx, HB-3. 1 limit is typed differently here and was left." }).waitFor();
  expect(await upper()).toBe(0.03);
  await page.getByRole("checkbox", { name: "Taper, Limits!B4: here at most 0.03, in the limits book at most 0.02" }).check();
  await page.getByRole("button", { name: "Replace the ticked ones" }).click();
  await page.getByRole("status").filter({ hasText: "1 limit was replaced." }).waitFor();
  expect(await upper()).toBe(0.02);
  const damaged = { name: "none.xlsx", mimeType: "application/octet-stream", buffer: Buffer.from("no workbook") };
  await page.getByLabel("Limits book").setInputFiles(damaged);
  await page.getByRole("alert").filter({ hasText: "none.xlsx" }).waitFor();
  await page.screenshot({ path: join(root, "test", "output", "limits-book.png"), fullPage: true });
});

test("a second one into the same workbook is refused, and the first is left alone", async () => {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Set up" }).click();
  await page.getByRole("button", { name: "Add these sheets" }).click();
  await page.getByRole("status").filter({ hasText: "22 new sheets" }).waitFor();
  await page.getByRole("button", { name: "Add these sheets" }).click();
  await page.getByRole("alert").filter({ hasText: 'There is a sheet "Engine" in this workbook already' }).waitFor();
  expect((await page.evaluate(() => window.stage.host.read())).sheets).toHaveLength(23);
});

test("who opens an empty workbook gets a sample by one button", async () => {
  const page = await pane.open("blank");
  await page.getByRole("button", { name: "Insert a sample build sheet" }).click();
  await page.getByRole("status").filter({ hasText: "A sample was put in, with invented readings. 22 new sheets" }).waitFor();
  expect((await page.evaluate(() => window.stage.host.read())).sheets).toHaveLength(23);
});

test("a workbook that holds something is left alone, and says why", async () => {
  const page = await pane.open("findings");
  await page.getByRole("button", { name: "Insert a sample build sheet" }).click();
  await page.getByRole("status").filter({ hasText: "This workbook holds something already" }).waitFor();
});
