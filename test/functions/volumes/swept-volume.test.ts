import fc from "fast-check";
import { sweptVolume } from "../../../src/functions/volumes/swept-volume.ts";
import { inches, millimetres } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // FAA AMT General handbook: 5.5 × 5.4 in is 128.29 in³, eight cylinders 1026.32 in³ (±0.05, as it
  // rounds on the way).
  test("the worked example of the FAA general handbook", () => {
    expect(Math.abs(number(sweptVolume, 5.5, 5.4, 1, "in") - 128.29)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(number(sweptVolume, 5.5, 5.4, 8, "in") - 1026.32)).toBeLessThanOrEqual(0.05);
  });

  // NACA TR 250: engine of 5 in bore and 7 in stroke (computed from its dimensions).
  test("the 5 × 7 in engine of NACA TR 250 sweeps 137.4447 in³", () => {
    expect(number(sweptVolume, 5, 7, 1, "in")).toBeCloseTo(137.4447, 4);
  });

  // Fuel-rating engine, 82.5 × 114.3 mm and 3.25 × 4.5 in (computed from its dimensions).
  test("the fuel-rating engine sweeps 611.00 cm³, or 37.331 in³", () => {
    expect(number(sweptVolume, 82.5, 114.3)).toBeCloseTo(611.0, 2);
    expect(number(sweptVolume, 3.25, 4.5, 1, "in")).toBeCloseTo(37.331, 3);
  });
});

describe("identities", () => {
  // 1 in is 25.4 mm exactly, so 1 in³ is 16.387064 cm³ exactly (NIST SP 811, appendix B).
  test("in inches it is the same volume: 16.387064 cm³ to the in³", () => {
    fc.assert(
      fc.property(inches, inches, (bore, stroke) => {
        expect(number(sweptVolume, bore * 25.4, stroke * 25.4) / (number(sweptVolume, bore, stroke, 1, "in") * 16.387064)).toBeCloseTo(1, 12);
      }),
    );
  });

  test("twice the stroke or the cylinders is twice the volume, twice the bore four times", () => {
    fc.assert(
      fc.property(millimetres, millimetres, fc.integer({ min: 1, max: 16 }), (bore, stroke, cylinders) => {
        const plain = number(sweptVolume, bore, stroke, cylinders);
        expect(number(sweptVolume, bore, stroke, 2 * cylinders) / plain).toBeCloseTo(2, 12);
        expect(number(sweptVolume, bore, 2 * stroke, cylinders) / plain).toBeCloseTo(2, 12);
        expect(number(sweptVolume, 2 * bore, stroke, cylinders) / plain).toBeCloseTo(4, 12);
      }),
    );
  });
});

describe("at the limits", () => {
  test("without cylinders and unit it is one cylinder in millimetres", () => {
    expect(ask(sweptVolume, 73, 74)).toBe(ask(sweptVolume, 73, 74, 1, "mm"));
  });

  test("bores down the sheet and strokes across it give a block", () => {
    const block = ask(sweptVolume, [[73], [75]], [[74, 80, 82]]) as number[][];
    expect(block.map((row) => row.length)).toEqual([3, 3]);
    expect(block[1]![2]).toBe(ask(sweptVolume, 75, 82));
  });
});

describe("faults", () => {
  test("an unknown unit is refused with the two known ones", () => {
    expect(ask(sweptVolume, 73, 74, 1, "cm")).toEqual({ code: "not-a-choice", sentence: 'SWEPTVOLUME: unit "cm" is not known: it must be one of mm, in' });
  });

  test("half a cylinder and fewer than one are refused", () => {
    expect(ask(sweptVolume, 73, 74, 2.5)).toEqual({
      code: "not-whole",
      sentence: "SWEPTVOLUME: cylinders 2.5 is not a whole number: it must be a whole number of at least 1",
    });
    expect(ask(sweptVolume, 73, 74, -3)).toEqual({
      code: "too-small",
      sentence: "SWEPTVOLUME: cylinders -3 is too small: it must be a whole number of at least 1",
    });
  });

  test("the unit in the place of the cylinders is refused by name", () => {
    expect(ask(sweptVolume, 73, 74, "in")).toEqual({
      code: "text",
      sentence: 'SWEPTVOLUME: cylinders holds the text "in": it must be a whole number of at least 1',
    });
  });

  test("a volume beyond what a number can hold is refused", () => {
    expect(ask(sweptVolume, 1e200, 74)).toEqual({ code: "unfit", sentence: "SWEPTVOLUME: bore 1e+200: the result is not a finite number with these inputs" });
  });
});

describe("blanks", () => {
  test("a blank bore or stroke leaves the volume blank; blank cylinders and unit are the defaults", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(sweptVolume, blank, 74)).toBe("");
      expect(ask(sweptVolume, 73, blank)).toBe("");
      expect(ask(sweptVolume, 73, 74, blank, blank)).toBe(ask(sweptVolume, 73, 74));
    }
  });
});
