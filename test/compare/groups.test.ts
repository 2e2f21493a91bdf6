import { compareReadings, compareTrial } from "../../src/compare/compare.ts";
import type { GroupDifference } from "../../src/compare/groups.ts";
import type { Reading } from "../../src/compare/readings.ts";
import { studentQuantile } from "../../src/math/distributions.ts";
import { SeededNormal } from "../helpers/normal.ts";
import { fromR } from "../reference/r-values.ts";
import { csv, reading, set } from "./stand.ts";

const U = 0.004;

interface Engine {
  engine: string;
  group: string;
  /** What each place has changed by. */
  changes: readonly number[];
}

/** Engines with the same places, before and after, and whatever a test cares for of the readings. */
function trial(engines: readonly Engine[], more: Partial<Reading> = {}) {
  const side = (at: 0 | 1): Reading[] =>
    engines.flatMap(({ engine, group, changes }) =>
      changes.map((change, i) => reading(73 + i / 10 + at * change, { engine, group, cylinder: `${i + 1}`, uncertainty: U, common: 0, ...more })),
    );
  return compareReadings(set("build", side(0)), set("strip-down", side(1)));
}

const only = ({ groups }: { groups: readonly GroupDifference[] }): GroupDifference => {
  expect(groups).toHaveLength(1);
  return groups[0]!;
};

describe("cited values", () => {
  // R's t.test on six and eight engines' mean changes (unequal variances), groups in change-and-wear.R. U is small beside them.
  test("two groups of engines by Welch, where the engines spread more than the gauge", () => {
    const one = [5.1, 2, 4.1, 6.2, 7.1, 8.3].map((mean) => mean / 100);
    const other = [1.5, 6.4, 3.3, 5.8, 4.8, 7.2, 5.6, 4.5].map((mean) => mean / 100);
    const engines = [
      ...one.map((mean, i) => ({ engine: `A${i}`, group: "plain", changes: [mean, mean] })),
      ...other.map((mean, i) => ({ engine: `B${i}`, group: "coated", changes: [mean, mean] })),
    ];
    const line = only(trial(engines, { uncertainty: 0.0001 }));
    const [difference, lower, upper, , degreesOfFreedom, p] = fromR("groups") as [number, number, number, number, number, number];
    // R has the first group less the second, in hundredths.
    expect(line.difference).toBeCloseTo(-difference / 100, 8);
    expect(line.lower).toBeCloseTo(-upper / 100, 7);
    expect(line.upper).toBeCloseTo(-lower / 100, 7);
    expect(line.degreesOfFreedom).toBeCloseTo(degreesOfFreedom, 5);
    expect(line.p).toBeCloseTo(p, 7);
    expect(line).toMatchObject({ family: "groups", level: "group", by: "scatter", verdict: "cannot tell", engines: [6, 8], groups: ["plain", "coated"] });
  });

  // By hand: the own part of a change has the variance 2 × 0.002², an engine's mean of three a third of that, a group's of two half of it.
  test("engines that are alike by chance are no better known than their gauge", () => {
    const engines = ["A", "B", "C", "D"].map((engine, i) => ({ engine, group: i < 2 ? "plain" : "coated", changes: [0.01, 0.01, 0.01] }));
    const line = only(trial(engines));
    expect(line).toMatchObject({ difference: 0, by: "gauge", p: 1, verdict: "cannot tell" });
    expect(line.uncertainty).toBeCloseTo(2 * Math.sqrt(2 * ((2 * 0.002 ** 2) / 3 / 2)), 8);
  });
});

describe("the engine is the unit", () => {
  const pair = (a: number, b: number) => [
    { engine: "A", group: "plain", changes: [a, a, a] },
    { engine: "B", group: "coated", changes: [b, b, b] },
  ];

  test("one engine in a group: the engines are judged, the ways of treatment never, and it is said", () => {
    const comparison = trial(pair(0.01, 0.05));
    expect(comparison.meanDifferences[0]!.verdict).toBe("differs");
    expect(only(comparison)).toMatchObject({ verdict: "cannot tell", p: null, difference: 0.04 });
    expect(only(comparison).says).toBe("coated grew by 0.040 more, 1 engine against 1: cannot tell, as there is only one engine of plain and of coated");
    expect(comparison.notes).toContain(
      "only one engine of plain and of coated: the engines are judged, the ways of treatment cannot be told; two engines of each are the fewest, and few",
    );
  });

  test("however many places are measured, engines that spread say little", () => {
    const many = (mean: number) => Array.from({ length: 18 }, () => mean);
    const engines = [0.01, 0.03, 0.02, 0.045].map((mean, i) => ({ engine: `${i}`, group: i < 2 ? "plain" : "coated", changes: many(mean) }));
    const line = only(trial(engines));
    expect(line).toMatchObject({ by: "scatter", verdict: "cannot tell", places: 18 });
    expect(line.says).toContain("the scatter is poorly known");
    // Two engines each: t of at most 2 degrees of freedom.
    const deviation = Math.sqrt((0.01 * Math.SQRT2) ** 2 / 2 + (0.0125 * Math.SQRT2) ** 2 / 2);
    expect(line.upper! - line.lower!).toBeGreaterThan(2 * studentQuantile(0.95, 2) * deviation);
  });

  test("three groups are compared in all pairs, as one family", () => {
    const engines = ["plain", "coated", "plated"].flatMap((group, g) =>
      [0, 1, 2].map((i) => ({ engine: `${group} ${i}`, group, changes: [0.01 + g / 50 + i / 2000, 0.01 + g / 50 + i / 2000] })),
    );
    const { groups } = trial(engines);
    expect(groups.map((line) => line.groups.join(" ")).sort()).toEqual(["coated plated", "plain coated", "plain plated"]);
    const smallest = Math.min(...groups.map(({ p }) => p!));
    expect(Math.min(...groups.map(({ pAdjusted }) => pAdjusted!))).toBeCloseTo(3 * smallest, 12);
  });

  test("of the gauge's p and that of Welch the larger counts", () => {
    // Engines that agree far better than the gauge could see.
    const engines = [0.01, 0.0101, 0.0125, 0.0126].map((mean, i) => ({ engine: `${i}`, group: i < 2 ? "plain" : "coated", changes: [mean, mean] }));
    const line = only(trial(engines));
    expect(line.by).toBe("gauge");
    expect(line.p).toBeGreaterThan(0.05);
    expect(line.verdict).toBe("cannot tell");
  });
});

describe("what sessions share", () => {
  const four = [0.01, 0.0102, 0.0201, 0.0203].map((mean, i) => ({ engine: `${i}`, group: i < 2 ? "plain" : "coated", changes: [mean, mean, mean] }));

  test("cancels where both groups were measured in the same sessions, and not otherwise", () => {
    const typed = { uncertainty: 0.005, common: 0.003 };
    const together = only(trial(four, { ...typed, gauge: "BG-1", day: "2026-03-01" }));
    expect(together.commonUncertainty).toBe(0);
    const apart = only(trial(four, typed));
    // By hand: each engine's own sessions, common 0.0015 twice; of two engines half the variance, twice over for two groups.
    expect(apart.commonUncertainty).toBeCloseTo(2 * Math.sqrt((4 * 2 * 0.0015 ** 2) / 4), 8);
  });

  test("not split, it counts in the way that makes it count most", () => {
    const unsplit = only(trial(four, { common: undefined as never, gauge: "BG-1", day: "2026-03-01" }));
    const split = only(trial(four, { gauge: "BG-1", day: "2026-03-01" }));
    expect(unsplit.uncertainty).toBeCloseTo(split.uncertainty!, 9);
  });
});

describe("a trial whose rows do not fit is told so by name", () => {
  const sound = [
    { engine: "A", group: "plain", changes: [0.01, 0.01] },
    { engine: "B", group: "plain", changes: [0.011, 0.01] },
    { engine: "C", group: "coated", changes: [0.02, 0.02] },
    { engine: "D", group: "coated", changes: [0.021, 0.02] },
  ];

  test("an engine without a group, and one in two", () => {
    const { notes, groups } = trial([...sound, { engine: "E", group: "", changes: [0.03, 0.03] }]);
    expect(notes).toContain("engine E is in no group: left out of the groups");
    expect(groups[0]!.engines).toEqual([2, 2]);
    const twice = trial([...sound, { engine: "D", group: "plain", changes: [0.03, 0.03] }]);
    expect(twice.notes).toContain("engine D is in the groups coated and plain: left out of both");
  });

  test("places that not every engine has", () => {
    const { notes, groups } = trial([...sound.slice(0, 3), { engine: "D", group: "coated", changes: [0.021, 0.02, 0.02] }]);
    expect(notes).toContain("coated against plain: bore: 1 place left out, as not every engine has it");
    expect(groups[0]!.places).toBe(2);
  });

  test("groups are spelt alike", () => {
    const { groups } = trial(sound.map((engine, i) => ({ ...engine, group: i === 1 ? "PLAIN" : engine.group })));
    expect(groups[0]!.groups).toEqual(["plain", "coated"]);
  });
});

test("files that each hold a campaign or an engine are one trial", async () => {
  const rows = (engine: string, campaign: string, sizes: readonly number[]) =>
    [
      "group,engine,campaign,cylinder,characteristic,value,unit,U",
      ...sizes.map((size, i) => `${engine < "C" ? "plain" : "coated"},${engine},${campaign},${i + 1},bore,${size},mm,0.004`),
    ].join("\n");
  const files = await Promise.all(
    ["A", "B", "C", "D"].flatMap((engine) => [csv(rows(engine, "before", [73, 73.01])), csv(rows(engine, "after", [73.02, 73.03]))]),
  );
  const { places, groups, between } = compareTrial(files);
  expect(places).toHaveLength(8);
  expect(groups[0]!.engines).toEqual([2, 2]);
  expect(between).toBe("8 files, before against after");
  const { notes } = compareTrial(
    (await Promise.all([csv(rows("A", "before", [73])), csv(rows("A", "after", [73.02]))])).map((one) => ({
      ...one,
      readings: one.readings.map(({ group: _, ...rest }) => rest),
    })),
  );
  expect(notes[0]).toBe("no reading names the group of its engine, so engines are judged and ways of treatment are not");
});

test("of trials in which the ways of treatment do nothing, 5 in 100 at most find something, but for chance", () => {
  const random = new SeededNormal(1009);
  const runs = 400;
  let found = 0;
  for (let run = 0; run < runs; run++) {
    const engines = Array.from({ length: 6 }, (_, i) => {
      const own = random.normal(0.003);
      return { engine: `${i}`, group: i < 3 ? "plain" : "coated", changes: Array.from({ length: 4 }, () => own + random.normal(Math.SQRT2 * 0.002)) };
    });
    if (only(trial(engines)).verdict === "differs") found += 1 / runs;
  }
  expect(found).toBeLessThanOrEqual(0.05 + 2.576 * Math.sqrt((0.05 * 0.95) / runs));
});
