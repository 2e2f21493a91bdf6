import type { Page } from "playwright-core";
import type { SceneName } from "../pane/page/scenes.ts";
import { check } from "./pane-browser.ts";
import { fillRebore, fillRings, openPlan, workOut } from "./plan-steps.ts";
import { toView } from "./to-view.ts";

type Views = Readonly<Record<string, { scene: SceneName; go(page: Page): Promise<unknown> }>>;

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
export const VIEWS: Views = {
  "first-run": { scene: "findings", go: async () => {} },
  findings: { scene: "findings", go: (page) => check(page).then(() => page.locator("[data-index='1']").click()) },
  "functions-not-known": { scene: "unknown", go: check },
  "findings-of-the-sheet": {
    scene: "others",
    go: async (page) => {
      await check(page);
      await page.keyboard.press("F8");
      await page.getByRole("combobox", { name: "Order" }).selectOption("by place");
    },
  },
  "findings-half-filled": {
    scene: "half",
    go: async (page) => {
      await check(page);
      await page.locator("[data-index='2']").click();
      await page.locator("[data-index='2'][aria-expanded='true']").waitFor();
    },
  },
  changed: {
    scene: "slow",
    go: async (page) => {
      await check(page);
      await page.evaluate(() => window.stage.host.type({ sheet: "Bores", row: 0, column: 0 }, 73.03));
      await page.getByRole("button", { name: "Mark cells" }).click();
      await page.getByText("9 cells marked.").waitFor();
    },
  },
  "mostly-unjudged": { scene: "loose", go: (page) => check(page).then(() => page.getByRole("button", { name: "Propose a layout" }).waitFor()) },
  clean: { scene: "clean", go: check },
  empty: { scene: "empty", go: check },
  working: {
    scene: "endless",
    go: async (page) => {
      await check(page);
      await page.getByRole("button", { name: "Check", exact: true }).click();
      await page.getByRole("button", { name: "Stop" }).waitFor();
      await page.getByText("42 %").waitFor();
    },
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
      await toView(page, "Draw");
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
      await page.getByText("22 new sheets").waitFor();
    },
  },
  measure: { scene: "blank", go: (page) => toSheets(page).then(() => toView(page, "Measure")) },
  "measure-on": { scene: "blank", go: measuring },
  "measure-asked": {
    scene: "blank",
    go: async (page) => {
      await measuring(page);
      await page.keyboard.type("73.025\n73.02\n73.02\n73.015\n37.02\n");
      await page.getByRole("alert").filter({ hasText: "were two digits swapped?" }).waitFor();
    },
  },
  layout: {
    scene: "engine",
    go: async (page) => {
      await toView(page, "Layout");
      await page.getByRole("button", { name: "Propose from the headings" }).click();
      await page.locator(".changes li").first().waitFor();
    },
  },
  "layout-trouble": {
    scene: "engine",
    go: async (page) => {
      await toView(page, "Layout");
      await page.getByText("keeps no layout").waitFor();
      await page.locator("summary", { hasText: "More" }).click();
      await page.getByRole("button", { name: "Add this range" }).click();
      await page.locator(".trouble").waitFor();
    },
  },
  "layout-change": {
    scene: "engine",
    go: async (page) => {
      await toView(page, "Layout");
      await page.getByRole("button", { name: "Propose from the headings" }).click();
      await page.locator("summary", { hasText: "Change" }).first().click();
      await page.getByRole("button", { name: "Change it" }).waitFor();
    },
  },
  "trial-plan": {
    scene: "compared",
    go: async (page) => {
      await page.getByRole("tab", { name: "Compare" }).click();
      await page.locator("summary", { hasText: "Plan a trial" }).click();
      await page.getByLabel("Expanded uncertainty U of one reading").fill("0.004");
      await page.getByLabel("Standard deviation between engines that are treated alike").fill("0.005");
      await page.getByLabel("Smallest difference between the groups that must not be missed").fill("0.01");
      await page.getByRole("button", { name: "Work out" }).click();
      await page.locator(".planned").waitFor();
    },
  },
  "compare-trouble": {
    scene: "compared",
    go: async (page) => {
      await page.getByRole("tab", { name: "Compare" }).click();
      await page.locator("summary", { hasText: "Uncertainty, hours, two engines" }).click();
      await page.getByRole("button", { name: "Compare", exact: true }).click();
      await page.getByText("Choose the file to compare with.").waitFor();
    },
  },
  about: {
    scene: "findings",
    go: async (page) => {
      await toView(page, "About");
      await page.getByRole("heading", { name: "Cautions" }).waitFor();
    },
  },
};

async function openFunction(page: Page): Promise<void> {
  await toView(page, "Functions");
  await page.locator("summary", { hasText: /^PISTONCLEARANCE/ }).click();
  await page.locator(".manual").waitFor();
}

async function toSheets(page: Page): Promise<void> {
  await page.getByRole("tab", { name: "Set up" }).click();
  await page.getByRole("button", { name: "Add these sheets" }).click();
  await page.getByText("22 new sheets").waitFor();
}

/** The first bore is on. */
async function measuring(page: Page): Promise<void> {
  await toSheets(page);
  await toView(page, "Measure");
  await page.getByRole("combobox", { name: "What is measured" }).selectOption("Bores!Bores");
  await page.getByRole("button", { name: "Start measuring" }).click();
  await page.getByLabel("Cylinder 1, Top thrust").waitFor();
}
