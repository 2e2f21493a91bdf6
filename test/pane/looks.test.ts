import { mkdirSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { THEMES } from "../../src/pane/theme.ts";
import { check, type PaneBrowser, paneBrowser } from "../helpers/pane-browser.ts";
import { fillRebore, fillRings, openPlan, workOut } from "../helpers/plan-steps.ts";
import type { SceneName } from "./page/scenes.ts";

import.meta.jest.setTimeout(120_000);

const PICTURES = fileURLToPath(new URL("../output/pane/", import.meta.url));

type Views = Readonly<Record<string, { scene: SceneName; go(page: Page): Promise<unknown> }>>;

const LOOKS: Readonly<Record<string, BrowserContextOptions>> = {
  light: { colorScheme: "light" },
  dark: { colorScheme: "dark" },
  forced: { colorScheme: "dark", forcedColors: "active" },
};

const PLANS: Views = {
  plan: {
    scene: "engine",
    go: (page) =>
      openPlan(page, "Rebore")
        .then(() => fillRebore(page))
        .then(() => workOut(page)),
  },
  "plan-trouble": { scene: "engine", go: (page) => openPlan(page, "Shims").then(() => workOut(page)) },
  "plan-in-the-way": {
    scene: "engine",
    go: async (page) => {
      await openPlan(page, "Ring filing");
      await fillRings(page);
      await workOut(page);
      await page.getByLabel("First cell", { exact: true }).fill("'Work to do'!A1");
      await page.getByRole("button", { name: "Write to sheet" }).click();
      await page.getByText("1 cell holds something").scrollIntoViewIfNeeded();
    },
  },
};

/** Every view and state, and how to get there. */
const VIEWS: Views = {
  "first-run": { scene: "findings", go: async () => {} },
  findings: { scene: "findings", go: (page) => check(page).then(() => page.locator("[data-index='1']").click()) },
  changed: {
    scene: "findings",
    go: async (page) => {
      await check(page);
      await page.evaluate(() => window.stage.host.type({ sheet: "Bores", row: 0, column: 0 }, 73.03));
      await page.getByRole("button", { name: "Mark cells" }).click();
      await page.getByText("9 cells marked.").waitFor();
    },
  },
  clean: { scene: "clean", go: check },
  empty: { scene: "empty", go: check },
  working: {
    scene: "slow",
    go: (page) =>
      page
        .getByRole("button", { name: "Check" })
        .click()
        .then(() => page.getByRole("progressbar").waitFor({ state: "attached" })),
  },
  refusal: { scene: "gone", go: (page) => check(page).then(() => page.locator("[data-index='0']").click()) },
  functions: { scene: "findings", go: openFunction },
  ...PLANS,
  compare: {
    scene: "compared",
    go: async (page) => {
      await page.getByRole("tab", { name: "Compare" }).click();
      await page.getByLabel("Before", { exact: true }).selectOption("the sheet Build");
      await page.getByLabel("After", { exact: true }).selectOption("the sheet Strip-down");
      await page.getByRole("button", { name: "Compare", exact: true }).click();
      await page.locator("summary", { hasText: "Wear" }).click();
    },
  },
  draw: {
    scene: "judged",
    go: async (page) => {
      await page.getByRole("tab", { name: "Draw" }).click();
      await page.getByRole("button", { name: "Draw" }).click();
      await page.locator("svg.drawing").waitFor();
    },
  },
  report: {
    scene: "judged",
    go: async (page) => {
      await page.getByRole("tab", { name: "Report" }).click();
      await page.getByRole("button", { name: "Make the report" }).click();
      await page.getByRole("link", { name: "Save" }).waitFor();
    },
  },
  "set-up": {
    scene: "blank",
    go: async (page) => {
      await page.getByRole("tab", { name: "Set up" }).click();
      await page.getByRole("button", { name: "Add these sheets" }).click();
      await page.getByText("10 new sheets").waitFor();
    },
  },
  layout: {
    scene: "engine",
    go: async (page) => {
      await page.getByRole("tab", { name: "Layout" }).click();
      await page.getByRole("button", { name: "Propose from the headings" }).click();
      await page.locator(".changes li").first().waitFor();
    },
  },
  "layout-trouble": {
    scene: "engine",
    go: async (page) => {
      await page.getByRole("tab", { name: "Layout" }).click();
      await page.getByText("keeps no layout").waitFor();
      await page.locator("summary", { hasText: "More" }).click();
      await page.getByRole("button", { name: "Add this range" }).click();
      await page.locator(".trouble").waitFor();
    },
  },
  about: { scene: "findings", go: (page) => page.getByRole("tab", { name: "About" }).click() },
};

async function openFunction(page: Page): Promise<void> {
  await page.getByRole("tab", { name: "Functions" }).click();
  await page.locator("summary", { hasText: /^PISTONCLEARANCE/ }).click();
  await page.locator(".manual").waitFor();
}

let pane: PaneBrowser;
beforeAll(async () => {
  mkdirSync(PICTURES, { recursive: true });
  pane = await paneBrowser();
});
afterAll(() => pane.close());

async function violations(page: Page): Promise<string[]> {
  // The page has no frames, for which alone the other mode opens a second page each time.
  const { violations: found } = await new AxeBuilder({ page }).setLegacyMode().analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}

const width = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth);

describe.each(Object.keys(LOOKS))("%s", (look) => {
  test.each(Object.keys(VIEWS))("%s fits 320 px and axe finds nothing", async (view) => {
    const { scene, go } = VIEWS[view]!;
    const page = await pane.open(scene, LOOKS[look]);
    await go(page);
    await page.screenshot({ path: `${PICTURES}${view}-${look}.png` });
    expect(await width(page)).toBe(320);
    expect(await violations(page)).toEqual([]);
    await page.context().close();
  });
});

test.each(THEMES)("the Office theme %s holds whatever the system prefers, and axe finds nothing", async (theme) => {
  const isDark = theme === "dark-gray" || theme === "black";
  const page = await pane.open("findings", { colorScheme: isDark ? "light" : "dark" });
  await page.evaluate((name) => window.stage.pane.setTheme(name), theme);
  await check(page);
  await page.screenshot({ path: `${PICTURES}theme-${theme}.png` });
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe(isDark ? "dark" : "light");
  expect(await violations(page)).toEqual([]);
  await page.evaluate(() => window.stage.pane.setTheme(undefined));
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe(isDark ? "light" : "dark");
});

test("letters of twice the size still fit 320 px", async () => {
  for (const { scene, go } of Object.values(VIEWS)) {
    const page = await pane.open(scene);
    await page.evaluate(() => {
      document.documentElement.style.fontSize = "200%";
    });
    await go(page);
    expect(await width(page)).toBe(320);
    await page.context().close();
  }
});

test("without colour the words and the shapes still differ", async () => {
  const page = await pane.open("findings");
  await check(page);
  const seen = await page.locator(".word").evaluateAll((words) => words.map((word) => `${word.textContent} ${word.querySelector("path")?.getAttribute("d")}`));
  expect(new Set(seen).size).toBe(seen.length);
  const shapes = new Set(await page.locator(".word path").evaluateAll((paths) => paths.map((path) => path.getAttribute("d"))));
  expect(shapes.size).toBe(5);
});

describe("the page", () => {
  test("allows scripts and styles from its own files only", () => {
    const html = readFileSync(new URL("../../src/pane/pane.html", import.meta.url), "utf8");
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1];
    expect(policy).toBe("default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; base-uri 'none'; form-action 'none'");
    expect(html).not.toMatch(/ style=| on\w+=|<style|<script>/);
  });

  test("was never held back by that policy, and asked for nothing elsewhere", () => {
    expect(pane.complaints).toEqual([]);
  });

  test("never opens a dialogue of the browser, which Office refuses", () => {
    const folder = new URL("../../src/pane/", import.meta.url);
    for (const file of readdirSync(folder).filter((name) => name.includes(".ts")))
      expect(readFileSync(new URL(file, folder), "utf8")).not.toMatch(/\b(?:alert|confirm|prompt)\(/);
  });
});
