import { WorkbookCells } from "../../../src/formula/workbook-cells.ts";
import { readArea, readGiven } from "../../../src/pane/parts/range-text.ts";
import { areaText } from "../../../src/workbook/address.ts";

const page = (name: string, row: number, column: number) => ({ name, row, column, values: [[73.01, 73.02], [73]], formulas: [[null, null], [null]] });
const book = new WorkbookCells({ sheets: [page("Bores", 0, 0), page("Bore book", 3, 2)] });

test("a range is read as people write it, and written so that it is read again", () => {
  const area = { sheet: "Bore book", row: 3, column: 2, rows: 3, columns: 2 };
  expect(readArea(" 'Bore book'!$C$4:d6 ", book)).toEqual({ given: area });
  expect(areaText(area)).toBe("'Bore book'!C4:D6");
  expect(readArea(areaText(area), book)).toEqual({ given: area });
  expect(areaText({ ...area, rows: 1, columns: 1 })).toBe("'Bore book'!C4");
});

test("a sheet is found in whatever letters, and named as the workbook has it", () => {
  expect(readArea("bores!a1", book)).toEqual({ given: { sheet: "Bores", row: 0, column: 0, rows: 1, columns: 1 } });
});

test("a whole column, or one selected to its end, stops with the sheet's content", () => {
  const column = { given: { sheet: "Bores", row: 0, column: 1, rows: 2, columns: 1 } };
  expect(readArea("Bores!B:B", book)).toEqual(column);
  expect(readArea("Bores!B1:B1048576", book)).toEqual(column);
  expect(readArea("Bores!H:H", book)).toEqual({ sentence: "there is nothing in Bores!H:H" });
});

test.each([
  ["top of bore", "top of bore is no range: it must be one such as Bores!C4:D6"],
  ["C4:D6", "say on which sheet C4:D6 is, as in Bores!C4:D6"],
  ["Barrels!C4", "there is no sheet Barrels in this workbook"],
])("%s is refused in a sentence", (text, sentence) => {
  expect(readArea(text, book)).toEqual({ sentence });
});

test("with one sheet only nobody needs to name it", () => {
  expect(readArea("A1:B2", new WorkbookCells({ sheets: [page("Bores", 0, 0)] }))).toEqual({
    given: { sheet: "Bores", row: 0, column: 0, rows: 2, columns: 2 },
  });
});

test("numbers are taken as numbers, one or several; a blank is a blank", () => {
  expect(readGiven("73.02", book)).toEqual({ given: 73.02 });
  expect(readGiven("0.25, 0.5 ;1", book)).toEqual({ given: [[0.25, 0.5, 1]] });
  expect(readGiven("  ", book)).toEqual({ given: null });
});

test("a decimal comma is neither read nor taken for two numbers", () => {
  expect(readGiven("0,25", book)).toEqual({ sentence: "0,25 has a decimal comma, which is not read here: type 0.25" });
});
