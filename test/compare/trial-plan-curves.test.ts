import { planTrial, type TrialPlan } from "../../src/compare/trial-plan.ts";
import { plannedCurves } from "../../src/compare/trial-plan-curves.ts";
import { readPlan } from "../../src/compare/trial-plan-fields.ts";

const PLAN: TrialPlan = {
  ...{ uncertainty: 0.004, common: 0, masters: 0, repeats: 2, places: 6, cylinders: 3, characteristics: 5, engines: 3, spread: 0.005, matters: 0.01 },
};

test("every point of a curve is what the plan with that number says, and more of anything sees no less", () => {
  const curves = plannedCurves(PLAN);
  expect(curves.map(({ of, level, now }) => [of, level, now])).toEqual([
    ["repeats", "mean", 2],
    ["places", "mean", 6],
    ["engines", "group", 3],
  ]);
  for (const { of, level, points } of curves) {
    for (const { n, eighty, ninety } of [points[0]!, points.at(-1)!])
      expect(planTrial({ ...PLAN, [of]: n }).lines.find((line) => line.level === level)!.seen).toEqual([eighty, ninety]);
    for (const [i, point] of points.entries()) {
      expect(point.eighty).toBeLessThan(point.ninety);
      if (i > 0) expect(point.ninety).toBeLessThanOrEqual(points[i - 1]!.ninety);
    }
  }
});

// The mean of n readings has u/√n (JCGM 100:2008, 4.2.3), and nothing is common here.
test("four times the repeats see half", () => {
  const { points } = plannedCurves({ ...PLAN, spread: undefined })[0]!;
  const of = (n: number) => points.find((point) => point.n === n)!.ninety;
  expect(of(4) / of(1)).toBeCloseTo(0.5, 9);
});

test("without a spread from engine to engine there is no curve of engines, and a plan beyond the usual is on its curve", () => {
  expect(plannedCurves({ ...PLAN, spread: undefined }).map(({ of }) => of)).toEqual(["repeats", "places"]);
  const [repeats] = plannedCurves({ ...PLAN, spread: undefined, repeats: 40 });
  expect(repeats!.points.map(({ n }) => n)).toContain(40);
  expect(repeats!.points.length).toBeLessThanOrEqual(13);
});

describe("what was typed", () => {
  test("blank is what is usual, and U is wanted", () => {
    expect(readPlan({ uncertainty: " 0.004 ", places: "6" })).toEqual({
      plan: { ...PLAN, repeats: 1, cylinders: 1, characteristics: 1, engines: 1, spread: undefined, matters: undefined },
    });
    expect(readPlan({})).toEqual({ faults: [{ field: "uncertainty", given: undefined, why: "is not given: type U of one reading, such as 0.004" }] });
  });

  test("every field that cannot be is named at once, with what was given and what is wanted", () => {
    expect(readPlan({ uncertainty: "0,004", repeats: "0", cylinders: "17", spread: "0" })).toEqual({
      faults: [
        { field: "uncertainty", given: "0,004", why: "is no number above 0" },
        { field: "repeats", given: "0", why: "is no whole number from 1 to 1000" },
        { field: "cylinders", given: "17", why: "is no whole number from 1 to 16" },
        { field: "spread", given: "0", why: "is no number above 0" },
      ],
    });
    expect(readPlan({ uncertainty: "0.004", common: "0.005" })).toMatchObject({ faults: [{ field: "common", given: "0.005" }] });
    expect("plan" in readPlan({ uncertainty: "0.004", common: "0" })).toBe(true);
  });
});
