import { strFromU8, unzipSync } from "fflate";
import { excelForm } from "../../../src/xlsx/patch/excel-form.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { oneSheet, workbookBytes } from "../workbook-bytes.ts";

/** Forms in which LibreOffice 7.4 saves our functions, as its files show them. */
const macroName = (name: string) => `<definedName function="true" hidden="false" name="${name}" vbProcedure="true"></definedName>`;
const sheetOf = (bytes: Uint8Array) => strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"]!);

test("calls in cells, names, conditions and rules for typing are stored as Excel stores them, text in quotes and the rest stay", () => {
  const { bytes, formulas } = excelForm(
    workbookBytes({
      sheets: [
        {
          name: "Sheet1",
          cells: [[1, { f: "HATCH.TAPER(A1:B2)", v: 0.01, attributes: ' aca="false"' }, { f: 'A1&"HATCH.TAPER(A1)"', v: "x" }, { f: "Mine", v: 1 }]],
          after:
            '<conditionalFormatting sqref="A1"><cfRule type="expression" priority="1"><formula>HATCH.VERDICT(A1,1,2)=&quot;over&quot;</formula></cfRule></conditionalFormatting>' +
            '<dataValidations count="1"><dataValidation type="custom" sqref="A2"><formula1>HATCH.CLEARANCE(A2,1)&gt;0</formula1></dataValidation></dataValidations>',
        },
      ],
      names: `<definedName name="Mine">HATCH.CLEARANCE(Sheet1!$A$1,1)</definedName>${macroName("HATCH.TAPER")}${macroName("OTHER.NAME")}`,
    }),
  );
  expect(formulas).toBe(1);
  const sheet = sheetOf(bytes);
  expect(sheet).toContain('<formula>_xldudf_HATCH_VERDICT(A1,1,2)="over"</formula>');
  expect(sheet).toContain("<formula1>_xldudf_HATCH_CLEARANCE(A2,1)&gt;0</formula1>");
  expect(sheet).toContain("HATCH.TAPER(A1)");
  const workbook = strFromU8(unzipSync(bytes)["xl/workbook.xml"]!);
  expect(workbook).toContain('<definedName name="Mine">_xldudf_HATCH_CLEARANCE(Sheet1!$A$1,1)</definedName>');
  expect(workbook).not.toContain('name="HATCH.TAPER"');
  expect(workbook).toContain('name="OTHER.NAME"');
});

test.each([
  ["a plain one", {}, "B1"],
  ["an array formula of one cell", { attributes: ' t="array" ref="B1"' }, "B1"],
  ["an array formula of several cells", { attributes: ' t="array" ref="B1:B3"' }, "B1:B3"],
])("%s becomes one that may spill, with the reach that it had", (_, how, reach) => {
  const { bytes } = excelForm(oneSheet([[1, { f: "HATCH.TAPER(A1:A4)", v: 0, ...how }]]));
  expect(sheetOf(bytes)).toContain(`<c r="B1" cm="1"><f t="array" ref="${reach}">_xldudf_HATCH_TAPER(A1:A4)</f>`);
  const [rows] = readXlsx(bytes).sheets[0]!.cells.flatMap(({ array }) => array?.rows ?? []);
  expect(rows).toBe(reach === "B1" ? 1 : 3);
});

test("an array formula that calls nothing of ours stays as it is", () => {
  const given = { f: "A1:A3*2", v: 2, attributes: ' t="array" ref="B1:B3"' };
  expect(sheetOf(excelForm(oneSheet([[1, given]])).bytes)).toBe(sheetOf(oneSheet([[1, given]])));
});
