import { strFromU8, unzipSync } from "fflate";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import { buildSheetSpec } from "../../src/setup/build-sheet.ts";
import { placeName } from "../../src/workbook/address.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import { pdfBytes } from "../helpers/office-program.ts";
import { toView } from "../helpers/to-view.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { atStand } from "./stand.ts";

const at = atStand("a page for each test");

const tab = (name: string) => toView(at.page.pane, name);
const button = (name: string) => at.page.pane.getByRole("button", { name, exact: true });
const status = (text: string) => at.page.pane.getByRole("status").filter({ hasText: text }).waitFor();
const undo = () => at.page.page.evaluate(() => void window.crosshatchBench!.model.dispatch("REQUEST_UNDO"));

async function openEmpty(): Promise<void> {
  await at.page.give("empty.xlsx", workbookBytes({ sheets: [{ name: "Sheet1", cells: [] }] }));
  await at.page.page.locator("#book", { hasText: "empty.xlsx" }).waitFor();
}

async function setUp(): Promise<void> {
  await openEmpty();
  await tab("Set up");
  await button("Add these sheets").click();
  await status("22 new sheets");
}

test("a build sheet that is set up looks as described, refuses a length of 0, and is one step back", async () => {
  await setUp();
  await at.page.picture("set-up");
  const seen = await at.page.page.evaluate(() => {
    const { getters } = window.crosshatchBench!.model;
    const sheetId = getters.getSheetIdByName("Bores")!;
    const cell = getters.getCell({ sheetId, col: 1, row: 3 });
    const { xSplit, ySplit } = getters.getPaneDivisions(sheetId);
    return {
      format: cell?.format,
      fill: cell?.style?.fillColor,
      xSplit,
      ySplit,
      tables: getters.getCoreTables(sheetId).length,
      names: getters.getNamedRanges().length,
    };
  });
  expect(seen).toEqual({ format: "0.000", fill: "#FFF8E1", xSplit: 1, ySplit: 3, tables: 1, names: 7 });
  await at.page.page.evaluate(() => window.crosshatchBench!.host.select({ sheet: "Bores", row: 3, column: 1 }));
  await at.page.type("B4", "0");
  expect(await at.page.value("Bores!B4")).toBeNull();
  expect(await at.page.message()).toBe("B4: A length in mm above 0, typed as a number.");
  await at.page.page.getByRole("button", { name: "Close" }).click();
  await at.page.type("B4", "73.02");
  expect(await at.page.value("Bores!B4")).toBe(73.02);
  await undo();
  await undo();
  expect((await at.page.sheets()).map(({ name }) => name)).toEqual(["Sheet1"]);
  expect(at.page.trouble).toEqual([]);
}, 90_000);

test("a build sheet that is set up is found fault with in the same cells as one in a file of its own", async () => {
  await setUp();
  await tab("Check");
  await button("Check").click();
  await at.page.pane.locator(".counts").waitFor();
  const choices = { cylinders: 4, heights: 3, axes: 2, valves: 2, unit: "mm", secondReadings: false, without: [] } as const;
  const file = await openWorkbook(writeXlsx(buildSheetSpec(choices)), "new.xlsx");
  const { findings } = checkWorkbook(await file.read());
  expect(await at.page.pane.locator(".finding .place").allInnerTexts()).toEqual(["Bores!B4 …"]);
  await at.page.pane.getByRole("combobox", { name: "Order" }).selectOption("by place");
  expect(await at.page.pane.locator(".finding .place").allInnerTexts()).toEqual(findings.map(({ cell }) => placeName(cell)));
}, 90_000);

test("a drawing is put in the sheet at the selected cell, in black on white with its words, and taken back by one step", async () => {
  await tab("Draw");
  await button("Draw").click();
  await at.page.pane.locator("svg.drawing").waitFor();
  await at.page.click("K3");
  await button("Put in the sheet").click();
  await status("Put in at Bores!K3");
  const picture = at.page.page.locator(".o-figure img");
  await picture.waitFor();
  await at.page.picture("drawing-in-sheet");
  expect(await picture.getAttribute("alt")).toMatch(/\d/);
  const dots = await picture.evaluate(async (image: HTMLImageElement) => {
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = image.naturalWidth;
    canvas.height = image.naturalHeight;
    const ink = canvas.getContext("2d")!;
    ink.drawImage(image, 0, 0);
    const { data } = ink.getImageData(0, 0, canvas.width, canvas.height);
    const grey = Array.from({ length: data.length / 4 }, (_, i) => data[i * 4]!);
    return {
      white: grey.filter((dot) => dot === 255).length,
      black: grey.filter((dot) => dot < 64).length,
      clear: data.filter((dot, i) => i % 4 === 3 && dot < 255).length,
    };
  });
  expect(dots.clear).toBe(0);
  expect(dots.black).toBeGreaterThan(1000);
  expect(dots.white).toBeGreaterThan(dots.black);
  await at.page.page.locator(".o-topbar-menu", { hasText: "File" }).click();
  await at.page.page.locator(".o-menu-item", { hasText: "Print" }).click();
  await at.page.page.locator(".o-print-page canvas").first().waitFor();
  await at.page.picture("drawing-printed");
  await at.page.page.getByRole("button", { name: "Cancel" }).click();
  await picture.waitFor();
  const { bytes } = await at.page.saved();
  const size = pdfBytes(bytes);
  if (size !== undefined) expect(size).toBeGreaterThan(10_000);
  const parts = unzipSync(bytes);
  expect(strFromU8(parts["xl/drawings/drawing0.xml"]!)).toMatch(/<xdr:cNvPr id="1" name="Bore profile[^"]*Cylinder 1" descr="[^"]*73\.025[^"]*"\/>/);
  const files = Object.entries(parts).filter(([path]) => path.startsWith("xl/media/"));
  expect(files.map(([path, file]) => [path, [...file.subarray(0, 4)]])).toEqual([["xl/media/image1.png", [0x89, 0x50, 0x4e, 0x47]]]);
  await undo();
  await picture.waitFor({ state: "detached" });
  await at.page.give("with picture.xlsx", bytes);
  await at.page.page.getByRole("dialog").getByRole("button", { name: "Open without saving" }).click();
  await at.page.page.locator("#book", { hasText: "with picture.xlsx" }).waitFor();
  expect(await picture.getAttribute("alt")).toMatch(/73\.025/);
  expect(await at.page.message()).not.toMatch(/pictures/);
  const again = unzipSync((await at.page.saved()).bytes);
  expect(again["xl/media/image1.png"]).toEqual(parts["xl/media/image1.png"]);
  expect(strFromU8(again["xl/drawings/drawing0.xml"]!)).toBe(strFromU8(parts["xl/drawings/drawing0.xml"]!));
  expect(at.page.trouble).toEqual([]);
}, 90_000);

test("saved, a build sheet has its tables and names, rules, formats, widths and frozen rows, and other programs open it", async () => {
  await setUp();
  const { bytes } = await at.page.saved();
  const { tables, names } = readXlsx(bytes);
  expect(tables.map(({ name }) => name)).toContain("BoreReadings");
  expect(new Set(tables.map(({ name }) => name)).size).toBe(tables.length);
  expect(names.find(({ name }) => name === "Gauge_ids")?.formula).toBe("'Engine'!$A$40:$A$49");
  const parts = unzipSync(bytes);
  const bores = strFromU8(parts["xl/worksheets/sheet3.xml"]!);
  expect(bores).toMatch(/<pane [^>]*xSplit="1" ySplit="3"|<pane [^>]*ySplit="3"/);
  // As ECMA-376 part 1 has them, 18.3.1.32 and 18.3.1.10: no empty style of error, texts in quotes, each priority once.
  expect(bores).toContain('<dataValidation errorTitle="Not here" error="A length in mm above 0, typed as a number." allowBlank="1"');
  expect(bores).not.toContain("errorStyle");
  const fills = [...bores.matchAll(/<cfRule [^>]*priority="(\d+)"[^>]*type="cellIs"[^>]*>\s*<formula>([^<]*)<\/formula>/g)];
  expect(fills.map(([, priority, formula]) => [priority, formula])).toEqual([
    ["1", '"over"'],
    ["2", '"under"'],
    ["3", '"not proven"'],
    ["4", '"near limit"'],
  ]);
  expect(bores).toMatch(/<col [^>]*customWidth="1"/);
  expect(strFromU8(parts["xl/styles.xml"]!)).toContain('formatCode="0.000"');
  const size = pdfBytes(bytes);
  if (size !== undefined) expect(size).toBeGreaterThan(10_000);
  await at.page.give("again.xlsx", bytes);
  await at.page.page.locator("#book", { hasText: "again.xlsx" }).waitFor();
  const again = readXlsx((await at.page.saved()).bytes);
  expect(again.tables.map(({ name, columns }) => [name, columns])).toEqual(tables.map(({ name, columns }) => [name, columns]));
}, 180_000);
