import fc from "fast-check";
import { hotClearance } from "../../../src/functions/cylinder/hot-clearance.ts";
import { millimetres, small } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const degrees = fc.integer({ min: -20, max: 300 });

describe("cited values", () => {
  // Coefficients of Callister & Rethwisch, Appendix B: grey iron 11.4, aluminium 356.0 21.5 ×10⁻⁶/K.
  // Over +10 K an 80 mm iron bore grows by 9.12 µm and an 80 mm piston by 17.20 µm (computed by hand).
  test("an 80 mm piston of 356.0 in an iron bore loses 8.08 µm over 10 K", () => {
    expect(number(hotClearance, 80, "grey iron", 30, 80, "cast aluminium", 30)).toBeCloseTo(-0.00808, 8);
    expect(number(hotClearance, 80, 11.4, 30, 80, 21.5, 30)).toBeCloseTo(-0.00808, 8);
    expect(number(hotClearance, 80, "grey iron", 30, 80, "cast aluminium", 20)).toBeCloseTo(0.00912, 8);
    expect(number(hotClearance, 80, "grey iron", 20, 80, "cast aluminium", 30)).toBeCloseTo(-0.0172, 8);
  });

  // D. Swyt, J. Res. NIST 99(1), 31, 1994: 100 mm of aluminium (23.1 ×10⁻⁶/K) grows by 11.55 µm over 5 K.
  test("a 100 mm aluminium bore opens by 11.55 µm over 5 K", () => {
    expect(number(hotClearance, 100, "aluminium", 25, 99.9, "steel", 20)).toBeCloseTo(0.1 + 0.01155, 8);
  });
});

describe("identities", () => {
  test("with both parts at 20 °C, or at 68 °F, the clearance is the cold one", () => {
    fc.assert(
      fc.property(millimetres, small, (piston, gap) => {
        const bore = Number((piston + gap).toFixed(2));
        expect(ask(hotClearance, bore, "grey iron", 20, piston, "piston alloy", 20)).toBe(gap);
        expect(ask(hotClearance, bore, "grey iron", 68, piston, "piston alloy", 68, "F")).toBe(gap);
      }),
    );
  });

  test("in one material at one temperature bore, piston and clearance grow by one factor", () => {
    fc.assert(
      fc.property(millimetres, small, degrees, (piston, gap, at) => {
        const hot = number(hotClearance, piston + gap, 11.4, at, piston, 11.4, at);
        expect(hot).toBeCloseTo(gap * (1 + 11.4e-6 * (at - 20)), 7);
      }),
    );
  });

  test("Fahrenheit is the same place on another scale", () => {
    fc.assert(
      fc.property(millimetres, small, degrees, degrees, (piston, gap, bore, skirt) => {
        const celsius = number(hotClearance, piston + gap, "grey iron", bore, piston, "piston alloy", skirt);
        const fahrenheit = number(hotClearance, piston + gap, "grey iron", bore * 1.8 + 32, piston, "piston alloy", skirt * 1.8 + 32, "F");
        expect(fahrenheit).toBeCloseTo(celsius, 7);
      }),
    );
  });

  test("a hotter piston never has more clearance, a hotter bore never less", () => {
    fc.assert(
      fc.property(millimetres, small, degrees, (piston, gap, at) => {
        const hot = (bore: number, skirt: number) => number(hotClearance, piston + gap, "grey iron", bore, piston, "piston alloy", skirt);
        expect(hot(at, at + 1)).toBeLessThan(hot(at, at));
        expect(hot(at + 1, at)).toBeGreaterThan(hot(at, at));
      }),
    );
  });
});

describe("at the limits", () => {
  test("a piston as large as its bore is allowed cold, and tight when hot", () => {
    expect(ask(hotClearance, 73, "grey iron", 20, 73, "piston alloy", 20)).toBe(0);
    expect(number(hotClearance, 73, "grey iron", 90, 73, "piston alloy", 90)).toBeLessThan(0);
  });
});

describe("faults", () => {
  test("a piston larger than its bore is refused and both are named", () => {
    expect(ask(hotClearance, 72.96, "grey iron", 90, 73, "piston alloy", 110)).toEqual({
      code: "swapped",
      sentence: "HOTCLEARANCE: piston 73 is larger than bore 72.96: are they swapped?",
    });
  });

  test("a piston in inches in a bore in millimetres is refused", () => {
    expect(ask(hotClearance, 73, "grey iron", 90, 2.872, "piston alloy", 110)).toEqual({
      code: "units",
      sentence: "HOTCLEARANCE: piston 2.872 is about 1/25.4 of bore 73: is one in inches, the other in millimetres?",
    });
  });

  test("each unknown material is refused under its own name", () => {
    const wanted =
      "it must be one of grey iron, ductile iron, steel, carbon steel, alloy steel, stainless steel, aluminium, cast aluminium, wrought aluminium, piston alloy, magnesium, brass, bronze, copper, titanium, or a coefficient in millionths per K, such as 11.5";
    expect(ask(hotClearance, 73, "wood", 90, 72.96, "piston alloy", 110)).toEqual({
      code: "not-a-choice",
      sentence: `HOTCLEARANCE: boreMaterial "wood" is not known: ${wanted}`,
    });
    expect(ask(hotClearance, 73, "grey iron", 90, 72.96, "wood", 110)).toEqual({
      code: "not-a-choice",
      sentence: `HOTCLEARANCE: pistonMaterial "wood" is not known: ${wanted}`,
    });
  });

  test("a temperature that no part has is refused under its own name", () => {
    expect(ask(hotClearance, 73, "grey iron", -1e6, 72.96, "piston alloy", 110)).toEqual({
      code: "unfit",
      sentence: "HOTCLEARANCE: boreTemperature -1000000: no part is as cold as that",
    });
    expect(ask(hotClearance, 73, "grey iron", 90, 72.96, "piston alloy", -1e6)).toEqual({
      code: "unfit",
      sentence: "HOTCLEARANCE: pistonTemperature -1000000: no part is as cold as that",
    });
  });

  test("so is one at which nothing would be left of the part", () => {
    // 1 − 200e-6 × 5000.
    expect(ask(hotClearance, 73, "200", -4980, 72.9, "steel", 20)).toMatchObject({ code: "unfit" });
  });

  test("an unknown scale is refused", () => {
    expect(ask(hotClearance, 73, "grey iron", 90, 72.96, "piston alloy", 110, "K")).toEqual({
      code: "not-a-choice",
      sentence: 'HOTCLEARANCE: unit "K" is not known: it must be one of C, F',
    });
  });
});

describe("blanks", () => {
  test("a size or a material not filled in leaves the clearance blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(hotClearance, blank, "grey iron", 90, 72.96, "piston alloy", 110)).toBe("");
      expect(ask(hotClearance, 73, blank, 90, 72.96, "piston alloy", 110)).toBe("");
      expect(ask(hotClearance, 73, "grey iron", 90, blank, "piston alloy", 110)).toBe("");
      expect(ask(hotClearance, 73, "grey iron", 90, 72.96, blank, 110)).toBe("");
    }
  });

  test("a temperature not filled in leaves it blank, one of 0 counts", () => {
    expect(ask(hotClearance, 73, "grey iron", "", 72.96, "piston alloy", 110)).toBe("");
    expect(ask(hotClearance, 73, "grey iron", 90, 72.96, "piston alloy", null)).toBe("");
    expect(number(hotClearance, 73, "grey iron", 0, 72.96, "piston alloy", 20)).toBeLessThan(0.04);
  });
});
