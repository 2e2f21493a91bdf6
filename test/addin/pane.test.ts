import type { Browser, Page } from "playwright-core";
import { launchBrowser } from "../../src/tools/browser.ts";
import { type StaticServer, serve } from "../helpers/static-server.ts";
import { type Built, builtAddin } from "./built.ts";

let built: Built;
let server: StaticServer;
let browser: Browser;
let page: Page;
const outside: string[] = [];
const faults: string[] = [];

beforeAll(async () => {
  built = await builtAddin("local");
  server = await serve(built.folder);
  browser = await launchBrowser();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(async () => {
  outside.length = 0;
  faults.length = 0;
  page = await browser.newPage({ viewport: { width: 320, height: 640 } });
  page.on("request", (request) => {
    if (!request.url().startsWith(server.address)) outside.push(request.url());
  });
  page.on("pageerror", (error) => faults.push(error.message));
}, 30_000);
afterEach(() => page.close());

/** In place of office.js: an Excel of this theme, with a workbook of one empty sheet. */
const officeWith = (host: string | null, ground: string, without = "") => `
  window.CustomFunctions = { associate() {} };
  const range = { load() {}, isNullObject: true };
  const none = { items: [], load() {} };
  const sheet = { name: "Bores", names: none, load() {}, getUsedRangeOrNullObject: () => range };
  const customXmlParts = { getByNamespace: () => none };
  const worksheets = { items: [sheet], load() {}, getItemOrNullObject: () => range, onChanged: { add: () => ({ remove() {}, context }) }, onCalculated: { add: () => ({ remove() {}, context }) } };
  const context = { sync: async () => {}, workbook: { name: "build-sheet.xlsx", load() {}, worksheets, customXmlParts, names: none, tables: none } };
  window.Excel = { run: (options, batch) => batch(context) };
  window.Office = { HostType: { Excel: "Excel" }, context: { officeTheme: { bodyBackgroundColor: "${ground}" }, requirements: { isSetSupported: (set) => set !== "${without}" } }, onReady: async () => ({ host: ${JSON.stringify(host)} }) };
`;
const standIn = (script: string) => page.route("**/office-js/office.js", (route) => route.fulfill({ contentType: "text/javascript", body: script }));

test("with the real office.js and no Excel, the page says where it belongs", async () => {
  await page.goto(`${server.address}/pane.html`);
  await page.getByText("This page is Crosshatch's pane for Excel: open it there with the button on the Home tab.").waitFor();
  expect(await page.evaluate("typeof Office.onReady")).toBe("function");
  expect(faults).toEqual([]);
}, 30_000);

test("office.js reaches no other address from the page, its telemetry included", async () => {
  const refused = page.waitForEvent("console", (message) => message.text().includes("Content Security Policy"));
  await page.goto(`${server.address}/pane.html`);
  expect((await refused).text()).toContain("telemetry");
  expect(outside).toEqual([]);
}, 30_000);

test.each([
  ["#262626", "black"],
  ["#FFFFFF", "white"],
])(
  "in an Excel with the ground %s the pane comes up in the theme %s",
  async (ground, theme) => {
    await standIn(officeWith("Excel", ground));
    await page.goto(`${server.address}/pane.html`);
    await page.getByRole("tab", { name: "Check" }).waitFor();
    expect(await page.evaluate("document.documentElement.dataset.theme")).toBe(theme);
    expect([faults, outside]).toEqual([[], []]);
  },
  30_000,
);

test("Check reads the workbook through Excel and says that it found nothing", async () => {
  await standIn(officeWith("Excel", "#FFFFFF"));
  await page.goto(`${server.address}/pane.html`);
  await page.getByRole("button", { name: "Check", exact: false }).first().click();
  await page
    .getByText("0 rows in", { exact: false })
    .or(page.getByText("No findings", { exact: false }))
    .first()
    .waitFor();
  expect(faults).toEqual([]);
}, 30_000);

test.each(["SharedRuntime", "CustomFunctionsRuntime", "ExcelApi"])(
  "in an Excel without %s the page says which Excel is needed, and shows no pane",
  async (set) => {
    await standIn(officeWith("Excel", "#FFFFFF", set));
    await page.goto(`${server.address}/pane.html`);
    await page.getByText("This Excel does not run the functions of add-ins").waitFor();
    expect([await page.getByRole("tab").count(), faults]).toEqual([0, []]);
  },
  30_000,
);

test("in another program the page says where it belongs", async () => {
  await standIn(officeWith("Word", "#FFFFFF"));
  await page.goto(`${server.address}/pane.html`);
  await page.getByText("This page is Crosshatch's pane for Excel").waitFor();
  expect(await page.getByRole("tab").count()).toBe(0);
}, 30_000);

test("when office.js does not come, the page says so", async () => {
  await page.route("**/office-js/office.js", (route) => route.abort());
  await page.goto(`${server.address}/pane.html`);
  await page.getByText("The pane could not load office.js, which it needs to reach the workbook.").waitFor();
}, 30_000);

test("when Excel does not answer, the page says so after ten seconds, and still comes up when it does", async () => {
  await page.clock.install();
  const waiting = officeWith("Excel", "#FFFFFF").replace(
    /onReady: async \(\) => \(([^)]*)\)/,
    "onReady: () => new Promise((resolve) => { window.answer = () => resolve($1); })",
  );
  await standIn(waiting);
  await page.goto(`${server.address}/pane.html`);
  await page.waitForFunction("window.answer !== undefined");
  await page.clock.fastForward(9_000);
  expect(await page.getByText("Excel has not answered").count()).toBe(0);
  await page.clock.fastForward(1_500);
  await page.getByText("Excel has not answered for ten seconds.").waitFor();
  await page.evaluate("window.answer()");
  await page.getByRole("tab", { name: "Check" }).waitFor();
  expect(await page.getByText("Excel has not answered").count()).toBe(0);
}, 30_000);
