import type { Page } from "playwright-core";
import { atPane, check } from "../../helpers/pane-browser.ts";
import { HALF_FILLED } from "../page/scenes.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

async function checked(): Promise<Page> {
  const page = await pane.open("half");
  await check(page);
  return page;
}

const row = (page: Page, index: number) => page.locator(`[data-index="${index}"]`);
const words = (page: Page) => page.locator(".word").allTextContents();
const CLOSED = ["likely slip", "over", "12 not proven", "16 missing readings"];
const active = (page: Page) => page.evaluate(() => window.stage.host.active());

test("findings of one cause are one line that says the cause, and the head still counts them all", async () => {
  const page = await checked();
  expect(await words(page)).toEqual(CLOSED);
  await page.getByRole("heading", { name: "32 findings" }).waitFor();
  expect(await page.locator(".counts").textContent()).toBe("38 of 40 rows checked, 2 could not be. Shown as 4 lines, one for each cause.");
  expect(await row(page, 2).locator(".label").textContent()).toBe("Side clearance");
  expect(await row(page, 2).locator(".sentence").textContent()).toBe("Readings on the sheet Rings are too close to a limit for a gauge with U 0.01");
  expect(await row(page, 0).locator(".opens").textContent()).toBe("▸ Show 2 findings that it causes");
});

test("a line opens and closes by a click, goes to the first cell, and each finding in it goes to its own", async () => {
  const page = await checked();
  await row(page, 2).click();
  expect(await row(page, 2).getAttribute("aria-expanded")).toBe("true");
  expect(await active(page)).toEqual(HALF_FILLED[4]!.cell);
  expect(await words(page)).toEqual([...CLOSED.slice(0, 3), ...Array(12).fill("not proven"), ...CLOSED.slice(3)]);
  await row(page, 14).click();
  expect(await active(page)).toEqual(HALF_FILLED[15]!.cell);
  expect(await page.locator("[aria-current=true]").count()).toBe(1);
  await row(page, 2).click();
  expect(await words(page)).toEqual(CLOSED);
  expect(await row(page, 1).getAttribute("aria-expanded")).toBeNull();
});

test("what a slip causes opens behind it, and the slip is not told twice", async () => {
  const page = await checked();
  await row(page, 0).click();
  expect((await words(page)).slice(0, 4)).toEqual(["likely slip", "refused", "refused", "over"]);
});

test("by keyboard alone: arrows walk over lines, Enter opens, F8 goes through what is shown, and the focus stays", async () => {
  const page = await checked();
  await row(page, 0).focus();
  for (const key of ["ArrowDown", "ArrowDown", "ArrowDown", "Enter"]) await page.keyboard.press(key);
  await row(page, 18).waitFor();
  expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.index)).toBe("3");
  expect(await row(page, 3).locator("xpath=..").getAttribute("aria-setsize")).toBe("20");
  await page.keyboard.press("F8");
  expect(await active(page)).toEqual(HALF_FILLED[16]!.cell);
  await page.keyboard.press("F8");
  expect(await active(page)).toEqual(HALF_FILLED[17]!.cell);
  await page.getByRole("status").filter({ hasText: "6 of 20: missing reading, 'Run-in log'!C29" }).waitFor({ state: "attached" });
});

test("the cause is heard with the line, and that it opens", async () => {
  const page = await checked();
  await page
    .getByRole("button", {
      name: "12 not proven Rings!F4 … Side clearance Readings on the sheet Rings are too close to a limit for a gauge with U 0.01 Show all 12",
      expanded: false,
    })
    .waitFor();
});

test("in another order each finding stands by itself", async () => {
  const page = await checked();
  await page.getByRole("combobox", { name: "Order" }).selectOption("by place");
  expect(await words(page)).toHaveLength(HALF_FILLED.length);
});

test("a line stays open when the sheet is checked again", async () => {
  const page = await checked();
  await row(page, 2).click();
  await row(page, 14).waitFor();
  await page.getByRole("button", { name: "Check", exact: true }).click();
  await page.getByRole("status").filter({ hasText: "Checked." }).first().waitFor({ state: "attached" });
  expect(await row(page, 2).getAttribute("aria-expanded")).toBe("true");
});
