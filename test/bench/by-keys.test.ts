import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../src/tools/paths.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { atStand } from "./stand.ts";

import.meta.jest.setTimeout(120_000);

/* A working day without a mouse: nothing below points at a place of the page, and the pane's parts are only looked at. */
const at = atStand("one page");

const press = async (key: string, times = 1): Promise<void> => {
  for (let i = 0; i < times; i++) await at.page.page.keyboard.press(key);
};
const type = (text: string) => at.page.page.keyboard.type(text);
const pane = () => at.page.pane;
const status = (text: string | RegExp) => pane().getByRole("status").filter({ hasText: text }).first().waitFor({ state: "attached" });

/** What the keys go to, by the name that it has for those who hear it. */
const here = () =>
  at.page.page.evaluate(() => {
    const { activeElement: outer } = document;
    const inner = outer instanceof HTMLIFrameElement ? outer.contentDocument!.activeElement : outer;
    const one = inner as HTMLElement & { labels?: NodeListOf<HTMLLabelElement> };
    const label = one.labels?.[0];
    return (one.getAttribute("aria-label") ?? (label?.querySelector("span") ?? label)?.textContent ?? one.textContent ?? "").trim();
  });

/** A view takes the keys on when it has been drawn. */
async function hereIs(name: string): Promise<void> {
  for (let turn = 0; turn < 100 && (await here()) !== name; turn++) await at.page.page.waitForTimeout(50);
  expect(await here()).toBe(name);
}

/** Tab by Tab to what has this name; the way is as long as the view, and no longer. */
async function tabTo(name: string | RegExp, key: "Tab" | "Shift+Tab" = "Tab"): Promise<void> {
  const passed: string[] = [];
  for (let step = 0; step < 80; step++) {
    await press(key);
    const now = await here();
    if (typeof name === "string" ? now === name : name.test(now)) return;
    passed.push(now.slice(0, 40));
  }
  throw new Error(`${name} is not reached: ${passed.join(" | ")}`);
}

/** Into the pane, where one is back at what one left. */
async function inPane(focused: string): Promise<void> {
  await press("F6");
  expect(await at.page.page.evaluate(() => document.activeElement?.id)).toBe("pane");
  expect(await here()).toMatch(focused);
}

/** From a tab to the next one, whose view is then there. */
async function toTab(from: string, to: string): Promise<void> {
  const isTab = () => at.page.page.evaluate(() => (document.activeElement as HTMLIFrameElement).contentDocument?.activeElement?.getAttribute("role") === "tab");
  while ((await here()) !== from || !(await isTab())) await tabTo(from, "Shift+Tab");
  await press("ArrowRight");
  await hereIs(to);
  await pane().locator(".view:not([hidden]) button.primary").first().waitFor();
}

/** `Limits!C10`: sheet by sheet and cell by cell. */
async function toCell(place: string): Promise<void> {
  const [sheet, cell] = place.split("!") as [string, string];
  const at_ = async () => (await at.page.selected()).split("!") as [string, string];
  for (let step = 0; (await at_())[0] !== sheet; step++) {
    if (step > 30) throw new Error(`${sheet} is not reached`);
    await press("Shift+PageDown");
  }
  const parts = (name: string) => ({ column: name.charCodeAt(0), row: Number(name.slice(1)) });
  const to = parts(cell);
  for (let step = 0; step < 120; step++) {
    const now = parts((await at_())[1]);
    if (now.row === to.row && now.column === to.column) return;
    await press(now.row < to.row ? "ArrowDown" : now.row > to.row ? "ArrowUp" : now.column < to.column ? "ArrowRight" : "ArrowLeft");
  }
  throw new Error(`${place} is not reached from ${await at.page.selected()}`);
}

/** Where a row of a sheet starts with these words. */
async function rowOf(sheet: string, words: string): Promise<number> {
  const { values } = (await at.page.sheets()).find(({ name }) => name === sheet)!;
  return values.findIndex(([first]) => first === words) + 1;
}

test("a build sheet is set up, measured, checked, mended, planned, compared, reported and saved by keys alone", async () => {
  // The start: a build sheet of three cylinders, without two sheets.
  await hereIs("New build sheet");
  await press("Enter");
  await at.page.page.locator("#book", { hasText: "workbook.xlsx" }).waitFor();
  await pane().getByRole("button", { name: "Add these sheets" }).waitFor();
  await inPane("Set up");
  await tabTo("Cylinders");
  await press("ArrowUp");
  await tabTo("Sheets: none left out");
  await press("Enter");
  await tabTo("Camshaft");
  await press("Space");
  await tabTo("Add these sheets");
  await press("Enter");
  await status(/\d+ new sheets/);
  expect((await at.page.sheets()).map(({ name }) => name)).not.toContain("Camshaft");
  // Limits as the shop types them, and the standard bore.
  await press("Shift+F6");
  const clearance = await rowOf("Limits", "Piston clearance");
  await toCell(`Engine!B${await rowOf("Engine", "Standard bore")}`);
  await type("73\n");
  await toCell(`Limits!B${clearance}`);
  await type("0.02");
  await press("Tab");
  await type("0.05\n");
  expect([await at.page.value(`Limits!B${clearance}`), await at.page.value(`Limits!C${clearance}`)]).toEqual([0.02, 0.05]);
  // Bores, one after the other.
  await inPane("Add these sheets");
  await toTab("Set up", "Measure");
  await tabTo("What is measured");
  await tabTo("Start measuring");
  await press("Enter");
  await pane().getByLabel("Cylinder 1, Top thrust").waitFor();
  for (const reading of ["73.03", "73.02", "73.02", "73.02", "73.02"]) await type(`${reading}\n`);
  await pane().getByText("6 of 18").waitFor();
  await tabTo("Back");
  await press("Enter");
  await pane().getByText("5 of 18").waitFor();
  await hereIs("Cylinder 1, Bottom thrust");
  await tabTo("Skip");
  await press("Enter");
  for (const reading of ["73.01", "73.03"]) await type(`${reading}\n`);
  await pane().getByText("8 of 18").waitFor();
  // Two digits swapped: asked about, and read again.
  await type("37.02\n");
  await pane().getByRole("alert").filter({ hasText: "were two digits swapped?" }).waitFor();
  await type("73.02\n");
  for (let more = 0; more < 10; more++) await type("73.02\n");
  await pane().getByText("All 18 places are through; 18 read.").waitFor();
  await hereIs("Done");
  await press("Enter");
  // The next column that is still blank.
  await hereIs("What is measured");
  await tabTo("Start measuring");
  await press("Enter");
  await pane().getByLabel("Cylinder 1, Skirt").waitFor();
  for (const skirt of ["72.99", "72.985", "72.9"]) await type(`${skirt}\n`);
  await press("Enter");
  // Check, and the piston that was read wrongly.
  await toTab("Measure", "Check");
  await tabTo("Check");
  await press("Enter");
  await pane().locator(".counts").waitFor();
  const first = () => pane().locator(".finding .sentence").first();
  expect(await first().textContent()).toBe("0.12 is over the upper limit 0.05 by 0.07");
  await tabTo(/Pistons!E6/);
  await press("Enter");
  await at.page.page.waitForFunction(() => document.activeElement?.closest("#grid"));
  expect(await at.page.selected()).toBe("Pistons!E6");
  await toCell("Pistons!B6");
  await type("72.99\n");
  await at.page.checkedAgain(first().filter({ hasText: "still blank" }));
  await press("F8");
  await at.page.page.waitForFunction(() => document.activeElement?.closest("#grid"));
  expect(await at.page.selected()).toBe(`Engine!B${await rowOf("Engine", "Stroke")}`);
  await type("68\n");
  // Plan: the rebore, from the build sheet.
  // Escape leads out of the sheet as F6 does.
  await press("Escape");
  expect(await at.page.page.evaluate(() => document.activeElement?.id)).toBe("pane");
  await toTab("Check", "Plan");
  await tabTo("Fill from the build sheet");
  await press("Enter");
  await status(/Still to be typed/);
  await hereIs("Oversizes available");
  await type("0.25 0.5");
  await tabTo("Work it out");
  await press("Enter");
  await status(/Worked out/);
  // The answer has the keys. 73.25 less the largest and the smallest reading of cylinder 2.
  await hereIs("Plan: Rebore");
  await pane()
    .getByRole("row", { name: /^Cylinder 2 .*takes 0.22 to 0.23 off the diameter$/ })
    .waitFor();
  // Compare: with the readings of the build, from a file.
  await toTab("Plan", "Compare");
  await tabTo(/^File with the readings/);
  const chooser = at.page.page.waitForEvent("filechooser");
  await press("Enter");
  await (await chooser).setFiles(join(root, "samples", "compare", "build.csv"));
  await tabTo("Compare");
  await press("Enter");
  await status(/Compared/);
  await hereIs("Result of the comparison");
  await pane().getByText("Bores!B4", { exact: true }).waitFor();
  // Report, looked at and saved; then the workbook.
  await toTab("Compare", "Report");
  await tabTo("Make the report");
  await press("Enter");
  await status(/The report is made/);
  await pane().locator(".preview").getByRole("heading", { name: "Engine build sheet" }).waitFor();
  const report = at.page.page.waitForEvent("download");
  await tabTo(/^Save Report/);
  await press("Enter");
  expect((await report).suggestedFilename()).toMatch(/^Report workbook \d{4}-\d\d-\d\d\.html$/);
  const workbook = at.page.page.waitForEvent("download");
  await press("Control+s");
  const saved = readXlsx(readFileSync(await (await workbook).path()));
  const typed = saved.sheets
    .find(({ name }) => name === "Bores")!
    .cells.flatMap(({ row, column, value }) => (row > 2 && row < 6 && column > 0 && column < 7 ? [value] : []));
  expect(typed).toEqual([73.03, 73.02, 73.02, 73.02, 73.02, 73.01, 73.03, 73.02, ...Array(10).fill(73.02)]);
  expect(at.page.trouble).toEqual([]);
});
