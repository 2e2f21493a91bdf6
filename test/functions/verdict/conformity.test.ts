import fc from "fast-check";
import { conformity } from "../../../src/functions/verdict/conformity.ts";
import { verdict } from "../../../src/functions/verdict/verdict.ts";
import { ask, BLANKS, number } from "../ask.ts";

describe("cited values", () => {
  // JCGM 106:2012, 7.4: value 13.6, u 1.8, limits 12.5 and 16.3 (inputs of the example, probability computed).
  test("JCGM 106: 13.6 with u 1.8 between 12.5 and 16.3 conforms with probability 0.662630", () => {
    expect(number(conformity, 13.6, 12.5, 16.3, 1.8)).toBeCloseTo(0.66263, 6);
  });

  // JCGM 106:2012, one-sided limit 1.4 u away: Φ(1.4).
  test("a limit 1.4 u away on one side: 0.919243", () => {
    expect(number(conformity, 10, undefined, 12.8, 2)).toBeCloseTo(0.919243, 6);
    expect(number(conformity, 12.8, 10, undefined, 2)).toBeCloseTo(0.919243, 6);
  });

  // ILAC-G8:09/2019: a guard band of U = 2u leaves under 2.5 % of false acceptance (2.275 %), 1.645 u leaves 5 %.
  test("at the edge of a guard band of 2u the risk is 2.275 %, at 1.645 u 4.998 %", () => {
    expect(1 - number(conformity, 0.036, undefined, 0.04, 0.002)).toBeCloseTo(0.02275, 5);
    expect(1 - number(conformity, 0.04 - 1.645 * 0.002, undefined, 0.04, 0.002)).toBeCloseTo(0.04998, 5);
  });

  // The micrometer example: limit ±0.003 mm, U 0.0010 mm: +0.0017 conforms, +0.0025 is not proven.
  test("what a verdict calls within has less than 2.5 % of risk, what it calls not proven may have more", () => {
    expect(ask(verdict, 0.0017, -0.003, 0.003, 0.001)).toBe("within");
    expect(number(conformity, 0.0017, -0.003, 0.003, 0.0005)).toBeGreaterThan(0.975);
    expect(ask(verdict, 0.0025, -0.003, 0.003, 0.001)).toBe("not proven");
    expect(number(conformity, 0.0025, -0.003, 0.003, 0.0005)).toBeLessThan(0.975);
  });
});

describe("identities", () => {
  const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
  const cases = fc.tuple(hundredths(-500, 500), hundredths(-500, 0), hundredths(1, 500), hundredths(1, 300));

  test("it is a probability, and mirroring value and limits leaves it", () => {
    fc.assert(
      fc.property(cases, ([value, lower, upper, u]) => {
        const p = number(conformity, value, lower, upper, u);
        expect(p).toBeGreaterThanOrEqual(0);
        expect(p).toBeLessThanOrEqual(1);
        expect(number(conformity, -value, -upper, -lower, u)).toBeCloseTo(p, 12);
      }),
    );
  });

  test("inside both limits and outside each make up the whole", () => {
    fc.assert(
      fc.property(cases, ([value, lower, upper, u]) => {
        const above = 1 - number(conformity, value, undefined, upper, u);
        const below = 1 - number(conformity, value, lower, undefined, u);
        expect(number(conformity, value, lower, upper, u) + above + below).toBeCloseTo(1, 10);
      }),
    );
  });

  test("a wider tolerance is never less likely met; unit and scale are no matter", () => {
    fc.assert(
      fc.property(cases, ([value, lower, upper, u]) => {
        const p = number(conformity, value, lower, upper, u);
        expect(number(conformity, value, lower - 0.5, upper + 0.5, u)).toBeGreaterThanOrEqual(p);
        expect(number(conformity, value * 25.4, lower * 25.4, upper * 25.4, u * 25.4)).toBeCloseTo(p, 9);
      }),
    );
  });

  test("far outside, the chance is small and not lost in rounding", () => {
    // Φ(−9) = 1.1286e−19, by its asymptotic series.
    expect(number(conformity, 0, 9, 20, 1) / 1.1285884e-19).toBeCloseTo(1, 6);
    expect(number(conformity, 0, -20, -9, 1) / 1.1285884e-19).toBeCloseTo(1, 6);
  });
});

test("a value on its only limit conforms with probability one half", () => {
  expect(ask(conformity, 0.04, undefined, 0.04, 0.002)).toBe(0.5);
});

describe("faults", () => {
  test("a missing u is asked for", () => {
    expect(ask(conformity, 13.6, 12.5, 16.3)).toEqual({ code: "missing", sentence: "CONFORMITY: u is not given: it must be a number above 0" });
  });

  test("limits the wrong way round are named", () => {
    expect(ask(conformity, 13.6, 16.3, 12.5, 1.8)).toEqual({
      code: "swapped",
      sentence: "CONFORMITY: lower 16.3 is larger than upper 12.5: are they swapped?",
    });
  });

  test("a negative u is refused", () => {
    expect(ask(conformity, 13.6, 12.5, 16.3, -1.8)).toEqual({ code: "too-small", sentence: "CONFORMITY: u -1.8 is too small: it must be a number above 0" });
  });
});

test("a blank value leaves it blank, and so does having no limit", () => {
  for (const blank of BLANKS) {
    expect(ask(conformity, blank, 12.5, 16.3, 1.8)).toBe("");
    expect(ask(conformity, 13.6, blank, blank, 1.8)).toBe("");
  }
});
