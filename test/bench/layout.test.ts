import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { LAYOUT_KEY, LAYOUT_ON_SHEET } from "../../src/workbook/storage.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { crosshatch, jsonLines } from "../cli/run.ts";
import { toView } from "../helpers/to-view.ts";
import { atStand } from "./stand.ts";

import.meta.jest.setTimeout(180_000);

const FILES = ["one-row-a-cylinder.xlsx", "one-row-a-reading.xlsx", "cylinders-across.xlsx"];
/** The one of which the button under Check is used. */
const OFFERED = FILES[0];
const sample = (file: string): string => join(root, "samples", "layouts", file);

const at = atStand("a page for each test");
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "layout-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const tab = (name: string) => toView(at.page.pane, name);
const press = (name: string) => at.page.pane.getByRole("button", { name, exact: true }).click();
const status = (text: string | RegExp) => at.page.pane.getByRole("status").filter({ hasText: text }).first().waitFor();

async function open(name: string, bytes: Uint8Array): Promise<void> {
  await at.page.give(name, bytes);
  await at.page.page.waitForFunction((wanted) => document.querySelector("#book")?.textContent === wanted, name);
  await at.page.pane.getByRole("tab", { name: "Set up" }).waitFor();
}

/** Checks, and waits until the pane shows these findings, of those that say the word; an earlier result stands there until the new one comes. */
async function shows(wanted: readonly string[], word = ""): Promise<void> {
  await tab("Check");
  await press("Check");
  const until = Date.now() + 20_000;
  let found = await shown(word);
  while (Date.now() < until && JSON.stringify(found) !== JSON.stringify(wanted)) {
    await new Promise((resolve) => setTimeout(resolve, 100));
    found = await shown(word);
  }
  expect(found).toEqual(wanted);
}

/** The findings that the pane shows, each as it stands there. */
async function shown(word: string): Promise<string[]> {
  await at.page.pane.locator("#view-check .counts").waitFor();
  // Each by itself, not those of one cause in one line.
  const order = at.page.pane.getByRole("combobox", { name: "Order" });
  if ((await order.count()) > 0) await order.selectOption("by place");
  const rows = at.page.pane.locator(".finding button");
  return (
    await rows.evaluateAll((all) => all.map((row) => [".place", ".label", ".sentence"].map((part) => row.querySelector(part)?.textContent ?? "").join(" | ")))
  )
    .filter((finding) => finding.includes(word))
    .sort();
}

async function saved(name: string): Promise<string> {
  const { bytes } = await at.page.saved();
  const file = join(folder, name);
  writeFileSync(file, bytes);
  return file;
}

/** The same from the command line. */
async function told(file: string): Promise<string[]> {
  const { out } = await crosshatch(["check", "--json", file]);
  return jsonLines(out)
    .slice(0, -1)
    .map(({ cell, label, sentence }) => [cell, label, sentence].join(" | "))
    .sort();
}

test.each(FILES)("%s: what is proposed from its headings and kept makes pane and command line find the same, also after saving", async (file) => {
  const wanted = await told(sample(file));
  expect(wanted).toHaveLength(14);
  await open(file, readFileSync(sample(file)));
  await tab("Layout");
  await status(/^This workbook keeps a layout of \d ranges\.$/);
  await press("Take it off");
  await status("The layout is taken off");
  const bare = await saved(`bare-${file}`);
  expect(await told(bare)).toEqual([]);

  await open(`bare-${file}`, readFileSync(bare));
  await shows([]);
  if (file === OFFERED) {
    await at.page.pane
      .getByText(
        /^Nothing here is judged, and the workbook keeps no layout; its sheets look as if they held readings laid out in the shop's own way \(\d+ readings of /,
      )
      .waitFor();
    await at.page.picture("layout-offered");
    await press("Propose a layout");
  } else {
    await tab("Layout");
    await status("This workbook keeps no layout of its own yet.");
    await press("Propose from the headings");
  }
  await status(/\d ranges proposed/);
  await at.page.pane.getByText(/^61 readings, \d+ limits, engines A, B\. Check judges 41 rows by this\.$/).waitFor();
  await press("Keep this layout");
  await status(/^Kept in the workbook/);
  // What was checked before is made again by itself.
  await tab("Check");
  await at.page.checkedAgain(at.page.pane.getByText("14 findings", { exact: true }));
  await shows(wanted);
  const kept = await saved(`kept-${file}`);
  expect(await told(kept)).toEqual(wanted);
  // Once more on a sheet that nobody sees, for programs that drop the part beside the sheets.
  const { storedTexts, sheets } = readXlsx(readFileSync(kept));
  expect(storedTexts.get(LAYOUT_ON_SHEET)).toBe(storedTexts.get(LAYOUT_KEY));
  expect(storedTexts.get(LAYOUT_KEY)).toContain("rowHeads");
  await open(`kept-${file}`, readFileSync(kept));
  expect((await at.page.sheets()).map(({ name }) => name)).toEqual(sheets.map(({ name }) => name));
});

test("a range that is dropped is not kept, and a range selected by hand takes its place", async () => {
  await open("cylinders-across.xlsx", readFileSync(sample("cylinders-across.xlsx")));
  await tab("Layout");
  const wanted = await told(sample("cylinders-across.xlsx"));
  await at.page.pane.getByRole("checkbox", { name: "Use 'Both engines'!C16:D20" }).uncheck();
  await at.page.pane.getByText("What is ticked here is not kept yet.").waitFor();
  await press("Keep this layout");
  await status("Kept in the workbook: 2 ranges.");
  const fewer = await told(await saved("two-ranges.xlsx"));
  expect(fewer.filter((finding) => finding.includes(", taper |"))).toEqual([]);
  await shows(fewer);

  await tab("Layout");
  await at.page.click("C16");
  await at.page.page.keyboard.down("Shift");
  await at.page.click("D20");
  await at.page.page.keyboard.up("Shift");
  await press("Take selection for Range");
  expect(await at.page.pane.getByLabel("Range", { exact: true }).inputValue()).toBe("'Both engines'!C16:D20");
  await press("Add this range");
  await at.page.pane.getByRole("checkbox", { name: "Use 'Both engines'!C16:D20" }).nth(1).waitFor();
  await press("Keep this layout");
  await status("Kept in the workbook: 3 ranges.");
  await shows(wanted);
});

test("an entry that is pressed selects its range in the grid", async () => {
  await open("one-row-a-cylinder.xlsx", readFileSync(sample("one-row-a-cylinder.xlsx")));
  await tab("Layout");
  await press("Limits!B3:C9");
  await at.page.page.waitForFunction(async () => (await window.crosshatchBench!.host.selection()).sheet === "Limits");
  expect(await at.page.page.evaluate(() => window.crosshatchBench!.host.selection())).toEqual({ sheet: "Limits", row: 2, column: 1, rows: 7, columns: 2 });
});

test("bare numbers without a heading are said by hand: readings and their limit", async () => {
  await open("one-row-a-cylinder.xlsx", readFileSync(sample("one-row-a-cylinder.xlsx")));
  const readings = { sheet: "Limits", row: 20, column: 6, cells: [[39.98], [40.09]] };
  await at.page.page.evaluate((edits) => window.crosshatchBench!.host.write(edits), [readings, { sheet: "Limits", row: 28, column: 8, cells: [[40.05]] }]);
  await tab("Layout");
  const range = at.page.pane.getByLabel("Range", { exact: true });
  await range.fill("Limits!G21:G22");
  await press("Add this range");
  await at.page.pane.getByText("nothing beside these numbers says what they are of: say it here").waitFor();
  await at.page.pane.getByLabel("Of", { exact: true }).fill("crank pins");
  await press("Add this range");
  await at.page.pane.getByText("2 readings of crankpin", { exact: true }).waitFor();
  await range.fill("Limits!I29");
  await at.page.pane.getByRole("combobox", { name: "These are" }).selectOption("upper limits");
  await at.page.pane.getByLabel("Of", { exact: true }).fill("crankpin");
  await press("Add this range");
  await at.page.pane.getByText("limits of crankpin", { exact: true }).waitFor();
  await press("Keep this layout");
  await status("Kept in the workbook: 6 ranges.");
  await shows(["Limits!G22 | crankpin | 40.09 is over the upper limit 40.05 by 0.04"], "crankpin");
  expect(at.page.trouble).toEqual([]);
});

test("a layout that is taken off and not saved is asked about before another file is opened", async () => {
  await open("one-row-a-cylinder.xlsx", readFileSync(sample("one-row-a-cylinder.xlsx")));
  await tab("Layout");
  await press("Take it off");
  await status("The layout is taken off");
  await at.page.give("other.xlsx", readFileSync(sample("one-row-a-reading.xlsx")));
  await at.page.page.getByRole("dialog").filter({ hasText: "has changes that are not saved" }).waitFor();
});
