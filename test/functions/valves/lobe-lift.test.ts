import fc from "fast-check";
import { lobeLift } from "../../../src/functions/valves/lobe-lift.ts";
import { inches, millimetres, small } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // TM 5-3805-260-24 p. 1-11: lobe height less base circle. The sizes are ours.
  test("a lobe of 1.512 in over a base circle of 1.26 in lifts .252 in", () => {
    expect(ask(lobeLift, 1.512, 1.26)).toBe(0.252);
  });
});

describe("identities", () => {
  test("height = base + lift to the typed digit; in inches the same; a higher lobe lifts more", () => {
    fc.assert(
      fc.property(millimetres, inches, small, (base, other, lift) => {
        expect(number(lobeLift, Number((base + lift).toFixed(2)), base)).toBe(lift);
        expect(number(lobeLift, other * 25.4 + lift, other * 25.4)).toBeCloseTo(number(lobeLift, other + lift / 25.4, other) * 25.4, 7);
        expect(number(lobeLift, base + lift + 0.01, base)).toBeGreaterThan(number(lobeLift, base + lift, base));
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("a lobe worn round has no lift, one of twice its base circle the most", () => {
    expect(ask(lobeLift, 32, 32)).toBe(0);
    expect(ask(lobeLift, 64, 32)).toBe(32);
    expect(ask(lobeLift, 64.01, 32)).toMatchObject({ code: "unfit" });
  });
});

describe("faults", () => {
  test("sizes the wrong way round, and a base circle in inches, are refused", () => {
    expect(ask(lobeLift, 32, 38.4)).toEqual({ code: "unfit", sentence: "LOBELIFT: height 32: it is less than the base circle 38.4: are they swapped?" });
    expect(ask(lobeLift, 38.4, 1.26)).toEqual({
      code: "unfit",
      sentence: "LOBELIFT: height 38.4: it is more than twice the base circle 1.26: is a digit or a unit wrong?",
    });
  });
});

describe("blanks", () => {
  test("a blank size leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(lobeLift, blank, 32)).toBe("");
      expect(ask(lobeLift, 38.4, blank)).toBe("");
    }
  });
});
