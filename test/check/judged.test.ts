import { Readable } from "node:stream";
import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { checkCsv } from "../../src/check/csv/check-csv.ts";
import { JudgedRows } from "../../src/check/finding.ts";
import { workbook } from "./workbook.ts";

// Readings and limits are invented.
const CSV = [
  "characteristic,value,lower,upper,uncertainty,near",
  "bore,73.02,73,73.08,0.003,",
  "bore,73.09,73,73.08,0.003,",
  "gap,0.3,0.25,0.55,,0.06",
  "gap,,0.25,0.55,,",
].join("\n");

test("every verdict on a sheet is told, with its limits, uncertainty and near, also where nothing is found", () => {
  const judged = new JudgedRows();
  const book = workbook({
    Bores: [
      ["Cylinder", "Taper", "Verdict"],
      ["1", 0.01, "=HATCH.VERDICT(B2, , 0.02)"],
      ["2", 0.025, "=HATCH.VERDICT(B3, , 0.02, 0.002)"],
      ["3", 0.019, "=HATCH.VERDICT(B4, , 0.02, , 0.002)"],
      ["4", null, "=HATCH.VERDICT(B5, , 0.02)"],
    ],
  });
  const result = checkWorkbook(book, undefined, judged.take);
  expect(judged.rows.map(({ value, upper, margin, verdict, uncertainty, near }) => [value, upper, margin, verdict, uncertainty, near])).toEqual([
    [0.01, 0.02, 0.01, "within", 0, 0],
    [0.025, 0.02, -0.005, "over", 0.002, 0],
    [0.019, 0.02, 0.001, "near limit", 0, 0.002],
  ]);
  expect(judged.counts).toEqual({ within: 1, "near limit": 1, "not proven": 0, over: 1, under: 0 });
  expect(result).toEqual(checkWorkbook(book));
});

test("so is every verdict on readings in long form, and the result is the same as without", async () => {
  const judged = new JudgedRows();
  const result = await checkCsv(Readable.from([Buffer.from(CSV)]), { name: "r.csv", judged: judged.take });
  expect(judged.rows.map(({ label, line, value, verdict, uncertainty, near }) => [label, line, value, verdict, uncertainty, near])).toEqual([
    ["bore", 2, 73.02, "within", 0.003, 0],
    ["bore", 3, 73.09, "over", 0.003, 0],
    ["gap", 4, 0.3, "near limit", 0, 0.06],
  ]);
  expect(result).toEqual(await checkCsv(Readable.from([Buffer.from(CSV)]), { name: "r.csv" }));
});

test("more verdicts than are kept are counted", () => {
  const judged = new JudgedRows(1);
  const row = { cell: { sheet: "S", row: 0, column: 0 }, label: "", value: 1, lower: null, upper: 2, margin: 1, uncertainty: 0, near: 0, rule: null };
  for (const verdict of ["within", "over"] as const) judged.take({ ...row, verdict });
  expect([judged.rows.length, judged.counts.within, judged.counts.over]).toEqual([1, 1, 1]);
});
