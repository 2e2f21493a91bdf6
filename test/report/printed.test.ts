import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { pdfOf } from "../../src/cli/report.ts";
import { launchBrowser } from "../../src/tools/browser.ts";
import { root } from "../../src/tools/paths.ts";
import { HOSTILE } from "../drawings/tree.ts";
import { violations } from "../helpers/accessibility.ts";
import { fullInput, inputWith, pageOf } from "./page.ts";

const OUTPUT = join(root, "test", "output", "report");
const input = fullInput();
const PAGE = pageOf(input);
const TWO = pageOf(input, { ...input, name: `${"long".repeat(60)}.xlsx`, notes: [HOSTILE, "W".repeat(300)] });

let browser: Browser;
const complaints: string[] = [];

beforeAll(async () => {
  mkdirSync(OUTPUT, { recursive: true });
  browser = await launchBrowser();
}, 120_000);

afterAll(async () => {
  await browser.close();
});

/** The page as a reader opens it, in a window of its own. What it asks for or complains of is collected. */
async function open(html: string, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await (await browser.newContext(options)).newPage();
  page.on("console", (message) => complaints.push(message.text()));
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("request", (request) => complaints.push(`asked for ${request.url()}`));
  await page.setContent(html);
  return page;
}

describe.each([
  ["on a desk", { viewport: { width: 1000, height: 900 } }],
  ["at 320 px", { viewport: { width: 320, height: 700 } }],
  ["in the dark", { viewport: { width: 1000, height: 900 }, colorScheme: "dark" }],
  ["in forced colours", { viewport: { width: 1000, height: 900 }, forcedColors: "active" }],
] as const)("%s", (name, options) => {
  test("nobody is kept out, and nothing is wider than the window", async () => {
    const page = await open(TWO, options);
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
    await page.screenshot({ path: join(OUTPUT, `${name.replaceAll(" ", "-")}.png`), fullPage: true });
    await page.context().close();
  }, 60_000);
});

test("every word of every drawing lies inside its drawing, and none on another", async () => {
  const page = await open(PAGE, { viewport: { width: 1000, height: 900 } });
  const faults = await page.evaluate(() => {
    const found: string[] = [];
    for (const svg of document.querySelectorAll("svg")) {
      const frame = svg.getBoundingClientRect();
      const words = [...svg.querySelectorAll("text")]
        .filter(({ textContent }) => textContent)
        .map((text) => ({ text: text.textContent!, box: text.getBoundingClientRect() }));
      for (const [i, { text, box }] of words.entries()) {
        if (box.left < frame.left - 1 || box.right > frame.right + 1 || box.top < frame.top - 1 || box.bottom > frame.bottom + 1)
          found.push(`${text} leaves ${svg.querySelector("title")!.textContent}`);
        for (const other of words.slice(i + 1)) {
          const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
          // Boxes of letters are higher than the letters.
          const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top) - 4;
          if (across > 1 && down > 0) found.push(`${text} lies on ${other.text}`);
        }
      }
    }
    return found;
  });
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

test("hostile text runs nothing and leads nowhere", async () => {
  const page = await open(pageOf(inputWith({ name: HOSTILE, unread: `${HOSTILE}<img src=x onerror=alert(1)>` })));
  expect(await page.locator("script, img, iframe, a[href^=javascript]").count()).toBe(0);
  expect(await page.title()).toContain("<script>alert(1)</script>");
  await page.context().close();
});

/** Sizes of the pages, in points. */
const sheetsOf = (pdf: Uint8Array): string[] =>
  [
    ...Buffer.from(pdf)
      .toString("latin1")
      .matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g),
  ].map(([, width, height]) => `${Math.round(Number(width))}×${Math.round(Number(height))}`);

// ISO 216: A4 is 210 × 297 mm, 595 × 842 pt. ANSI/ASME Y14.1: letter is 8.5 × 11 in, 612 × 792 pt.
test.each([
  ["A4", /^59[56]×84[23]$/],
  ["Letter", /^612×792$/],
] as const)(
  "on paper of size %s it is a tagged PDF of that size, with few pages",
  async (paper, size) => {
    const pdf = await pdfOf(PAGE, paper);
    if ("why" in pdf) throw new Error(pdf.why);
    writeFileSync(join(OUTPUT, `${paper}.pdf`), pdf.bytes);
    const sheets = sheetsOf(pdf.bytes);
    expect(sheets.length).toBeGreaterThan(1);
    expect(sheets.length).toBeLessThan(6);
    for (const sheet of sheets) expect(sheet).toMatch(size);
    const text = Buffer.from(pdf.bytes).toString("latin1");
    expect(text.startsWith("%PDF-")).toBe(true);
    expect(text).toContain("/StructTreeRoot");
    expect(text).not.toContain("/JavaScript");
  },
  60_000,
);

test("nothing was complained of and nothing asked for", () => {
  expect(complaints).toEqual([]);
});
