import { zipSync } from "fflate";
import { type CellXml, oneSheet, workbookBytes } from "../xlsx/workbook-bytes.ts";
import { zipBytes } from "../xlsx/zip-bytes.ts";
import { type Came, Door } from "./door.ts";
import { kept, list, rows, sheetsOf, spill } from "./made.ts";

/**
 * Files that are made to break whoever opens them. Each goes through the front door in a process of
 * its own and comes to a result or a sentence, within 10 s of the processor and 512 MB. What the
 * archive and its XML can do is tried in test/xlsx/read/hostile.test.ts.
 */
const SECONDS = 10;
const MEGABYTES = 512;

const door = new Door();
beforeAll(() => door.open(), 60_000);
afterAll(() => door.close());

async function come(name: string, bytes: Uint8Array | Iterable<Uint8Array>, seconds = SECONDS): Promise<Came> {
  const came = await door.check(name, bytes);
  expect(came.fault).toBeUndefined();
  expect(came.seconds).toBeLessThan(seconds);
  expect(came.megabytes).toBeLessThan(MEGABYTES);
  if (came.counts) expect(came.counts.rowsIn).toBe(came.counts.checked + came.counts.refused);
  return came;
}

const LATE = 180_000;

describe("more than there is room for", () => {
  test(
    "millions of cells that hold nothing, packed to a hundredth",
    async () => {
      const blank = rows(list(40_000, (r) => `<row r="${r + 1}">${'<c s="1"/>'.repeat(100)}</row>`).join(""));
      expect(blank.length).toBeLessThan(400_000);
      expect((await come("blank.xlsx", blank)).counts).toEqual({ rowsIn: 0, checked: 0, refused: 0 });
    },
    LATE,
  );

  test.each<[string, () => Uint8Array, string | RegExp]>([
    [
      "2^20 rows with one number each",
      () => rows(`<row r="1">${list(1_048_576, (r) => `<c><v>${r % 10}</v></c></row><row>`).join("")}</row>`),
      "has too many cells: more than 500,000 hold something",
    ],
    [
      "two cells in opposite corners of 2^20 rows and 2^14 columns",
      () => rows('<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'),
      'has too many cells: the sheet "Sheet1" is spread over 1,050,000 rows and 16,400 columns',
    ],
    ["an array formula over ten million cells", () => oneSheet([[{ f: "1", attributes: ' t="array" ref="A1:CV100000"' }]]), /fill more than 500,000 cells$/],
    ["one part that stands for twenty thousand sheets", () => sheetsOf(20_000), "has 20,000 sheets, and at most 1,000 are read"],
    [
      "twenty thousand parts",
      () => zipBytes(list(20_000, (i) => ({ name: `xl/p${i}.xml`, content: "", stored: true }))),
      "holds 20,000 parts, and at most 10,000 are read: it is refused as a possible zip bomb",
    ],
  ])(
    "%s",
    async (_, make, why) => {
      const { refused } = await come("large.xlsx", make());
      expect(refused).toEqual(typeof why === "string" ? why : expect.stringMatching(why));
    },
    LATE,
  );

  test(
    "as many cells as are read",
    async () => {
      const { first, refused } = await come("cells.xlsx", oneSheet(list(50_000, (r) => list(10, (c) => r + c))));
      expect([first, refused]).toEqual([0, undefined]);
    },
    LATE,
  );

  test(
    "all columns that a sheet can have",
    async () => {
      const { first, refused } = await come("columns.xlsx", oneSheet([list(16_384, (i) => i + 7)]));
      expect([first, refused]).toEqual([7, undefined]);
    },
    LATE,
  );
});

describe("archives in archives", () => {
  const BOOK = { sheets: [{ name: "S", cells: [[73.02]] }] };

  test(
    "a bomb inside a part that is not read stays packed",
    async () => {
      const bomb = zipSync({ "0.bin": zipSync({ "1.bin": new Uint8Array(20e6) }) });
      expect((await come("inside.xlsx", workbookBytes({ ...BOOK, parts: { "xl/embeddings/package.xlsx": bomb } }))).first).toBe(73.02);
    },
    LATE,
  );

  test(
    "an archive in place of a sheet",
    async () => {
      const { refused } = await come("nested.xlsx", workbookBytes({ ...BOOK, parts: { "xl/worksheets/sheet1.xml": workbookBytes(BOOK) } }));
      expect(refused).toBe("is damaged: its part xl/worksheets/sheet1.xml is not well-formed XML");
    },
    LATE,
  );
});

describe("formulas that ask for more than there is", () => {
  const BEYOND = "Not everything in this workbook was calculated.";
  test.each<[string, () => Uint8Array, string]>([
    [
      "every cell of a sheet",
      () => oneSheet([[spill("SEQUENCE(1048576,16384)")]]),
      "This would fill 17,200,000,000 cells, and at most 500,000 are calculated at a time.",
    ],
    [
      "a text twice as long in each cell",
      () => oneSheet(list(60, (i) => [i ? { f: `A${i}&A${i}` } : "xy"])),
      "This text would be longer than the 32,800 characters that a cell holds.",
    ],
  ])(
    "%s",
    async (_, make, sentence) => {
      expect((await come("eater.xlsx", make())).notes).toEqual([`${BEYOND} ${sentence}`]);
    },
    LATE,
  );

  test.each<[string, () => Uint8Array, string]>([
    [
      "half a million cells on each of thirty sheets",
      () => workbookBytes({ sheets: list(30, (i) => ({ name: `S${i}`, cells: [[spill("SEQUENCE(5000,100)")]] })) }),
      "fills more cells with results of its formulas than there is room for in one workbook",
    ],
    [
      "sums of a hundred thousand cells, five thousand times",
      () => oneSheet(list(5000, (i) => [i, { f: `SUMPRODUCT((A$1:A$5000=A${i + 1})*(A$1:A$5000>0)*(A$1:A$5000<9))` }])),
      "takes more work to calculate than is done for one workbook",
    ],
    [
      "pairs of seven hundred bores and pistons",
      () => oneSheet([[spill("HATCH.PISTONMATCH(SEQUENCE(700,1,70,0.001),SEQUENCE(700,1,70,0.001),0.01)")]]),
      "takes more work to calculate than is done for one workbook",
    ],
  ])(
    "%s: the whole file is refused",
    async (_, make, sentence) => {
      // What one workbook may take is about a minute's work.
      expect((await come("eater.xlsx", make(), 150)).refused).toBe(sentence);
    },
    LATE,
  );

  test(
    "a chain of fifty thousand cells, and products of whole columns, are calculated",
    async () => {
      const chain = await come("chain.xlsx", oneSheet(list(50_000, (i) => [i ? { f: `A${i}+1` } : 1])));
      expect([chain.first, chain.notes]).toEqual([1, []]);
      const columns = await come("columns.xlsx", oneSheet([[{ f: "SUMPRODUCT(B:B*C:C)" }, 1, 2], ...list(499, () => [null, 1, 2])]));
      expect([columns.first, columns.notes]).toEqual([1000, []]);
    },
    LATE,
  );

  test(
    "cells that depend on themselves, and a name that is itself",
    async () => {
      const names = '<definedName name="me">me+1</definedName>';
      const came = await come("cycle.xlsx", workbookBytes({ names, sheets: [{ name: "S", cells: [[{ f: "B1" }, { f: "A1+me" }]] }] }));
      expect(came.first).toMatchObject({ error: expect.stringMatching(/^#/) });
      expect(came.notes!.join()).toContain("S!B1: this formula");
    },
    LATE,
  );

  test(
    "formulas as long as they may be and longer, and nested beyond all sense",
    async () => {
      const cells: CellXml[] = [
        { f: `${"1+".repeat(70)}1` },
        { f: `SUM(${"1,".repeat(4092)}1)` },
        { f: `SUM(${"1,".repeat(4095)}1)` },
        { f: `${"(".repeat(4000)}1${")".repeat(4000)}` },
        { f: `${"-".repeat(8000)}1` },
      ];
      const { first, notes } = await come("long.xlsx", oneSheet([cells]));
      expect(first).toBe(71);
      expect(notes).toEqual(["Sheet1!C1: this formula is longer than a formula can be.", "Sheet1!E1: this formula cannot be read."]);
    },
    LATE,
  );
});

describe("names that programs trip over", () => {
  const NAMES = ["__proto__", "constructor", "toString", "a\u202Egnp.exe", "=1+1", "<img src=x onerror=alert(1)>", "R1C1", "A1"];

  test.each(NAMES)(
    "%j as a sheet, a defined name, a heading, a cell and a table",
    async (name) => {
      const safe = name.replaceAll("<", "&lt;").replaceAll(">", "&gt;");
      const table = `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="${safe}" displayName="${safe}" ref="A1:C2"><tableColumns count="3"><tableColumn id="1" name="${safe}"/><tableColumn id="2" name="value"/><tableColumn id="3" name="upper"/></tableColumns></table>`;
      const cells: CellXml[][] = [
        [name, "value", "upper"],
        [name, 73.09, 73.05],
      ];
      const came = await come(
        "names.xlsx",
        workbookBytes({ names: `<definedName name="${safe}">1</definedName>`, sheets: [{ name, cells, tables: [table] }] }),
      );
      expect(came.sheets).toEqual([name]);
      expect(came.counts).toEqual({ rowsIn: 1, checked: 1, refused: 0 });
      expect(came.findings!.join()).toContain("73.09 is over the upper limit 73.05 by 0.04");
      expect(Object.keys({})).toEqual([]);
    },
    LATE,
  );

  test(
    "characters that no text should have: NUL, half of a pair, the turn of writing",
    async () => {
      expect((await come("nul.xlsx", oneSheet([[{ raw: '<c r="A1" t="inlineStr"><is><t>a&#0;b</t></is></c>' }]]))).refused).toContain("is not well-formed XML");
      const { first } = await come("escaped.xlsx", oneSheet([["_x0000_a_xD800_\u202Eb"]]));
      expect(first).toBe("\u0000a\uD800\u202Eb");
    },
    LATE,
  );
});

describe("what the workbook keeps for us", () => {
  const range = {
    sheet: "S",
    row: 0,
    column: 0,
    rowHeads: [],
    columnHeads: [],
    fixed: {},
    otherwise: {},
    records: "row",
    without: { rows: [], columns: [] },
    grows: true,
    signature: [],
  };
  test(
    "a layout of five hundred ranges, each as large as a sheet",
    async () => {
      const ranges = list(500, () => ({ ...range, rows: 1_048_576, columns: 16_384 }));
      const came = await come("ranges.xlsx", kept(JSON.stringify({ version: 1, ranges })));
      expect(came.notes).toEqual(["the saved layout of this workbook is damaged (ranges): set it up again"]);
    },
    LATE,
  );

  test(
    "a layout that is no layout",
    async () => {
      expect((await come("damaged.xlsx", kept("[".repeat(100_000)))).notes).toEqual(["the saved layout of this workbook is damaged: set it up again"]);
    },
    LATE,
  );
});

describe("readings without an end", () => {
  function* without(start: string, piece: string): Generator<Uint8Array> {
    yield Buffer.from(start);
    const block = Buffer.from(piece.repeat(1e6 / piece.length));
    for (let i = 0; i < 100; i++) yield block;
  }
  const HEAD = "cylinder,value,upper\n1,2,3\n";

  test.each([
    ["a line of 100 MB", HEAD, "x"],
    ["a quote of 100 MB", `${HEAD}"`, "x"],
    ["a hundred million fields", HEAD, ","],
  ])(
    "%s",
    async (_, start, piece) => {
      const { refused, counts } = await come("line.csv", without(start, piece));
      expect(refused).toMatch(/^breaks off: the record that begins in line 3 is longer /);
      expect(counts).toEqual({ rowsIn: 1, checked: 1, refused: 0 });
    },
    LATE,
  );

  test(
    "headings of 100 MB",
    async () => {
      expect((await come("head.csv", without("", "value,lower;"))).refused).toMatch(/^has in line 1 /);
    },
    LATE,
  );
});
