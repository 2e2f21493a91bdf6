import fc from "fast-check";
import { hotClearance } from "../../../src/functions/cylinder/hot-clearance.ts";
import { MATERIAL_NAMES } from "../../../src/functions/measurement/materials.ts";
import { heatForFit } from "../../../src/functions/shafts/heat-for-fit.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const sizes = fc.integer({ min: 2000, max: 8000 }).map((hundredths) => hundredths / 100);
const microns = fc.integer({ min: 0, max: 40 }).map((thousandths) => thousandths / 1000);

describe("cited values", () => {
  // D. Swyt, J. Res. NIST 99(1), 31, 1994: 100 mm of aluminium grows by 11.55 µm over 5 K.
  test("a hole of 100 mm in aluminium takes a shaft 11.55 µm larger at 25 °C", () => {
    expect(number(heatForFit, 100.01155, 100, 0, "aluminium")).toBeCloseTo(25, 8);
  });
});

describe("identities", () => {
  test("heated so far, HOTCLEARANCE finds just the gap", () => {
    fc.assert(
      fc.property(sizes, microns, microns, fc.constantFrom(...MATERIAL_NAMES), (hole, tight, gap, material) => {
        // HOTCLEARANCE wants a running fit when cold: the shaft takes its size as a gap that is wanted.
        const at = ask(heatForFit, hole, hole, tight + gap, material);
        if (typeof at !== "number") return expect(at).toMatchObject({ code: "unfit" });
        expect(number(hotClearance, hole, material, at, hole, "steel", 20)).toBeCloseTo(tight + gap, 7);
        expect(number(heatForFit, hole + tight, hole, gap, material)).toBeCloseTo(at, 4);
      }),
      { numRuns: 400 },
    );
  });

  test("in inches the same temperature; a warmer room by as much more; a larger gap never cooler", () => {
    fc.assert(
      fc.property(sizes, microns, microns, fc.integer({ min: -10, max: 35 }), (hole, tight, gap, room) => {
        const hot = number(heatForFit, hole + tight, hole, gap, "steel", 20);
        expect(number(heatForFit, (hole + tight) / 25.4, hole / 25.4, gap / 25.4, "steel", 20)).toBeCloseTo(hot, 4);
        expect(number(heatForFit, hole + tight, hole, gap, "steel", room)).toBeCloseTo(hot + room - 20, 6);
        expect(number(heatForFit, hole + tight, hole, gap + 0.001, "steel", 20)).toBeGreaterThan(hot);
      }),
    );
  });
});

describe("at the limits", () => {
  test("what goes over cold wants no heat", () => {
    expect(ask(heatForFit, 50, 50, 0, "steel")).toBe(20);
    expect(ask(heatForFit, 49.9, 50, 0.05, "steel", 17)).toBe(17);
  });
});

describe("faults", () => {
  test("a fit that would glow is refused", () => {
    expect(ask(heatForFit, 20.15, 20, 0.05, "steel")).toEqual({
      code: "unfit",
      sentence: "HEATFORFIT: gap 0.05: it asks for 890 °C, and no part is heated beyond 600 for a fit",
    });
  });

  test("an unknown material, a shaft in inches and a negative gap are refused", () => {
    expect(ask(heatForFit, 50.05, 50, 0.05, "wood")).toMatchObject({ code: "not-a-choice" });
    expect(ask(heatForFit, 1.97, 50, 0.05, "steel")).toEqual({
      code: "units",
      sentence: "HEATFORFIT: shaft 1.97 is about 1/25.4 of hole 50: is one in inches, the other in millimetres?",
    });
    expect(ask(heatForFit, 50, 50, -0.05, "steel")).toEqual({
      code: "too-small",
      sentence: "HEATFORFIT: gap -0.05 is too small: it must be a length of at least 0",
    });
  });
});

describe("blanks", () => {
  test("a blank input leaves it blank, a blank room is 20 °C, a room of 0 is one", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(heatForFit, blank, 50, 0.05, "steel")).toBe("");
      expect(ask(heatForFit, 50.05, blank, 0.05, "steel")).toBe("");
      expect(ask(heatForFit, 50.05, 50, 0.05, blank)).toBe("");
    }
    for (const blank of BLANKS) {
      expect(ask(heatForFit, 50.05, 50, blank, "steel")).toBe("");
      expect(ask(heatForFit, 50, 50, 0, "steel", blank)).toBe(20);
    }
    expect(ask(heatForFit, 50, 50, 0, "steel", 0)).toBe(0);
  });
});
