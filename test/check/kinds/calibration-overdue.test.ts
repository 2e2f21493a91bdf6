import { foundIn, shown } from "./declared.ts";

// 46102 is 2026-03-21 in any spreadsheet's calendar. That a gauge serves until the end of the day on which it is due is common practice.
const uses = (...days: number[]) => ({
  Gauges: [
    ["Gauge", "Calibration due"],
    ["BG-1", 46102],
  ],
  Bores: [["Cylinder", "Gauge", "Measured on"], ...days.map((day, i) => [i + 1, "BG-1", day])],
});

test("a gauge past its date: the days have fields of their own, and there is no reading, limit or margin", () => {
  const found = foundIn("calibration overdue", uses(46114));
  expect(found).toEqual([
    {
      kind: "calibration overdue",
      cell: { sheet: "Bores", row: 1, column: 2 },
      label: "Cylinder 1, BG-1, Measured on",
      ...{ value: null, lower: null, upper: null, margin: null, verdict: null },
      details: { gauge: "BG-1", usedOn: "2026-04-02", due: "2026-03-21", daysPast: 12, uses: 1 },
      sentence: "BG-1 was used on 2026-04-02, 12 days past its calibration date 2026-03-21: have it calibrated, and measure again with a gauge that is in date",
    },
  ]);
  expect(shown(found[0]!)).toEqual(["calibration overdue", "doubt"]);
});

test("one day is one day, and several uses on it are told once", () => {
  const [finding] = foundIn("calibration overdue", uses(46103, 46103, 46102));
  expect(finding!.details).toMatchObject({ daysPast: 1, uses: 2 });
  expect(finding!.sentence).toMatch(/^BG-1 was used on 2026-03-22, 1 day past its calibration date 2026-03-21, here and in 1 more place on the sheet: /);
});
