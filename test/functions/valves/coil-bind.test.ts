import fc from "fast-check";
import { coilBind } from "../../../src/functions/valves/coil-bind.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const solid = fc.integer({ min: 2000, max: 3200 }).map((hundredths) => hundredths / 100);
const lift = fc.integer({ min: 300, max: 1300 }).map((hundredths) => hundredths / 100);
const spare = fc.integer({ min: -100, max: 400 }).map((hundredths) => hundredths / 100);

describe("cited values", () => {
  // Common practice; computed by hand.
  test.each([
    [40, 9.2, 28.5, 2.3],
    [1.575, 0.45, 1.065, 0.06],
  ])("fitted %p, lift %p, solid %p leave %p", (fitted, up, closed, left) => {
    expect(ask(coilBind, fitted, up, closed)).toBe(left);
  });
});

describe("identities", () => {
  test("fitted = solid + lift + clearance, to the typed digit", () => {
    fc.assert(
      fc.property(solid, lift, spare, (closed, up, left) => {
        const fitted = Number((closed + up + left).toFixed(2));
        expect(ask(coilBind, fitted, up, closed)).toBe(left === 0 ? 0 : left);
      }),
      { numRuns: 400 },
    );
  });

  test("in inches it is the same clearance", () => {
    fc.assert(
      fc.property(solid, lift, (closed, up) => {
        const fitted = closed + up + 1.5;
        expect(number(coilBind, fitted / 25.4, up / 25.4, closed / 25.4) * 25.4).toBeCloseTo(number(coilBind, fitted, up, closed), 7);
      }),
    );
  });

  test("more lift leaves less by as much", () => {
    expect(number(coilBind, 40, 9.7, 28.5)).toBeCloseTo(number(coilBind, 40, 9.2, 28.5) - 0.5, 9);
  });
});

describe("at the limits", () => {
  test("a spring that just closes up has 0 left, one that binds has less", () => {
    expect(ask(coilBind, 40, 11.5, 28.5)).toBe(0);
    expect(ask(coilBind, 40, 11.7, 28.5)).toBe(-0.2);
  });
});

describe("faults", () => {
  test("a solid length above the fitted one is refused", () => {
    expect(ask(coilBind, 28.5, 9.2, 40)).toEqual({ code: "swapped", sentence: "COILBIND: solid 40 is larger than fitted 28.5: are they swapped?" });
  });

  test("a solid length in inches beside a fitted one in millimetres is refused", () => {
    expect(ask(coilBind, 40, 9.2, 1.122)).toEqual({
      code: "units",
      sentence: "COILBIND: solid 1.122 is about 1/36 of fitted 40: is a digit, the decimal point or the unit wrong?",
    });
  });

  test("a negative lift is refused, in its own cell where there are more", () => {
    expect(ask(coilBind, 40, [[9.2], [-9.2]], 28.5)).toEqual([[2.3], ["check: lift -9.2 is too small: it must be a length above 0"]]);
  });
});

describe("blanks", () => {
  test("a length not measured leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(coilBind, blank, 9.2, 28.5)).toBe("");
      expect(ask(coilBind, 40, blank, 28.5)).toBe("");
      expect(ask(coilBind, 40, 9.2, blank)).toBe("");
    }
  });
});
