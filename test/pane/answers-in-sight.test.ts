import type { Locator, Page } from "playwright-core";
import { atPane } from "../helpers/pane-browser.ts";
import { VIEWS } from "../helpers/pane-views.ts";

import.meta.jest.setTimeout(60_000);

const pane = atPane();

const SIZES = [
  { width: 320, height: 600 },
  { width: 1280, height: 600 },
] as const;

/** How far below the tabs an element begins and how much of it is above the lower edge, in pixels. */
const sight = (what: Locator): Promise<{ below: number; seen: number }> =>
  what.evaluate((one) => {
    const { top, bottom } = one.getBoundingClientRect();
    return { below: Math.round(top - document.querySelector("header")!.getBoundingClientRect().bottom), seen: Math.min(bottom, innerHeight) - top };
  });

async function expectInSight(what: Locator, atLeast: number): Promise<void> {
  const { below, seen } = await sight(what);
  expect(below).toBeGreaterThanOrEqual(0);
  expect(seen).toBeGreaterThanOrEqual(atLeast);
}

/** Views whose answer has a section of its own, with the name of that section. */
const ANSWERS = { plan: "Plan: Rebore", "trial-plan": "What the trial will see" } as const;

async function opened(view: string, viewport: (typeof SIZES)[number]): Promise<Page> {
  const { scene, go } = VIEWS[view]!;
  const page = await pane.open(scene, { viewport });
  await go(page);
  return page;
}

describe.each(SIZES)("in a pane of $width × $height", (viewport) => {
  test.each(Object.entries(ANSWERS))("the answer of %s is in sight when it comes, and has the focus", async (view, name) => {
    const page = await opened(view, viewport);
    const answer = page.getByRole("region", { name });
    expect(await answer.evaluate((one) => one === document.activeElement)).toBe(true);
    await expectInSight(answer, 150);
  });

  test("a comparison is in sight from its first sentence, again each time that it is made", async () => {
    const page = await opened("compare-trouble", viewport);
    await page.getByLabel("Before", { exact: true }).selectOption("the sheet Build");
    await page.getByLabel("After", { exact: true }).selectOption("the sheet Strip-down");
    for (let times = 0; times < 2; times++) {
      await page.getByRole("button", { name: "Compare", exact: true }).click();
      const answer = page.getByRole("region", { name: "Result of the comparison" });
      await page.waitForFunction(() => document.activeElement?.ariaLabel === "Result of the comparison");
      await expectInSight(answer, 150);
    }
  });

  test("a plan that is shown again leaves the focus where it is", async () => {
    const page = await opened("plan", viewport);
    const plans = page.getByRole("combobox", { name: "Plan", exact: true });
    await plans.focus();
    await plans.selectOption("Shims");
    await plans.selectOption("Rebore");
    await page.getByRole("region", { name: "Plan: Rebore" }).waitFor();
    expect(await plans.evaluate((one) => one === document.activeElement)).toBe(true);
  });

  test("a sentence that says why nothing came of it is in sight", async () => {
    const page = await opened("compare-trouble", viewport);
    await expectInSight(page.getByText("Choose the file to compare with."), 15);
  });

  test("what came of adding sheets is in sight below its long form", async () => {
    const page = await opened("set-up", viewport);
    await expectInSight(page.getByText("22 new sheets"), 15);
  });

  test("the measuring form can be saved where it is made", async () => {
    const page = await opened("measure", viewport);
    await page.getByRole("button", { name: "Make a form to write on" }).click();
    await page.getByRole("region", { name: "Measuring form" }).waitFor();
    await expectInSight(page.getByRole("link", { name: /^Save/ }), 15);
  });

  test("a layout says beside its own button that it is kept", async () => {
    const page = await opened("layout", viewport);
    await page.getByRole("button", { name: "Keep this layout" }).click();
    const kept = page.getByText("Kept in the workbook");
    await kept.waitFor();
    await expectInSight(kept, 15);
  });

  test("a range that is added to a layout is in sight in the list, and what is done there goes on there", async () => {
    const page = await opened("layout", viewport);
    await page.getByLabel("Range", { exact: true }).fill("Pistons!A2:A4");
    await page.getByLabel("Of", { exact: true }).fill("piston skirt");
    await page.getByRole("button", { name: "Add this range" }).click();
    const added = page.getByRole("checkbox", { name: "Use Pistons!A2:A4" }).first();
    await page.waitForFunction(() => document.activeElement?.getAttribute("aria-label") === "Use Pistons!A2:A4");
    await expectInSight(added, 10);
  });

  test("a picture that is put into the sheet is told beside its button", async () => {
    const page = await opened("draw", viewport);
    await page.getByRole("button", { name: "Put in the sheet" }).click();
    const put = page.getByText("Put in at");
    await put.waitFor();
    await expectInSight(put, 15);
  });
});
