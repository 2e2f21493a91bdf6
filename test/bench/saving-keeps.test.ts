import { Workbook } from "@cj-tech-master/excelts";
import * as XLSX from "@e965/xlsx";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { Made } from "../setup/made.ts";
import { factsBeside } from "./facts-beside.ts";
import { shopBook } from "./shop-book.ts";
import { atStand } from "./stand.ts";

// Each test opens workbooks of its own, which take the place of the one before.
const at = atStand("one page");

async function opened(bytes: Uint8Array, name = "shop.xlsx"): Promise<void> {
  await at.page.give(name, bytes);
  await at.page.page.locator("#book", { hasText: name }).waitFor();
}

/** What was there before, as it is now; what programs write or leave out as they like may have come to it. */
const asKept = (before: Record<string, unknown>, after: Record<string, unknown>) => Object.fromEntries(Object.keys(before).map((key) => [key, after[key]]));

/** Looks, print set-up and rules for typing that the grid has only in part or not at all, as excelts writes them. Invented. */
async function otherLooks(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Bores");
  const formats = [
    '0.00" mm"',
    "# ?/?",
    "0.0%",
    "#,##0.000;[Red]-#,##0.000",
    "dd/mm/yyyy hh:mm",
    "[h]:mm",
    "@",
    '_-* #,##0.00_-;-* #,##0.00_-;_-* "-"??_-;_-@_-',
  ];
  for (const [i, format] of formats.entries()) {
    sheet.getCell(i + 1, 1).value = 46027.25;
    sheet.getCell(i + 1, 1).numFmt = format;
  }
  const look = (address: string, value: string) => {
    const cell = sheet.getCell(address);
    cell.value = value;
    return cell;
  };
  look("B1", "worn").font = { name: "Arial", size: 9, underline: true, strike: true, color: { argb: "FF336699" } };
  look("B2", "bore 1").alignment = { horizontal: "right", vertical: "top", wrapText: true, textRotation: 45, indent: 1 };
  look("B3", "top").border = { left: { style: "double", color: { argb: "FF112233" } }, bottom: { style: "mediumDashed", color: { argb: "FF000000" } } };
  look("B4", "mid").fill = { type: "pattern", pattern: "lightGray", fgColor: { argb: "FFABCDEF" }, bgColor: { argb: "FF123456" } };
  look("B5", "open to typing").protection = { locked: false };
  look("B6", "themed").font = { name: "Calibri", size: 12, color: { theme: 4 } };
  sheet.getRow(8).height = 40;
  sheet.getColumn(3).hidden = true;
  sheet.mergeCells("E1:F2");
  const day = new Date(Date.UTC(2026, 0, 5));
  const said = {
    allowBlank: true,
    showErrorMessage: true,
    errorTitle: "Bores",
    error: "From 1 to 12.",
    showInputMessage: true,
    promptTitle: "Cylinder",
    prompt: "Its number",
  };
  for (const [i, rule] of [
    { type: "whole", operator: "between", formulae: [1, 12], ...said },
    { type: "textLength", operator: "lessThan", formulae: [15], showErrorMessage: true, errorStyle: "warning" },
    { type: "time", operator: "between", formulae: [0.25, 0.5] },
    { type: "list", allowBlank: true, formulae: ['"thrust,pin"'] },
    { type: "date", operator: "notEqual", formulae: [day] },
    { type: "date", operator: "greaterThan", formulae: [day], showErrorMessage: true },
    { type: "decimal", operator: "greaterThan", formulae: ["$A$2"], errorStyle: "information", error: "Measure it again" },
    { type: "custom", formulae: ["LEN(D8)<5"] },
    { type: "list", formulae: ["$A$1:$A$4"], showErrorMessage: true },
    { type: "whole", operator: "greaterThanOrEqual", formulae: ["A2"], showErrorMessage: true },
    { type: "any", showInputMessage: true, prompt: "As stamped on the block" },
  ].entries())
    sheet.getCell(i + 1, 4).dataValidation = rule as never;
  Object.assign(sheet.pageSetup, { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0, paperSize: 9 });
  sheet.headerFooter.oddFooter = "&Lbores & skirts&R&P";
  book.definedNames.add("Bores!$A$1", "first");
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** Dates, widths, names, merged cells and a hidden sheet as another library writes them. */
function plainBook(): Uint8Array {
  const sheet = XLSX.utils.aoa_to_sheet([
    ["Cylinder", "Measured", "Top"],
    [1, new Date(Date.UTC(2026, 0, 5)), 73.02],
    [2, new Date(Date.UTC(2026, 0, 6)), 73.03],
  ]);
  for (const [cell, format] of [
    ["B2", "dd.mm.yyyy"],
    ["B3", "mmm d, yyyy"],
    ["C2", "0.000"],
    ["C3", "# ??/??"],
  ] as const)
    sheet[cell].z = format;
  sheet["!cols"] = [{ wch: 9 }, { wch: 24 }, { wch: 11, hidden: true }];
  sheet["!merges"] = [XLSX.utils.decode_range("A5:C5")];
  const book = XLSX.utils.book_new();
  XLSX.utils.book_append_sheet(book, sheet, "Bores");
  XLSX.utils.book_append_sheet(book, XLSX.utils.aoa_to_sheet([[0.02]]), "Limits");
  book.Workbook = { Names: [{ Name: "limit", Ref: "Limits!$A$1" }], Sheets: [{}, { Hidden: 1 }] };
  return new Uint8Array(XLSX.write(book, { type: "array", bookType: "xlsx" }));
}

describe("opened and saved, a workbook has the looks, dates, rules, names and print set-up that it had", () => {
  test.each([
    ["a build sheet of ours", async () => (await Made.of({ cylinders: 2, secondReadings: true })).bytes, 3000],
    ["a shop's own, by one library", shopBook, 50],
    ["one with looks and rules that the grid does not have", otherLooks, 30],
    ["one by another library", async () => plainBook(), 15],
  ] as const)(
    "%s",
    async (_, make, least) => {
      const bytes = await make();
      await opened(bytes);
      const before = await factsBeside(bytes);
      expect(Object.keys(before).length).toBeGreaterThan(least);
      const { bytes: once } = await at.page.saved();
      expect(asKept(before, await factsBeside(once))).toEqual(before);
      // And once more: nothing grows or fades with each saving.
      await opened(once, "again.xlsx");
      const { bytes: twice } = await at.page.saved();
      expect(await factsBeside(twice)).toEqual(await factsBeside(once));
      expect(readXlsx(twice).sheets.map(({ typing, print }) => [typing, print])).toEqual(readXlsx(bytes).sheets.map(({ typing, print }) => [typing, print]));
      expect(at.page.trouble).toEqual([]);
    },
    120_000,
  );
});

test("a cell that was given another look has that one, and what moved has taken its look along", async () => {
  await opened(await otherLooks());
  await at.page.page.evaluate(() => {
    const { model } = window.crosshatchBench!;
    const sheetId = model.getters.getActiveSheetId();
    model.dispatch("SET_FORMATTING", { sheetId, target: [{ left: 1, right: 1, top: 0, bottom: 0 }], style: { bold: true } });
    model.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName: "Bores", dimension: "ROW", base: 2, quantity: 1, position: "before" });
  });
  const { bytes } = await at.page.saved();
  const after = await factsBeside(bytes);
  expect(after["Bores!B1 font"]).toMatchObject({ bold: true, strike: true, size: 9, color: { argb: "FF336699" } });
  expect(after["Bores!A2 numFmt"]).toBe("# ?/?");
  expect([after["Bores!A5 numFmt"], after["Bores!B6 is open"]]).toEqual(["#,##0.000;[Red]-#,##0.000", true]);
  const typing = readXlsx(bytes).sheets[0]!.typing!;
  expect(typing.get("D1")).toMatchObject({ attributes: { type: "whole" }, formulas: ["1", "12"] });
  expect(typing.get("D5")?.attributes.type).toBe("list");
}, 60_000);

test("on the bench a rule that the grid has only as a formula marks what does not fit, and refuses nothing that does", async () => {
  await opened(await otherLooks());
  const marked = (row: number, content?: string) =>
    at.page.page.evaluate(
      ([at, typed]) => {
        const { model } = window.crosshatchBench!;
        const position = { sheetId: model.getters.getActiveSheetId(), col: 3, row: at };
        if (typed !== undefined) model.dispatch("UPDATE_CELL", { ...position, content: typed });
        return model.getters.isDataValidationInvalid(position);
      },
      [row, content] as const,
    );
  for (const [row, wrong, right] of [
    [0, "1.5", "12"],
    [1, "longer than fifteen", "short"],
    [2, "0.9", "0.4"],
    [7, "too long", "fits"],
  ] as const)
    expect([row, await marked(row), await marked(row, wrong), await marked(row, right)]).toEqual([row, false, true, false]);
  await at.page.type("D1", "7");
  expect(await at.page.value("Bores!D1")).toBe(7);
}, 60_000);
