import fc from "fast-check";
import { changeBetween, compare, reading } from "./stand.ts";

/** ISO/IEC 17043, statistical methods: En = (x − X) ÷ √(U² + U²); |En| ≤ 1 agrees. Written out anew here, in whole microns. */
const enOf = (before: number, after: number, uBefore: number, uAfter: number): number => (after - before) / Math.sqrt(uBefore ** 2 + uAfter ** 2);

describe("cited values", () => {
  // 3-4-5 makes the uncertainty of the change 0.005 by hand; a change of just that agrees (ISO/IEC 17043: |En| ≤ 1).
  test.each([
    [73.025, 73.03, "no real change", 1, "0.005 larger: the gauge explains up to 0.005 (En 1)"],
    [73.025, 73.031, "real increase", 1.2, "0.006 larger: more than the 0.005 that the gauge explains (En 1.2)"],
    [73.03, 73.02, "real decrease", -2, "0.01 smaller: more than the 0.005 that the gauge explains (En -2)"],
    [73.02, 73.02, "no real change", 0, "the same: the gauge explains up to 0.005 (En 0)"],
  ])("%p to %p with U 0.003 and 0.004: %s", (before, after, verdict, en, says) => {
    const change = changeBetween(reading(before), reading(after, { uncertainty: 0.004 }));
    expect(change).toMatchObject({ verdict, en, says, uncertainty: 0.005 });
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

  test("En is its definition, and real is just what lies beyond 1, at the limit too", () => {
    fc.assert(
      fc.property(microns, microns, u, u, (before, after, uBefore, uAfter) => {
        const change = changeBetween(reading(before / 1000, { uncertainty: uBefore / 1000 }), reading(after / 1000, { uncertainty: uAfter / 1000 }));
        const en = enOf(before, after, uBefore, uAfter);
        expect(change.en).toBeCloseTo(en, 8);
        // In whole microns squares are exact, so the limit itself is no matter of rounding.
        const beyond = (after - before) ** 2 > uBefore ** 2 + uAfter ** 2;
        expect(change.verdict).toBe(!beyond ? "no real change" : after > before ? "real increase" : "real decrease");
        expect(Math.round(change.change * 1000)).toBe(after - before);
      }),
    );
  });

  test("the two sides exchanged turn an increase into a decrease and keep the size", () => {
    fc.assert(
      fc.property(microns, microns, u, u, (before, after, uBefore, uAfter) => {
        const [a, b] = [reading(before / 1000, { uncertainty: uBefore / 1000 }), reading(after / 1000, { uncertainty: uAfter / 1000 })];
        const [there, back] = [changeBetween(a, b), changeBetween(b, a)];
        expect([back.change, back.en]).toEqual([0 - there.change, 0 - there.en]);
        expect(back.uncertainty).toBe(there.uncertainty);
      }),
    );
  });
});

describe("what is not compared says why", () => {
  const why = (before: Parameters<typeof reading>, after: Parameters<typeof reading>) => compare([reading(...before)], [reading(...after)]).refused[0]?.why;

  test.each<[string, Parameters<typeof reading>, Parameters<typeof reading>]>([
    ["no uncertainty is given on either side, so the gauge may explain any change", [73, { uncertainty: undefined }], [73.01, { uncertainty: 0 }]],
    ["it is in mm before and in in after", [73], [2.874, { unit: "in" }]],
    ["after: the reading is still blank", [73], [null, { fault: "the reading is still blank" }]],
    ["before: value holds x; after: it is blank", [null, { fault: "value holds x" }], [null, { fault: "it is blank" }]],
    ["37.02 is far from 73.02, the reading before: were two digits swapped?", [73.02], [37.02]],
    ["2.875 is far from 73.02, the reading before: inches among millimetres? 2.875 in is 73.025 mm", [73.02], [2.875]],
  ])("%s", (sentence, before, after) => {
    expect(why(before, after)).toBe(sentence);
  });

  test("heavy wear is no slip: a bore 0.2 mm and a gap 0.3 mm wider are compared", () => {
    expect(changeBetween(reading(73.02), reading(73.22)).verdict).toBe("real increase");
    const gap = { characteristic: "ring end gap", uncertainty: 0.02 };
    expect(changeBetween(reading(0.3, gap), reading(0.6, gap)).verdict).toBe("real increase");
  });
});
