import { type PaneBrowser, paneBrowser } from "../helpers/pane-browser.ts";

import.meta.jest.setTimeout(60_000);

let pane: PaneBrowser;
beforeAll(async () => {
  pane = await paneBrowser();
});
afterAll(() => pane.close());

test("a build sheet is set up as chosen, in new sheets, by keyboard alone", async () => {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Set up" }).click();
  await page.getByRole("combobox", { name: "Cylinders" }).focus();
  await page.keyboard.type("3");
  for (let presses = 0; presses < 4; presses++) await page.keyboard.press("Tab");
  await page.keyboard.type("inches");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await page.getByText("Second readings, Both readings, Torques, Parts list, Notes, Summary.").waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await page.getByText("Sheets: 1 of 16 left out").waitFor();
  await page.keyboard.press("Space");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("status").filter({ hasText: "21 new sheets: Engine, Limits, Bores," }).waitFor();
  const { sheets } = await page.evaluate(() => window.stage.host.read());
  const bores = sheets.find(({ name }) => name === "Bores")!;
  expect(bores.formulas.flat().filter((formula) => formula?.startsWith("=HATCH.TAPER("))).toHaveLength(3);
  expect(bores.values[1 - bores.row]![1]).toContain("Diameters in in");
  expect(await page.evaluate(() => window.stage.host.active())).toEqual({ sheet: "Engine", row: 0, column: 0 });
});

test("a second one into the same workbook is refused, and the first is left alone", async () => {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Set up" }).click();
  await page.getByRole("button", { name: "Add these sheets" }).click();
  await page.getByRole("status").filter({ hasText: "19 new sheets" }).waitFor();
  await page.getByRole("button", { name: "Add these sheets" }).click();
  await page.getByRole("alert").filter({ hasText: 'There is a sheet "Engine" in this workbook already' }).waitFor();
  expect((await page.evaluate(() => window.stage.host.read())).sheets).toHaveLength(20);
});

test("who opens an empty workbook gets a sample by one button", async () => {
  const page = await pane.open("blank");
  await page.getByRole("button", { name: "Insert a sample build sheet" }).click();
  await page.getByRole("status").filter({ hasText: "A sample was put in, with invented readings. 19 new sheets" }).waitFor();
  expect((await page.evaluate(() => window.stage.host.read())).sheets).toHaveLength(20);
});

test("a workbook that holds something is left alone, and says why", async () => {
  const page = await pane.open("findings");
  await page.getByRole("button", { name: "Insert a sample build sheet" }).click();
  await page.getByRole("status").filter({ hasText: "This workbook holds something already" }).waitFor();
});
