import { calculate } from "../../src/calc/calculate.ts";
import { cellName } from "../../src/workbook/address.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { type BookXml, type CellXml, workbookBytes } from "../xlsx/workbook-bytes.ts";

/** The cells of which the file may say more than we do, by name. */
function unknown(cells: CellXml[][], more: Partial<BookXml> = {}): string[] {
  const { unknown } = calculate(
    readXlsx(
      workbookBytes({
        sheets: [
          { name: "Sheet1", cells },
          { name: "Other", cells: [[{ f: "Sheet1!A1+1", v: 8 }]] },
        ],
        ...more,
      }),
    ),
  );
  return [...unknown()].map((cell) => cellName(cell)).sort();
}

const formula = (f: string, v = 7): CellXml => ({ f, v });

test("nothing is unknown in a workbook that is calculated whole", () => {
  expect(unknown([[formula("1+1"), formula("A1*2")]])).toEqual([]);
});

test("a formula that is not calculated here is unknown, and so is all that rests on it, by ranges, names and other sheets", () => {
  const cells = [
    [formula("LAMBDA(x,x)"), formula("SUM(A1:A9)"), formula('B1&""'), formula("E1"), 3],
    [4, formula("Mine*2"), formula("SUM(E:E)"), formula('INDIRECT("A2")'), 5],
  ];
  expect(unknown(cells, { names: '<definedName name="Mine">Sheet1!$A$1</definedName>' })).toEqual(["A1", "A1", "B1", "B2", "C1", "D2"]);
});

test("an error that a function gives because the rest is not worked out here is unknown too, another error is not", () => {
  expect(unknown([[formula("INDEX(B2:B4,0)"), formula("IFERROR(A1,5)"), formula("1/0"), formula("WEEKNUM(1)")]])).toEqual(["A1", "A1", "B1", "D1"]);
});

test("a formula that is not calculated here in a branch of IF is unknown where it takes that branch", () => {
  expect(unknown([[3, formula("IF(A1=3,1,LAMBDA(x,x))"), formula("IF(A1=3,LAMBDA(x,x),1)"), formula("B1"), formula("C1")]])).toEqual(["C1", "E1"]);
});

test("formulas that rest on themselves are unknown", () => {
  expect(unknown([[formula("B1+1"), formula("A1+1"), formula("1+1")]])).toEqual(["A1", "A1", "B1"]);
});

test("what an array formula filled is as unknown as the formula", () => {
  const array: CellXml = { f: "LAMBDA(x,x)", v: 1, attributes: ' t="array" ref="A1:A2"', cell: ' cm="1"' };
  expect(
    unknown([
      [array, formula("A2+1"), 1],
      [2, formula("C1+1"), 2],
    ]),
  ).toEqual(["A1", "A1", "B1"]);
});

test("where dates may be off, only formulas of ours are known, and those that the file has no value for", () => {
  const cells: CellXml[][] = [[formula("YEAR(B2)"), { f: "_xldudf_HATCH_CLEARANCE(3,2)", v: 1 }, { f: "1+1" }]];
  expect(unknown(cells, { properties: '<workbookPr date1904="1"/>' })).toEqual(["A1", "A1"]);
});
