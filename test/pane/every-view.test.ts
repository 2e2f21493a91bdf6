import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { violations } from "../helpers/accessibility.ts";
import { atPane } from "../helpers/pane-browser.ts";
import { VIEWS } from "../helpers/pane-views.ts";

import.meta.jest.setTimeout(120_000);

const PICTURES = fileURLToPath(new URL("../output/pane/", import.meta.url));

const LOOKS: Readonly<Record<string, Parameters<Page["emulateMedia"]>[0]>> = {
  light: { colorScheme: "light", forcedColors: "none" },
  dark: { colorScheme: "dark", forcedColors: "none" },
  forced: { colorScheme: "dark", forcedColors: "active" },
};

const pane = atPane();
beforeAll(() => mkdirSync(PICTURES, { recursive: true }));

const width = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth);

const letters = (page: Page, size: "100%" | "200%") =>
  page.evaluate((wanted) => {
    document.documentElement.style.fontSize = wanted;
  }, size);

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

describe.each(Object.keys(VIEWS))("%s", (view) => {
  let page: Page;
  beforeAll(async () => {
    const { scene, go } = VIEWS[view]!;
    page = await pane.open(scene, { colorScheme: "light" });
    await go(page);
  });
  afterAll(() => pane.takeBack(page));

  test("fits 320 px in every look and with letters of twice the size, and axe finds nothing", async () => {
    for (const [look, media] of Object.entries(LOOKS)) {
      await page.emulateMedia(media);
      await page.screenshot({ path: `${PICTURES}${view}-${look}.png`, fullPage: true });
      expect([look, await width(page)]).toEqual([look, 320]);
      // Looks differ in colours alone: what else axe asks for is the same in all of them, and forced colours are the system's own.
      if (look !== "forced") expect([look, await violations(page, look === "light" ? undefined : "color-contrast")]).toEqual([look, []]);
    }
    await letters(page, "200%");
    expect(await width(page)).toBe(320);
  });

  test("is walked through by the Tab key alone from first to last, each stop in sight, and left again", async () => {
    await page.emulateMedia(LOOKS.light!);
    await letters(page, "100%");
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
  });
});
