import { compareReadings } from "../../src/compare/compare.ts";
import { pairedChange } from "../../src/functions/wear/paired-change.ts";
import { ask } from "../functions/ask.ts";
import { compare, reading, set } from "./stand.ts";

const cylinders = (values: readonly number[], more: object = {}) => values.map((value, at) => reading(value, { cylinder: `${at + 1}`, ...more }));

describe("the same cylinders before and after are pairs", () => {
  const BEFORE = [73.01, 73.02, 73.03];
  const AFTER = [73.021, 73.033, 73.042];

  // Of two unpaired groups the sizes' own spread of 0.01 would hide a mean change of 0.012.
  test("what all have changed by is seen through the differences between cylinders", () => {
    const [mean] = compare(cylinders(BEFORE), cylinders(AFTER)).means;
    expect(mean).toMatchObject({ verdict: "differs", n: 3, cylinders: 3, difference: 0.012 });
    expect(mean!.says).toBe(
      "0.0120 larger on average over 3 places: differs, beyond what the measuring explains (0.0077 to 0.0163 by the scatter; the scatter is poorly known)",
    );
  });

  test.each([
    ["not split", undefined, undefined],
    ["none of it common", 0, "none"],
    ["a part of it common", 0.002, 0.002],
  ])("by the numbers of PAIREDCHANGE, U %s", (_, common, typed) => {
    const [mean] = compare(cylinders(BEFORE, { common }), cylinders(AFTER, { common })).means;
    const [, row] = ask(pairedChange, [BEFORE], [AFTER], 0.003, undefined, undefined, typed) as (number | string)[][];
    const [change, lower, upper, , degreesOfFreedom, p, by] = row!;
    expect([mean!.difference, mean!.by]).toEqual([change, by]);
    expect([mean!.lower, mean!.upper, mean!.p, mean!.degreesOfFreedom ?? ""].map(Number)).toEqual(
      [lower, upper, p, degreesOfFreedom].map((value) => expect.closeTo(Number(value), 8)),
    );
  });

  test("places of each cylinder are pairs too", () => {
    const at = (position: string, values: readonly number[]) => cylinders(values, { position });
    const [mean, ...others] = compare([...at("top", BEFORE), ...at("bottom", BEFORE)], [...at("top", AFTER), ...at("bottom", BEFORE)]).means;
    expect(others).toEqual([]);
    expect(mean).toMatchObject({ n: 6, cylinders: 3, difference: 0.006 });
  });

  test("only places that both sides have count", () => {
    const { means } = compare([...cylinders([73, 73.01]), reading(99, { position: "middle" })], cylinders([73.02, 73.04]));
    expect(means[0]).toMatchObject({ n: 2, difference: 0.025 });
  });
});

describe("what is another characteristic has a mean of its own", () => {
  const both = (characteristic: string, places: readonly string[]) => (grown: number) =>
    places.flatMap((position, i) =>
      cylinders([0.3, 0.31], { characteristic, position, uncertainty: 0.02 }).map((one) => ({ ...one, value: one.value! + grown * i })),
    );

  test.each([
    ["ring end gap", ["top ring", "second ring", "oil ring"], ["oil ring end gap", "second ring end gap", "top ring end gap"]],
    ["valve clearance", ["inlet", "exhaust"], ["exhaust valve clearance", "inlet valve clearance"]],
    ["Clearance", ["Inlet 1", "Exhaust"], ["exhaust clearance", "inlet clearance"]],
  ])("%s at %p", (characteristic, places, names) => {
    const at = both(characteristic, places);
    const { means } = compare(at(0), at(0.04));
    expect(means.map(({ characteristic: name }) => name).sort()).toEqual(names);
    expect(means.every(({ n }) => n === 2)).toBe(true);
  });
});

describe("a gauge set anew", () => {
  // All of a gauge that is not split may be its setting: what moved every reading alike and no further than U explains nothing.
  test.each([0.001, 0.003, 0.0042])("every bore %p larger, inside what the setting explains, is no difference however many there are", (moved) => {
    const many = Array.from({ length: 24 }, (_, i) => 73 + i / 1000);
    const { means, headline } = compare(cylinders(many), cylinders(many.map((size) => size + moved)));
    expect(means[0]!.verdict).toBe("cannot tell");
    expect(headline).toBe("None of 24 lies beyond its own gauge; about 1 would by chance.");
  });

  test("a common part that was typed is not divided, the own part is", () => {
    const many = Array.from({ length: 25 }, (_, i) => 73 + i / 1000);
    const [mean] = compare(cylinders(many, { uncertainty: 0.005, common: 0.003 }), cylinders(many, { uncertainty: 0.005, common: 0.003 })).means;
    // By hand: 2 × (0.004² ÷ 25 + 0.003²).
    expect(mean!.uncertainty).toBeCloseTo(Math.sqrt(2 * (0.004 ** 2 / 25 + 0.003 ** 2)), 9);
    expect(mean!.commonUncertainty).toBeCloseTo(0.003 * Math.SQRT2, 9);
  });
});

test("readings without an uncertainty are left out of a mean; where none has one nobody can tell", () => {
  const bare = { uncertainty: undefined };
  const some = compare(
    [...cylinders([73, 73.01]), reading(73, { cylinder: "3", ...bare })],
    [...cylinders([73.02, 73.03]), reading(73.5, { cylinder: "3", ...bare })],
  );
  expect(some.means[0]).toMatchObject({ n: 2, without: 1, difference: 0.02 });
  expect(some.means[0]!.says).toContain("over 2 places, 1 without an uncertainty left out");
  const none = compare(cylinders([73, 73.01], bare), cylinders([73.02, 73.03], bare));
  expect(none.means[0]).toMatchObject({ verdict: "cannot tell", p: null, difference: 0.02 });
});

test("places that name no cylinder are taken together too, and one place is no mean", () => {
  const nameless = (value: number, position: string) => reading(value, { cylinder: "", position });
  expect(compare([nameless(73, "top"), nameless(73.01, "bottom")], [nameless(73.1, "top"), nameless(73.12, "bottom")]).means).toMatchObject([{ n: 2 }]);
  expect(compare([reading(73)], [reading(73.1)]).means).toEqual([]);
});

describe("families", () => {
  const spread = (count: number, grown: (i: number) => number) => {
    const side = (moved: boolean) =>
      Array.from({ length: count }, (_, i) => reading(73 + (moved ? grown(i) : 0), { cylinder: `${(i % 4) + 1}`, position: `place ${i}` }));
    return compareReadings(set("build", side(false)), set("strip-down", side(true)));
  };

  // Holm (1979) by hand: p = 2(1 − Φ(z)) with u of the change 0.00212; 0.005 is z 2.357 and p 0.0184, 0.009 z 4.243 and p 0.000022.
  test("a line beyond its own gauge may be chance among many: it must hold after Holm as well", () => {
    const { places, headline, counts } = spread(64, (i) => (i < 6 ? 0.005 : i < 8 ? 0.009 : 0));
    expect(headline).toBe("8 of 64 lie beyond their own gauge; about 3 would by chance; 2 remain.");
    expect(counts.places).toMatchObject({ lines: 64, judged: 64, beyondGauge: 8, differs: 2, sameWithin: 0, cannotTell: 62 });
    expect(places.slice(0, 3).map(({ verdict }) => verdict)).toEqual(["differs", "differs", "cannot tell"]);
    expect(places[0]!.pAdjusted).toBeCloseTo(64 * 0.0000221, 4);
    expect(places[2]!.says).toBe(
      "0.005 larger, which is worse: beyond its gauge (0.0042), but among 64 that may be chance: cannot tell, up to 0.0085 may hide",
    );
  });

  test("alone the same line differs", () => {
    expect(spread(1, () => 0.005).places[0]!.verdict).toBe("differs");
  });
});
