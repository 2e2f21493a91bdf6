import fc from "fast-check";
import { massMatch } from "../../../src/functions/balance/mass-match.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

const masses = fc.array(fc.integer({ min: 3900, max: 4400 }), { minLength: 1, maxLength: 12 });

describe("cited values", () => {
  // Common practice: the heavier parts are brought down to the lightest; subtracted by hand.
  test("of 412, 409.5 and 410.2 the first loses 2.5 and the last 0.7", () => {
    expect(ask(massMatch, [[412], [409.5], [410.2]])).toEqual([[2.5], [0], [0.7]]);
    expect(ask(massMatch, [[412, 409.5, 410.2]], 1)).toEqual([[1.5, 0, 0]]);
  });
});

describe("against whole tenths", () => {
  test("afterwards none is heavier than the lightest by more than the tolerance, and none lost more than that needs", () => {
    fc.assert(
      fc.property(masses, fc.integer({ min: 0, max: 60 }), (tenths, tolerance) => {
        const off = ask(
          massMatch,
          tenths.map((m) => [m / 10]),
          tolerance / 10,
        ) as number[][];
        const least = Math.min(...tenths);
        for (const [i, [taken]] of off.entries()) {
          const left = tenths[i]! - Math.round(taken! * 10);
          expect(left).toBe(Math.min(tenths[i]!, least + tolerance));
          expect(taken).toBe(Number(((tenths[i]! - left) / 10).toFixed(1)));
        }
        const ounces = ask(
          massMatch,
          tenths.map((m) => [m / 283.495]),
          tolerance / 283.495,
        ) as number[][];
        for (const [i, [taken]] of ounces.entries()) expect(taken! * 28.3495).toBeCloseTo(off[i]![0]!, 5);
      }),
      { numRuns: 400 },
    );
  });

  test("the shape is kept, the order is nothing", () => {
    expect(
      ask(massMatch, [
        [412, 409.5],
        [410.2, 411],
      ]),
    ).toEqual([
      [2.5, 0],
      [0.7, 1.5],
    ]);
    expect(ask(massMatch, 412)).toEqual([[0]]);
  });
});

describe("faults", () => {
  test("a bad or far mass keeps to its own cell and is not the lightest", () => {
    expect(ask(massMatch, [[412], ["x"], [41.2], [410.2]])).toEqual([
      [1.8],
      ['check: masses holds the text "x": it must be a mass above 0 (row 2)'],
      ["check: masses 41.2 is about 1/10 of the middle one 410.2: is a decimal point wrong?"],
      [0],
    ]);
  });

  test("a negative tolerance is refused", () => {
    expect(ask(massMatch, [[412], [410]], -1)).toEqual({
      code: "too-small",
      sentence: "MASSMATCH: tolerance -1 is too small: it must be a mass of at least 0",
    });
  });
});

describe("blanks", () => {
  test("a part not weighed yet stays blank, and so do parts of which none is", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(massMatch, [[412], [blank as number], [410.2]])).toEqual([[1.8], [""], [0]]);
      expect(ask(massMatch, blank)).toBe("");
    }
  });
});
