import { calculate } from "../../src/calc/calculate.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import { evaluateFormula } from "../../src/formula/evaluate.ts";
import { parseHeading } from "../../src/vocabulary/parse-heading.ts";
import { HEADING_FIELDS } from "../../src/vocabulary/phrases.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { type CellXml, oneSheet } from "../xlsx/workbook-bytes.ts";

/** What damaged inputs once led to, found by `npm run fuzz`. */
async function* pieces(text: string, size: number): AsyncGenerator<Uint8Array> {
  const bytes = Buffer.from(text);
  for (let from = 0; from < bytes.length; from += size) yield bytes.subarray(from, from + size);
}
const check = (text: string, size = 1e6) => checkCsv(pieces(text, size));

test("headings with a quote that is never closed are refused with their line", async () => {
  expect((await check('engine,"value\nA,1\n')).unread).toBe("has in line 1 a quote that is opened and never closed");
});

test("a null among the readings is the same however the bytes arrive", async () => {
  const text = "cylinder,value,upper\n1,5\u0000,4\n2,5,4\n";
  const whole = await check(text);
  expect([whole.rowsIn, whole.checked, whole.refused]).toEqual([2, 1, 1]);
  expect(await check(text, 1)).toEqual(whole);
});

test.each(["constructor", "__proto__", "toString"])("%s as a unit is a word like any other", async (unit) => {
  const lines = Array.from({ length: 6 }, (_, i) => `${i + 1},bore,73.02,73.05,${i < 5 ? unit : "mm"}`);
  const { findings } = await check(`cylinder,characteristic,value,upper,unit\n${lines.join("\n")}\n`);
  expect(findings.map(({ kind, sentence }) => [kind, sentence])).toEqual([
    ["mixed units", `the unit says mm where similar readings are in ${unit.toLowerCase()}`],
  ]);
  expect(parseHeading(`Bore (${unit})`, HEADING_FIELDS).unit).toBeUndefined();
});

test("a number beyond what a sheet can hold is refused, one too near to nothing is 0", () => {
  const cell = (number: string) => readXlsx(oneSheet([[{ raw: `<c r="A1"><v>${number}</v></c>` }]])).sheets[0]!.cells[0]!.value;
  for (const number of ["1e308", "-1e309"]) expect(cell(number)).toMatchObject({ error: "#VALUE!" });
  expect([cell("9.9e307"), cell("5e-324"), cell("-1e-308")]).toEqual([9.9e307, 0, 0]);
});

test("rows that go on after the last one of a sheet are refused in words", () => {
  const after = '<row r="1048576"/><row><c><v>1</v></c></row>';
  expect(() => readXlsx(oneSheet([[{ raw: `</row>${after}<row r="1">` }]]))).toThrow("holds the row after the last");
});

test.each<[string, string, string]>([
  ["without a quote", `x${"0".repeat(1_100_000)}`, "the record that begins in line 3 is longer than a million characters"],
  ["with a quote that is open", `"${"0".repeat(1_100_000)}`, "in line 3 a quote is opened and never closed"],
])("a record of more than a million characters %s ends the file in a sentence that is true", async (_, record, why) => {
  const read = await check(`value,upper\n1,2\n${record},2\n4,2\n`);
  expect([read.rowsIn, read.unread]).toEqual([1, `breaks off: ${why}, so nothing from there on can be read`]);
});

test("a number in a formula beyond what a sheet can hold is an error, also as text", () => {
  expect(["=1e400", '="1e308"+0', '="5e-324"+0'].map((formula) => evaluateFormula(formula))).toEqual([{ error: "#NUM!" }, { error: "#VALUE!" }, 0]);
});

test("a number that is next to nothing is not 0, and a sum of decimals is that decimal, to the sheet as to Check", () => {
  const formulas = ["0=1e-300", "73.02+0.02=73.04", "0.5-0.4-0.1=0", "0.1+0.2<=0.3"];
  expect(valuesOf([formulas.map((f) => ({ f }))])).toEqual([[false, true, false, true]]);
  expect(formulas.map((formula) => evaluateFormula(`=${formula}`))).toEqual([false, true, false, true]);
});

test("text that reads as an error's code is that error to the sheet, never a value, and text to Check", () => {
  const cells = [{ f: '"#REF!"&1' }, { f: '"x"&"#REF!"' }, { f: 'HATCH.TAPER({73.02,73.01},"#REF!")' }];
  expect(valuesOf([cells])).toEqual([[{ error: "#REF!" }, { error: "#REF!" }, expect.objectContaining({ error: "#VALUE!" })]]);
  expect(evaluateFormula('="#REF!"&1')).toBe("#REF!1");
});

const valuesOf = (cells: CellXml[][]) => calculate(readXlsx(oneSheet(cells))).sheets[0]!.values;
const CIRCLE = { error: "#REF!", message: "This formula depends on itself." };
const array = (f: string, ref: string): CellXml => ({ f, attributes: ` t="array" ref="${ref}"` });
const spilling = (f: string, ref: string): CellXml => ({ f, attributes: ` t="array" ref="${ref}"`, cell: ' cm="1"' });

describe("no formula of a circle passes over the error of the others and shows a number", () => {
  test.each<[string, CellXml[][], unknown[][]]>([
    ["an array formula", [[array("IFERROR(B1,7)", "A1"), { f: "A1*2" }]], [[CIRCLE, CIRCLE]]],
    [
      "one over several cells, of which the second is read",
      [[array("IFERROR(B1,7)", "A1:A2"), { f: "A2+1" }], []],
      [
        [CIRCLE, CIRCLE],
        [CIRCLE, null],
      ],
    ],
    [
      "a count over a range that holds itself, on a sheet where a result finds no room",
      [
        [spilling("SEQUENCE(2)", "A1"), spilling("COUNTBLANK(HATCH.TAPER(B1:C2))", "B1"), { f: "B1+1" }],
        ["in the way", 73.01, 73.02],
      ],
      [
        [expect.objectContaining({ error: "#SPILL!" }), CIRCLE, expect.anything()],
        ["in the way", 73.01, 73.02],
      ],
    ],
    ["two circles with a formula in common", [[{ f: "IFERROR(B1,1)" }, { f: "A1+C1" }, { f: "IFERROR(B1,2)" }]], [[CIRCLE, CIRCLE, CIRCLE]]],
    ["by way of a cell that is named in text", [[{ f: 'IFERROR(INDIRECT("B"&1),7)' }, { f: "IFERROR(A1*2,8)" }]], [[CIRCLE, CIRCLE]]],
    ["a result that spills into what it is worked out from", [[spilling("A2:A3+1", "A1:A2")], [], [4]], [[CIRCLE], [CIRCLE], [4]]],
  ])("%s", (_, cells, values) => {
    expect(valuesOf(cells)).toEqual(values);
  });

  test("where a cell stands rests on nothing in it", () => {
    expect(valuesOf([[1, { f: "ROW(B1)+COLUMN(B1)" }]])).toEqual([[1, 3]]);
    expect(valuesOf([[{ f: "SUM(ROW(A1:A3))" }]])).toEqual([[6]]);
    expect(valuesOf([[1], [2], [{ f: "SUM(OFFSET(A3,-2,0,2,1))" }]])).toEqual([[1], [2], [3]]);
    expect(valuesOf([[{ f: "IFERROR(OFFSET(A1,0,0),7)" }]])).toEqual([[CIRCLE]]);
  });
});
