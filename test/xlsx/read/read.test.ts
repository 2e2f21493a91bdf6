import { strToU8 } from "fflate";
import { cellName } from "../../../src/workbook/address.ts";
import type { CellFile } from "../../../src/xlsx/model.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { type BookXml, oneSheet, workbookBytes, workbookParts } from "../workbook-bytes.ts";

const read = (book: BookXml) => readXlsx(workbookBytes(book));
const cellsOf = (cells: readonly CellFile[]) => Object.fromEntries(cells.map((cell) => [cellName(cell), cell]));
const values = (bytes: Uint8Array) => Object.fromEntries(readXlsx(bytes).sheets[0]!.cells.map((cell) => [cellName(cell), cell.value]));
const formulas = (bytes: Uint8Array) =>
  Object.fromEntries(
    readXlsx(bytes)
      .sheets[0]!.cells.filter((cell) => cell.formula)
      .map((cell) => [cellName(cell), cell.formula]),
  );

describe("cells", () => {
  test("numbers, text, truth values and errors keep their kind; what is empty is left out", () => {
    expect(values(oneSheet([[73.01, "a < b & c", true, false, { error: "#DIV/0!" }, null, ""]]))).toEqual({
      A1: 73.01,
      B1: "a < b & c",
      C1: true,
      D1: false,
      E1: { error: "#DIV/0!" },
    });
  });

  test("numbers are read as they are written, powers of ten included", () => {
    const raw = (r: string, v: string) => ({ raw: `<c r="${r}"><v>${v}</v></c>` });
    expect(values(oneSheet([[raw("A1", "7.3010000000000005E1"), raw("B1", "1E-7"), raw("C1", "-0.5"), raw("D1", " 45292 ")]]))).toEqual({
      A1: 73.010000000000005,
      B1: 1e-7,
      C1: -0.5,
      D1: 45292,
    });
  });

  test("shared text, plain and in runs, without how it is pronounced", () => {
    const sharedStrings =
      '<si><t>plain</t></si><si><r><t>Bore </t></r><r><rPr><b/></rPr><t xml:space="preserve">⌀ 73</t></r><rPh sb="0" eb="1"><t>boa</t></rPh></si><si/>';
    const cells = [0, 1, 2].map((i) => ({ raw: `<c r="${"ABC"[i]}1" t="s"><v>${i}</v></c>` }));
    expect(values(workbookBytes({ sharedStrings, sheets: [{ name: "S", cells: [cells] }] }))).toEqual({ A1: "plain", B1: "Bore ⌀ 73" });
  });

  test("inline text in runs, CDATA and escaped characters", () => {
    const cells = [
      { raw: '<c r="A1" t="inlineStr"><is><r><t>two </t></r><r><t>runs</t></r></is></c>' },
      { raw: '<c r="B1" t="inlineStr"><is><t><![CDATA[<1 & 2>]]></t></is></c>' },
      { raw: '<c r="C1" t="inlineStr"><is><t>line_x000A_two _x005F_x000A_</t></is></c>' },
    ];
    expect(values(oneSheet([cells]))).toEqual({ A1: "two runs", B1: "<1 & 2>", C1: "line\ntwo _x000A_" });
  });

  test("a date written out is its serial number", () => {
    // 1 January 2024 is day 45292 counted from 30 December 1899.
    const cells = [
      { raw: '<c r="A1" t="d"><v>2024-01-01</v></c>' },
      { raw: '<c r="B1" t="d"><v>2024-01-01T12:00:00</v></c>' },
      { raw: '<c r="C1" t="d"><v>2024-01-01T06:00:00Z</v></c>' },
      { raw: '<c r="D1" t="d"><v>06:00:00</v></c>' },
    ];
    expect(values(oneSheet([cells]))).toEqual({ A1: 45292, B1: 45292.5, C1: 45292.25, D1: 0.25 });
  });

  test("cells and rows that do not say where they are follow the one before", () => {
    const rows = '<row><c><v>1</v></c><c r="D1"><v>2</v></c><c><v>3</v></c></row><row r="5"><c><v>4</v></c></row><row><c><v>5</v></c></row>';
    const sheet = workbookParts({ sheets: [{ name: "S", cells: [] }] })["xl/worksheets/sheet1.xml"]!.replace(
      "<sheetData></sheetData>",
      `<sheetData>${rows}</sheetData>`,
    );
    expect(values(workbookBytes({ sheets: [{ name: "S", cells: [] }], parts: { "xl/worksheets/sheet1.xml": sheet } }))).toEqual({
      A1: 1,
      D1: 2,
      E1: 3,
      A5: 4,
      A6: 5,
    });
  });

  test("what newer programs add in namespaces of their own is passed over", () => {
    const after =
      '<extLst><ext uri="{x}"><x14:c xmlns:x14="urn:x14" r="A9"><v>9</v></x14:c></ext></extLst><mc:AlternateContent xmlns:mc="urn:mc"><mc:Choice><c r="A8"><v>8</v></c></mc:Choice></mc:AlternateContent>';
    expect(values(workbookBytes({ sheets: [{ name: "S", cells: [[1]], after }] }))).toEqual({ A1: 1 });
  });

  test("a part in UTF-16 and with a prefix before every element reads the same", () => {
    const sheet =
      '<?xml version="1.0" encoding="UTF-16"?><x:worksheet xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main"><x:sheetData><x:row r="1"><x:c r="A1" t="inlineStr"><x:is><x:t>⌀ 73</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>';
    const utf16 = new Uint8Array([0xff, 0xfe, ...new Uint8Array(Uint16Array.from(sheet, (letter) => letter.charCodeAt(0)).buffer)]);
    expect(values(workbookBytes({ sheets: [{ name: "S", cells: [] }], parts: { "xl/worksheets/sheet1.xml": utf16 } }))).toEqual({ A1: "⌀ 73" });
  });
});

describe("formulas", () => {
  test("a shared formula is written out for each cell", () => {
    const shared = (f: string, attributes: string) => ({ f, v: 1, attributes: ` t="shared" si="0"${attributes}` });
    const bytes = oneSheet([
      [1, 2, shared("HATCH.CLEARANCE(A1,$B$1)+B$1", ' ref="C1:D3"'), shared("", "")],
      [1, 2, shared("", "")],
      [1, 2, shared("", "")],
    ]);
    expect(formulas(bytes)).toEqual({
      C1: "HATCH.CLEARANCE(A1,$B$1)+B$1",
      D1: "HATCH.CLEARANCE(B1,$B$1)+C$1",
      C2: "HATCH.CLEARANCE(A2,$B$1)+B$1",
      C3: "HATCH.CLEARANCE(A3,$B$1)+B$1",
    });
  });

  test("an array formula keeps its reach, and the values that it left there are taken out", () => {
    const array = (ref: string, cell = "") => ({ f: "HATCH.TAPER(A1:D3,2)", v: 0.01, attributes: ` t="array" ref="${ref}"`, cell });
    const { cells } = readXlsx(
      oneSheet([
        [array("A1:A3", ' cm="1"'), array("B1:C2")],
        [0.02, 0.03, { f: "1+1", v: 2 }],
        [0.04, 5],
      ]),
    ).sheets[0]!;
    const found = cellsOf(cells);
    expect(Object.keys(found)).toEqual(["A1", "B1", "C2", "B3"]);
    expect([found.A1!.array, found.B1!.array]).toEqual([
      { rows: 3, columns: 1, grows: true },
      { rows: 2, columns: 2, grows: false },
    ]);
  });

  test("a what-if table is said to be beyond what is calculated", () => {
    const { cells } = readXlsx(oneSheet([[{ f: "", v: 3, attributes: ' t="dataTable" ref="A1:A2" dt2D="0" r1="B1"' }]])).sheets[0]!;
    expect(cells[0]!.beyond).toBe("is part of a what-if table, which is not calculated here");
  });
});

describe("the workbook", () => {
  test("sheets in the order of the tabs, with what is hidden", () => {
    const cells = [[1]];
    const { sheets } = read({
      sheets: [
        { name: "B & B", cells },
        { name: "Old", cells, state: "hidden" },
        { name: "Ältere", cells, state: "veryHidden" },
      ],
    });
    expect(sheets.map(({ name, hidden }) => [name, hidden])).toEqual([
      ["B & B", false],
      ["Old", true],
      ["Ältere", true],
    ]);
  });

  test("defined names, with the sheet on which they count, without the program's own", () => {
    const names =
      '<definedName name="Limit">Limits!$B$4</definedName><definedName name="Own" localSheetId="0">_xldudf_HATCH_TAPER(A!$A$1:$B$2)</definedName><definedName name="_xlnm.Print_Area">A!$A$1</definedName>';
    expect(read({ names, sheets: [{ name: "A", cells: [] }] }).names).toEqual([
      { name: "Limit", formula: "Limits!$B$4" },
      { name: "Own", sheet: 0, formula: "HATCH.TAPER(A!$A$1:$B$2)" },
    ]);
  });

  test("tables with their columns", () => {
    const table =
      '<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="T" displayName="Readings" ref="B2:C5" totalsRowCount="1"><tableColumns><tableColumn id="1" name="Bore"/><tableColumn id="2" name="top_x000a_thrust"/></tableColumns></table>';
    expect(read({ sheets: [{ name: "A", cells: [], tables: [table] }] }).tables).toEqual([
      { name: "Readings", sheet: 0, area: { row: 1, column: 1, rows: 4, columns: 2 }, headerRows: 1, totalsRows: 1, columns: ["Bore", "top\nthrust"] },
    ]);
  });

  test("the day from which dates count", () => {
    expect(read({ properties: '<workbookPr date1904="1"/>', sheets: [{ name: "A", cells: [] }] }).from1904).toBe(true);
    expect(read({ properties: "<workbookPr/>", sheets: [{ name: "A", cells: [] }] }).from1904).toBe(false);
  });

  test("a sheet that is a chart keeps its place, empty", () => {
    const parts = workbookParts({
      sheets: [
        { name: "Chart", cells: [] },
        { name: "A", cells: [[1]] },
      ],
    });
    const arrows = parts["xl/_rels/workbook.xml.rels"]!.replace("relationships/worksheet", "relationships/chartsheet");
    const { sheets } = read({
      sheets: [
        { name: "Chart", cells: [] },
        { name: "A", cells: [[1]] },
      ],
      parts: { "xl/_rels/workbook.xml.rels": arrows },
    });
    expect(sheets.map(({ name, cells }) => [name, cells.length])).toEqual([
      ["Chart", 0],
      ["A", 1],
    ]);
  });

  test("a part that is named from the root and in capitals is found", () => {
    const parts = workbookParts({ sheets: [{ name: "A", cells: [[1]] }] });
    const arrows = parts["xl/_rels/workbook.xml.rels"]!.replace("worksheets/sheet1.xml", "/XL/Worksheets/Sheet1.xml");
    expect(read({ sheets: [{ name: "A", cells: [[1]] }], parts: { "xl/_rels/workbook.xml.rels": strToU8(arrows) } }).sheets[0]!.cells).toHaveLength(1);
  });

  test("texts of ours that are kept in the file are read", () => {
    const parts = workbookParts({ sheets: [{ name: "A", cells: [] }] });
    const arrow =
      '<Relationship Id="rIdK" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/>';
    const arrows = parts["xl/_rels/workbook.xml.rels"]!.replace("</Relationships>", `${arrow}</Relationships>`);
    const item = '<kept xmlns="urn:crosshatch:kept">{"layout":"B2:C5 &lt;mm&gt;"}</kept>';
    const { storedTexts } = read({ sheets: [{ name: "A", cells: [] }], parts: { "xl/_rels/workbook.xml.rels": arrows, "customXml/item1.xml": item } });
    expect(storedTexts).toEqual(new Map([["layout", "B2:C5 <mm>"]]));
  });
});
