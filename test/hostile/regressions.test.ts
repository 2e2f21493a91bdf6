import { checkCsv } from "../../src/buildsheet/csv.ts";
import { evaluateFormula } from "../../src/buildsheet/formula/evaluate.ts";
import { TELLS } from "../../src/buildsheet/layout/mapping.ts";
import { saysOf } from "../../src/buildsheet/layout/says.ts";
import { readXlsx } from "../../src/sheet/xlsx/read.ts";
import { oneSheet } from "../sheet/xlsx/workbook-bytes.ts";

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
    ["mixed units", `the unit says mm where the like readings are in ${unit.toLowerCase()}`],
  ]);
  expect(saysOf(`Bore (${unit})`, TELLS).unit).toBeUndefined();
});

test("a number beyond what a sheet can hold is refused, one too near to nothing is 0", () => {
  const cell = (number: string) => readXlsx(oneSheet([[{ raw: `<c r="A1"><v>${number}</v></c>` }]])).sheets[0]!.cells[0]!.value;
  expect(() => cell("1e308")).toThrow('holds the number "1e308"');
  expect(() => cell("-1e309")).toThrow('holds the number "-1e309"');
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
