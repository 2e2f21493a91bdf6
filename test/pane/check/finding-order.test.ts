import type { Finding } from "../../../src/check/finding.ts";
import { orderedFindings, orderFrom, sameFinding } from "../../../src/pane/check/check-findings.tsx";

const finding = (sheet: string, row: number, column: number, margin: number | null, given: Partial<Finding> = {}): Finding => ({
  kind: "near limit",
  cell: { sheet, row, column },
  label: "",
  value: null,
  lower: null,
  upper: null,
  margin,
  verdict: null,
  details: {},
  sentence: "",
  ...given,
});

const A = finding("Rings", 1, 4, -0.07);
const B = finding("Bores", 9, 2, null);
const C = finding("Bores", 1, 7, 0.002);
const D = finding("Bores", 1, 2, -0.012);
const E = finding("Engine", 1, 2, null, { kind: "calibration overdue" });
const GIVEN = [A, B, C, D, E];

test("worst first is as the check gives them", () => {
  expect(orderedFindings(GIVEN, "worst first", ["Bores", "Rings"])).toEqual(GIVEN);
});

test("by place follows the sheets of the workbook, then rows, then columns; a sheet that is not there comes last", () => {
  expect(orderedFindings(GIVEN, "by place", ["Rings", "Bores"])).toEqual([A, D, C, B, E]);
});

test("by margin begins with the least; what has none comes behind in the order of the check", () => {
  expect(orderedFindings(GIVEN, "by margin", [])).toEqual([A, D, C, B, E]);
});

test("an order that is not known is none", () => {
  expect([orderFrom("by margin"), orderFrom("by colour"), orderFrom(3)]).toEqual(["by margin", undefined, undefined]);
});

test("a finding is found again by its kind, its cell and what it is of, whatever its numbers are now", () => {
  expect(sameFinding(C, { ...finding("Bores", 1, 7, 0.001), value: 3 })).toBe(true);
  expect([sameFinding(C, D), sameFinding(C, { ...C, kind: "not proven" }), sameFinding(C, { ...C, label: "taper" })]).toEqual([false, false, false]);
});
