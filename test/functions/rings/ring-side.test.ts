import fc from "fast-check";
import { ringSide } from "../../../src/functions/rings/ring-side.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const width = fc.integer({ min: 100, max: 600 }).map((hundredths) => hundredths / 100);
const gap = fc.integer({ min: 0, max: 20 }).map((hundredths) => hundredths / 100);

describe("cited values", () => {
  // ISO 286 (a fit like any other), over 1 to 3 mm: H7 +0.010/0, f7 −0.006/−0.016 (from memory).
  test("a 2 H7/f7 fit has 0.006 to 0.026", () => {
    expect(ask(ringSide, 2.0, 1.994)).toBe(0.006);
    expect(ask(ringSide, 2.01, 1.984)).toBe(0.026);
  });
});

describe("identities", () => {
  test("groove = ring + clearance, to the typed digit", () => {
    fc.assert(fc.property(width, gap, (ring, side) => expect(ask(ringSide, Number((ring + side).toFixed(2)), ring)).toBe(side)));
  });

  test("in inches it is the same clearance", () => {
    fc.assert(
      fc.property(width, gap, (ring, side) =>
        expect(number(ringSide, (ring + side) / 25.4, ring / 25.4) * 25.4).toBeCloseTo(number(ringSide, ring + side, ring), 7),
      ),
    );
  });
});

describe("at the limits", () => {
  test("1.54 − 1.48 is 0.06, which in binary it is not", () => {
    expect(1.54 - 1.48).not.toBe(0.06);
    expect(ask(ringSide, 1.54, 1.48)).toBe(0.06);
  });

  test("a ring as wide as its groove has no clearance", () => {
    expect(ask(ringSide, 0.3, 0.1 + 0.2)).toBe(0);
  });
});

describe("faults", () => {
  test("a ring wider than its groove is refused and both are named", () => {
    expect(ask(ringSide, 1.48, 1.54)).toEqual({ code: "swapped", sentence: "RINGSIDE: ring 1.54 is larger than groove 1.48: are they swapped?" });
  });

  test("a ring in inches in a groove in millimetres is refused", () => {
    expect(ask(ringSide, 1.54, 0.058)).toEqual({
      code: "units",
      sentence: "RINGSIDE: ring 0.058 is about 1/25.4 of groove 1.54: is one in inches, the other in millimetres?",
    });
  });

  test("of several rings only the bad one shows the check text", () => {
    expect(ask(ringSide, [[1.54], [1.5]], 1.52)).toEqual([[0.02], ["check: ring 1.52 is larger than groove 1.5: are they swapped?"]]);
  });
});

describe("blanks", () => {
  test("a groove or ring not measured leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(ringSide, blank, 1.48)).toBe("");
      expect(ask(ringSide, 1.54, blank)).toBe("");
    }
  });
});
