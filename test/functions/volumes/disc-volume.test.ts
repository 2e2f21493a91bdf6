import fc from "fast-check";
import { discVolume } from "../../../src/functions/volumes/disc-volume.ts";
import { sweptVolume } from "../../../src/functions/volumes/swept-volume.ts";
import { inches, millimetres } from "../arbitrary.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // A disc is a cylinder: FAA AMT General handbook, 5.5 in across and 5.4 in high is 128.29 in³ (±0.05).
  test("a disc as high as the handbook's stroke has the handbook's volume", () => {
    expect(Math.abs(number(discVolume, 5.5, 5.4, "in") - 128.29)).toBeLessThanOrEqual(0.05);
  });

  // Computed from the definition: π/4 × 75² × 1.2 mm³.
  test("a gasket of 75 mm bore and 1.2 mm thickness holds 5.3014 cm³", () => {
    expect(number(discVolume, 75, 1.2)).toBeCloseTo(5.3014376, 7);
  });
});

describe("identities", () => {
  test("a disc as thick as the stroke is the swept volume", () => {
    fc.assert(
      fc.property(millimetres, millimetres, (bore, stroke) => expect(number(discVolume, bore, stroke)).toBeCloseTo(number(sweptVolume, bore, stroke), 6)),
    );
  });

  // 1 in³ is 16.387064 cm³ exactly (NIST SP 811, appendix B).
  test("in inches it is the same volume: 16.387064 cm³ to the in³", () => {
    fc.assert(
      fc.property(inches, (diameter) => {
        expect(number(discVolume, diameter * 25.4, 1.27) / (number(discVolume, diameter, 0.05, "in") * 16.387064)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe("at the limits", () => {
  test("no thickness is no volume; a piston that stands proud takes volume away", () => {
    expect(ask(discVolume, 73, 0)).toBe(0);
    expect(number(discVolume, 73, -0.2)).toBe(-number(discVolume, 73, 0.2));
  });
});

describe("faults", () => {
  test("a negative diameter is refused", () => {
    expect(ask(discVolume, -73, 1)).toEqual({ code: "too-small", sentence: "DISCVOLUME: diameter -73 is too small: it must be a length above 0" });
  });

  test("a thickness in words is refused", () => {
    expect(ask(discVolume, 73, "1.2 mm")).toEqual({ code: "text", sentence: 'DISCVOLUME: thickness holds the text "1.2 mm": it must be a length' });
  });
});

describe("blanks", () => {
  test("a blank diameter or thickness leaves the volume blank; 0 is a thickness", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(discVolume, blank, 1.2)).toBe("");
    for (const blank of BLANKS) expect(ask(discVolume, 73, blank)).toBe("");
  });
});
