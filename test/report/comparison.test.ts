import type { Browser } from "playwright-core";
import { trialSample } from "../../samples/trial/trial.ts";
import { launchOneOf, PRESENT_WAYS } from "../../src/cli/browser.ts";
import { compareReadings, compareTrial } from "../../src/compare/compare.ts";
import { renderComparison } from "../../src/report/comparison.ts";
import { compare, csv, reading } from "../compare/stand.ts";

const PAGE = { date: "2026-11-25", command: "crosshatch compare build.csv", files: [{ name: "build.csv", sha256: "ab12" }] };
const text = (page: string): string =>
  page
    .replace(/<style>.*?<\/style>/s, "")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");

test("one engine: before, after, change, U and verdict of every place, under its limit and what matters", () => {
  const of = (value: number, more = {}) => reading(value, { upper: 73.08, matters: 0.01, ...more });
  const page = text(
    renderComparison(compare([of(73), of(73.01, { cylinder: "2" })], [of(73.001), of(73.05, { cylinder: "2" }), of(73.02, { cylinder: "3" })]), PAGE),
  );
  expect(page).toContain("bore, mm: limit at most 73.080; matters 0.01 cylinder 1, top thrust 73.000 73.001 +0.001 0.0042 same within");
  expect(page).toContain("cylinder 2, top thrust 73.010 73.050 +0.040 0.0042 differs");
  expect(page).toContain("Not compared What Why engine A, cylinder 3, bore, top thrust it is measured after only");
  expect(page).toContain("To work it out again crosshatch compare build.csv SHA-256 of build.csv: ab12");
});

test("two engines' sizes are called by their engines, and nothing of them has changed", () => {
  const { places, ...rest } = compareReadings({ name: "two.csv", readings: [reading(73), reading(73.02, { engine: "B" })], notes: [] }, undefined, {
    engines: { before: "A", after: "B" },
  });
  const page = text(renderComparison({ places, ...rest }, PAGE));
  expect(page).toContain("Place A B Difference U Verdict");
  expect(page).not.toContain("Before");
});

test("an engine that alone has a place stands there with a gap", () => {
  const side = (by: number) => [reading(73 + by), reading(73 + by, { engine: "B" }), reading(73 + by, { cylinder: "2" })];
  const page = text(renderComparison(compare(side(0), side(0.001)), PAGE));
  expect(page).toContain("cylinder 2, top thrust 73.000 73.001 +0.001 – – – one engine only");
});

test("what is typed is escaped", () => {
  const page = renderComparison(
    compare([reading(73, { cylinder: "<img src=x onerror=alert(1)>" })], [reading(73.01, { cylinder: "<img src=x onerror=alert(1)>" })]),
    PAGE,
  );
  expect(page).not.toContain("<img");
  expect(page).toContain("&lt;img");
});

describe("on paper", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchOneOf(PRESENT_WAYS);
  }, 60_000);
  afterAll(() => browser.close());

  // A4 less the margins of the style: 178 × 265 mm, at 96 dots an inch.
  test("two engines of three cylinders fit on two pages, and the details come behind; nothing is wider than the page", async () => {
    const set = await csv(trialSample()["trial.csv"]!);
    const page = await browser.newPage({ viewport: { width: 673, height: 1002 } });
    await page.emulateMedia({ media: "print" });
    await page.setContent(renderComparison(compareTrial([set]), PAGE));
    const details = await page.evaluate(() => document.querySelector<HTMLElement>("section.input")!.offsetTop);
    expect(details).toBeLessThanOrEqual(2 * 1002);
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll("main > *")].filter((part) => part.scrollWidth > 674).map((part) => part.outerHTML.slice(0, 80)),
    );
    expect(wide).toEqual([]);
    await page.close();
  }, 60_000);

  test("printed to PDF in the browser they are two A4 pages, the details apart", async () => {
    const page = await browser.newPage();
    await page.setContent(renderComparison(compareTrial([await csv(trialSample()["trial.csv"]!)]), PAGE));
    // ISO 216: A4 is 210 × 297 mm, 595 × 842 pt.
    const sheets = async () =>
      [...(await page.pdf({ format: "A4", preferCSSPageSize: true })).toString("latin1").matchAll(/\/MediaBox \[0 0 59[56][.\d]* 84[23][.\d]*\]/g)].length;
    const whole = await sheets();
    await page.evaluate(() => document.querySelector("section.input")!.remove());
    expect(await sheets()).toBe(2);
    expect(whole).toBeGreaterThan(2);
    await page.close();
  }, 60_000);
});
