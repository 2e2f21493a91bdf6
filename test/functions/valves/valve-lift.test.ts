import fc from "fast-check";
import { valveLift } from "../../../src/functions/valves/valve-lift.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // The lever law, by hand: 6.4 × 1.5 − 0.25. Lash at the valve: common practice.
  test("6.4 at the lobe through 1.5 with 0.25 lash lifts the valve by 9.35", () => {
    expect(ask(valveLift, 6.4, 1.5, 0.25)).toBe(9.35);
  });
});

describe("against whole thousandths", () => {
  test("lobe × ratio − lash, never below 0; in inches the same", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 5, max: 30 }), fc.integer({ min: 0, max: 500 }), (lobe, tenths, lash) => {
        const lift = Math.max(0, lobe * tenths - 10 * lash) / 10_000;
        expect(number(valveLift, lobe / 1000, tenths / 10, lash / 1000)).toBeCloseTo(lift, 9);
        expect(number(valveLift, lobe / 25_400, tenths / 10, lash / 25_400) * 25.4).toBeCloseTo(lift, 7);
        expect(number(valveLift, lobe / 1000 + 0.01, tenths / 10, lash / 1000)).toBeGreaterThanOrEqual(lift);
        expect(number(valveLift, lobe / 1000, tenths / 10, lash / 1000 + 0.01)).toBeLessThanOrEqual(lift + 1e-9);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("until the lash is taken up the valve stays shut", () => {
    expect(ask(valveLift, [[0], [0.2], [0.21]], 1.25, 0.25)).toEqual([[0], [0], [0.0125]]);
  });

  test("ratios from 0.5 to 3 are taken", () => {
    expect(ask(valveLift, 6, 0.5)).toBe(3);
    expect(ask(valveLift, 6, 3)).toBe(18);
    expect(ask(valveLift, 6, 0.49)).toEqual({
      code: "too-small",
      sentence: "VALVELIFT: ratio 0.49 is too small: it must be a ratio from 0.5 to 3",
    });
    expect(ask(valveLift, 6, 15)).toEqual({
      code: "too-large",
      sentence: "VALVELIFT: ratio 15 is too large: it must be a ratio from 0.5 to 3",
    });
  });
});

describe("faults", () => {
  test("a negative lift or lash is refused", () => {
    expect(ask(valveLift, -0.1, 1.5)).toMatchObject({ code: "too-small" });
    expect(ask(valveLift, 6, 1.5, -0.1)).toEqual({ code: "too-small", sentence: "VALVELIFT: lash -0.1 is too small: it must be a length of at least 0" });
  });
});

describe("blanks", () => {
  test("a blank lift or ratio leaves it blank, a blank lash is none", () => {
    for (const blank of BLANKS) {
      expect(ask(valveLift, blank, 1.5)).toBe("");
      expect(ask(valveLift, 6, 1.5, blank)).toBe(9);
    }
    for (const blank of BLANKS_AND_ZERO) expect(ask(valveLift, 6, blank)).toBe("");
  });
});
