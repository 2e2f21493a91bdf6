import { strFromU8, unzipSync } from "fflate";
import { openWorkbook } from "../../../src/hosts/file.ts";
import { writeXlsx } from "../../../src/xlsx/write/workbook.ts";
import type { FileCell, NewSheetFile } from "../../../src/xlsx/write/workbook-file.ts";
import { readElsewhere } from "../../bench/shop-book.ts";

const sheet = (cells: readonly FileCell[], more: Partial<NewSheetFile> = {}): NewSheetFile => ({
  ...{ name: "Bores", widths: [12], frozen: { rows: 1, columns: 0 }, tables: [], validations: [], verdicts: [], merges: [] },
  ...{ print: { paper: "A4", isLandscape: false }, cells },
  ...more,
});
const written = (cells: readonly FileCell[], more: Partial<NewSheetFile> = {}) => writeXlsx({ title: "Bores", names: [], sheets: [sheet(cells, more)] });

const CELLS: readonly FileCell[] = [
  { row: 0, column: 0, content: "Bore", style: "head" },
  { row: 1, column: 0, content: 73.02, style: "typed", format: "0.000" },
  { row: 2, column: 0, content: 73.05, style: "typed", format: "0.000" },
  { row: 1, column: 1, content: "=HATCH.CLEARANCE(A2:A3, 73)", style: "result", value: 0.02, block: { rows: 2, columns: 1 } },
  { row: 2, column: 1, content: 0.05, style: "result" },
  { row: 3, column: 0, content: "=MAX(A2:A3)", style: "result", value: 73.05 },
  { row: 3, column: 1, content: '=IF(A4>73,"over","")', style: { isBold: true, isTop: true, size: 16 }, value: "over" },
  { row: 4, column: 0, content: "=MAX(A2:A3)", style: "plain", format: "@", isText: true },
];

// Read by excelts, which shares nothing with ours.
describe("another reader", () => {
  test("finds what formulas came to, the block of an array formula, and text that looks like a formula", async () => {
    const page = (await readElsewhere(written(CELLS))).getWorksheet("Bores")!;
    expect(page.getCell("B2").value).toMatchObject({ formula: "_xldudf_HATCH_CLEARANCE(A2:A3, 73)", result: 0.02, ref: "B2:B3", shareType: "array" });
    expect(page.getCell("B3").value).toBe(0.05);
    expect(page.getCell("A4").value).toMatchObject({ formula: "MAX(A2:A3)", result: 73.05 });
    expect(page.getCell("B4").value).toMatchObject({ result: "over" });
    expect(page.getCell("A5").value).toBe("=MAX(A2:A3)");
    expect(page.getCell("A5").numFmt).toBe("@");
  });

  test("finds styles that have no name, and rows as high as they were asked for", async () => {
    const page = (await readElsewhere(written(CELLS, { heights: new Map([[3, 45]]) }))).getWorksheet("Bores")!;
    expect(page.getCell("B4").font).toMatchObject({ bold: true, size: 16 });
    expect(page.getCell("B4").alignment).toMatchObject({ vertical: "top" });
    expect(page.getCell("A4").font?.bold).toBeFalsy();
    expect([page.getRow(1).height, page.getRow(2).height, page.getRow(4).height]).toEqual([33, undefined, 45]);
  });

  test("finds the shading of cells before the fills of verdicts", async () => {
    const area = { row: 1, column: 1, rows: 2, columns: 1 };
    const bytes = written(CELLS, { shaded: { area, formula: 'B2<>"within"' }, verdicts: [{ row: 3, column: 1, rows: 1, columns: 1 }] });
    const page = (await readElsewhere(bytes)).getWorksheet("Bores")!;
    const found = (page as unknown as { conditionalFormattings: { ref: string; rules: { type: string; priority: number; formulae: string[] }[] }[] })
      .conditionalFormattings;
    expect(found.map(({ ref, rules }) => [ref, ...rules.map(({ type, priority, formulae }) => `${priority} ${type} ${formulae[0]}`)])).toEqual([
      ["B2:B3", '1 expression B2<>"within"'],
      ["B4", '2 cellIs "over"', '3 cellIs "under"', '4 cellIs "not proven"', '5 cellIs "near limit"'],
    ]);
  });
});

test("the calculation agrees with what stands in the file, and spills over the block", async () => {
  const { sheets } = await (await openWorkbook(written(CELLS), "bores.xlsx")).read();
  expect(sheets[0]!.values.map((line) => line.slice(0, 2))).toEqual([
    ["Bore", null],
    [73.02, 0.02],
    [73.05, 0.05],
    [73.05, "over"],
    ["=MAX(A2:A3)", null],
  ]);
});

test("a program that opens the file is told to calculate anew, whatever stands in it", () => {
  expect(strFromU8(unzipSync(written(CELLS))["xl/workbook.xml"]!)).toContain('fullCalcOnLoad="1"');
});
