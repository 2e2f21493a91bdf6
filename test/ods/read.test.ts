import { strToU8, zipSync } from "fflate";
import { isOpenDocument, readOds } from "../../src/ods/read.ts";
import { FILE_LIMITS } from "../../src/xlsx/file-limits.ts";

// Attributes and elements: OASIS OpenDocument 1.3 part 3, chapters 9 (tables) and 19 (attributes).
const BASE = "urn:oasis:names:tc:opendocument:xmlns:";
const SPACES = ["office", "table", "text", "style"].map((name) => `xmlns:${name}="${BASE}${name}:1.0"`).join(" ");
const KIND = "application/vnd.oasis.opendocument.spreadsheet";

const file = (tables: string, { kind = KIND, styles = "", manifest = "<manifest/>", before = "" } = {}): Uint8Array =>
  zipSync({
    mimetype: strToU8(kind),
    "META-INF/manifest.xml": strToU8(manifest),
    "content.xml": strToU8(
      `${before}<office:document-content ${SPACES} xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0" xmlns:draw="${BASE}drawing:1.0"><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${tables}</office:spreadsheet></office:body></office:document-content>`,
    ),
  });

const sheet = (rows: string, name = "Bores", more = ""): string => `<table:table table:name="${name}"${more}>${rows}</table:table>`;
const row = (cells: string, more = ""): string => `<table:table-row${more}>${cells}</table:table-row>`;
const number = (value: number, more = ""): string => `<table:table-cell office:value-type="float" office:value="${value}"${more}/>`;
const words = (inner: string, more = ""): string => `<table:table-cell office:value-type="string"${more}><text:p>${inner}</text:p></table:table-cell>`;
const formula = (text: string, more = ""): string => `<table:table-cell table:formula="${text.replaceAll('"', "&quot;")}"${more}/>`;

const cellsOf = (rows: string) => readOds(file(sheet(rows))).sheets[0]!.cells;
const one = (cell: string) => cellsOf(row(cell))[0];

describe("values", () => {
  test.each([
    [number(73.01), 73.01],
    ['<table:table-cell office:value-type="percentage" office:value="0.5"/>', 0.5],
    ['<table:table-cell office:value-type="boolean" office:boolean-value="true"/>', true],
    ['<table:table-cell office:value-type="date" office:date-value="2026-03-21"/>', 46102],
    ['<table:table-cell office:value-type="date" office:date-value="2026-03-21T12:00:00"/>', 46102.5],
    ['<table:table-cell office:value-type="time" office:time-value="PT18H30M00S"/>', 18.5 / 24],
    [words("worn &amp; scored"), "worn & scored"],
    [words('a<text:s text:c="2"/>b<text:tab/>c<text:line-break/>d'), "a  b\tc\nd"],
    [words("one</text:p><text:p>two"), "one\ntwo"],
    [words("<text:span>73</text:span>.02"), "73.02"],
  ])("%s is read as %j", (cell, value) => expect(one(cell)).toEqual({ row: 0, column: 0, value }));

  test("what a note or a drawing in a cell says is not its value", () => {
    const cell = words("7</text:p><office:annotation><text:p>a note</text:p></office:annotation><draw:frame><text:p>drawn</text:p></draw:frame><text:p>3");
    expect(one(cell)?.value).toBe("7\n3");
  });

  test("repeated cells and rows stand each in its place, and long empty stretches cost nothing", () => {
    const empty = '<table:table-row table:number-rows-repeated="1048000"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>';
    const cells = cellsOf(
      row(`<table:table-cell table:number-columns-repeated="2"/>${number(1, ' table:number-columns-repeated="2"')}`, ' table:number-rows-repeated="2"') +
        empty +
        row(number(2)),
    );
    expect(cells.map(({ row: r, column, value }) => [r, column, value])).toEqual([
      ...[0, 1].flatMap((r) => [
        [r, 2, 1],
        [r, 3, 1],
      ]),
      [1_048_002, 0, 2],
    ]);
  });
});

describe("formulas", () => {
  test.each([
    ["of:=HATCH.TAPER([.A1:.B2])", "HATCH.TAPER(A1:B2)"],
    ["of:=hatch.taper([.A1:.B2];2)", "HATCH.TAPER(A1:B2,2)"],
    ['of:=IF([.C4]="";"a;b";[$Limits.$B$8])', 'IF(C4="","a;b",Limits!$B$8)'],
    ["of:=SUM([$'Run-in log'.A1:.A3])", "SUM('Run-in log'!A1:A3)"],
    ["of:=SUM({1;2|3;4})", "SUM({1,2;3,4})"],
    ["of:=SUM([.A:.A];[.2:.3])", "SUM(A:A,2:3)"],
    ["of:=COM.MICROSOFT.CEILING([.A1];2)", "CEILING(A1,2)"],
    ["of:=IF([.A1]=#N/A;[.#REF!];Bore_readings)", "IF(A1=#N/A,#REF!,Bore_readings)"],
    ["of:=[.A1:.C1]![.B1:.B5]", "A1:C1 B1:B5"],
  ])("%s is %s", (stored, shown) => expect(one(formula(stored))).toEqual({ row: 0, column: 0, value: "", formula: shown }));

  test.each([
    ["of:=SUM(['file:///old.ods'#$Bores.A1])", "refers to another workbook, which is not read here"],
    ["of:=SUM([$Bores.A1:$Rings.B2])", "refers to several sheets at once, which is not calculated here"],
    ["of:=SUM([.A1]~[.B2])", "joins ranges, which is not calculated here"],
    ["oooc:=SUM([.A1])", "is written in another way than OpenFormula (oooc:)"],
  ])("%s keeps its value and says why it is not calculated", (stored, beyond) => {
    expect(one(formula(stored, ' office:value-type="float" office:value="7"'))).toEqual({ row: 0, column: 0, value: 7, beyond });
  });

  test("an array formula has its reach, and what the last calculation left in it is no typed value", () => {
    const cells = cellsOf(
      row(
        formula("of:=HATCH.BORESUMMARY([.E1:.F2])", ' table:number-matrix-columns-spanned="2" table:number-matrix-rows-spanned="2"') +
          words("largest") +
          number(5),
      ) + row(number(73) + number(73.02)),
    );
    expect(cells).toEqual([
      { row: 0, column: 0, value: "", formula: "HATCH.BORESUMMARY(E1:F2)", array: { rows: 2, columns: 2, grows: false } },
      { row: 0, column: 2, value: 5 },
    ]);
  });

  test("the error that a formula had come to is one", () => {
    const cell =
      '<table:table-cell table:formula="of:=1/0" calcext:value-type="error" office:value-type="string" office:string-value=""><text:p>#DIV/0!</text:p></table:table-cell>';
    expect(one(cell)).toEqual({ row: 0, column: 0, value: { error: "#DIV/0!" }, formula: "1/0" });
  });
});

test("names, tables and hidden sheets and rows are told", () => {
  const tables =
    sheet(row(words("Gauge") + words("U")) + row(number(1) + number(0.002), ' table:visibility="collapse"'), "Gauges", ' table:style-name="ta1"') +
    sheet(row(number(1))) +
    '<table:named-expressions><table:named-range table:name="Used" table:cell-range-address="$Gauges.$A$1:.$B$2"/><table:named-expression table:name="Twice" table:expression="of:=2*[$Bores.$A$1]"/><table:named-expression table:name="_xlnm.Print_Titles" table:expression="[$Bores.$1:.$3]"/></table:named-expressions>' +
    '<table:database-ranges><table:database-range table:name="GaugeList" table:target-range-address="Gauges.A1:Gauges.B2"/><table:database-range table:name="__Anonymous_Sheet_DB__0" table:target-range-address="Gauges.A1:Gauges.B2"/></table:database-ranges>';
  const styles = '<style:style style:name="ta1" style:family="table"><style:table-properties table:display="false"/></style:style>';
  const book = readOds(file(tables, { styles }));
  expect(book.sheets.map(({ name, hidden, hiddenRows }) => [name, hidden, hiddenRows])).toEqual([
    ["Gauges", true, [1]],
    ["Bores", false, []],
  ]);
  expect(book.names).toEqual([
    { name: "Used", formula: "Gauges!$A$1:$B$2" },
    { name: "Twice", formula: "2*Bores!$A$1" },
  ]);
  expect(book.tables).toEqual([
    { name: "GaugeList", sheet: 0, area: { row: 0, column: 0, rows: 2, columns: 2 }, headerRows: 1, totalsRows: 0, columns: ["Gauge", "U"] },
  ]);
});

describe("what is refused", () => {
  test.each([
    [file("", { kind: "application/vnd.oasis.opendocument.text" }), "is an OpenDocument file, but no spreadsheet"],
    [file("", { manifest: "<manifest><encryption-data/></manifest>" }), "is protected by a password: open it, take the password off and save it again"],
    [file("", { before: '<!DOCTYPE x [<!ENTITY a "b">]>' }), "holds a document type in its part content.xml, which no workbook has: it is refused"],
    [file(sheet(row(number(1, ' table:number-columns-repeated="many"')))), 'is damaged: a row or cell is repeated "many" times'],
    [
      file(sheet(row(number(1, ' table:number-columns-repeated="16384"'), ' table:number-rows-repeated="1048576"'))),
      "has too many cells: more than 500,000 hold something",
    ],
    [file(sheet(row(number(1)), "A") + sheet(row(number(1)), "a")), 'is damaged: two of its sheets have the name "a"'],
    [
      file('<table:calculation-settings><table:null-date table:date-value="1899-12-31"/></table:calculation-settings>'),
      "counts its dates from 1899-12-31, which is not read",
    ],
  ])("a file that %#", (bytes, reason) => expect(() => readOds(bytes, FILE_LIMITS)).toThrow(reason));
});

test("an OpenDocument file is told from a workbook by what is in it, and anything else is none", () => {
  expect(isOpenDocument(file(""))).toBe(true);
  expect(isOpenDocument(zipSync({ "xl/workbook.xml": strToU8("<workbook/>") }))).toBe(false);
  expect(isOpenDocument(strToU8("engine,cylinder"))).toBe(false);
});
