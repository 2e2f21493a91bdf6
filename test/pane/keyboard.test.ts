import type { Page } from "playwright-core";
import { type PaneBrowser, paneBrowser } from "../helpers/pane-browser.ts";
import { VIEWS } from "../helpers/pane-views.ts";

import.meta.jest.setTimeout(120_000);

let pane: PaneBrowser;
beforeAll(async () => {
  pane = await paneBrowser();
});
afterAll(() => pane.close());

/** Numbers everything that the Tab key should reach, in the order of the page; gives what each is called. */
const tagged = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const all = [...document.querySelectorAll<HTMLElement>("a[href], button, input, select, textarea, summary, [tabindex]")];
    const reached = all.filter((one) => one.tabIndex >= 0 && one.checkVisibility({ visibilityProperty: true }));
    return reached.map((one, at) => {
      one.dataset.walk = String(at);
      return `${one.tagName} ${(one.getAttribute("aria-label") ?? one.textContent ?? one.id).slice(0, 40)}`;
    });
  });

/** Where the focus is, and what is wrong with how it shows. */
const focused = (page: Page): Promise<{ at: number; wrong: string } | null> =>
  page.evaluate(() => {
    const one = document.activeElement as HTMLElement | null;
    if (!one || one === document.body || one.dataset.walk === undefined) return null;
    const { outlineStyle, outlineWidth } = getComputedStyle(one);
    const { top, bottom, left, right } = one.getBoundingClientRect();
    const header = document.querySelector("header")!;
    const wrong = [
      outlineStyle === "none" || Number.parseFloat(outlineWidth) < 2 ? "no outline" : "",
      !header.contains(one) && top < header.getBoundingClientRect().bottom ? "under the tabs" : "",
      bottom > innerHeight + 1 || left < 0 || right > innerWidth + 1 ? "out of sight" : "",
    ];
    return { at: Number(one.dataset.walk), wrong: wrong.filter(Boolean).join(", ") };
  });

describe("by the Tab key alone", () => {
  test.each(Object.keys(VIEWS))("%s is walked through from first to last, each stop in sight, and left again", async (view) => {
    const { scene, go } = VIEWS[view]!;
    const page = await pane.open(scene);
    await go(page);
    const names = await tagged(page);
    await page.evaluate(() => {
      (document.activeElement as HTMLElement | null)?.blur();
      getSelection()?.removeAllRanges();
      scrollTo(0, 0);
      document.body.tabIndex = -1;
      document.body.focus();
    });
    const walked: number[] = [];
    const wrong: string[] = [];
    for (let step = 0; step < names.length; step++) {
      await page.keyboard.press("Tab");
      const here = await focused(page);
      if (!here) break;
      walked.push(here.at);
      if (here.wrong) wrong.push(`${names[here.at]}: ${here.wrong}`);
    }
    expect(wrong).toEqual([]);
    expect(walked).toEqual(names.map((_, at) => at));
    await page.keyboard.press("Tab");
    expect((await focused(page))?.at ?? 0).toBe(0);
    await page.context().close();
  });
});

test("the tabs are one stop, and the arrow keys go round them", async () => {
  const page = await pane.open("engine");
  await page.getByRole("tab", { name: "Check" }).focus();
  const shown: string[] = [];
  do {
    await page.keyboard.press("ArrowRight");
    shown.push((await page.getByRole("tablist", { name: "Crosshatch" }).getByRole("tab", { selected: true }).textContent())!);
  } while (shown.at(-1) !== "Check" && shown.length < 20);
  expect(shown).toEqual(["Plan", "Compare", "Report", "?", "Set up", "Measure", "Check"]);
});

test("the views behind a tab are the next stop, with arrow keys of their own", async () => {
  const page = await pane.open("engine");
  await page.getByRole("tab", { name: "Check" }).focus();
  for (let presses = 0; presses < 3; presses++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Tab");
  const within = page.getByRole("tablist", { name: "Report" }).getByRole("tab", { selected: true });
  expect(await within.textContent()).toBe("Page");
  await page.keyboard.press("ArrowRight");
  expect(await within.textContent()).toBe("Drawings");
  await page.keyboard.press("ArrowRight");
  expect(await within.textContent()).toBe("Page");
});

test("an example is found, unfolded and copied without a mouse", async () => {
  const page = await pane.open("engine", { permissions: ["clipboard-read", "clipboard-write"] });
  await page.getByRole("tab", { name: "Check" }).focus();
  await page.keyboard.press("End");
  await page.getByRole("searchbox").waitFor();
  for (let presses = 0; presses < 2; presses++) await page.keyboard.press("Tab");
  await page.keyboard.type("ringgapfile");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.locator(".manual").waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("status").filter({ hasText: "Copied." }).waitFor({ state: "attached" });
  expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/^=HATCH\.RINGGAPFILE\(/);
});

test("a sample is put into an empty workbook without a mouse", async () => {
  const page = await pane.open("blank");
  await page.getByRole("tab", { name: "Check" }).focus();
  for (let presses = 0; presses < 5; presses++) await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Insert a sample build sheet");
  await page.keyboard.press("Enter");
  await page.getByRole("status").filter({ hasText: "A sample was put in, with invented readings." }).waitFor();
});
