import type { Page } from "playwright-core";
import { MARK_FILL } from "../../../src/workbook/port.ts";
import { atPane, check } from "../../helpers/pane-browser.ts";
import { FINDINGS } from "../page/scenes.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

const active = (page: Page) => page.evaluate(() => window.stage.host.active());
const fills = (page: Page) =>
  page.evaluate(
    (cells) => cells.map((cell) => window.stage.host.fill(cell)),
    FINDINGS.map(({ cell }) => cell),
  );
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const focused = (page: Page) => page.evaluate(() => (document.activeElement as HTMLElement).dataset.index ?? document.activeElement?.textContent);
const row = (page: Page, index: number) => page.locator(`[data-index="${index}"]`);

describe("before the first check", () => {
  test("the pane says what to do, and there is nothing to mark", async () => {
    const page = await pane.open("findings");
    await page.getByText("Press Check. Choose a finding to go to its cell.").waitFor();
    expect(await button(page, "Mark cells").getAttribute("aria-disabled")).toBe("true");
    await button(page, "Mark cells").click({ force: true });
    expect(await fills(page)).toEqual(FINDINGS.map(() => null));
  });
});

describe("a check", () => {
  test("shows how many rows went in, and the findings in the order given: word, cell, numbers, sentence", async () => {
    const page = await pane.open("findings");
    await check(page);
    expect(await page.locator(".counts").textContent()).toBe("23 of 24 rows checked, 1 could not be");
    expect(await page.locator(".word").allTextContents()).toEqual([
      "over",
      "under",
      "refused",
      "not proven",
      "mixed units",
      "likely slip",
      "near limit",
      "missing reading",
      "missing limit",
    ]);
    expect(await row(page, 0).locator("> span, .number").allTextContents()).toEqual([
      "overBores!C7",
      "Engine 2, bore 3, taper",
      "value 0.062 limit at most 0.05 margin −0.012 ",
      "value 0.062 ",
      "limit at most 0.05 ",
      "margin −0.012 ",
      "0.062 is over the upper limit 0.05 by 0.012",
    ]);
  });

  test("is told to a screen reader with its counts", async () => {
    const page = await pane.open("findings");
    await check(page);
    expect(await page.getByRole("status").first().textContent()).toBe("Checked. 9 findings. 23 of 24 rows checked, 1 could not be.");
    await page.getByRole("button", { name: "over Bores!C7 Engine 2, bore 3, taper value 0.062 limit at most 0.05 margin −0.012" }).waitFor();
  });

  test("is the tool's own unless the host brings another", async () => {
    const page = await pane.open("sheet");
    await check(page);
    expect(await page.locator(".counts").textContent()).toBe("3 of 3 rows checked");
    expect(await page.locator(".word").allTextContents()).toEqual(["over"]);
    await row(page, 0).click();
    expect(await active(page)).toMatchObject({ sheet: "Bores", row: 2 });
  });

  test("without findings says so, and what to do when nothing was judged", async () => {
    const clean = await pane.open("clean");
    await check(clean);
    await clean.getByText("Every judged reading is within its limits, none near one.").waitFor();
    const empty = await pane.open("empty");
    await check(empty);
    await empty.getByText("Nothing in this workbook is judged against a limit yet.").waitFor();
    await empty.getByText("Judge each one in a cell beside it").waitFor();
    const unjudged = await pane.open("unjudged");
    await check(unjudged);
    await unjudged.getByText("Nothing in this workbook is judged against a limit yet; the 18 cells that functions read show no slip.").waitFor();
  });

  test("that takes long shows that it goes on, and nothing else starts meanwhile", async () => {
    const page = await pane.open("slow");
    await page.evaluate(() => {
      const { host } = window.stage;
      const unmark = host.unmark;
      host.unmark = () => {
        performance.mark("unmark");
        return unmark();
      };
    });
    await button(page, "Check").click();
    await page.getByRole("progressbar", { name: "Checking every reading against its limits …" }).waitFor({ state: "attached" });
    expect(await button(page, "Take marks off").getAttribute("aria-disabled")).toBe("true");
    await button(page, "Take marks off").click({ force: true });
    await page.locator(".counts").waitFor();
    expect(await page.getByRole("progressbar").count()).toBe(0);
    expect(await page.evaluate(() => performance.getEntriesByName("unmark").length)).toBe(0);
  });
});

describe("going to a cell", () => {
  test("a click on a finding selects its cell and shows which one it was", async () => {
    const page = await pane.open("findings");
    await check(page);
    await row(page, 5).click();
    expect(await active(page)).toEqual({ sheet: "Run-in log", row: 11, column: 1 });
    expect(await page.locator("[aria-current=true]").count()).toBe(1);
    expect(await row(page, 5).getAttribute("aria-current")).toBe("true");
  });

  test("by keyboard alone: Tab reaches the list once, arrow keys walk, Enter selects", async () => {
    const page = await pane.open("findings");
    const reached = () => focused(page);
    await page.keyboard.press("Tab");
    expect(await reached()).toBe("Check");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.locator(".counts").waitFor();
    for (const _ of ["Mark cells", "Take marks off", "Next finding", "Show", "Order", "list"]) await page.keyboard.press("Tab");
    expect(await reached()).toBe("0");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Enter");
    expect(await active(page)).toEqual(FINDINGS[1]!.cell);
    await page.keyboard.press("End");
    expect(await reached()).toBe("8");
    await page.keyboard.press("ArrowDown");
    expect(await reached()).toBe("8");
    await page.keyboard.press("Home");
    expect(await reached()).toBe("0");
  });

  test("a finding that is walked to is not hidden under the tabs", async () => {
    const page = await pane.open("findings", { viewport: { width: 320, height: 300 } });
    await check(page);
    await row(page, 4).focus();
    const gap = () =>
      page.evaluate(() => {
        const [shown, tabs] = [document.querySelector("[data-index='3']")!, document.querySelector("header")!].map((element) =>
          element.getBoundingClientRect(),
        );
        return shown!.top - tabs!.bottom;
      });
    await page.evaluate((above) => scrollBy(0, above + 20), await gap());
    expect(await gap()).toBeLessThan(0);
    await page.keyboard.press("ArrowUp");
    expect(await gap()).toBeGreaterThanOrEqual(0);
  });

  test("a sheet that is gone is told as a sentence, and choosing another finding goes on", async () => {
    const page = await pane.open("gone");
    await check(page);
    await row(page, 0).click();
    await page.getByRole("alert").getByText('There is no sheet "Old bores" in this workbook.', { exact: true }).waitFor();
  });
});

describe("marks", () => {
  test("colour every finding's cell as one step, and come off as one", async () => {
    const page = await pane.open("findings");
    await check(page);
    await button(page, "Mark cells").click();
    await page.getByRole("status").getByText("9 cells marked.").waitFor();
    expect(await fills(page)).toEqual(
      ["outside", "outside", "fault", "doubt", "fault", "doubt", "near", "fault", "fault"].map((tone) => MARK_FILL[tone as "near"]),
    );
    await button(page, "Take marks off").click();
    await page.getByRole("status").getByText("Marks taken off 9 cells.").waitFor();
    expect(await fills(page)).toEqual(FINDINGS.map(() => null));
    await page.evaluate(() => window.stage.host.undo());
    expect((await fills(page)).filter(Boolean)).toHaveLength(9);
    await page.evaluate(() => window.stage.host.undo());
    expect((await fills(page)).filter(Boolean)).toHaveLength(0);
  });

  test("that are not there are not an alarm", async () => {
    const page = await pane.open("findings");
    await button(page, "Take marks off").click();
    await page.getByRole("status").getByText("There were no marks to take off.").waitFor();
  });

  test("on a protected sheet are refused in a sentence, and none is set", async () => {
    const page = await pane.open("guarded");
    await check(page);
    await button(page, "Mark cells").click();
    await page
      .getByRole("alert")
      .getByText('The sheet "Rings" is protected: take the protection off, or work on a copy, and try again.', { exact: true })
      .waitFor();
    expect((await fills(page)).filter(Boolean)).toHaveLength(0);
    expect(await page.locator(".finding").count()).toBe(9);
  });
});

test("a fault of ours says that it is one and leaves the pane in working order", async () => {
  const page = await pane.open("broken");
  await button(page, "Check").click();
  await page.getByRole("alert").getByText("This did not work, through a fault in Crosshatch: no such thing", { exact: true }).waitFor();
  expect(await button(page, "Check").getAttribute("aria-disabled")).toBe("false");
});

test("findings of one kind can be looked at alone", async () => {
  const page = await pane.open("findings");
  await check(page);
  await page.getByRole("combobox", { name: "Show" }).selectOption("near limit");
  expect(await page.locator(".word").allTextContents()).toEqual(["near limit"]);
  await row(page, 0).click();
  expect(await active(page)).toEqual(FINDINGS[6]!.cell);
});

describe("ten thousand findings", () => {
  test("are there at once: rows are made where they are looked at", async () => {
    const page = await pane.open("many");
    await check(page);
    expect(await page.locator(".finding").count()).toBeLessThan(500);
    expect(await row(page, 0).locator("xpath=..").getAttribute("aria-setsize")).toBe("10000");
    await row(page, 0).focus();
    await page.keyboard.press("End");
    await page.keyboard.press("Enter");
    expect(await active(page)).toEqual({ sheet: "Batch", row: 9999, column: 2 });
    expect(await page.locator(".finding").count()).toBeLessThan(500);
  });

  test("scrolled to, their rows appear", async () => {
    const page = await pane.open("many");
    await check(page);
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight / 2));
    await page.waitForFunction(() => {
      const shown = document.elementFromPoint(160, 450)?.closest<HTMLElement>("[data-index]");
      return Number(shown?.dataset.index) > 3000;
    });
    expect(await page.locator(".finding").count()).toBeLessThan(1000);
  });
});

test("a layout of the workbook's own that cannot be used is said, and the check goes on without it", async () => {
  const page = await pane.open("findings");
  await page.evaluate(() => window.stage.host.storeText("layout", "{"));
  await check(page);
  await page.getByRole("alert").getByText("Checked without the layout of your own: the saved layout of this workbook is damaged: set it up again.").waitFor();
});

test("nothing of all this made the page complain or ask for anything elsewhere", () => {
  expect(pane.complaints).toEqual([]);
});

test("where the host does not know our functions, the readings are judged all the same, and Repair formulas enters the formulas again", async () => {
  const page = await pane.open("unknown");
  await check(page);
  expect(await page.locator(".counts").textContent()).toBe("2 of 2 rows checked");
  expect(await page.locator(".word").allTextContents()).toEqual(["over", "no result"]);
  await button(page, "Repair formulas").focus();
  await page.keyboard.press("Enter");
  await page.getByText("4 formulas entered again.").waitFor();
  await button(page, "Repair formulas").waitFor({ state: "detached" });
});
