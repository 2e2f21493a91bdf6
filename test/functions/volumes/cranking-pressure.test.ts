import fc from "fast-check";
import { crankingPressure } from "../../../src/functions/volumes/cranking-pressure.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const ratio = fc.integer({ min: 40, max: 220 }).map((tenths) => tenths / 10);
const exponent = fc.integer({ min: 100, max: 167 }).map((hundredths) => hundredths / 100);

describe("cited values", () => {
  // Reversible adiabatic compression, exponent 1.4 (computed): ratio 8 gives p2/p1 = 18.3792; ratio 10
  // from 100 kPa gives 2511.89 kPa absolute. A gauge shows what is above the air outside.
  test("ratio 8 multiplies the pressure by 18.3792", () => {
    expect(number(crankingPressure, 8, 1) + 1).toBeCloseTo(18.3792, 4);
  });

  test("ratio 10 from 100 kPa shows 2411.89 kPa", () => {
    expect(number(crankingPressure, 10, 100)).toBeCloseTo(2511.89 - 100, 2);
  });

  // Standard atmosphere, ISO 2533: 101.325 kPa; 14.696 psi (NIST SP 811: 1 psi = 6.894757 kPa).
  test("the air outside is the standard atmosphere in each unit", () => {
    expect(number(crankingPressure, 2, undefined, 1, "kPa")).toBeCloseTo(101.325, 9);
    expect(number(crankingPressure, 2, undefined, 1, "bar")).toBeCloseTo(1.01325, 9);
    expect(number(crankingPressure, 2, undefined, 1, "psi")).toBeCloseTo(101.325 / 6.894757, 5);
  });
});

describe("identities", () => {
  test("compressing in two stages comes to the same as in one", () => {
    fc.assert(
      fc.property(ratio, ratio, exponent, (first, second, n) => {
        const between = number(crankingPressure, first, 100, n) + 100;
        expect((number(crankingPressure, second, between, n) + between) / (number(crankingPressure, first * second, 100, n) + 100)).toBeCloseTo(1, 9);
      }),
    );
  });

  test("one engine reads the same in every unit", () => {
    fc.assert(
      fc.property(ratio, exponent, (r, n) => {
        const kilopascals = number(crankingPressure, r, undefined, n);
        expect((number(crankingPressure, r, undefined, n, "bar") * 100) / kilopascals).toBeCloseTo(1, 9);
        expect((number(crankingPressure, r, undefined, n, "psi") * 6.894757) / kilopascals).toBeCloseTo(1, 6);
      }),
    );
  });

  test("more ratio, more exponent and more air outside all give more", () => {
    fc.assert(
      fc.property(ratio, fc.integer({ min: 100, max: 160 }), (r, hundredths) => {
        const plain = number(crankingPressure, r, 100, hundredths / 100);
        expect(number(crankingPressure, r + 0.1, 100, hundredths / 100)).toBeGreaterThan(plain);
        expect(number(crankingPressure, r, 100, (hundredths + 1) / 100)).toBeGreaterThan(plain);
        expect(number(crankingPressure, r, 101, hundredths / 100)).toBeGreaterThan(plain);
      }),
    );
  });
});

describe("at the limits", () => {
  test("with an exponent of 1 the volume alone counts", () => {
    expect(ask(crankingPressure, 9, 100, 1)).toBe(800);
  });

  test("ratios down the sheet and exponents across it give a block", () => {
    expect(ask(crankingPressure, [[2], [3]], 100, [[1, 1]])).toEqual([
      [100, 100],
      [200, 200],
    ]);
  });
});

describe("faults", () => {
  test("a ratio of 1, an exponent outside 1 to 1.67 and an unknown unit are refused", () => {
    expect(ask(crankingPressure, 1)).toEqual({ code: "too-small", sentence: "CRANKINGPRESSURE: ratio 1 is too small: it must be a ratio above 1" });
    expect(ask(crankingPressure, 9, 100, 2)).toEqual({
      code: "too-large",
      sentence: "CRANKINGPRESSURE: exponent 2 is too large: it must be a number from 1 to 1.67",
    });
    expect(ask(crankingPressure, 9, 100, 1.4, "at")).toEqual({
      code: "not-a-choice",
      sentence: 'CRANKINGPRESSURE: unit "at" is not known: it must be one of kPa, bar, psi',
    });
  });

  test("a negative pressure outside is refused", () => {
    expect(ask(crankingPressure, 9, -1)).toEqual({ code: "too-small", sentence: "CRANKINGPRESSURE: ambient -1 is too small: it must be a pressure above 0" });
  });
});

describe("blanks", () => {
  test("a blank ratio leaves it blank; blank settings are the defaults", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(crankingPressure, blank)).toBe("");
      expect(ask(crankingPressure, 9, blank)).toBe(ask(crankingPressure, 9));
      expect(ask(crankingPressure, 9, 100, blank, blank)).toBe(ask(crankingPressure, 9, 100, 1.4, "kPa"));
    }
  });
});
