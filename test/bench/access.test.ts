import { violations } from "../helpers/accessibility.ts";
import { atStand, type BenchPage } from "./stand.ts";

const at = atStand("no page");

/** Everything on the page and in the pane, the engine's own parts included. */
const violationsOn = (page: BenchPage): Promise<string[]> => violations(page.page);

const SIZES = { wide: { width: 1400, height: 850 }, narrow: { width: 320, height: 640 } } as const;

describe("the page and the pane in it", () => {
  let page: BenchPage;
  beforeAll(async () => {
    page = await at.stand.page({ colorScheme: "light" });
    await page.pane.getByRole("button", { name: "Check", exact: true }).waitFor();
  }, 60_000);
  afterAll(() => page?.close());

  /** What axe finds in every size and colour. Those differ in colours alone: what else axe asks for is the same in both. */
  async function foundEverywhere(): Promise<[string, string[]][]> {
    const found: [string, string[]][] = [];
    for (const size of ["narrow", "wide"] as const)
      for (const colorScheme of ["dark", "light"] as const) {
        await page.page.setViewportSize(SIZES[size]);
        await page.page.emulateMedia({ colorScheme });
        await page.picture(`${size}-${colorScheme}`);
        found.push([`${size}, ${colorScheme}`, await violations(page.page, colorScheme === "dark" ? "color-contrast" : undefined)]);
      }
    return found.filter(([, what]) => what.length > 0);
  }

  test("are so that axe finds nothing in any size and colour, at rest and with findings shown", async () => {
    expect(await foundEverywhere()).toEqual([]);
    await page.pane.getByRole("button", { name: "Check", exact: true }).click();
    await page.pane.locator(".finding").first().waitFor();
    expect(await foundEverywhere()).toEqual([]);
    expect(page.trouble).toEqual([]);
  }, 120_000);

  test("stand one below the other at 320 px, where nothing sticks out and several rows of the sheet are seen", async () => {
    await page.page.setViewportSize(SIZES.narrow);
    // The grid follows when it has drawn.
    await page.page.waitForFunction(() => document.querySelector(".o-grid canvas")!.getBoundingClientRect().right <= innerWidth);
    const [pageWidth, paneWidth] = await Promise.all([
      page.page.evaluate(() => document.documentElement.scrollWidth),
      page.pane.locator("html").evaluate((html) => html.scrollWidth),
    ]);
    expect([pageWidth, paneWidth]).toEqual([320, 320]);
    for (const part of [".o-grid canvas", "#pane", "#save"]) {
      const box = (await page.page.locator(part).first().boundingBox())!;
      expect(box.height).toBeGreaterThan(20);
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(320);
    }
    const [grid, pane] = await Promise.all([".o-grid", "#pane"].map(async (part) => (await page.page.locator(part).first().boundingBox())!));
    expect(grid!.height).toBeGreaterThan(160);
    expect(grid!.y + grid!.height).toBeLessThanOrEqual(pane!.y);
  }, 60_000);

  test("are reached one after the other by keys alone", async () => {
    await page.page.setViewportSize(SIZES.wide);
    await page.page.locator("#book").focus();
    const reached: string[] = [];
    for (let step = 0; step < 7; step++) {
      reached.push(await page.page.evaluate(() => document.activeElement!.id));
      await page.page.keyboard.press("Tab");
    }
    expect(reached).toEqual(["book", "new", "open", "save", "save-as", "sample", "pane-toggle"]);
  }, 60_000);
});

test("the question before leaving and the sentence of a refused file are as accessible", async () => {
  const page = await at.stand.page();
  await page.give("notes.xlsx", Buffer.from("1;2\n"));
  await page.page.locator("#message").waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.type("C4", "73.03");
  await page.page.getByRole("button", { name: "Sample", exact: true }).click();
  await page.page.getByRole("dialog").waitFor();
  expect(await violationsOn(page)).toEqual([]);
  await page.close();
}, 120_000);

test("what keeps somebody out is found, on the page and in the pane", async () => {
  const page = await at.stand.page();
  await page.page.evaluate(() => document.body.append(document.createElement("button")));
  await page.pane.locator("body").evaluate((body) => {
    body.append(Object.assign(document.createElement("img"), { src: "data:," }));
  });
  expect(await violationsOn(page)).toEqual([expect.stringMatching(/^button-name: /), expect.stringMatching(/^image-alt: #pane /)]);
  await page.close();
}, 120_000);
