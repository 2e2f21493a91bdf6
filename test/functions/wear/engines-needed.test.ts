import fc from "fast-check";
import { enginesNeeded } from "../../../src/functions/wear/engines-needed.ts";
import { fromR } from "../../reference/r-values.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // The smallest n whose power.t.test (two-sample, strict) reaches the power.
  test("as many engines as R's power asks for", () => {
    for (const [i, difference] of fromR("engines-deltas").entries()) {
      expect(number(enginesNeeded, difference, 1)).toBe(fromR("engines-90")[i]);
      expect(number(enginesNeeded, difference, 1, 0.8)).toBe(fromR("engines-80")[i]);
      expect(number(enginesNeeded, difference, 1, 0.9, 0.99)).toBe(fromR("engines-90-99")[i]);
    }
  });
});

describe("identities", () => {
  const size = fc.integer({ min: 2, max: 100 }).map((n) => n / 1000);

  test("millimetres and inches ask for as many", () => {
    fc.assert(
      fc.property(size, size, (difference, spread) => {
        expect(number(enginesNeeded, difference / 25.4, spread / 25.4)).toBe(number(enginesNeeded, difference, spread));
      }),
      { numRuns: 30 },
    );
  });

  test("a smaller difference, a wider spread and more power never ask for fewer", () => {
    fc.assert(
      fc.property(size, size, (difference, spread) => {
        const needed = number(enginesNeeded, difference, spread);
        expect(number(enginesNeeded, difference / 2, spread)).toBeGreaterThanOrEqual(needed);
        expect(number(enginesNeeded, difference, 2 * spread)).toBeGreaterThanOrEqual(needed);
        expect(number(enginesNeeded, difference, spread, 0.95)).toBeGreaterThanOrEqual(needed);
      }),
      { numRuns: 30 },
    );
  });
});

describe("at the limits and faults", () => {
  test("never fewer than two in each group", () => {
    expect(ask(enginesNeeded, 100, 0.001)).toBe(2);
  });

  test("more engines than there are is a fault", () => {
    expect(ask(enginesNeeded, 0.000_001, 1)).toEqual({
      code: "unfit",
      sentence: "ENGINESNEEDED: difference 0.000001: beside a spread of 1 no number of engines would find it",
    });
  });

  test("a power in per cent is refused", () => {
    expect(ask(enginesNeeded, 1, 1, 90)).toEqual({
      code: "too-large",
      sentence: "ENGINESNEEDED: power 90 is too large: it must be a ratio of at least 0.5 and below 1",
    });
  });
});

test("a blank difference or spread leaves it blank", () => {
  for (const blank of BLANKS_AND_ZERO) {
    expect(ask(enginesNeeded, blank, 1)).toBe("");
    expect(ask(enginesNeeded, 1, blank)).toBe("");
    expect(ask(enginesNeeded, 1, 1, blank)).toBe(23);
  }
});
