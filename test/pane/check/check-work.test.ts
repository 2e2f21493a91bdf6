import type { Page } from "playwright-core";
import { atPane, check } from "../../helpers/pane-browser.ts";
import { toView } from "../../helpers/to-view.ts";
import { FINDINGS } from "../page/scenes.ts";

import.meta.jest.setTimeout(120_000);

const pane = atPane();

const active = (page: Page) => page.evaluate(() => window.stage.host.active());
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const status = (page: Page, text: string) => page.getByRole("status").filter({ hasText: text }).waitFor();
const focused = (page: Page) => page.evaluate(() => (document.activeElement as HTMLElement).dataset.index ?? document.activeElement?.textContent);
const row = (page: Page, index: number) => page.locator(`[data-index="${index}"]`);
const edit = (page: Page) => page.evaluate(() => window.stage.host.type({ sheet: "Bores", row: 0, column: 0 }, 73.03));

describe("when the sheet changes after a check", () => {
  test("one that took long is not made again by itself: the pane says so and checks again on demand", async () => {
    const page = await pane.open("slow");
    await check(page);
    expect(await button(page, "Check again").count()).toBe(0);
    await edit(page);
    await page.getByText("The sheet changed since this check.").waitFor();
    await button(page, "Check again").click();
    await button(page, "Check again").waitFor({ state: "detached" });
    expect(await page.locator(".finding").count()).toBe(9);
  });

  test("a short one is made again, is told, and leaves focus and choice where they are", async () => {
    const page = await pane.open("sheet");
    await check(page);
    await row(page, 0).click();
    await row(page, 0).focus();
    await page.evaluate(() => window.stage.host.type({ sheet: "Bores", row: 1, column: 1 }, 0.07));
    await page.getByRole("heading", { name: "2 findings" }).waitFor();
    await status(page, "Checked again after a change. 2 findings. 3 of 3 rows checked.");
    expect(await page.locator(".place").allTextContents()).toEqual(["Bores!B2", "Bores!B3"]);
    expect(await row(page, 1).getAttribute("aria-current")).toBe("true");
    expect(await focused(page)).toBe("0");
    expect(await button(page, "Check again").count()).toBe(0);
  });

  test("where findings go that had the focus, it stays in the list, or goes to the heading", async () => {
    const page = await pane.open("sheet");
    await page.evaluate(() => window.stage.host.type({ sheet: "Bores", row: 1, column: 1 }, 0.07));
    await check(page);
    await row(page, 1).focus();
    await page.evaluate(() => window.stage.host.type({ sheet: "Bores", row: 1, column: 1 }, 0.02));
    await page.getByRole("heading", { name: "1 finding" }).waitFor();
    expect(await focused(page)).toBe("0");
    await page.evaluate(() => window.stage.host.type({ sheet: "Bores", row: 2, column: 1 }, 0.02));
    await page.getByRole("heading", { name: "No findings" }).waitFor();
    expect(await focused(page)).toBe("No findings");
  });

  test("marking and selecting are no changes", async () => {
    const page = await pane.open("findings");
    await check(page);
    await row(page, 0).click();
    await button(page, "Mark cells").click();
    await page.getByText("9 cells marked.").waitFor();
    expect(await button(page, "Check again").count()).toBe(0);
  });

  test("nothing is checked by itself before somebody has checked", async () => {
    const page = await pane.open("sheet");
    await edit(page);
    await page.waitForTimeout(700);
    expect(await page.locator(".counts").count()).toBe(0);
  });
});

describe("a check that takes long", () => {
  test("shows how far it is, and Stop ends it at once with the focus back on Check", async () => {
    const page = await pane.open("long");
    await button(page, "Check").click();
    await button(page, "Stop").waitFor();
    const beyond = (share: number) =>
      page
        .waitForFunction((least) => [document.querySelector("progress")?.value ?? 0].find((value) => value > least), share)
        .then((found) => found.jsonValue());
    await beyond((await beyond(0))!);
    await button(page, "Stop").focus();
    await page.keyboard.press("Enter");
    await status(page, "Stopped. Nothing was checked.");
    expect(await page.getByRole("progressbar").count()).toBe(0);
    expect(await focused(page)).toBe("Check");
    await page.waitForTimeout(500);
    expect(await page.locator(".counts").count()).toBe(0);
  });

  test("lets the page do its own work: a click is answered while it goes on, and it comes to its end", async () => {
    const page = await pane.open("long");
    await button(page, "Check").click();
    await button(page, "Stop").waitFor();
    await toView(page, "About");
    expect(await page.getByRole("tab", { name: "Help" }).getAttribute("aria-selected")).toBe("true");
    await page.getByRole("tab", { name: "Check" }).click();
    await page.locator(".counts").waitFor({ timeout: 100_000 });
    expect(await page.locator(".counts").textContent()).toBe("60\u202f000 of 60\u202f000 rows checked");
  });

  test("is ended by Escape too, and what was found before stays", async () => {
    const page = await pane.open("endless");
    await check(page);
    await button(page, "Check").click();
    await page.getByText("42 %").waitFor();
    await row(page, 3).focus();
    await page.keyboard.press("Escape");
    await status(page, "Stopped. These are the findings of the check before.");
    expect(await page.locator(".finding").count()).toBe(9);
    expect(await focused(page)).toBe("3");
  });

  test("stopped while the workbook is still being read, it drops what comes", async () => {
    const page = await pane.open("holding");
    await button(page, "Check").click();
    await status(page, "Reading the workbook …");
    await page.keyboard.press("Escape");
    await status(page, "Stopped. Nothing was checked.");
    await page.evaluate(() => (window as unknown as { hand(): void }).hand());
    await page.waitForTimeout(300);
    expect(await page.locator(".counts").count()).toBe(0);
    expect(await button(page, "Check").getAttribute("aria-disabled")).toBe("false");
    await check(page);
  });
});

describe("from finding to finding", () => {
  test("the button and F8 go on to the next, select its cell and read it out, from wherever in the view, round and round", async () => {
    const page = await pane.open("findings");
    await check(page);
    await page.getByRole("button", { name: "Next finding" }).click();
    expect(await active(page)).toEqual(FINDINGS[0]!.cell);
    const show = page.getByRole("combobox", { name: "Show" });
    await show.focus();
    await page.keyboard.press("F8");
    expect(await active(page)).toEqual(FINDINGS[1]!.cell);
    await status(page, "2 of 9: under, Rings!E10, Engine 1, cylinder 2, top ring, end gap. 0.18 is under the lower limit 0.25 by 0.07");
    expect(await show.evaluate((element) => element === document.activeElement)).toBe(true);
    for (const _ of FINDINGS) await page.keyboard.press("F8");
    expect(await active(page)).toEqual(FINDINGS[1]!.cell);
    await row(page, 6).click();
    await page.keyboard.press("F8");
    expect(await active(page)).toEqual(FINDINGS[7]!.cell);
    expect(await page.locator("[aria-current=true]").getAttribute("data-index")).toBe("7");
  });

  test("follows the order and the filter, and the finding comes into view", async () => {
    const page = await pane.open("findings", { viewport: { width: 320, height: 400 } });
    await check(page);
    await page.getByRole("combobox", { name: "Order" }).selectOption("by place");
    expect(await page.locator(".place").allTextContents()).toEqual([
      ...["Bores!F4", "Bores!D6", "Bores!C7", "Bores!C9", "Rings!E10"],
      ...["Pistons!D5", "Pistons!G8", "Valves!D3", "'Run-in log'!B12"],
    ]);
    for (const _ of FINDINGS) await page.keyboard.press("F8");
    expect(await active(page)).toMatchObject({ sheet: "Run-in log" });
    expect(await row(page, 8).evaluate((element) => element.getBoundingClientRect().bottom <= innerHeight)).toBe(true);
    await page.getByRole("combobox", { name: "Order" }).selectOption("by margin");
    expect((await page.locator(".place").allTextContents()).slice(0, 3)).toEqual(["Rings!E10", "Bores!C7", "Bores!C9"]);
    await page.getByRole("combobox", { name: "Show" }).selectOption("refused");
    await page.keyboard.press("F8");
    expect(await active(page)).toEqual(FINDINGS[2]!.cell);
  });

  test("from another view shows Check and the next one there", async () => {
    const page = await pane.open("findings");
    await check(page);
    await page.keyboard.press("F8");
    await toView(page, "About");
    await page.keyboard.press("F8");
    await page.locator("#view-check").waitFor();
    await page.waitForFunction(() => document.querySelector("[aria-current=true]")?.getAttribute("data-index") === "1");
    expect(await active(page)).toEqual(FINDINGS[1]!.cell);
  });

  test("goes through ten thousand in another order too", async () => {
    const page = await pane.open("many");
    await check(page);
    await page.getByRole("combobox", { name: "Order" }).selectOption("by margin");
    await row(page, 0).focus();
    await page.keyboard.press("End");
    await page.keyboard.press("Enter");
    await page.keyboard.press("F8");
    await status(page, "1 of 10000:");
    expect(await page.locator(".finding").count()).toBeLessThan(500);
    expect(await row(page, 0).evaluate((element) => element.getBoundingClientRect().top >= 0)).toBe(true);
  });
});

test("nothing of all this made the page complain or ask for anything elsewhere", () => {
  expect(pane.complaints).toEqual([]);
});
