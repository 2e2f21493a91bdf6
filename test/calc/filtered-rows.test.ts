import { calculate } from "../../src/calc/calculate.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";

const FORMULAS = [
  "SUBTOTAL(9,A2:A6)",
  "SUBTOTAL(109,A2:A6)",
  "SUBTOTAL(3,A2:A6)",
  "AGGREGATE(9,5,A2:A6)",
  "AGGREGATE(9,4,A2:A6)",
  "SUM(A2:A6)",
  "SUBTOTAL(9,A2:C6)",
];

/** Rows 3 and 5 of five numbers are hidden; the last of the formulas beside them adds up others of its kind. */
function values(after: string): unknown[] {
  const rows = [1, 2, 4, 8, 16, null, null, null].map(
    (number, i) =>
      `<row r="${i + 2}"${i === 1 || i === 3 ? ' hidden="1"' : ""}>${number === null ? "" : `<c r="A${i + 2}"><v>${number}</v></c>`}${FORMULAS[i] ? `<c r="C${i + 2}"><f>${FORMULAS[i]}</f></c>` : ""}</row>`,
  );
  const sheet = `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>size</t></is></c></row>${rows.join("")}</sheetData>${after}</worksheet>`;
  const book = readXlsx(workbookBytes({ sheets: [{ name: "Sheet1", cells: [] }], parts: { "xl/worksheets/sheet1.xml": sheet } }));
  const { values } = calculate(book).sheets[0]!;
  return FORMULAS.map((_, i) => values[i + 1]![2]);
}

// By the descriptions of SUBTOTAL and AGGREGATE: 1 to 11 count rows that are hidden by hand and leave out those that a filter hides.
test("rows that are hidden by hand count for SUBTOTAL 9, not for 109", () => {
  expect(values("")).toEqual([31, 21, 5, 21, 31, 31, 31]);
});

test("rows that a filter hides count for none of them", () => {
  const filter = '<autoFilter ref="A1:A6"><filterColumn colId="0"><filters><filter val="1"/></filters></filterColumn></autoFilter>';
  expect(values(filter)).toEqual([21, 21, 3, 21, 31, 31, 21]);
});

// As Excel's values stand in a public test workbook (EPPlusSoftware/EPPlus, SubtotalFilters.xlsx, sheet HiddenByAutoFilter).
test("while a filter is on, rows hidden by hand beside it count no longer", () => {
  const filter = '<autoFilter ref="B1:B3"><filterColumn colId="0"><filters><filter val="1"/></filters></filterColumn></autoFilter>';
  expect(values(filter)).toEqual([21, 21, 3, 21, 31, 31, 21]);
});

test("a filter that is not on hides nothing", () => {
  expect(values('<autoFilter ref="A1:A6"/>')).toEqual([31, 21, 5, 21, 31, 31, 31]);
});
