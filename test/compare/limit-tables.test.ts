import { compareReadings } from "../../src/compare/compare.ts";
import { readingsOfWorkbook } from "../../src/compare/from-workbook.ts";
import { type Typed, workbook } from "../check/workbook.ts";

const READINGS: Typed = [
  ["Campaign", "Cylinder", "Characteristic", "Value", "Unit", "U", "Hours", "Day"],
  ["before", 1, "liner", 73, "mm", 0.002, 0, 46095],
  ["after", 1, "liner", 73.03, "mm", 0.002, 500, 46298],
];
const limits = (...rows: Typed): Typed => [["Characteristic", "Lower", "Upper", "Matters", "Unit", "Direction of wear"], ...rows];
const read = (table: Typed, readings = READINGS) => readingsOfWorkbook(workbook({ Limits: table, Readings: readings }));

test("a table of limits gives rows that say none what they may be, what matters and the way of wear", () => {
  const set = read(limits(["Liner", 72.9, 73.09, 0.01, "mm", "larger"]));
  expect(set.readings).toHaveLength(2);
  for (const one of set.readings) expect(one).toMatchObject({ lower: 72.9, upper: 73.09, matters: 0.01, wears: "larger" });
  const { places, wear } = compareReadings(set, undefined);
  expect(places).toMatchObject([{ direction: "worse", matters: 0.01 }]);
  // 0.03 in 500 h, so another 0.06 takes 1000 h more.
  expect(wear[0]).toMatchObject({ limit: 73.09 });
  expect(wear[0]!.life).toBeCloseTo(1500, 6);
});

test("a least and a most without what matters may be what was measured, and judge nothing", () => {
  const summary: Typed = [
    ["Characteristic", "Min", "Max"],
    ["Liner", 73, 73.03],
  ];
  expect(read(summary).readings.map(({ lower, upper }) => [lower, upper])).toEqual([
    [undefined, undefined],
    [undefined, undefined],
  ]);
});

test("a row's own limits go before them, on both sides", () => {
  const own: Typed = READINGS.map((row, i) => [...row, i === 0 ? "Upper" : 73.05]);
  expect(read(limits(["Liner", 72.9, 73.09, 0.01, "mm", null]), own).readings.map(({ lower, upper }) => [lower, upper])).toEqual([
    [undefined, 73.05],
    [undefined, 73.05],
  ]);
});

test("limits in another unit are left out, and it is said once", () => {
  const set = read(limits(["Liner", 2.87, 2.8775, 0.0004, "in", null]));
  for (const one of set.readings) expect([one.lower, one.upper, one.matters]).toEqual([undefined, undefined, undefined]);
  expect(set.notes).toEqual([expect.stringMatching(/^the limits of .*liner.* are in inches and its readings in mm: they are left out$/)]);
});

test("a day that a sheet keeps as a number is told as a day", () => {
  // 46095 days after 30 December 1899 (ISO 8601: 2026-03-14).
  expect(read(limits()).readings.map(({ day }) => day)).toEqual(["2026-03-14", "2026-10-03"]);
});
