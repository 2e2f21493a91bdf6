import type { Page } from "playwright-core";
import { atPane } from "../../helpers/pane-browser.ts";
import { VIEWS } from "../../helpers/pane-views.ts";

import.meta.jest.setTimeout(120_000);

const pane = atPane();

async function measuring(): Promise<Page> {
  const page = await pane.open("blank");
  await VIEWS["measure-on"]!.go(page);
  return page;
}

const bores = (page: Page) =>
  page.evaluate(() => window.stage.host.read().then(({ sheets }) => sheets.find(({ name }) => name === "Bores")!.values[3]!.slice(1, 7)));

test("a gauge that types walks from place to place, and each reading stands in the sheet at once", async () => {
  const page = await measuring();
  for (const reading of ["73.025", "73.02", "73.02"]) await page.keyboard.type(`${reading}\n`);
  await page.getByLabel("Cylinder 1, Middle pin").waitFor();
  expect(await bores(page)).toEqual([73.025, 73.02, 73.02, null, null, null]);
  await page.getByText("4 of 24").waitFor();
  await page.getByText("Cylinder 1, Middle thrust: 73.02").waitFor();
});

test("a swapped digit is asked about before it is written, and Enter on the empty field says yes", async () => {
  const page = await measuring();
  for (const reading of ["73.025", "73.02", "73.02", "73.015", "37.02"]) await page.keyboard.type(`${reading}\n`);
  await page.getByRole("alert").filter({ hasText: "were two digits swapped?" }).waitFor();
  expect(await bores(page)).toEqual([73.025, 73.02, 73.02, 73.015, null, null]);
  await page.keyboard.type("73.02\n");
  await page.getByLabel("Cylinder 1, Bottom pin").waitFor();
  expect(await bores(page)).toEqual([73.025, 73.02, 73.02, 73.015, 73.02, null]);
});

test("back and skip go from place to place, and a reading is replaced only after a yes", async () => {
  const page = await measuring();
  await page.keyboard.type("73.025\n");
  await page.getByRole("button", { name: "Back" }).click();
  await page.getByLabel("Cylinder 1, Top thrust").fill("73.03");
  await page.keyboard.press("Enter");
  await page.getByText("73.025 stands here: write 73.03 in its place?").waitFor();
  await page.getByRole("button", { name: "No, read again" }).click();
  expect((await bores(page))[0]).toBe(73.025);
  await page.getByRole("button", { name: "Skip" }).click();
  await page.getByRole("button", { name: "Skip" }).click();
  await page.getByLabel("Cylinder 1, Middle thrust").waitFor();
});

test("deviations from a nominal size in microns become sizes", async () => {
  const page = await pane.open("blank");
  await VIEWS.measure!.go(page);
  await page.getByRole("combobox", { name: "Typed in" }).selectOption("microns (0.001 mm)");
  await page.getByLabel("Nominal size").fill("73");
  await page.getByRole("button", { name: "Start measuring" }).click();
  await page.getByLabel("Cylinder 1, Top thrust").waitFor();
  await page.keyboard.type("+25\n-2\n");
  await page.getByLabel("Cylinder 1, Middle thrust").waitFor();
  // 73 + 0.025 and 73 − 0.002
  expect((await bores(page)).slice(0, 2)).toEqual([73.025, 72.998]);
});

test("a sheet that takes nothing says so at the place itself", async () => {
  const page = await measuring();
  await page.evaluate(() => {
    window.stage.host.write = () => Promise.reject(Object.assign(new Error('The sheet "Bores" is protected.'), { name: "HostRefusal" }));
  });
  await page.keyboard.type("73.025\n");
  await page.getByRole("alert").filter({ hasText: 'The sheet "Bores" is protected.' }).waitFor();
  await page.getByLabel("Cylinder 1, Top thrust").waitFor();
});

test("a form to write on is made for all sheets that are measured", async () => {
  const page = await pane.open("blank");
  await VIEWS.measure!.go(page);
  await page.getByRole("button", { name: "Make a form to write on" }).click();
  await page.getByRole("link", { name: /^Save Measuring form/ }).waitFor();
  expect(pane.complaints).toEqual([]);
});
