import { read as readWithOther } from "@e965/xlsx";
import fc from "fast-check";
import { strToU8 } from "fflate";
import { calculate } from "../../../src/calc/calculate.ts";
import type { CellMark } from "../../../src/workbook/port.ts";
import { type MarkedCopy, markedCopy } from "../../../src/xlsx/patch/marked-copy.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { type BookXml, type CellXml, oneSheet, workbookBytes, workbookParts } from "../workbook-bytes.ts";
import { zipBytes } from "../zip-bytes.ts";
import { cellsOf, partsOf, partText } from "./marking.ts";

const SHEET = "xl/worksheets/sheet1.xml";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

function write(bytes: Uint8Array, marks: readonly CellMark[] = []): MarkedCopy {
  const book = readXlsx(bytes);
  return markedCopy(bytes, { book, calculated: calculate(book), marks, page: { lines: [], remarks: [] } });
}
/** The cells of the first sheet after marking. */
const written = (bytes: Uint8Array, marks: readonly CellMark[] = []): Map<string, string> => cellsOf(partText(write(bytes, marks).bytes, SHEET));
const at = (row: number, column: number): CellMark => ({ cell: { sheet: "Sheet1", row, column }, tone: "outside" });
/** A book of one sheet whose part is written by hand. */
const handmade = (sheet: string | Uint8Array, more: Partial<BookXml> = {}): Uint8Array =>
  workbookBytes({ sheets: [{ name: "Sheet1", cells: [] }], ...more, parts: { [SHEET]: sheet, ...more.parts } });
const data = (inside: string): string => `<worksheet xmlns="${MAIN}">${inside}</worksheet>`;

describe("a formula's value is written as what it is", () => {
  test.each<[formula: string, cell: string]>([
    ["1/8", '<c r="A1"><f>1/8</f><v>0.125</v></c>'],
    ['"over"', '<c r="A1" t="str"><f>"over"</f><v>over</v></c>'],
    ["1=1", '<c r="A1" t="b"><f>1=1</f><v>1</v></c>'],
    ["1/0", '<c r="A1" t="e"><f>1/0</f><v>#DIV/0!</v></c>'],
    ['""', '<c r="A1" t="str"><f>""</f><v></v></c>'],
    ['" a"', '<c r="A1" t="str"><f>" a"</f><v xml:space="preserve"> a</v></c>'],
    ['"<&>"', '<c r="A1" t="str"><f>"&lt;&amp;&gt;"</f><v>&lt;&amp;&gt;</v></c>'],
    ['CHAR(7)&"_x"&"0041_"', '<c r="A1" t="str"><f>CHAR(7)&amp;"_x"&amp;"0041_"</f><v>_x0007__x005F_x0041_</v></c>'],
  ])("%s", (formula, cell) => {
    expect(
      written(oneSheet([[{ f: formula }]]))
        .get("A1")
        ?.replaceAll("&quot;", '"'),
    ).toBe(cell);
  });

  test("an error of ours is one that the format knows", () => {
    expect(written(oneSheet([[{ f: "_xldudf_HATCH_CLEARANCE(1,2)" }]])).get("A1")).toMatch(/ t="e"><f>.*<\/f><v>#VALUE!<\/v>/);
  });
});

test("a cell that a formula fills may hold an element for one that says nothing", () => {
  const cells: CellXml[][] = [
    [{ raw: '<c r="A1" cm="1"><f t="array" ref="A1:A2">B1:B2*2</f><v>1</v></c>' }, 2],
    [{ raw: '<c r="A2"><f/><v>1</v></c>' }, 3],
  ];
  expect([...written(oneSheet(cells))].slice(0, 3)).toEqual([
    ["A1", '<c r="A1" cm="1"><f t="array" ref="A1:A2">B1:B2*2</f><v>4</v></c>'],
    ["B1", '<c r="B1"><v>2</v></c>'],
    ["A2", '<c r="A2"><f/><v>6</v></c>'],
  ]);
});

test("a list of looks that is named but missing is written", () => {
  const arrow = `<Relationship Id="rIdL" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/>`;
  const path = "xl/_rels/workbook.xml.rels";
  const arrows = partText(oneSheet([[1]]), path).replace("</Relationships>", `${arrow}</Relationships>`);
  const bytes = workbookBytes({ sheets: [{ name: "Sheet1", cells: [[1]] }], parts: { [path]: arrows } });
  const { bytes: copy } = write(bytes, [at(0, 0)]);
  expect(partText(copy, "xl/styles.xml")).toContain("<patternFill");
  expect(partText(copy, "[Content_Types].xml")).toContain('PartName="/xl/styles.xml"');
  expect(partText(copy, path)).toContain(arrows.slice(0, -"</Relationships>".length));
});

test("an empty part that is called packed is opened by other readers in the copy", () => {
  const parts = Object.entries(workbookParts({ sheets: [{ name: "Sheet1", cells: [[1]] }] })).map(([name, content]) => ({ name, content }));
  const { bytes: copy } = write(zipBytes([{ name: "docProps/thumbnail.wmf", content: "", stored: true, method: 8 }, ...parts]), [at(0, 0)]);
  expect(() => readWithOther(copy)).not.toThrow();
});

test("one odd cell keeps neither the workbook from being read nor its copy from being written", () => {
  const odd = '<c r="A1" t="d"><v>soon</v></c>';
  expect([...written(oneSheet([[{ raw: odd }, { f: "1+1" }]]))]).toEqual([
    ["A1", odd],
    ["B1", '<c r="B1"><f>1+1</f><v>2</v></c>'],
  ]);
});

describe("what stands there", () => {
  test("stays as it is written where it says the same, by all digits that a sheet keeps", () => {
    const cells: CellXml[][] = [
      [{ raw: '<c r="A1"><f>B1*10</f><v>0.30000000000000004</v></c>' }, 0.03],
      [{ raw: '<c r="A2" t="s"><f>"more"</f><v>0</v></c>' }],
      [{ raw: '<c r="A3" t="str" ><f>"à &#38; b"</f><v>à &amp; b</v></c>' }],
    ];
    const bytes = workbookBytes({ sheets: [{ name: "Sheet1", cells }], sharedStrings: "<si><t>more</t></si>" });
    expect(partText(write(bytes).bytes, SHEET)).toBe(partText(bytes, SHEET));
  });

  test.each<[was: string, becomes: string]>([
    ['<c r="A1" t="s"><f>1+1</f><v>0</v></c>', '<c r="A1"><f>1+1</f><v>2</v></c>'],
    ['<c r="A1" t="inlineStr"><f>1+1</f><is><t>old</t></is></c>', '<c r="A1"><f>1+1</f><v>2</v></c>'],
    ['<c r="A1" vm="1" t="e"><f>1+1</f><v>#VALUE!</v></c>', '<c r="A1"><f>1+1</f><v>2</v></c>'],
    ["<c r='A1' s='0'\n t='str'><f>1+1</f><v/></c>", "<c r='A1' s='0'><f>1+1</f><v>2</v></c>"],
    ['<c r="A1"><f>1+1</f><extLst><ext uri="u"/></extLst></c>', '<c r="A1"><f>1+1</f><v>2</v><extLst><ext uri="u"/></extLst></c>'],
  ])("%s", (was, becomes) => {
    const inRow = (cell: string): string => data(`<sheetData><row r="1">${cell}</row></sheetData>`);
    expect(partText(write(handmade(inRow(was), { sharedStrings: "<si><t>x</t></si>" })).bytes, SHEET)).toBe(inRow(becomes));
  });

  test("is left alone where the file knows more: what is not calculated here, and all that rests on it", () => {
    const cells: CellXml[][] = [[{ f: "LAMBDA(x,x)", v: 2 }, { f: "A1*2", v: 4 }, { f: "SUM(B1:B1)", v: 4 }, { f: "E1+1", v: 99 }, 5], [{ f: "A2+1", v: 7 }]];
    const bytes = oneSheet(cells);
    expect([...written(bytes)].filter(([, cell]) => /<f>/.test(cell)).map(([name, cell]) => [name, /<v>(.*)<\/v>/.exec(cell)?.[1]])).toEqual([
      ["A1", "2"],
      ["B1", "4"],
      ["C1", "4"],
      ["D1", "6"],
      ["A2", "7"],
    ]);
  });
});

describe("results that fill more than their own cell", () => {
  const block = (ref: string, attributes: string, formula = "B1:B3*2"): CellXml => ({ f: formula, attributes: ` t="array" ref="${ref}"`, cell: attributes });
  const column = (cell: CellXml): CellXml[][] => [
    [cell, 1],
    [null, 2],
    [null, 3],
  ];

  test("a spill that was never calculated gets its cells and its reach", () => {
    const cells = written(oneSheet(column(block("A1", ' cm="1"'))));
    expect(cells.get("A1")).toBe('<c r="A1" cm="1"><f t="array" ref="A1:A3">B1:B3*2</f><v>2</v></c>');
    expect([cells.get("A2"), cells.get("A3")]).toEqual(['<c r="A2"><v>4</v></c>', '<c r="A3"><v>6</v></c>']);
  });

  test("one that has become shorter leaves nothing behind", () => {
    const cells = written(oneSheet([[block("A1:A3", ' cm="1"', "B1:B2*2"), 1], [9, 2], [{ raw: '<c r="A3" s="0"><v>9</v></c>' }]]));
    expect([cells.get("A1"), cells.get("A2"), cells.get("A3")]).toEqual([
      '<c r="A1" cm="1"><f t="array" ref="A1:A2">B1:B2*2</f><v>2</v></c>',
      '<c r="A2"><v>4</v></c>',
      '<c r="A3" s="0"></c>',
    ]);
  });

  test("an array formula of old fills what it has always filled", () => {
    const cells = written(
      oneSheet([
        [block("A1:A3", "", "B1:B2*2"), 1],
        [null, 2],
        [null, 3],
      ]),
    );
    expect([cells.get("A1"), cells.get("A3")]).toEqual(['<c r="A1"><f t="array" ref="A1:A3">B1:B2*2</f><v>2</v></c>', '<c r="A3" t="e"><v>#N/A</v></c>']);
  });

  test("a formula that is not marked as one fills its own cell alone", () => {
    const cells = written(oneSheet(column({ f: "_xldudf_HATCH_CLEARANCE(B1:B3,1)" })));
    expect([...cells.keys()]).toEqual(["A1", "B1", "B2", "B3"]);
  });

  test("formulas that share one get a value each", () => {
    const cells: CellXml[][] = [
      [1, { f: "A1+1", attributes: ' t="shared" ref="B1:B2" si="0"' }],
      [5, { raw: '<c r="B2"><f t="shared" si="0"/></c>' }],
    ];
    expect(written(oneSheet(cells)).get("B2")).toBe('<c r="B2"><f t="shared" si="0"/><v>6</v></c>');
  });
});

describe("cells that the sheet does not have", () => {
  test("are put in the order of rows and columns, with the looks of their row or column", () => {
    const inside =
      '<cols><col min="3" max="4" style="1"/></cols><sheetData><row r="2" s="2" customFormat="1"><c r="B2"><v>1</v></c><c r="D2"><v>2</v></c></row><row r="5"/></sheetData>';
    const styles = `<styleSheet xmlns="${MAIN}"><cellXfs count="3"><xf/><xf numFmtId="1"/><xf numFmtId="2"/></cellXfs></styleSheet>`;
    const relations = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="s" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>`;
    const bytes = handmade(data(inside), { parts: { "xl/styles.xml": styles, "xl/_rels/workbook.xml.rels": relations } });
    const places: [number, number][] = [
      [0, 2],
      [1, 0],
      [1, 2],
      [1, 4],
      [4, 1],
      [8, 3],
    ];
    const sheet = partText(
      write(
        bytes,
        places.map(([row, column]) => at(row, column)),
      ).bytes,
      SHEET,
    );
    expect(sheet.replace(/ s="\d+"/g, "")).toBe(
      data(
        '<cols><col min="3" max="4" style="1"/></cols><sheetData><row r="1"><c r="C1"/></row><row r="2" customFormat="1"><c r="A2"/><c r="B2"><v>1</v></c><c r="C2"/><c r="D2"><v>2</v></c><c r="E2"/></row><row r="5"><c r="B5"/></row><row r="9"><c r="D9"/></row></sheetData>',
      ),
    );
    const formats = [...partText(write(bytes, [at(0, 2), at(1, 0), at(4, 1)]).bytes, "xl/styles.xml").matchAll(/<xf[^>]*>/g)].map(([xf]) => xf);
    expect(formats.slice(3)).toEqual([
      '<xf numFmtId="1" fillId="2" applyFill="1"/>',
      '<xf numFmtId="2" fillId="2" applyFill="1"/>',
      '<xf fillId="2" applyFill="1"/>',
    ]);
  });

  test("find their place where rows, cells and the sheet say nothing of themselves", () => {
    expect(partText(write(handmade(data("<sheetData/>")), [at(0, 0)]).bytes, SHEET)).toMatch(/<sheetData><row r="1"><c r="A1" s="\d"\/><\/row><\/sheetData>/);
    const sheet = partText(
      write(handmade(data("<sheetData><row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row></sheetData>")), [at(0, 2), at(1, 0), at(2, 0)]).bytes,
      SHEET,
    );
    expect(sheet.replace(/ s="\d+"/g, "").replace(/ (?=>)/g, "")).toBe(
      data('<sheetData><row><c><v>1</v></c><c><v>2</v></c><c r="C1"/></row><row><c><v>3</v></c></row><row r="3"><c r="A3"/></row></sheetData>'),
    );
  });
});

describe("however the part is written", () => {
  const xml = (prefix: string): string =>
    `<${prefix}worksheet xmlns${prefix ? `:${prefix.slice(0, -1)}` : ""}="${MAIN}"><${prefix}sheetData><${prefix}row r="1"><${prefix}c r="A1"><${prefix}f>1+1</${prefix}f></${prefix}c></${prefix}row></${prefix}sheetData></${prefix}worksheet>`;

  test("with a prefix, what is put in has it as well", () => {
    expect(partText(write(handmade(xml("x:")), [at(1, 1)]).bytes, SHEET)).toMatch(
      /<x:c r="A1"><x:f>1\+1<\/x:f><x:v>2<\/x:v><\/x:c><\/x:row><x:row r="2"><x:c r="B2" s="\d"\/><\/x:row><\/x:sheetData>/,
    );
  });

  test.each([true, false])("in UTF-16, little end first: %s", (little) => {
    const text = `<?xml version="1.0" encoding="UTF-16"?>${xml("").replace("</worksheet>", "<!-- Ø 73,02 😀 --></worksheet>")}`;
    const bytes = new Uint8Array(2 * text.length + 2);
    const view = new DataView(bytes.buffer);
    view.setUint16(0, 0xfeff, little);
    for (let i = 0; i < text.length; i++) view.setUint16(2 * i + 2, text.charCodeAt(i), little);
    const copy = write(handmade(bytes));
    const part = readXlsx(copy.bytes).sheets[0]!.cells;
    expect(part).toMatchObject([{ value: 2, formula: "1+1" }]);
    expect(new TextDecoder(little ? "utf-16le" : "utf-16be").decode(partsOf(copy.bytes)[SHEET])).toBe(text.replace("</f></c>", "</f><v>2</v></c>"));
  });

  test("with a mark of UTF-8, CDATA, comments and elements of other programs that look like its own", () => {
    const inside = `<!-- <c r="A1"> --><sheetData><row r="1"><c r="A1"><f><![CDATA[1<2]]></f><v>0</v></c><c xmlns="urn:other" r="B1"><f>1</f></c></row></sheetData>`;
    const part = new Uint8Array([0xef, 0xbb, 0xbf, ...strToU8(data(inside))]);
    const copy = write(handmade(part), [at(0, 1)]);
    const sheet = partText(copy.bytes, SHEET);
    expect(sheet).toContain('<c r="A1" t="b"><f><![CDATA[1<2]]></f><v>1</v></c>');
    expect(sheet).toContain('<c xmlns="urn:other" r="B1"><f>1</f></c><c r="B1" s=');
  });
});

// Whatever numbers, texts and gaps a sheet has: what is read from the copy is what was read, with the values of formulas.
test("a copy reads like its original, calculated", () => {
  const cell: fc.Arbitrary<CellXml> = fc.oneof(
    { weight: 3, arbitrary: fc.constant(null) },
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
    fc.string({ unit: "grapheme", maxLength: 8 }).filter((text) => /^[^\p{C}]+$/u.test(text)),
    fc.boolean(),
    fc.constantFrom<CellXml>({ f: "1+1" }, { f: "A1&1", v: "stale" }, { f: 'IF(B2="","",B2)', v: 3 }, { error: "#N/A" }),
  );
  fc.assert(
    fc.property(fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 6 }), fc.array(fc.tuple(fc.nat(7), fc.nat(6)), { maxLength: 6 }), (rows, places) => {
      const bytes = oneSheet(rows);
      const before = readXlsx(bytes);
      const results = calculate(before).sheets[0]!.values;
      const copy = write(
        bytes,
        places.map(([row, column]) => at(row, column)),
      );
      const after = readXlsx(copy.bytes);
      expect(after.sheets[0]!.cells.map(({ row, column, formula }) => ({ row, column, formula }))).toEqual(
        before.sheets[0]!.cells.map(({ row, column, formula }) => ({ row, column, formula })),
      );
      for (const { row, column, value, formula } of after.sheets[0]!.cells) {
        const wanted = results[row]?.[column] ?? "";
        if (formula !== undefined && typeof wanted !== "object") expect(value).toEqual(wanted);
      }
      expect(
        Buffer.compare(
          write(
            copy.bytes,
            places.map(([row, column]) => at(row, column)),
          ).bytes,
          copy.bytes,
        ),
      ).toBe(0);
    }),
    { numRuns: 60 },
  );
});
