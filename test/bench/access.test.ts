import { violations } from "../helpers/accessibility.ts";
import { atStand, type BenchPage } from "./stand.ts";

const at = atStand("no page");

/** Everything on the page and in the pane, the engine's own parts included. */
const violationsOn = (page: BenchPage): Promise<string[]> => violations(page.page);

const SIZES = { wide: { width: 1400, height: 850 }, narrow: { width: 320, height: 640 } } as const;

describe.each(["light", "dark"] as const)("in %s", (colorScheme) => {
  test.each(["wide", "narrow"] as const)(
    "axe finds nothing on the %s page, at rest and with findings shown",
    async (size) => {
      const page = await at.stand.page({ colorScheme, viewport: SIZES[size] });
      await page.pane.getByRole("button", { name: "Check", exact: true }).waitFor();
      expect(await violationsOn(page)).toEqual([]);
      await page.pane.getByRole("button", { name: "Check", exact: true }).click();
      await page.pane.locator(".finding").first().waitFor();
      expect(await violationsOn(page)).toEqual([]);
      await page.picture(`${size}-${colorScheme}`);
      expect(page.trouble).toEqual([]);
      await page.close();
    },
    120_000,
  );
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

test("at 320 px nothing sticks out, and pane and grid are both there", async () => {
  const page = await at.stand.page({ viewport: SIZES.narrow });
  await page.pane.locator("main").waitFor();
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
    expect(box.y + box.height).toBeLessThanOrEqual(640);
  }
  await page.close();
}, 60_000);

test("keys alone lead from the bar to the pane and back", async () => {
  const page = await at.stand.page();
  await page.page.locator("#book").focus();
  const reached: string[] = [];
  for (let step = 0; step < 7; step++) {
    reached.push(await page.page.evaluate(() => document.activeElement!.id));
    await page.page.keyboard.press("Tab");
  }
  expect(reached).toEqual(["book", "new", "open", "save", "save-as", "sample", "pane-toggle"]);
  await page.close();
}, 60_000);

test("what keeps somebody out is found, on the page and in the pane", async () => {
  const page = await at.stand.page();
  await page.page.evaluate(() => document.body.append(document.createElement("button")));
  await page.pane.locator("body").evaluate((body) => {
    body.append(Object.assign(document.createElement("img"), { src: "data:," }));
  });
  expect(await violationsOn(page)).toEqual([expect.stringMatching(/^button-name: /), expect.stringMatching(/^image-alt: #pane /)]);
  await page.close();
}, 120_000);
