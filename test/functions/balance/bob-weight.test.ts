import fc from "fast-check";
import { bobWeight } from "../../../src/functions/balance/bob-weight.ts";
import { ask, BLANKS, number } from "../ask.ts";

const parts = fc.array(fc.integer({ min: 0, max: 6000 }), { minLength: 1, maxLength: 6 });

describe("cited values", () => {
  // One half of the reciprocating masses for a 90° V: an engine machine shop's manual; added by hand.
  test("two rods of 476 rotating and 836 reciprocating, and 4 of oil: 1792", () => {
    expect(ask(bobWeight, [[430, 46]], [[182, 498, 120, 34, 2]], "", "", 4)).toBe(1792);
  });
});

describe("against the parts one by one", () => {
  test("every part of every rod counted on its own; in ounces the same; more factor never lighter", () => {
    fc.assert(
      fc.property(
        parts,
        parts,
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 0, max: 90 }),
        (turn, move, rods, percent, oil) => {
          let thousandths = oil * 100;
          for (let rod = 0; rod < rods; rod++) {
            for (const part of turn) thousandths += part * 100;
            for (const part of move) thousandths += part * percent;
          }
          const grams = (all: number[], by = 10) => [all.map((part) => part / by)];
          const whole = number(bobWeight, grams(turn), grams(move), rods, percent / 100, oil / 10);
          expect(whole).toBeCloseTo(thousandths / 1000, 6);
          expect(number(bobWeight, grams(turn, 283.495), grams(move, 283.495), rods, percent / 100, oil / 283.495) * 28.3495).toBeCloseTo(whole, 5);
          expect(number(bobWeight, grams(turn), grams(move), rods, 1, oil / 10)).toBeGreaterThanOrEqual(whole - 1e-9);
        },
      ),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("a factor of 0 leaves the rotating masses, one of 1 takes all", () => {
    expect(ask(bobWeight, [[430, 46]], [[182, 498, 120, 34, 2]], 1, 0)).toBe(476);
    expect(ask(bobWeight, [[430, 46]], [[182, 498, 120, 34, 2]], 1, 1)).toBe(1312);
  });
});

describe("faults", () => {
  test("a factor in per cent is refused, and so are half a rod and a negative mass", () => {
    expect(ask(bobWeight, 430, 600, 2, 50)).toEqual({
      code: "too-large",
      sentence: "BOBWEIGHT: factor 50 is too large: it must be a ratio from 0 to 1",
    });
    expect(ask(bobWeight, 430, 600, 1.5)).toMatchObject({ code: "not-whole" });
    expect(ask(bobWeight, [[430, -46]], 600)).toEqual({
      code: "too-small",
      sentence: "BOBWEIGHT: rotating -46 is too small: it must be a mass of at least 0 (column 2)",
    });
  });
});

describe("blanks", () => {
  test("a mass not weighed yet leaves it blank; 0 says that there is none", () => {
    for (const blank of BLANKS) {
      expect(ask(bobWeight, [[430, blank as string]], [[182, 498]])).toBe("");
      expect(ask(bobWeight, [[430, 46]], [[182, blank as string]])).toBe("");
      expect(ask(bobWeight, blank, [[182, 498]])).toBe("");
    }
    expect(ask(bobWeight, [[430, 0]], [[182, 0]], 1)).toBe(521);
  });
});
