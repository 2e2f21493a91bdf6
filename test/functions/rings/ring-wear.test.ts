import fc from "fast-check";
import { ringGapAtBore } from "../../../src/functions/rings/ring-gap-at-bore.ts";
import { ringWear } from "../../../src/functions/rings/ring-wear.ts";
import { millimetres, small } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // Geometry of the circle: a bore larger by .001 in opens the gap by .00314 in, with no wear of the ring.
  test("a gap that grew by .00314 in with a bore that grew by .001 in shows no wear of the ring", () => {
    expect(number(ringWear, 0.016, 0.016 + 0.00314, 4.134, 4.135)).toBeCloseTo(0, 6);
  });

  // The same circle, computed by hand: a face worn by 0.01 mm leaves a circle 0.02 mm smaller to fill, 2π × 0.01 = 0.0628319.
  test("a face worn by 0.01 mm opens the gap by 0.0628 mm", () => {
    expect(number(ringWear, 0.3, 0.3628319)).toBeCloseTo(0.01, 7);
  });
});

describe("identities", () => {
  test("what the bore's growth does to a gap, by RINGGAPATBORE, is no wear", () => {
    fc.assert(
      fc.property(small, millimetres, small, (gap, bore, growth) => {
        const later = number(ringGapAtBore, gap, bore, bore + growth);
        expect(number(ringWear, gap, later, bore, bore + growth)).toBeCloseTo(0, 8);
      }),
    );
  });

  test("wear put in as 2π × wear comes out, whatever the bore did", () => {
    fc.assert(
      fc.property(small, small, millimetres, small, (gap, wear, bore, growth) => {
        const later = gap + 2 * Math.PI * wear + Math.PI * growth;
        expect(number(ringWear, gap, later, bore, bore + growth)).toBeCloseTo(wear, 8);
      }),
    );
  });

  test("in inches it is the same wear", () => {
    fc.assert(
      fc.property(small, small, millimetres, small, (before, after, bore, growth) => {
        const metric = number(ringWear, before, after, bore, bore + growth);
        expect(number(ringWear, before / 25.4, after / 25.4, bore / 25.4, (bore + growth) / 25.4) * 25.4).toBeCloseTo(metric, 7);
      }),
    );
  });
});

describe("at the limits", () => {
  test("a gap that did not change shows no wear, and never -0", () => {
    expect(ask(ringWear, 0.3, 0.1 + 0.2)).toBe(0);
    expect(Object.is(ask(ringWear, 0.1 + 0.2, 0.3), -0)).toBe(false);
  });

  test("a gap that closed up gives wear below 0: the readings contradict each other", () => {
    expect(number(ringWear, 0.4, 0.3)).toBeLessThan(0);
  });
});

describe("faults", () => {
  test("two bores in two units are refused", () => {
    expect(ask(ringWear, 0.3, 0.5, 73, 2.875)).toEqual({
      code: "units",
      sentence: "RINGWEAR: boreAfter 2.875 is about 1/25.4 of boreBefore 73: is one in inches, the other in millimetres?",
    });
  });

  test("a negative gap is refused by name", () => {
    expect(ask(ringWear, -0.3, 0.5)).toEqual({ code: "too-small", sentence: "RINGWEAR: gapBefore -0.3 is too small: it must be a length above 0" });
  });

  test("a bad gap of several keeps to its own cell", () => {
    expect(ask(ringWear, 0.3, [[0.3], ["wide"]])).toEqual([[0], ['check: gapAfter holds the text "wide": it must be a length above 0']]);
  });
});

describe("blanks", () => {
  test("a gap not measured leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(ringWear, blank, 0.5)).toBe("");
      expect(ask(ringWear, 0.3, blank)).toBe("");
    }
  });

  test("without bores both gaps count as measured in one; with one bore only it stays blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(ringWear, 0.3, 0.5, blank, blank)).toBe(ask(ringWear, 0.3, 0.5));
      expect(ask(ringWear, 0.3, 0.5, 73, blank)).toBe("");
      expect(ask(ringWear, 0.3, 0.5, blank, 73.02)).toBe("");
    }
  });
});
