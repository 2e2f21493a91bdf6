import { at, findingsOf } from "./stand.ts";

// A third of the tolerance is common practice (shops ask for a tenth to a third); numbers are invented.

const LIMITS = [
  ["Characteristic", "Lower", "Upper", "U"],
  ["Clearance", 0.02, 0.035, null],
];
const judged = (u: number | null, values: number[]) => ({
  Limits: [LIMITS[0]!, ["Clearance", 0.02, 0.035, u]],
  Pistons: [["Cylinder", "Clearance", "Verdict"], ...values.map((value, i) => [i + 1, value, `=HATCH.VERDICT(B${i + 2},Limits!$B$2,Limits!$C$2,Limits!$D$2)`])],
});
const coarse = (sheets: Parameters<typeof findingsOf>[1]) => findingsOf("coarse gauge", sheets);

test("an uncertainty of more than a third of the tolerance is found once for its readings, with what would do", () => {
  const found = coarse(judged(0.006, [0.027, 0.028, 0.026]));
  expect(found).toEqual([
    {
      kind: "coarse gauge",
      cell: { sheet: "Pistons", row: 1, column: 1 },
      label: "Cylinder 1, Clearance",
      value: 0.027,
      lower: 0.02,
      upper: 0.035,
      margin: 0.007,
      verdict: "within",
      details: { uncertainty: 0.006, tolerance: 0.015, largestUncertainty: 0.005, readings: 3 },
      sentence:
        "the uncertainty 0.006 is more than a third of the tolerance 0.015 between 0.02 and 0.035, here and for 2 more readings: measure with a gauge whose U is at most 0.005",
    },
  ]);
});

test("exactly a third is none, also where binary fractions make it more", () => {
  // 0.035 − 0.02 comes to 0.015000000000000003, three times 0.005 to 0.015.
  expect(coarse(judged(0.005, [0.027]))).toEqual([]);
  // 0.3 − 0.0 and three times 0.1, which comes to 0.30000000000000004.
  expect(coarse({ S: [["x", "v"], [0.15, "=HATCH.VERDICT(A2,B5,B6,B7)"], [null], [null], ["l", -0.1], ["u", 0.2], ["U", 0.1]] })).toEqual([]);
});

test("without an uncertainty or with one limit alone there is nothing to say", () => {
  expect(coarse(judged(null, [0.027]))).toEqual([]);
  expect(coarse({ S: [["x"], [0.01, "=HATCH.VERDICT(A2,,B5,B6)"], [null], [null], ["upper", 0.02], ["U", 0.02]] })).toEqual([]);
});

test("what would do is rounded down, so that it does", () => {
  const [finding] = coarse({ S: [["x"], [0.01, "=HATCH.VERDICT(A2,B5,B6,B7)"], [null], [null], ["lower", 0], ["upper", 0.02], ["U", 0.01]] });
  expect(finding!.details).toEqual({ uncertainty: 0.01, tolerance: 0.02, largestUncertainty: 0.006666, readings: 1 });
});

describe("a table of readings that names the gauge of each", () => {
  const table = (unit: string, gauge = "BG-1") => ({
    Gauges: [
      ["Gauge id", "U of the gauge", "Unit", "Calibration due"],
      ["BG-1", 0.006, "mm", 47000],
    ],
    Readings: [
      ["Cylinder", "Characteristic", "Value", "Lower", "Upper", "Unit", "Gauge"],
      [1, "Clearance", 0.027, 0.02, 0.035, unit, gauge],
      [2, "Clearance", 0.028, 0.02, 0.035, unit, gauge],
    ],
  });

  test("takes the uncertainty from the table of gauges", () => {
    const found = coarse(table("mm"));
    expect(found.map(({ cell, details, label }) => [at(cell), details.uncertainty, label])).toEqual([["Readings!C2", 0.006, "cylinder 1, Clearance"]]);
    expect(found[0]!.sentence).toContain("here and for 1 more reading");
  });

  test("does not where units differ or the gauge is not in it", () => {
    expect([...coarse(table("in")), ...coarse(table("mm", "M-9"))]).toEqual([]);
  });

  test("does not where two rows of the gauge disagree", () => {
    const sheets = table("mm");
    sheets.Gauges.push(["BG-1", 0.001, "mm", 47000]);
    expect(coarse(sheets)).toEqual([]);
  });
});
