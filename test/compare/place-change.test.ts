import fc from "fast-check";
import { enOf } from "../../src/compare/compare.ts";
import { typedSizes } from "../../src/compare/typed-sizes.ts";
import { changeBetween, compare, reading } from "./stand.ts";

/** ISO/IEC 17043, statistical methods: En = (x − X) ÷ √(U² + U²); |En| ≤ 1 agrees. Written out anew here, in whole microns. */
const enByDefinition = (before: number, after: number, uBefore: number, uAfter: number): number => (after - before) / Math.sqrt(uBefore ** 2 + uAfter ** 2);

describe("cited values", () => {
  // 3-4-5 makes the uncertainty of the change 0.005 by hand; a change of just that agrees (ISO/IEC 17043: |En| ≤ 1).
  // p = 2(1 − Φ(|d| ÷ 0.0025)) by tables of the normal law; what may hide is |d| + 1.645 × 0.0025 (Schuirmann 1987).
  test.each([
    [73.025, 73.03, "cannot tell", 1, 0.0455, "0.005 larger, which is worse: cannot tell, up to 0.0091 may hide"],
    [73.025, 73.031, "differs", 1.2, 0.0164, "0.006 larger, which is worse: differs, beyond its gauge (0.005)"],
    [73.03, 73.02, "differs", -2, 0.000063, "0.01 smaller: differs, beyond its gauge (0.005)"],
    [73.02, 73.02, "cannot tell", 0, 1, "reads alike: cannot tell, up to 0.0041 may hide"],
  ])("%p to %p with U 0.003 and 0.004: %s", (before, after, verdict, en, p, says) => {
    const change = changeBetween(reading(before), reading(after, { uncertainty: 0.004 }));
    expect(change).toMatchObject({ verdict, says, uncertainty: 0.005, by: "gauge", degreesOfFreedom: null });
    expect([enOf(change), change.p]).toEqual([expect.closeTo(en, 9), expect.closeTo(p, 4)]);
  });

  test("within what matters it is the same, or a difference that does not matter", () => {
    // By hand: 0.002 + 1.645 × 0.0025 = 0.00611.
    const u = { uncertainty: 0.004 };
    expect(changeBetween(reading(73.02, { matters: 0.0062 }), reading(73.022, u))).toMatchObject({
      verdict: "same within",
      withinMatters: true,
      says: "0.002 larger, which is worse: the same within 0.0062",
    });
    expect(changeBetween(reading(73.02, { matters: 0.0061 }), reading(73.022, u))).toMatchObject({ verdict: "cannot tell", withinMatters: false });
    expect(changeBetween(reading(73.02, { matters: 0.1 }), reading(73.05, u)).says).toMatch(
      /differs, beyond its gauge \(0\.005\); a difference, but less than the 0\.1 that matters$/,
    );
  });

  test("one size that matters is for lengths; a characteristic's own goes before it, and a row's too", () => {
    const of = (more: object, typed: readonly string[]) =>
      changeBetween(reading(1, { position: "", unit: undefined, ...more }), reading(1, { position: "", unit: undefined, ...more }), {
        matters: typedSizes(typed),
      }).matters;
    expect(of({ characteristic: "bore" }, ["0.01"])).toBe(0.01);
    expect(of({ characteristic: "leak-down" }, ["0.01"])).toBeNull();
    expect(of({ characteristic: "nobody knows", unit: "bar" }, ["0.01"])).toBeNull();
    expect(of({ characteristic: "nobody knows", unit: "mm" }, ["0.01"])).toBe(0.01);
    expect(of({ characteristic: "bore", matters: 0.02 }, ["0.01"])).toBe(0.02);
    expect(of({ characteristic: "ring end gap", position: "top ring" }, ["0.01", "ring end gap=0.05", "oil ring end gap = 0.1"])).toBe(0.05);
    expect(of({ characteristic: "ring gap", position: "oil" }, ["0.01", "ring end gap=0.05", "oil ring end gap = 0.1"])).toBe(0.1);
  });

  // JCGM 100 (GUM) 5.1.2: the uncertainty of a difference is the root of the sum of squares.
  test("where one side says nothing of its gauge, that of the other stands for both", () => {
    for (const [before, after] of [
      [0.003, undefined],
      [undefined, 0.003],
      [0, 0.003],
    ]) {
      const change = changeBetween(reading(73, { uncertainty: before }), reading(73.01, { uncertainty: after }));
      expect(change.uncertainty).toBeCloseTo(0.003 * Math.SQRT2, 9);
    }
  });
});

describe("against the definition of En", () => {
  const microns = fc.integer({ min: 72_990, max: 73_060 });
  const u = fc.integer({ min: 1, max: 20 });

  test("En is its definition, and a lone line differs just where it lies beyond 1, at the limit too", () => {
    fc.assert(
      fc.property(microns, microns, u, u, (before, after, uBefore, uAfter) => {
        const change = changeBetween(reading(before / 1000, { uncertainty: uBefore / 1000 }), reading(after / 1000, { uncertainty: uAfter / 1000 }));
        expect(enOf(change)).toBeCloseTo(enByDefinition(before, after, uBefore, uAfter), 6);
        // In whole microns squares are exact, so the limit itself is no matter of rounding.
        const beyond = (after - before) ** 2 > uBefore ** 2 + uAfter ** 2;
        expect([change.beyondGauge, change.verdict]).toEqual([beyond, beyond ? "differs" : "cannot tell"]);
        expect(Math.round(change.difference * 1000)).toBe(after - before);
      }),
    );
  });

  test("the two sides exchanged turn the change round and keep its size and uncertainty", () => {
    fc.assert(
      fc.property(microns, microns, u, u, (before, after, uBefore, uAfter) => {
        const [a, b] = [reading(before / 1000, { uncertainty: uBefore / 1000 }), reading(after / 1000, { uncertainty: uAfter / 1000 })];
        const [there, back] = [changeBetween(a, b), changeBetween(b, a)];
        expect(back.difference).toBe(0 - there.difference);
        expect(back.uncertainty).toBe(there.uncertainty);
      }),
    );
  });
});

test("sizes are told with the decimals of their like, worked-out ones with no more than tell them", () => {
  const ratio = { characteristic: "compression ratio", unit: "", uncertainty: 0.1 };
  expect(changeBetween(reading(10.072834512, ratio), reading(10.1, ratio)).says).toMatch(/^0\.027 larger: /);
  const { places } = compare([reading(73), reading(73.012, { cylinder: "2" })], [reading(73.01), reading(73.02, { cylinder: "2" })]);
  expect(places.map(({ says }) => says.split(" ")[0])).toEqual(["0.010", "0.008"]);
});

describe("which way is worse", () => {
  test.each([
    ["bore", 73, 73.1, "worse"],
    ["skirt", 73, 72.9, "worse"],
    ["leak-down held", 5, 4, "worse"],
    ["leak-down", 5, 8, "worse"],
    ["compression", 12, 13, "better"],
    ["valve clearance", 0.2, 0.15, null],
    ["something nobody knows", 1, 2, null],
  ])("%s from %p to %p: %s", (characteristic, before, after, direction) => {
    const more = { characteristic, position: "", unit: undefined, uncertainty: 0.001 };
    expect(changeBetween(reading(before, more), reading(after, more)).direction).toBe(direction);
  });
});

describe("several readings of one place in a session", () => {
  const places = (values: readonly number[], more: object = {}) => values.map((value) => reading(value, more));

  test("are averaged, and every one counts as its place", () => {
    const { places: changes, rows, refused, notes } = compare(places([73.01, 73.012]), places([73.03, 73.034, 73.032]));
    expect([changes.length, rows, refused]).toEqual([1, 1, []]);
    expect(changes[0]!.difference).toBeCloseTo(0.021, 9);
    expect(notes).toContain("one place was read several times in a session: the mean counts");
  });

  test("a U that is not split may all be common to the session, so repeats do not make it smaller", () => {
    const [change] = compare(places([73.01, 73.01, 73.01]), places([73.02, 73.02, 73.02])).places;
    expect(change!.uncertainty).toBeCloseTo(0.003 * Math.SQRT2, 9);
  });

  // JCGM 100, 4.2.3: the mean of 4 readings has half the deviation; U of the change √2 × 0.003 ÷ 2.
  test("the part that is each reading's own is divided by their number", () => {
    const four = { common: 0 };
    const [change] = compare(places([73.01, 73.01, 73.01, 73.01], four), places([73.02, 73.02, 73.02, 73.02], four)).places;
    expect(change!.uncertainty).toBeCloseTo((0.003 * Math.SQRT2) / 2, 9);
  });

  test("where they scatter more than their own part of U, the scatter counts, and is known by its degrees of freedom", () => {
    const own = { common: 0 };
    const [change] = compare(places([73.0, 73.02], own), places([73.05, 73.07], own)).places;
    // Deviation of two readings 0.02 apart 0.01414; of their mean 0.01; of the change 0.01414 with 2 degrees of freedom.
    expect(change).toMatchObject({ by: "scatter", degreesOfFreedom: 2 });
    expect(change!.uncertainty).toBeCloseTo(2 * 0.01 * Math.SQRT2, 9);
  });

  test("a blank or mistyped repeat is refused for itself", () => {
    const { places: changes, refused, rows } = compare(places([73.01]), [reading(73.02), reading(null, { fault: "the reading is still blank" })]);
    expect([changes.length, refused.map(({ why }) => why), rows]).toEqual([1, ["after: the reading is still blank"], 2]);
  });
});

describe("what is not compared says why", () => {
  const why = (before: Parameters<typeof reading>, after: Parameters<typeof reading>) => compare([reading(...before)], [reading(...after)]).refused[0]?.why;

  test.each<[string, Parameters<typeof reading>, Parameters<typeof reading>]>([
    ["it is in mm before and in inches after", [73], [2.874, { unit: "in" }]],
    ["after: the reading is still blank", [73], [null, { fault: "the reading is still blank" }]],
    ["before: value holds x; after: it is blank", [null, { fault: "value holds x" }], [null, { fault: "it is blank" }]],
    ["37.02 is far from 73.02, the reading before: were two digits swapped?", [73.02], [37.02]],
    ["2.875 is far from 73.02, the reading before: inches among millimetres? 2.875 in is 73.025 mm", [73.02], [2.875]],
  ])("%s", (sentence, before, after) => {
    expect(why(before, after)).toBe(sentence);
  });

  test("heavy wear is no slip: a bore 0.2 mm and a gap 0.3 mm wider are compared", () => {
    expect(changeBetween(reading(73.02), reading(73.22)).verdict).toBe("differs");
    const gap = { characteristic: "ring end gap", uncertainty: 0.02 };
    expect(changeBetween(reading(0.3, gap), reading(0.6, gap)).verdict).toBe("differs");
  });
});

test("without an uncertainty nobody can tell, and the line counts for nothing in the family", () => {
  const bare = { uncertainty: undefined };
  const { places, counts, headline, notes } = compare(
    [reading(73), reading(73, { cylinder: "2", ...bare })],
    [reading(73.01), reading(73.4, { cylinder: "2", uncertainty: 0 })],
  );
  expect(places.map(({ verdict, mayHide, pAdjusted }) => [verdict, mayHide === null, pAdjusted === null])).toEqual([
    ["differs", false, false],
    ["cannot tell", true, true],
  ]);
  expect(places[1]!.says).toBe("0.40 larger, which is worse: cannot tell, as no uncertainty is given");
  expect(counts.places).toMatchObject({ lines: 2, judged: 1, beyondGauge: 1 });
  expect(headline).toBe("1 of 1 lies beyond its own gauge; hardly one would by chance; 1 remains.");
  expect(notes).toContain("1 of 2 places have no uncertainty, so nothing can be told of those: give their U");
});

describe("repeats that contradict one another", () => {
  const repeated = (third: number) => {
    const side = (by: number) =>
      [1, 2, 3, 4].flatMap((cylinder) =>
        [0, 0.002, cylinder === 3 && by > 0 ? third : 0.001].map((off) => reading(73 + by + off, { cylinder: `${cylinder}`, uncertainty: 0.004 })),
      );
    return compare(side(0), side(0.01));
  };

  test("are refused by name, and the other places are judged", () => {
    const { places, refused, rows } = repeated(0.05);
    // As if the place were not there: of three repeats 0.001 apart each has the scatter 0.001, beside all of U as the common part.
    expect(places.map(({ uncertainty }) => uncertainty! / Math.SQRT2)).toEqual(Array(3).fill(expect.closeTo(2 * Math.sqrt(0.002 ** 2 + 0.001 ** 2 / 3), 8)));
    expect(rows).toBe(4);
    expect(places).toHaveLength(3);
    expect(refused.map(({ label, why }) => [label, why])).toEqual([
      ["engine A, cylinder 3, bore, top thrust", "after: its readings 73.01, 73.012 and 73.06 contradict one another beyond what the gauge explains"],
    ]);
  });

  // By hand: 2.576 × √2 × 10 × 0.002 = 0.073 between two readings, once in a hundred.
  test.each([
    [0.07, []],
    [0.2, ["before: its readings 73 and 73.2 contradict one another beyond what the gauge explains"]],
  ])("where nothing else was read twice, %p apart is scatter while a gauge ten times as bad explains it", (apart, whys) => {
    const side = (by: number) => [1, 2, 3].map((cylinder) => reading(73 + by, { cylinder: `${cylinder}`, uncertainty: 0.004 }));
    const { places, refused } = compare([...side(0), reading(73 + apart, { cylinder: "2", uncertainty: 0.004 })], side(0.02));
    expect(refused.map(({ why }) => why)).toEqual(whys);
    expect(places).toHaveLength(3 - whys.length);
    // The gauge alone, 0.004 √2, where the scatter does not count: the others are judged as if nobody had read twice.
    if (whys.length > 0)
      for (const { uncertainty, verdict } of places) expect([uncertainty! / Math.SQRT2, verdict]).toEqual([expect.closeTo(0.004, 8), "differs"]);
  });

  test("are none while the gauge explains them", () => {
    expect(repeated(0.008).refused).toEqual([]);
  });
});

test("a direction of wear that is typed goes before what is known", () => {
  expect(
    changeBetween(reading(0.2, { characteristic: "valve clearance", wears: "smaller" }), reading(0.18, { characteristic: "valve clearance" })).direction,
  ).toBe("worse");
  expect(changeBetween(reading(73, { wears: "smaller" }), reading(73.02)).direction).toBe("better");
});
