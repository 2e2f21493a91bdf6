import { strFromU8, strToU8 } from "fflate";
import { takeMarks } from "../../../src/bench/stored-marks.ts";
import { calculate } from "../../../src/calc/calculate.ts";
import { type CellMark, MARK_FILL } from "../../../src/workbook/port.ts";
import { FINDINGS_SHEET, MARKED, storedMarks } from "../../../src/workbook/storage.ts";
import { resolvedColour } from "../../../src/xlsx/patch/colours.ts";
import { markedCopy } from "../../../src/xlsx/patch/marked-copy.ts";
import { StylesPatch } from "../../../src/xlsx/patch/styles.ts";
import { readXlsx } from "../../../src/xlsx/read/read.ts";
import { workbookBytes } from "../workbook-bytes.ts";
import { partText } from "./marking.ts";
import { richBook } from "./rich-book.ts";

const NO_THEME = new Map<string, string>();
const THEME = new Map([
  ["accent1", "4472C4"],
  ["lt1", "FFFFFF"],
  ["dk1", "000000"],
]);

function write(bytes: Uint8Array, marks: readonly CellMark[]): Uint8Array {
  const book = readXlsx(bytes);
  return markedCopy(bytes, { book, calculated: calculate(book), marks, page: { lines: [], remarks: [] } }).bytes;
}

describe("colours", () => {
  test("given as such, in the theme, in the palette of old, and left to the machine", () => {
    expect(resolvedColour({ rgb: "FF12ABcd" }, NO_THEME)).toBe("#12ABCD");
    expect(resolvedColour({ theme: "4" }, THEME)).toBe("#4472C4");
    // The light comes before the dark in the count of styles.
    expect([resolvedColour({ theme: "0" }, THEME), resolvedColour({ theme: "1" }, THEME)]).toEqual(["#FFFFFF", "#000000"]);
    // ECMA-376 part 1, 18.8.27.
    expect([10, 22, 26, 63, 2].map((indexed) => resolvedColour({ indexed: String(indexed) }, NO_THEME))).toEqual([
      "#FF0000",
      "#C0C0C0",
      "#FFFFCC",
      "#333333",
      "#FF0000",
    ]);
    expect([resolvedColour({ indexed: "64" }, NO_THEME), resolvedColour({ auto: "1" }, NO_THEME), resolvedColour({ theme: "4" }, NO_THEME)]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  // The palette that office programs show for the accent 4472C4 and for white (from memory); they round along the way.
  test.each<[rgb: string, tint: number, shown: string]>([
    ["4472C4", 0.79998168889431442, "D9E1F2"],
    ["4472C4", 0.59999389629810485, "B4C6E7"],
    ["4472C4", 0.39997558519241921, "8EA9DB"],
    ["4472C4", -0.249977111117893, "305496"],
    ["4472C4", -0.499984740745262, "203764"],
    ["FFFFFF", -0.14999847407452621, "D9D9D9"],
    ["000000", 0.499984740745262, "808080"],
  ])("%s with a tint of %d is %s, to two steps of 255", (rgb, tint, shown) => {
    const parts = (colour: string): number[] => [0, 2, 4].map((at) => Number.parseInt(colour.replace("#", "").slice(at, at + 2), 16));
    const made = parts(resolvedColour({ rgb, tint: String(tint) }, NO_THEME)!);
    for (const [i, part] of parts(shown).entries()) expect(Math.abs(made[i]! - part)).toBeLessThanOrEqual(2);
  });
});

describe("styles", () => {
  const part = (inside: string): Uint8Array => strToU8(`<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${inside}</styleSheet>`);

  test("a marked one is like the one that was there in all but its fill, and is made once", () => {
    const looks = new StylesPatch(
      part('<fills count="1"><fill><patternFill/></fill></fills><cellXfs count="1"><xf fontId="3"><protection locked="0"/></xf></cellXfs>'),
      "styles",
      NO_THEME,
    );
    expect([looks.filled(0, "#F4B6B0"), looks.filled(0, "#F6DFA4"), looks.filled(0, "#F4B6B0")]).toEqual([1, 2, 1]);
    expect([looks.fillOf(0), looks.fillOf(1), looks.fillOf(2)]).toEqual([null, "#F4B6B0", "#F6DFA4"]);
    expect(strFromU8(looks.part())).toContain(
      '<cellXfs count="3"><xf fontId="3"><protection locked="0"/></xf><xf fontId="3" fillId="2" applyFill="1"><protection locked="0"/></xf><xf fontId="3" fillId="3" applyFill="1"><protection locked="0"/></xf></cellXfs>',
    );
  });

  test("lists that are missing are put where the standard has them", () => {
    const looks = new StylesPatch(part("<fonts/><borders/><cellStyleXfs/><cellStyles/>"), "styles", NO_THEME);
    looks.filled(0, "#F4B6B0");
    expect(strFromU8(looks.part())).toMatch(/<fonts\/><fills count="3">.*<\/fills><borders\/><cellStyleXfs\/><cellXfs count="2">.*<\/cellXfs><cellStyles\/>/);
  });

  test("nothing is changed where nothing is marked", () => {
    const given = part("<cellXfs/>");
    expect(new StylesPatch(given, "styles", NO_THEME).part()).toBe(given);
  });

  test("a pattern counts by its ground, a gradient as no colour", () => {
    const fills =
      '<fill><patternFill patternType="darkUp"><fgColor rgb="FF000000"/><bgColor rgb="FF00FF00"/></patternFill></fill><fill><gradientFill><stop position="0"><color rgb="FFFF0000"/></stop></gradientFill></fill>';
    const looks = new StylesPatch(part(`<fills count="2">${fills}</fills><cellXfs count="2"><xf fillId="0"/><xf fillId="1"/></cellXfs>`), "styles", NO_THEME);
    expect([looks.fillOf(0), looks.fillOf(1)]).toEqual(["#00FF00", null]);
  });
});

describe("the memory of marks", () => {
  const mark = (row: number, column: number, tone: CellMark["tone"] = "outside"): CellMark => ({ cell: { sheet: "Bores", row, column }, tone });

  test("is the one that every host reads: the fill before, and that of the mark", () => {
    const { storedTexts } = readXlsx(write(richBook(), [mark(2, 1), mark(3, 1, "near"), mark(6, 1)]));
    expect(storedMarks(storedTexts)).toEqual([
      { cell: { sheet: "Bores", row: 2, column: 1 }, before: "#FFFFCC", mark: MARK_FILL.outside },
      // Accent 1 of the theme, lighter by 80 %.
      { cell: { sheet: "Bores", row: 3, column: 1 }, before: "#DAE3F3", mark: MARK_FILL.near },
      { cell: { sheet: "Bores", row: 6, column: 1 }, before: null, mark: MARK_FILL.outside },
    ]);
    expect(storedTexts.get(FINDINGS_SHEET)).toBe("Findings");
  });

  test("gives a cell that has no finding any more the very style that it had", () => {
    const original = richBook();
    const marked = write(original, [mark(2, 1), mark(3, 1), mark(6, 1)]);
    const back = write(marked, [mark(6, 1)]);
    const cells = (bytes: Uint8Array): string[] =>
      [...partText(bytes, "xl/worksheets/sheet1.xml").matchAll(/<c r="(?:B3|B4|B7)"[^>]*>/g)].map(([cell]) => cell);
    expect(cells(back).slice(0, 2)).toEqual(cells(original).slice(0, 2));
    expect(cells(back)[2]).toBe(cells(marked)[2]);
    expect(storedMarks(readXlsx(back).storedTexts)).toHaveLength(1);
    expect(readXlsx(back).sheets.map(({ name }) => name)).toEqual(["Bores", "Parts", "Pivot", "Findings"]);
  });

  test("a mark of another tone replaces one, and what was there before stays what it was", () => {
    const again = write(write(richBook(), [mark(2, 1)]), [mark(2, 1, "doubt")]);
    expect(storedMarks(readXlsx(again).storedTexts)).toEqual([{ cell: { sheet: "Bores", row: 2, column: 1 }, before: "#FFFFCC", mark: MARK_FILL.doubt }]);
  });

  test("a cell that somebody has filled since keeps that", () => {
    const marked = write(richBook(), [mark(2, 1)]);
    const { storedTexts } = readXlsx(marked);
    const [remembered] = storedMarks(storedTexts);
    storedTexts.set(MARKED, JSON.stringify([{ ...remembered, mark: "#123456" }]));
    const book = readXlsx(marked);
    const copy = markedCopy(marked, { book: { ...book, storedTexts }, calculated: calculate(book), marks: [], page: { lines: [], remarks: [] } });
    const style = (bytes: Uint8Array): string | undefined => /<c r="B3"[^>]*>/.exec(partText(bytes, "xl/worksheets/sheet1.xml"))?.[0];
    expect(style(copy.bytes)).toBe(style(marked));
  });

  test("is what the bench takes the marks off by", () => {
    const { storedTexts } = readXlsx(write(richBook(), [mark(2, 1)]));
    expect(takeMarks(storedTexts, new Map([["Bores", "s1"]]))).toEqual([{ sheetId: "s1", row: 2, col: 1, fill: MARK_FILL.outside, earlier: "#FFFFCC" }]);
  });
});

test("a sheet of the shop's own that is called Findings stays, and ours gets another name, this time and the next", () => {
  const own = workbookBytes({ sheets: [{ name: "findings", cells: [["mine"]] }] });
  const marked = write(own, []);
  for (const bytes of [marked, write(marked, [])]) {
    const { sheets } = readXlsx(bytes);
    expect(sheets.map(({ name, cells }) => [name, cells[0]?.value])).toEqual([
      ["findings", "mine"],
      ["Findings 2", "Findings of Crosshatch"],
    ]);
  }
});
