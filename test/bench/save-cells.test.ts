import { SharedStrings, withCells } from "../../src/bench/save-cells.ts";
import type { Cell } from "../../src/core/cell.ts";

/** A sheet's part as the engine writes it. */
const part = (rows: string) => `<worksheet><sheetData>\n${rows}\n</sheetData><mergeCells/></worksheet>`;
const strings = () => new SharedStrings();
const one = (value: Cell, more: { formula?: string; spill?: string } = {}) =>
  withCells(part('<row r="1"><c r="A1" s="3" t="s">\n <v>0</v>\n</c></row>'), new Map([["A1", { value, ...more }]]), strings()).match(
    /<c [\s\S]*<\/c>|<c [^>]*\/>/,
  )![0];

describe("a cell is stored", () => {
  test("as a number, with the look that the engine gave it", () => {
    expect(one(73.04)).toBe('<c r="A1" s="3"><v>73.04</v></c>');
  });

  test("as a truth value or an error by its code", () => {
    expect(one(true)).toBe('<c r="A1" s="3" t="b"><v>1</v></c>');
    expect(one({ error: "#N/A" })).toBe('<c r="A1" s="3" t="e"><v>#N/A</v></c>');
  });

  test("as an error that other programs know, where the engine has its own", () => {
    expect(one({ error: "#REF" })).toContain("<v>#REF!</v>");
    expect(one({ error: "#CYCLE" })).toContain("<v>#VALUE!</v>");
  });

  test("as a formula with its value", () => {
    expect(one(3, { formula: "A2+1" })).toBe('<c r="A1" s="3"><f>A2+1</f><v>3</v></c>');
    expect(one("over", { formula: 'IF(A2>1,"over","&")' })).toBe(
      '<c r="A1" s="3" t="str"><f>IF(A2&gt;1,&quot;over&quot;,&quot;&amp;&quot;)</f><v>over</v></c>',
    );
  });

  test("as an array formula over the cells that it fills", () => {
    expect(one(1, { formula: "{1,2}", spill: "A1:B1" })).toBe('<c r="A1" s="3" cm="1"><f t="array" ref="A1:B1">{1,2}</f><v>1</v></c>');
  });

  test("as an array formula of one cell, when it could fill more: no program then puts an @ into it", () => {
    expect(one(0.01, { formula: "_xldudf_HATCH_TAPER(B2:C4)" })).toBe(
      '<c r="A1" s="3" cm="1"><f t="array" ref="A1">_xldudf_HATCH_TAPER(B2:C4)</f><v>0.01</v></c>',
    );
  });

  test("with its look alone, when it holds nothing", () => {
    expect(withCells(part('<row r="1"><c r="A1" s="3">\n</c></row>'), new Map(), strings())).toContain('<row r="1"><c r="A1" s="3"/></row>');
  });
});

test.each(["=1+1", "+49 30", "-", "@home", "'quoted", " padded ", "a\nb"])("the text %j stays text", (text) => {
  const table = strings();
  const xml = withCells(part('<row r="1"><c r="A1"/></row>'), new Map([["A1", { value: text }]]), table);
  expect(xml).toContain('<c r="A1" t="s"><v>0</v></c>');
  expect(table.xml()).toContain(`<si><t xml:space="preserve">${text}</t></si>`);
});

test("text is stored once however many cells hold it, and signs of XML in it are escaped", () => {
  const table = strings();
  const rows = '<row r="1"><c r="A1"/><c r="B1"/></row><row r="2" ht="20"><c r="A2"/></row>';
  const cells = new Map([
    ["A1", { value: '⌀ < 73 & "worn"' }],
    ["B1", { value: "top" }],
    ["A2", { value: "top" }],
  ]);
  expect(withCells(part(rows), cells, table)).toContain('<row r="2" ht="20"><c r="A2" t="s"><v>1</v></c></row>');
  expect(table.xml()).toContain("⌀ &lt; 73 &amp; &quot;worn&quot;");
  expect(table.xml()).toContain('uniqueCount="2"');
});

/** ECMA-376 part 1, 22.4.2.4: characters that XML cannot hold, and text that looks like their escapes. */
test("a character that XML cannot hold is escaped, and text that looks like such an escape is too", () => {
  const table = strings();
  table.numberOf("bell \u0007 _x0041_");
  expect(table.xml()).toContain("bell _x0007_ _x005F_x0041_");
});

test("a dollar sign in text is not taken for part of a pattern", () => {
  const table = strings();
  const xml = withCells(part('<row r="1"><c r="A1"/></row>'), new Map([["A1", { value: 2, formula: '$B$1&"$\'"' }]]), table);
  expect(xml).toContain("<f>$B$1&amp;&quot;$'&quot;</f>");
});

test("a cell that the engine left out is an error of ours, never a silent loss", () => {
  expect(() => withCells(part('<row r="1"></row>'), new Map([["B7", { value: 1 }]]), strings())).toThrow("The engine left cells out: B7");
});
