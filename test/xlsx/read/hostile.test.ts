import fc from "fast-check";
import { strToU8 } from "fflate";
import { FILE_LIMITS, UnreadableFile } from "../../../src/xlsx/file-limits.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { compound } from "../../hostile/made.ts";
import { type BookXml, oneSheet, workbookBytes, workbookParts } from "../workbook-bytes.ts";
import { type Part, partsOf, zipBytes } from "../zip-bytes.ts";

const BOOK: BookXml = {
  sheets: [
    {
      name: "Bores",
      cells: [
        ["Bore", 73.01],
        [{ f: "HATCH.TAPER(B1:B1)", v: 0 }, true],
      ],
    },
  ],
};
const SHEET = "xl/worksheets/sheet1.xml";
const PARTS = workbookParts(BOOK);

/** Why the bytes are refused. */
function reason(bytes: Uint8Array, limits = FILE_LIMITS): string {
  try {
    readXlsx(bytes, limits);
  } catch (refusal) {
    if (refusal instanceof UnreadableFile) return refusal.reason;
    throw refusal;
  }
  throw new Error("the file was read");
}

const withPart = (part: Part): Uint8Array => zipBytes([...partsOf(PARTS).filter(({ name }) => name !== part.name), part]);
const withSheet = (xml: string): string => reason(workbookBytes({ ...BOOK, parts: { [SHEET]: xml } }));

describe("files of another kind are refused by name", () => {
  test.each([
    ["an empty file", new Uint8Array(), "is empty"],
    [
      "text",
      strToU8("engine,cylinder\nA,1\n"),
      "is a text file, not a workbook: if it holds readings separated by commas or semicolons, give it the ending .csv",
    ],
    [
      "text with a mark before it",
      strToU8("\uFEFFMotor;Zylinder\r\n"),
      "is a text file, not a workbook: if it holds readings separated by commas or semicolons, give it the ending .csv",
    ],
    ["a picture", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]), "is not an .xlsx workbook"],
    ["a protected workbook", compound("EncryptedPackage"), "is protected by a password: open it, take the password off and save it again"],
    ["an old workbook", compound("Workbook"), "is a workbook of the old .xls kind: save it as .xlsx"],
    ["an old document", compound("WordDocument"), "is an old Office file, not an .xlsx workbook"],
    [
      "an OpenDocument file",
      zipBytes(partsOf({ mimetype: "application/vnd.oasis.opendocument.spreadsheet", "content.xml": "<a/>" })),
      "is an OpenDocument file: save it as .xlsx",
    ],
    ["some other archive", zipBytes(partsOf({ "readme.txt": "hello" })), "is a zip archive without a workbook in it"],
  ])("%s", (_, bytes, why) => {
    expect(reason(bytes)).toBe(why);
  });

  test("a binary workbook and a text document", () => {
    const pointing = (target: string) => reason(workbookBytes({ ...BOOK, parts: { "_rels/.rels": PARTS["_rels/.rels"]!.replace("xl/workbook.xml", target) } }));
    expect(pointing("xl/workbook.bin")).toBe("is a binary workbook (.xlsb): save it as .xlsx");
    expect(pointing("word/document.xml")).toBe("is an Office document, but no workbook");
  });
});

describe("damaged files are refused, never half read", () => {
  const sound = workbookBytes(BOOK);

  test("cut short at any place", () => {
    for (let length = 2; length < sound.length; length += 7) expect(reason(sound.subarray(0, length))).toMatch(/cut short or damaged|is not an \.xlsx/);
  });

  test("one byte changed anywhere: refused, or read to the same cells", () => {
    const whole = JSON.stringify(readXlsx(sound));
    const place = fc.integer({ min: 0, max: sound.length - 1 });
    fc.assert(
      fc.property(place, fc.integer({ min: 1, max: 255 }), (at, change) => {
        const changed = sound.slice();
        changed[at]! ^= change;
        try {
          return JSON.stringify(readXlsx(changed)) === whole;
        } catch (refusal) {
          return refusal instanceof UnreadableFile;
        }
      }),
      { numRuns: 1500 },
    );
  });

  test.each<[string, string]>([
    ["XML that ends too soon", "<worksheet"],
    [
      "XML with an entity that nobody defined",
      '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>&boom;</sheetData></worksheet>',
    ],
    ["bytes that are no UTF-8", "\uD800"],
  ])("%s", (_, xml) => {
    expect(withSheet(xml)).toBe(`is damaged: its part ${SHEET} is not well-formed XML`);
  });

  test.each([
    ["a cell outside any sheet", '<c r="XFE1"><v>1</v></c>', `is damaged: "XFE1" in its part ${SHEET} is no cell`],
    ["a cell that stands there twice", '<c r="A1"><v>1</v></c><c r="A1"><v>2</v></c>', `is damaged: its part ${SHEET} holds a cell that stands there twice`],
  ])("%s", (_, raw, why) => {
    expect(reason(oneSheet([[{ raw }]]))).toBe(why);
  });

  test.each([
    ["a number that is none", '<c r="A1"><v>7,3</v></c>', 'the file holds "7,3", which is no number of a sheet'],
    ["a number beyond what a sheet can hold", '<c r="A1"><v>1e308</v></c>', 'the file holds "1e308", which is no number of a sheet'],
    ["one below it", '<c r="A1"><v>-1e309</v></c>', 'the file holds "-1e309", which is no number of a sheet'],
    ["a shared text that is missing", '<c r="A1" t="s"><v>4</v></c>', "the file holds the shared text 4, which is missing"],
    ["a date that is none", '<c r="A1" t="d"><v>soon</v></c>', 'the file holds "soon", which is no date'],
  ])("%s is an error of its cell, and the others are read", (_, raw, message) => {
    const cells = readXlsx(oneSheet([[{ raw }, { raw: '<c r="B1"><v>2</v></c>' }]])).sheets[0]!.cells;
    expect(cells.map(({ value }) => value)).toEqual([{ error: "#VALUE!", message }, 2]);
  });

  test("a shared formula without its first cell cannot be calculated", () => {
    expect(readXlsx(oneSheet([[{ raw: '<c r="A1"><f t="shared" si="3"/><v>7</v></c>' }]])).sheets[0]!.cells).toEqual([
      { row: 0, column: 0, value: 7, beyond: "shares a formula that is missing in the file" },
    ]);
  });

  test("a sheet whose part, or whose arrow to it, is missing", () => {
    expect(reason(workbookBytes({ ...BOOK, parts: { [SHEET]: null } }))).toBe(`is damaged: its part ${SHEET} is missing`);
    expect(reason(workbookBytes({ ...BOOK, parts: { "xl/_rels/workbook.xml.rels": null } }))).toBe('is damaged: the sheet "Bores" is missing in it');
  });

  test("a part of shared texts that is named and left out is wanted only where a cell asks for one", () => {
    const named = { sharedStrings: "<si/>", parts: { "xl/sharedStrings.xml": null } };
    const cells = (book: BookXml) => readXlsx(workbookBytes(book)).sheets[0]!.cells;
    expect(cells({ ...BOOK, ...named })).toEqual(cells(BOOK));
    const [cell] = cells({ sheets: [{ name: "Bores", cells: [[{ raw: '<c r="A1" t="s"><v>0</v></c>' }]] }], ...named });
    expect(cell).toMatchObject({ value: { message: "the file holds the shared text 0, which is missing" } });
  });

  test("a part that holds something else", () => {
    expect(withSheet('<html xmlns="http://www.w3.org/1999/xhtml"/>')).toBe(`holds something other than a workbook's data in its part ${SHEET}`);
  });

  test("a wrong checksum, and sizes that are not so", () => {
    const content = PARTS[SHEET]!;
    const damaged = `is damaged: its part ${SHEET} does not unpack to what the archive says`;
    expect(reason(withPart({ name: SHEET, content, crc: 1 }))).toBe(damaged);
    expect(reason(withPart({ name: SHEET, content, size: content.length - 1 }))).toBe(damaged);
    expect(reason(withPart({ name: SHEET, content, size: content.length + 1 }))).toBe(damaged);
    expect(reason(withPart({ name: SHEET, content: "no deflated data", stored: true, method: 8 }))).toBe(damaged);
  });
});

describe("crafted files are refused", () => {
  test("a document type, which could define entities", () => {
    expect(withSheet('<!DOCTYPE worksheet [<!ENTITY a "aaaa">]><worksheet/>')).toBe(
      `holds a document type in its part ${SHEET}, which no workbook has: it is refused`,
    );
  });

  test("elements nested too deep", () => {
    expect(withSheet(PARTS[SHEET]!.replace("<sheetData>", `<sheetData>${"<row>".repeat(100)}`))).toBe(
      `nests the elements of its part ${SHEET} more than 100 deep: it is refused`,
    );
  });

  test("a part that unpacks to far more than it is packed, before it is unpacked", () => {
    const content = new Uint8Array(20e6);
    expect(reason(withPart({ name: SHEET, content }))).toMatch(
      /^holds a part xl\/worksheets\/sheet1\.xml that unpacks from 19,\d00 to 20,000,000 bytes: it is refused as a possible zip bomb$/,
    );
  });

  test("a part that says it is small and unpacks to a bomb stops at what it said", () => {
    expect(reason(withPart({ name: SHEET, content: new Uint8Array(30e6), size: 100 }))).toBe(
      `is damaged: its part ${SHEET} does not unpack to what the archive says`,
    );
  });

  test("many parts that are each small enough", () => {
    const limits = { ...FILE_LIMITS, inflated: 1000 };
    expect(reason(workbookBytes(BOOK), limits)).toBe("unpacks to more than 0.001 MB: it is refused as a possible zip bomb");
    expect(reason(workbookBytes(BOOK), { ...FILE_LIMITS, entries: 3 })).toBe("holds 5 parts, and at most 3 are read: it is refused as a possible zip bomb");
  });

  test("parts that share their bytes", () => {
    const parts = partsOf(PARTS);
    const at = parts.findIndex(({ name }) => name === SHEET);
    expect(reason(zipBytes([...parts, { name: "xl/again.xml", content: PARTS[SHEET]!, sharesWith: at, localName: SHEET }]))).toMatch(/in two ways/);
    const twin = { name: SHEET, content: PARTS[SHEET]!, sharesWith: at };
    expect(reason(zipBytes([...parts, twin]))).toMatch(/^holds parts that share their bytes/);
  });

  test.each(["../evil.xml", "/etc/x", "xl/../../x", "C:x", "xl//x", "x\u0000y", "./x"])("a part of the name %j", (name) => {
    expect(reason(withPart({ name, content: "x" }))).toBe(`holds a part with the name ${JSON.stringify(name)}, which no workbook has`);
  });

  test("two parts of one name, in capitals too", () => {
    expect(reason(zipBytes([...partsOf(PARTS), { name: SHEET.toUpperCase(), content: "<a/>" }]))).toBe(
      `holds two parts of the name ${SHEET.toUpperCase()}: which of them counts cannot be told`,
    );
  });

  test("an arrow that would lead out of the file leads to its root", () => {
    const arrows = PARTS["xl/_rels/workbook.xml.rels"]!.replace("worksheets/sheet1.xml", "../../secret.xml");
    expect(reason(workbookBytes({ ...BOOK, parts: { "xl/_rels/workbook.xml.rels": arrows } }))).toBe("is damaged: its part secret.xml is missing");
  });

  test("names with the other slash are the same parts; two that are the same by it are one too many", () => {
    const other = partsOf(PARTS).map(({ name, content }) => ({ name: name.replaceAll("/", "\\"), content }));
    expect(readXlsx(zipBytes(other))).toEqual(readXlsx(zipBytes(partsOf(PARTS))));
    expect(reason(zipBytes([...partsOf(PARTS), { name: SHEET.replaceAll("/", "\\"), content: "<a/>" }]))).toBe(
      `holds two parts of the name ${SHEET}: which of them counts cannot be told`,
    );
    expect(reason(withPart({ name: "..\\evil.xml", content: "x" }))).toBe('holds a part with the name "../evil.xml", which no workbook has');
  });

  test("an encrypted archive and a method of packing that is not read", () => {
    expect(reason(withPart({ name: SHEET, content: "x", flags: 1 }))).toBe("is an encrypted archive: unpack it with its password first");
    expect(reason(withPart({ name: SHEET, content: "x", stored: true, method: 12 }))).toBe(`holds a part ${SHEET} packed by a method that is not read`);
  });

  test("too many cells, and cells too far apart", () => {
    const limits = { ...FILE_LIMITS, cells: 2, area: 1000 };
    expect(reason(oneSheet([[1, 2, 3]]), limits)).toBe("has too many cells: more than 2 hold something");
    expect(reason(oneSheet([[1, { raw: '<c r="CV11"><v>1</v></c>' }]]), limits)).toBe(
      'has too many cells: the sheet "Sheet1" is spread over 11 rows and 100 columns',
    );
    expect(reason(oneSheet([[{ f: "1", attributes: ' t="array" ref="A1:XFD1048576"' }]]))).toBe("has array formulas that fill more than 500,000 cells");
  });

  test("a file that is too large", () => {
    expect(reason(workbookBytes(BOOK), { ...FILE_LIMITS, file: 1000 })).toMatch(/^is too large: 0\.00\d+ MB, and at most 0\.001 MB are read$/);
  });
});

test("archives may be stored unpacked, carry a comment and keep sizes in the field for large ones", () => {
  const parts = partsOf(PARTS).map((part, i) => ({ ...part, stored: i % 2 === 0, large: i % 3 === 0 }));
  expect(readXlsx(zipBytes(parts, "saved by nobody"))).toEqual(readXlsx(workbookBytes(BOOK)));
});
