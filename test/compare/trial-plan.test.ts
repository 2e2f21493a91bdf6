import { neededText, plannedRow, planTrial, type TrialPlan } from "../../src/compare/trial-plan.ts";
import { fromR } from "../reference/r-values.ts";

const PLAN: TrialPlan = {
  ...{ uncertainty: 0.004, common: 0, masters: 0, repeats: 1, places: 1, cylinders: 1, characteristics: 1, engines: 2, spread: undefined, matters: undefined },
};
const seen = (plan: Partial<TrialPlan>, level: string) => planTrial({ ...PLAN, ...plan }).lines.find((line) => line.level === level)!;

describe("cited values", () => {
  // R's qnorm, 4 rows on the page: two engines in each of two groups, one place each.
  test("one place among its rows", () => {
    const z = fromR("z-rows")[1]!;
    const [z80, z90] = fromR("z-power") as [number, number];
    const u = Math.SQRT2 * 0.002;
    expect(seen({}, "place")).toMatchObject({ rows: 4, seen: [expect.closeTo((z + z80) * u, 10), expect.closeTo((z + z90) * u, 10)] });
  });

  // R's power.t.test, two-sample: one engine-sd at 90 % takes 23 in each group, two 7, three 4. U is small beside the spread.
  test("engines that a difference needs", () => {
    for (const [times, engines] of [
      [1, 23],
      [2, 7],
      [3, 4],
    ] as const) {
      expect(planTrial({ ...PLAN, uncertainty: 1e-6, spread: 0.01, matters: times * 0.01 }).needed![1]).toBe(engines);
    }
  });
});

test("a master that is read leaves its own readings in place of what is common", () => {
  const common = { uncertainty: 0.005, common: 0.003, places: 6, cylinders: 3 };
  const of = (plan: Partial<TrialPlan>) => seen({ ...common, ...plan }, "mean").seen![1];
  expect(of({ masters: 4 })).toBeLessThan(of({}));
  expect(of({ masters: 1 })).toBeGreaterThan(of({ masters: 4 }));
});

test("more of anything sees no less, and more characteristics no more", () => {
  const base: Partial<TrialPlan> = { places: 4, cylinders: 3, engines: 3, spread: 0.004 };
  const at = (plan: Partial<TrialPlan>, level: string) => seen({ ...base, ...plan }, level).seen![1];
  expect(at({ repeats: 3 }, "place")).toBeLessThan(at({}, "place"));
  expect(at({ places: 8 }, "mean")).toBeLessThan(at({}, "mean"));
  expect(at({ engines: 6 }, "group")).toBeLessThan(at({}, "group"));
  expect(at({ characteristics: 8 }, "group")).toBeGreaterThan(at({}, "group"));
  expect(at({ spread: 0.008 }, "group")).toBeGreaterThan(at({}, "group"));
});

test("one engine in a group sees nothing of the way of treatment, and it is said", () => {
  const line = seen({ engines: 1, spread: 0.004 }, "group");
  expect(line.seen).toBeNull();
  expect(plannedRow(line)).toEqual(["two groups of 1 engine, among 1", "–", "–", "one engine of each: the ways of treatment cannot be told"]);
});

test("a mean of two places is no better than one, and it is said", () => {
  expect(plannedRow(seen({ places: 2 }, "mean"))).toEqual([
    expect.stringMatching(/^mean of 2 places/),
    expect.any(String),
    expect.any(String),
    "no more than one place sees",
  ]);
});

test("what no number of engines would show is said", () => {
  expect(neededText(0.001, planTrial({ ...PLAN, spread: 1, matters: 0.0001 }).needed!)).toContain("takes more than 10000 engines in each");
});
