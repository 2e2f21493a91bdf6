import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { toView } from "../helpers/to-view.ts";
import { atStand, BenchPage } from "./stand.ts";

import.meta.jest.setTimeout(120_000);

/*
 * What leaves the machine in a day's work: nothing. Each request of both pages is taken down from the
 * first on, in a browser that could reach the bench and any other address alike.
 */
const at = atStand("no page");
let bench: BenchPage;
/** Every request and connection, as method and address. */
const asked: string[] = [];
let folder: string;

function takeDown(page: Page): void {
  page.on("request", (request) => asked.push(`${request.method()} ${request.url()}`));
  page.on("websocket", (socket) => asked.push(`socket ${socket.url()}`));
  page.on("popup", (other) => asked.push(`window ${other.url()}`));
  page.on("worker", (worker) => asked.push(`worker ${worker.url()}`));
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bench-report-"));
  const context = await at.stand.browser.newContext({ viewport: { width: 1400, height: 850 } });
  const page = await context.newPage();
  takeDown(page);
  bench = new BenchPage(page, at.stand.server.url);
  await bench.open();
}, 120_000);
afterAll(async () => {
  await bench?.close();
  rmSync(folder, { recursive: true });
});

const elsewhere = (): string[] => asked.filter((one) => !one.startsWith(`GET ${at.stand.server.url}`) && !/^GET (?:data|blob):/.test(one));

test("through every view of the pane, with a check, a drawing, a saved workbook and a reading typed", async () => {
  await bench.pane.getByRole("tab").first().waitFor();
  expect(await bench.pane.getByRole("tab").allTextContents()).toEqual(["Set up", "Measure", "Check", "Plan", "Compare", "Report", "?"]);
  for (const name of ["Set up", "Layout", "Measure", "Check", "Plan", "Compare", "Report", "Draw", "Functions", "About"]) {
    await toView(bench.pane, name);
    await bench.pane.locator("[role=tabpanel]:not([hidden])").first().waitFor();
  }
  await bench.pane.getByRole("tab", { name: "Check" }).click();
  await bench.pane.getByRole("button", { name: "Check", exact: true }).click();
  await bench.pane.locator(".counts").waitFor();
  await toView(bench.pane, "Draw");
  await bench.pane.getByRole("button", { name: "Draw" }).click();
  await bench.pane.locator("svg.drawing").waitFor();
  await bench.type("C4", "73.09");
  await bench.saved();
  expect(asked.length).toBeGreaterThan(20);
  expect([elsewhere(), bench.trouble]).toEqual([[], []]);
});

test("once it is loaded, the bench works with its server gone", async () => {
  await bench.page.context().setOffline(true);
  const before = asked.length;
  await bench.type("C5", "73.05");
  await bench.pane.getByRole("tab", { name: "Check" }).click();
  await bench.pane.getByRole("button", { name: "Check", exact: true }).click();
  await bench.pane.locator(".counts").waitFor();
  expect(await bench.value("Bores!C5")).toBe(73.05);
  expect((await bench.saved()).bytes.length).toBeGreaterThan(1000);
  expect(asked.slice(before).filter((one) => !/^GET (?:data|blob):/.test(one))).toEqual([]);
  await bench.page.context().setOffline(false);
});

describe("the report page, opened from disk", () => {
  let page: Page;
  let address: string;
  /** Addresses that gave an answer; what a policy refuses is told as a request too, but never sent. */
  const reached: string[] = [];

  beforeAll(async () => {
    await toView(bench.pane, "Report");
    await bench.pane.getByRole("button", { name: "Make the report" }).click();
    const [download] = await Promise.all([bench.page.waitForEvent("download"), bench.pane.getByRole("link", { name: "Save Report" }).click()]);
    await download.saveAs(join(folder, "report.html"));
    address = pathToFileURL(join(folder, "report.html")).href;
    page = await bench.page.context().newPage();
    asked.length = 0;
    takeDown(page);
    await page.goto(address);
    page.on("response", (response) => reached.push(response.url()));
    page.on("requestfailed", (request) => request.failure()?.errorText !== "csp" && reached.push(`${request.url()} ${request.failure()?.errorText}`));
  });

  test("asks for nothing but itself, on the screen and on paper", async () => {
    expect(await page.locator("h1").textContent()).toContain("Engine build sheet");
    await page.emulateMedia({ media: "print" });
    await page.pdf();
    expect(asked).toEqual([`GET ${address}`]);
  });

  test.each([
    ["a script in it", "script-src-elem", "script", { textContent: "window.ran = true" }],
    ["a script elsewhere", "script-src-elem", "script", { src: "https://elsewhere.example/x.js" }],
    ["a picture elsewhere", "img-src", "img", { src: "https://elsewhere.example/x.png" }],
    ["a page in it", "frame-src", "iframe", { src: "https://elsewhere.example/" }],
    ["a sheet of styles elsewhere", "style-src-elem", "link", { rel: "stylesheet", href: "https://elsewhere.example/x.css" }],
  ])("would not let in %s: its own policy (%s) stands in the file", async (_, directive, kind, given) => {
    const refused = await page.evaluate(
      ([name, properties]) =>
        new Promise<string>((resolve) => {
          document.addEventListener("securitypolicyviolation", ({ effectiveDirective }) => resolve(effectiveDirective), { once: true });
          setTimeout(() => resolve("nothing was refused"), 3000);
          document.body.append(Object.assign(document.createElement(name), properties));
        }),
      [kind, given] as const,
    );
    expect([refused, await page.evaluate(() => "ran" in window)]).toEqual([directive, false]);
    expect(reached).toEqual([]);
  });
});
