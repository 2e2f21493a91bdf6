import { checkWorkbook } from "../../src/check/check-workbook.ts";
import type { JudgedRow } from "../../src/check/finding.ts";
import { placeName } from "../../src/workbook/address.ts";
import { type Typed, workbook } from "./workbook.ts";

function check(rows: Typed) {
  const judged: JudgedRow[] = [];
  const result = checkWorkbook(workbook({ Tests: rows }), undefined, (row) => judged.push(row));
  return { ...result, judged };
}
const test4 = (formula: string, pressures: (number | null)[] = [150, 148, 152, 118]): Typed => [
  ["Cylinder", "Dry", "Verdict"],
  ...pressures.map((pressure, i) => [`No. ${i + 1}`, pressure, i === 0 ? formula : null]),
];

// 152 − 10 = 142: TM 10-3930-618-20.
test("what the sheet says of a cylinder by its rule Check says too, with the rule beside its name", () => {
  const { findings, rowsIn, checked, judged } = check(test4('=HATCH.COMPRESSIONCHECK(B2:B5,"difference",10)'));
  expect([rowsIn, checked]).toEqual([4, 4]);
  expect(findings.map(({ kind, cell, label, lower, sentence }) => [kind, placeName(cell), label, lower, sentence])).toEqual([
    ["outside limit", "Tests!B5", "No. 4, Dry, difference rule", 142, "118 is under the lower limit 142 by 24"],
  ]);
  expect(judged.map(({ verdict }) => verdict)).toEqual(["within", "within", "within", "under"]);
});

test("a rule that every cylinder is asked for in a cell of its own judges each of them once", () => {
  const rows = [150, 148, 152, 118].map((pressure, i) => [`No. ${i + 1}`, pressure, `=INDEX(HATCH.COMPRESSIONCHECK(B$2:B$5,"share",0.8),${i + 1})`]);
  const { findings, rowsIn } = check([["Cylinder", "Dry", "Verdict"], ...rows]);
  expect(rowsIn).toBe(4);
  expect(findings.map(({ value, lower }) => [value, lower])).toEqual([[118, 121.6]]);
});

test("a reading is judged by its own limits and by the rule, each by itself", () => {
  const rows: Typed = [
    ["Cylinder", "Dry", "By the rule", "Verdict", "Lower"],
    ["No. 1", 150, '=HATCH.COMPRESSIONCHECK(B2:B3,"share",0.75)', "=HATCH.VERDICT(B2,E$2)", 130],
    ["No. 2", 120, null, "=HATCH.VERDICT(B3,E$2)"],
  ];
  const { findings, rowsIn } = check(rows);
  expect(rowsIn).toBe(4);
  expect(findings.map(({ label, sentence }) => [label, sentence])).toEqual([["No. 2, Dry", "120 is under the lower limit 130 by 10"]]);
});

test("a dead cylinder is judged, one not tested yet is not", () => {
  const { findings, rowsIn } = check(test4('=HATCH.COMPRESSIONCHECK(B2:B5,"share",0.75)', [150, 0, null, 140]));
  expect(rowsIn).toBe(3);
  expect(findings.map(({ value, verdict }) => [value, verdict])).toEqual([[0, "under"]]);
});

test.each([
  ['=HATCH.COMPRESSIONCHECK(B2:B5,"share",10)', "limit 10"],
  ['=HATCH.COMPRESSIONCHECK(B2:B5,"least",10)', 'rule "least"'],
])("%s judges nothing, and its fault is told once", (formula, why) => {
  const { findings, rowsIn, refused } = check(test4(formula));
  expect([rowsIn, refused]).toEqual([1, 1]);
  expect(findings.map(({ kind, sentence }) => [kind, sentence.includes(why)])).toEqual([["refused", true]]);
});

test("until a second cylinder is measured, or a rule is typed, nothing is judged", () => {
  for (const rows of [test4('=HATCH.COMPRESSIONCHECK(B2:B5,"share",0.75)', [150, null, null, null]), test4("=HATCH.COMPRESSIONCHECK(B2:B5,D1,D2)")])
    expect(check(rows).rowsIn).toBe(0);
});

test("a wet test points at parts and judges nothing by itself", () => {
  const rows: Typed = [
    ["Cylinder", "Dry", "Wet"],
    ...[150, 90].map((pressure, i) => [`No. ${i + 1}`, pressure, pressure + 30]),
    [null, null, null, "=HATCH.WETTEST(B2:B3,C2:C3)"],
  ];
  expect(check(rows).rowsIn).toBe(0);
});
