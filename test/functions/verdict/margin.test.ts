import fc from "fast-check";
import { margin } from "../../../src/functions/verdict/margin.ts";
import { verdict } from "../../../src/functions/verdict/verdict.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const thousandths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 1000);

describe("cited values", () => {
  // ISO 286, Ø50 H7/g6: clearance 0.009 to 0.050 mm; the margins follow by subtraction.
  test.each([
    [0.02, 0.011],
    [0.045, 0.005],
    [0.009, 0],
    [0.05, 0],
    [0.004, -0.005],
    [0.061, -0.011],
  ])("a clearance of %p has a margin of %p in a 50 H7/g6 fit", (clearance, distance) => {
    expect(ask(margin, clearance, 0.009, 0.05)).toBe(distance);
  });
});

describe("identities", () => {
  test("the margin is negative exactly where the verdict is over or under", () => {
    fc.assert(
      fc.property(thousandths(-50, 150), thousandths(0, 40), thousandths(60, 100), (value, lower, upper) => {
        expect(number(margin, value, lower, upper) < 0).toBe(ask(verdict, value, lower, upper) !== "within");
      }),
    );
  });

  test("two limits leave the smaller of the margins that each leaves alone", () => {
    fc.assert(
      fc.property(thousandths(-50, 150), thousandths(0, 40), thousandths(60, 100), (value, lower, upper) => {
        expect(ask(margin, value, lower, upper)).toBe(Math.min(number(margin, value, lower), number(margin, value, undefined, upper)));
      }),
    );
  });

  test("value and limits shifted alike keep the margin", () => {
    fc.assert(
      fc.property(thousandths(-50, 150), thousandths(1, 1000), (value, shift) => {
        expect(ask(margin, value + shift, 0.02 + shift, 0.1 + shift)).toBe(ask(margin, value, 0.02, 0.1));
      }),
    );
  });
});

describe("at the limits", () => {
  test("73.04 − 73.00 has a margin of 0 to 0.04, and never -0", () => {
    expect(ask(margin, 73.04 - 73.0, undefined, 0.04)).toBe(0);
    expect(Object.is(ask(margin, 0.02, 0.02), -0)).toBe(false);
  });
});

describe("faults", () => {
  test("limits the wrong way round are refused and both are named", () => {
    expect(ask(margin, 0.03, 0.04, 0.02)).toEqual({ code: "swapped", sentence: "MARGIN: lower 0.04 is larger than upper 0.02: are they swapped?" });
  });

  test("a limit typed with a decimal comma is refused by name", () => {
    expect(ask(margin, 0.03, 0.02, "0,04")).toEqual({
      code: "decimal-comma",
      sentence: 'MARGIN: upper holds the text "0,04": a decimal comma is not read, type it with this sheet\'s decimal sign',
    });
  });
});

describe("blanks", () => {
  test("no value or no limits, no margin", () => {
    for (const blank of BLANKS) {
      expect(ask(margin, blank, 0.02, 0.04)).toBe("");
      expect(ask(margin, 0.03, blank, blank)).toBe("");
    }
  });

  test("a blank limit leaves the other to count", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(margin, 0.05, 0.02, blank)).toBe(0.03);
    for (const blank of BLANKS) expect(ask(margin, -0.01, blank, 0.04)).toBe(0.05);
  });
});
