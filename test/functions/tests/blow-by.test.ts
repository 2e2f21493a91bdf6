import fc from "fast-check";
import { blowBy } from "../../../src/functions/tests/blow-by.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // Common practice: what passed, brought to an hour; by hand.
  test("0.24 m³ in five minutes are 2.88 m³ an hour", () => {
    expect(ask(blowBy, 0.24, 5)).toBe(2.88);
  });
});

describe("against litres counted minute by minute", () => {
  test("an hour holds as many stretches as fit into it; cubic feet by their factor; longer for the same gas is less", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), fc.constantFrom(1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 60), (litres, minutes) => {
        let hour = 0;
        for (let passed = 0; passed < 60; passed += minutes) hour += litres;
        expect(number(blowBy, litres / 1000, minutes)).toBeCloseTo(hour / 1000, 9);
        expect(number(blowBy, litres / 28.316846592, minutes) * 28.316846592).toBeCloseTo(hour, 5);
        expect(number(blowBy, litres / 1000, minutes * 2)).toBeCloseTo(hour / 2000, 9);
      }),
      { numRuns: 400 },
    );
  });
});

describe("faults", () => {
  test("a negative volume or time is refused", () => {
    expect(ask(blowBy, -1, 5)).toEqual({ code: "too-small", sentence: "BLOWBY: volume -1 is too small: it must be a volume of at least 0" });
    expect(ask(blowBy, 1, -5)).toEqual({ code: "too-small", sentence: "BLOWBY: minutes -5 is too small: it must be a number above 0" });
  });
});

describe("blanks", () => {
  test("no volume or no time leaves it blank; a volume of 0 counts", () => {
    for (const blank of BLANKS) expect(ask(blowBy, blank, 5)).toBe("");
    for (const blank of BLANKS_AND_ZERO) expect(ask(blowBy, 1, blank)).toBe("");
    expect(ask(blowBy, 0, 5)).toBe(0);
  });
});
