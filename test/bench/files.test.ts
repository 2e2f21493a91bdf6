import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { serve } from "../../src/cli/bench-server.ts";
import { root } from "../../src/tools/paths.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";
import { readElsewhere, shopBook } from "./shop-book.ts";
import { atStand, BenchPage, builtBench } from "./stand.ts";

const SAMPLE = new Uint8Array(readFileSync(join(root, "samples", "build-sheet.xlsx")));

// Each workbook that is opened takes the place of the one before.
const at = atStand("one page");
let shop: Uint8Array;

beforeAll(async () => {
  shop = await shopBook();
});

/** Waits until a workbook of this name is open. */
const opened = (name: string) => at.page.page.locator("#book", { hasText: name }).waitFor();

/** The engine writes formulas without spaces. */
const tight = (formula: string | undefined) => formula?.replaceAll(", ", ",");

describe("the sample, saved untouched,", () => {
  let bytes: Uint8Array;
  beforeAll(async () => {
    ({ bytes } = await at.page.saved());
  }, 60_000);

  test("holds the same cells as the sample", () => {
    const cells = (file: Uint8Array) =>
      readXlsx(file).sheets.map(({ name, cells: all }) => ({
        name,
        cells: all.map(({ row, column, formula, value }) => ({ row, column, formula: tight(formula), value })),
      }));
    expect(cells(bytes)).toEqual(cells(SAMPLE));
  });

  test("has values that count as calculated, for programs without our functions", () => {
    const parts = unzipSync(bytes);
    expect(strFromU8(parts["xl/workbook.xml"]!)).toContain('<calcPr calcId="191029"/>');
    expect(strFromU8(parts["xl/worksheets/sheet0.xml"]!)).toContain('<f t="array" ref="C16">_xldudf_HATCH_TAPER(C4:D6)</f><v>0.01</v>');
  });
});

describe("a workbook from disk", () => {
  beforeAll(async () => {
    await at.page.give("shop book.xlsx", shop);
    await opened("shop book.xlsx");
  }, 60_000);

  test("is calculated, each value of its kind", async () => {
    const [bores, odd] = await at.page.sheets();
    expect(bores!.values[1]!.slice(0, 6)).toEqual([1, "top", 73.02, 73.015, 0.02, "within"]);
    expect(bores!.values[5]!.slice(0, 3)).toEqual(["smallest", "largest", "mean"]);
    const texts = odd!.values.slice(0, 10).map((row) => row[0]);
    expect(texts).toEqual(["73.04", "=1+1", "-not a number", "+49 30 1234", "@home", "'quoted", 'two\nlines & <signs> "quoted"', " padded ", "1/2", "⌀ 73 µm"]);
    expect(odd!.values.slice(0, 8).map((row) => row[1])).toEqual([
      true,
      46027,
      { error: "#N/A" },
      1.5e-7,
      { error: "#DIV/0!", message: expect.anything() },
      'a "b"',
      146.07,
      { error: "#NAME?", message: expect.anything() },
    ]);
    expect(odd!.values[4]![3]).toBeCloseTo(0.65, 12);
    expect(await at.page.value("Owner’s!A1")).toBe(146.04);
  }, 60_000);

  test("says which formula is not calculated, and keeps it", async () => {
    expect(await at.page.message()).toBe(
      "Not calculated here, because the bench cannot read the formula or does not know its function, but kept as it is: 'Odd & ends'!B8.",
    );
    expect(await at.page.formula("Odd & ends!B8")).toBe("=MYSTERY(1)");
  }, 60_000);

  test("saved, reads the same elsewhere: formulas, values, looks", async () => {
    const { name, bytes } = await at.page.saved();
    expect(name).toBe("shop book.xlsx");
    const [before, after] = [readXlsx(shop), readXlsx(bytes)];
    expect(after.sheets.map((sheet) => [sheet.name, sheet.hidden])).toEqual([
      ["Bores", false],
      ["Odd & ends", false],
      ["Owner’s", false],
      ["Old figures", true],
    ]);
    for (const [i, sheet] of before.sheets.entries()) {
      const byPlace = new Map(after.sheets[i]!.cells.map((cell) => [`${cell.row},${cell.column}`, cell]));
      for (const cell of sheet.cells) {
        const again = byPlace.get(`${cell.row},${cell.column}`);
        expect({ ...again, array: undefined, value: undefined }).toEqual({
          ...cell,
          array: undefined,
          value: undefined,
          ...(cell.formula?.includes("[") ? { formula: "SUM($E$2:$E$3)" } : {}),
        });
        if (cell.formula === undefined) expect(again!.value).toEqual(cell.value);
      }
      expect(byPlace.size).toBe(sheet.cells.length);
    }
    expect(after.sheets[0]!.cells.find((cell) => cell.formula?.startsWith("HATCH.BORESUMMARY"))?.array).toEqual({ rows: 2, columns: 7, grows: true });
    expect(after.names).toEqual([
      { name: "readings", formula: "'Bores'!$C$2:$D$4" },
      { name: "limit", formula: "'Bores'!$G$1" },
    ]);

    const elsewhere = await readElsewhere(bytes);
    const sheet = elsewhere.getWorksheet("Bores")!;
    expect(sheet.getCell("A1").font).toMatchObject({ bold: true, italic: true, size: 13, color: { argb: "FF1F3864" } });
    expect(sheet.getCell("C2").fill).toMatchObject({ type: "pattern", pattern: "solid", fgColor: { argb: "FFFFF8E1" } });
    expect(sheet.getCell("C2").numFmt).toBe("0.000");
    expect(sheet.getCell("E2").border?.top?.style).toBe("thin");
    expect(sheet.getColumn(2).width).toBeCloseTo(20, 0);
    expect(sheet.getCell("B9").isMerged).toBe(true);
    expect(sheet.views[0]).toMatchObject({ state: "frozen", ySplit: 1 });
    expect(sheet.getCell("B6").value).toBe("largest");
    const odd = elsewhere.getWorksheet("Odd & ends")!;
    expect(odd.getCell("B2").value).toEqual(new Date(Date.UTC(2026, 0, 5)));
    expect(odd.getCell("B9").value).toMatchObject({ text: "standards", hyperlink: "https://example.org/" });
    expect(odd.getCell("A2").value).toBe("=1+1");
  }, 60_000);

  test("saved and opened again, is the same on the bench", async () => {
    const before = await at.page.sheets();
    const { bytes } = await at.page.saved();
    await at.page.give("again.xlsx", bytes);
    await opened("again.xlsx");
    expect(await at.page.sheets()).toEqual(before);
    expect(at.page.trouble).toEqual([]);
  }, 60_000);
});

test("parts that the bench leaves behind are named when the file is opened", async () => {
  const parts = unzipSync(shop);
  const withMore = zipSync({ ...parts, "xl/vbaProject.bin": strToU8("x"), "xl/comments1.xml": strToU8("<comments/>") });
  await at.page.give("macros.xlsx", withMore);
  await opened("macros.xlsx");
  expect(await at.page.message()).toMatch(/^macros\.xlsx also holds macros and comments, which the bench neither shows nor saves: keep the file as it is/);
}, 60_000);

test("lists for typing that newer programs keep apart are named too", async () => {
  const list =
    '<extLst><ext uri="{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:dataValidations count="1" xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:dataValidation type="list"><x14:formula1><xm:f>Figures!$A$1:$A$3</xm:f></x14:formula1><xm:sqref>A1</xm:sqref></x14:dataValidation></x14:dataValidations></ext></extLst>';
  const parts = unzipSync(shop);
  const path = "xl/worksheets/sheet1.xml";
  const sheet = strFromU8(parts[path]!).replace("</worksheet>", () => `${list}</worksheet>`);
  await at.page.give("lists.xlsx", zipSync({ ...parts, [path]: strToU8(sheet) }));
  await opened("lists.xlsx");
  expect(await at.page.message()).toMatch(/^lists\.xlsx also holds lists for typing that stand on other sheets, which the bench neither shows nor saves/);
}, 60_000);

test("rows that a filter hides count for SUBTOTAL 9 on the bench, and that is said", async () => {
  const rows = [1, 2, 4].map((value, i) => `<row r="${i + 2}"${i === 1 ? ' hidden="1"' : ""}><c r="A${i + 2}"><v>${value}</v></c></row>`).join("");
  const sums = '<row r="6"><c r="A6"><f>SUBTOTAL(9,A2:A4)</f></c></row>';
  const filter = '<autoFilter ref="A1:A4"><filterColumn colId="0"><filters><filter val="1"/><filter val="4"/></filters></filterColumn></autoFilter>';
  const sheet = `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>size</t></is></c></row>${rows}${sums}</sheetData>${filter}</worksheet>`;
  await at.page.give("filtered.xlsx", workbookBytes({ sheets: [{ name: "Sheet1", cells: [] }], parts: { "xl/worksheets/sheet1.xml": sheet } }));
  await opened("filtered.xlsx");
  expect(await at.page.value("Sheet1!A6")).toBe(7);
  expect(await at.page.message()).toContain(
    "Rows that a filter hides in filtered.xlsx count on the bench for SUBTOTAL(1 to 11, …), as rows hidden by hand do.",
  );
}, 60_000);

test("marks and what is kept live on in a saved workbook", async () => {
  await at.page.give("build-sheet.xlsx", SAMPLE);
  await opened("build-sheet.xlsx");
  await at.page.page.evaluate(async () => {
    const { host } = window.crosshatchBench!;
    await host.storeText("layout", '{"range":"C4:D6"}');
    await host.mark([{ cell: { sheet: "Bores", row: 3, column: 2 }, tone: "outside" }]);
  });
  const { bytes } = await at.page.saved();
  await at.page.give("marked.xlsx", bytes);
  await opened("marked.xlsx");
  expect(await at.page.fill("C4")).toBe("#F4B6B0");
  const [layout, marks] = await at.page.page.evaluate(async () => {
    const { host } = window.crosshatchBench!;
    return [await host.loadText("layout"), await host.unmark()] as const;
  });
  expect([layout, marks]).toEqual(['{"range":"C4:D6"}', 1]);
  expect(await at.page.fill("C4")).toBe("#FFF8E1");
}, 60_000);

test("without its sample the bench opens an empty workbook and says so", async () => {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  cpSync(await builtBench(), folder, { recursive: true });
  rmSync(join(folder, "samples"), { recursive: true });
  const server = await serve(folder, 0);
  const bare = new BenchPage(await at.page.page.context().newPage(), server.url);
  await bare.open();
  expect(await bare.message()).toBe("The sample build sheet is not there: npm run samples makes it.");
  await bare.type("A1", "73.02");
  expect(await bare.value("Sheet1!A1")).toBe(73.02);
  await server.close();
  rmSync(folder, { recursive: true });
}, 120_000);
