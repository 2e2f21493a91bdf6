import type { Page } from "playwright-core";
import { memoryHost } from "../../../src/hosts/memory.ts";
import { fieldsLike, StoredChoices } from "../../../src/pane/parts/stored-choices.ts";
import { PANE_KEY } from "../../../src/workbook/storage.ts";
import { atPane, check } from "../../helpers/pane-browser.ts";
import { fill, openPlan } from "../../helpers/plan-steps.ts";
import { toView } from "../../helpers/to-view.ts";

import.meta.jest.setTimeout(120_000);

const book = () => memoryHost([{ name: "Bores", cells: [[73.02]] }]);
const settled = () => new Promise((resolve) => setTimeout(resolve, 20));

describe("what a workbook keeps of the pane", () => {
  test("nothing is written before somebody changes something; the last view alone is no change", async () => {
    const host = book();
    const kept = new StoredChoices(host);
    await kept.recalled;
    kept.put("view", "plan", true);
    kept.write();
    await settled();
    expect(await host.loadText(PANE_KEY)).toBeNull();
    kept.put("functions", "taper");
    kept.write();
    await settled();
    expect(JSON.parse((await host.loadText(PANE_KEY))!)).toEqual({ view: "plan", functions: "taper" });
    kept.put("view", "draw", true);
    kept.write();
    await settled();
    expect(JSON.parse((await host.loadText(PANE_KEY))!)).toMatchObject({ view: "draw" });
  });

  test("a change made before the workbook has answered is newer than what it kept, and takes nothing else off", async () => {
    const host = book();
    await host.storeText(PANE_KEY, JSON.stringify({ functions: "taper", draw: "Bore profile: A" }));
    const kept = new StoredChoices(host);
    kept.put("functions", "gap");
    kept.write();
    await settled();
    expect(JSON.parse((await host.loadText(PANE_KEY))!)).toEqual({ functions: "gap", draw: "Bore profile: A" });
  });

  test.each(["{", "7", '"text"', "null", "[1]"])("%s in its place is taken for nothing", async (text) => {
    const host = book();
    await host.storeText(PANE_KEY, text);
    const kept = new StoredChoices(host);
    await kept.recalled;
    expect(kept.value("view")).toBeUndefined();
  });

  test("fields of another type, and fields that are not known, are left out", () => {
    const first = { cylinders: 4, unit: "mm", isSecond: false };
    expect(fieldsLike(first, { cylinders: "3", unit: "in", isSecond: null, other: 1 })).toEqual({ cylinders: 4, unit: "in", isSecond: false });
    expect([fieldsLike(first, null), fieldsLike(first, "text")]).toEqual([undefined, undefined]);
  });
});

describe("in the pane", () => {
  const pane = atPane();

  const tab = toView;
  const again = (page: Page) => page.evaluate(() => window.stage.again());
  const text = (page: Page) => page.evaluate(() => window.stage.host.loadText("pane"));

  test("each view is found as it was left, and the last view is the first", async () => {
    const page = await pane.open("engine");
    await openPlan(page, "Ring filing");
    await fill(page, { Bores: "Bores!B2:G4" });
    await tab(page, "Set up");
    await page.getByLabel("Cylinders").selectOption("3");
    await tab(page, "Functions");
    await page.getByRole("searchbox").fill("taper");
    await tab(page, "Compare");
    await page.getByLabel("Before", { exact: true }).selectOption("the sheet Bores");
    await again(page);
    await page.getByRole("tab", { name: "Compare", selected: true }).waitFor();
    expect(await page.getByLabel("Before", { exact: true }).inputValue()).toBe("sheet:Bores");
    await tab(page, "Plan");
    expect(await page.getByLabel("Bores", { exact: true }).inputValue()).toBe("Bores!B2:G4");
    await tab(page, "Set up");
    expect(await page.getByLabel("Cylinders").inputValue()).toBe("3");
    await tab(page, "Functions");
    expect(await page.getByRole("searchbox").inputValue()).toBe("taper");
  });

  test("what is shown of the findings, and in which order, is kept", async () => {
    const page = await pane.open("findings");
    await check(page);
    await page.getByRole("combobox", { name: "Show" }).selectOption("near limit (1)");
    await page.getByRole("combobox", { name: "Order" }).selectOption("by place");
    await again(page);
    await check(page);
    expect(await page.getByRole("combobox", { name: "Show" }).inputValue()).toBe("near limit");
    expect(await page.getByRole("combobox", { name: "Order" }).inputValue()).toBe("by place");
    expect(await page.locator(".finding").count()).toBe(1);
  });

  test("looking round keeps nothing, and typing is kept once it rests", async () => {
    const page = await pane.open("engine");
    for (const name of ["Plan", "Compare", "Draw", "Report", "Set up", "Functions", "About"]) await tab(page, name);
    await page.getByRole("heading", { name: "Cautions" }).waitFor();
    await page.waitForTimeout(1000);
    expect(await text(page)).toBeNull();
    await tab(page, "Functions");
    await page.getByRole("searchbox").fill("gap");
    await page.waitForFunction(async () => (await window.stage.host.loadText("pane"))?.includes("gap"));
  });

  test("a workbook that takes nothing is worked with as any other, without a word about it", async () => {
    const page = await pane.open("engine");
    await page.evaluate(() => {
      window.stage.host.storeText = () => Promise.reject(new Error("protected"));
    });
    await tab(page, "Functions");
    await page.getByRole("searchbox").fill("gap");
    await page.waitForTimeout(1000);
    await tab(page, "Check");
    expect((await page.getByRole("alert").allTextContents()).join("")).toBe("");
    expect(pane.complaints).toEqual([]);
  });

  test("choices that are no longer to be had count as not made", async () => {
    const page = await pane.open("engine");
    await page.evaluate(() =>
      window.stage.host.storeText("pane", JSON.stringify({ view: "gone", setup: { cylinders: 40 }, compare: { before: { from: "sheet" } } })),
    );
    await again(page);
    await page.getByRole("tab", { name: "Check", selected: true }).waitFor();
    await tab(page, "Set up");
    expect(await page.getByLabel("Cylinders").inputValue()).toBe("4");
    await tab(page, "Compare");
    expect(await page.getByLabel("Before", { exact: true }).inputValue()).toBe("file");
  });
});
