import fc from "fast-check";
import { ringGapTarget } from "../../../src/functions/rings/ring-gap-target.ts";
import { inches, millimetres } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // .004 in for each inch of bore: common practice. TM 9-2320-366-34: 4.134 in bore, top ring .016 to .026.
  test("a 4 in bore wants .016 in; a 4.134 in bore lies in the range of TM 9-2320-366-34", () => {
    expect(ask(ringGapTarget, 4)).toBe(0.016);
    expect(ask(ringGapTarget, 4.134)).toBe(0.016536);
    expect(number(ringGapTarget, 4.134)).toBeGreaterThanOrEqual(0.016);
    expect(number(ringGapTarget, 4.134)).toBeLessThanOrEqual(0.026);
  });

  // At least .0035 in per inch of bore: a ring maker's published tip.
  test("by a ring maker's least of .0035 a 4 in bore wants .014 in", () => {
    expect(ask(ringGapTarget, 4, 0.0035)).toBe(0.014);
  });
});

describe("identities", () => {
  test("the share has no unit: in inches it is the same gap, in inches", () => {
    fc.assert(fc.property(millimetres, (bore) => expect(number(ringGapTarget, bore / 25.4) * 25.4).toBeCloseTo(number(ringGapTarget, bore), 7)));
  });

  test("a larger bore and a larger share never want a smaller gap", () => {
    fc.assert(
      fc.property(inches, (bore) => {
        expect(number(ringGapTarget, bore + 0.001)).toBeGreaterThan(number(ringGapTarget, bore));
        expect(number(ringGapTarget, bore, 0.0045)).toBeGreaterThan(number(ringGapTarget, bore, 0.004));
      }),
    );
  });
});

describe("at the limits", () => {
  test("3 × 0.0041 is 0.0123, which in binary it is not", () => {
    expect(3 * 0.0041).not.toBe(0.0123);
    expect(ask(ringGapTarget, 3, 0.0041)).toBe(0.0123);
  });

  test("bores down the sheet and shares across it give a block", () => {
    expect(ask(ringGapTarget, [[4], [3]], [[0.004, 0.005]])).toEqual([
      [0.016, 0.02],
      [0.012, 0.015],
    ]);
  });
});

describe("faults", () => {
  test("a share with its decimal point elsewhere is refused", () => {
    expect(ask(ringGapTarget, 73, 0.04)).toEqual({
      code: "too-large",
      sentence: "RINGGAPTARGET: perBore 0.04 is too large: it must be a ratio from 0.001 to 0.02",
    });
    expect(ask(ringGapTarget, 73, 0.0004)).toMatchObject({ code: "too-small" });
    expect(ask(ringGapTarget, 100, [[0.001, 0.02]])).toEqual([[0.1, 2]]);
  });

  test("a negative bore or share is refused by name", () => {
    expect(ask(ringGapTarget, -73)).toEqual({ code: "too-small", sentence: "RINGGAPTARGET: bore -73 is too small: it must be a length above 0" });
    expect(ask(ringGapTarget, 73, -0.004)).toEqual({
      code: "too-small",
      sentence: "RINGGAPTARGET: perBore -0.004 is too small: it must be a ratio from 0.001 to 0.02",
    });
  });
});

describe("blanks", () => {
  test("a blank bore has no target; a blank share is the usual one", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(ringGapTarget, blank)).toBe("");
      expect(ask(ringGapTarget, 4, blank)).toBe(0.016);
    }
  });
});
