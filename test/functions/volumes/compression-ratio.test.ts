import fc from "fast-check";
import { compressionRatio } from "../../../src/functions/volumes/compression-ratio.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const cubic = fc.integer({ min: 100, max: 9000 }).map((tenths) => tenths / 10);

describe("cited values", () => {
  // FAA-H-8083-32 (from memory): 140 in³ with the piston down and 20 in³ with it up is 7:1.
  test("140 in³ to 20 in³ is a ratio of 7", () => {
    expect(ask(compressionRatio, 120, 20)).toBe(7);
  });

  // Computed from the definition: (249.2 + 27.2) / 27.2.
  test("a gasket counts into the clearance volume", () => {
    expect(number(compressionRatio, 249.2, 24.1, 3.1)).toBeCloseTo(10.1617647, 7);
  });
});

describe("identities", () => {
  test("it does not matter in which part of the space above the piston a volume is", () => {
    fc.assert(
      fc.property(cubic, cubic, cubic, (swept, chamber, more) => {
        const ratio = number(compressionRatio, swept, chamber + more);
        expect(number(compressionRatio, swept, chamber, more)).toBeCloseTo(ratio, 8);
        expect(number(compressionRatio, swept, chamber, 0, more)).toBeCloseTo(ratio, 8);
        expect(number(compressionRatio, swept, chamber, 0, 0, more)).toBeCloseTo(ratio, 8);
      }),
    );
  });

  test("the unit of the volumes cancels", () => {
    fc.assert(
      fc.property(cubic, cubic, cubic, (swept, chamber, gasket) => {
        const per = 16.387064;
        expect(number(compressionRatio, swept / per, chamber / per, gasket / per)).toBeCloseTo(number(compressionRatio, swept, chamber, gasket), 5);
      }),
    );
  });

  test("a dome raises the ratio, a dish lowers it", () => {
    fc.assert(
      fc.property(cubic, cubic, (swept, chamber) => {
        const flat = number(compressionRatio, swept, chamber);
        expect(number(compressionRatio, swept, chamber, 0, 0, -1)).toBeGreaterThan(flat);
        expect(number(compressionRatio, swept, chamber, 0, 0, 1)).toBeLessThan(flat);
      }),
    );
  });
});

describe("at the limits", () => {
  test("a clearance volume as large as the swept one is a ratio of 2", () => {
    expect(ask(compressionRatio, 249.2, 249.2)).toBe(2);
  });

  test("chambers down the sheet and gaskets across it give a block", () => {
    expect(ask(compressionRatio, 120, [[20], [18]], [[0, 2]])).toEqual([
      [7, 6.454545455],
      [7.666666667, 7],
    ]);
  });
});

describe("faults", () => {
  test("a dome larger than all the space above it is refused with what is left", () => {
    expect(ask(compressionRatio, 249.2, 24.1, 3.1, 0, -30)).toEqual({
      code: "unfit",
      sentence: "COMPRESSIONRATIO: chamber 24.1: with gasket, deck and piston it leaves a clearance volume of -2.8, which must be above 0",
    });
  });

  test("a dome that leaves exactly nothing is refused, whatever binary makes of it", () => {
    expect(0.1 + 0.2 - 0.3).not.toBe(0);
    expect(ask(compressionRatio, 249.2, 0.1, 0.2, 0, -0.3)).toEqual({
      code: "unfit",
      sentence: "COMPRESSIONRATIO: chamber 0.1: with gasket, deck and piston it leaves a clearance volume of 0, which must be above 0",
    });
  });

  test("a negative gasket is refused, a negative deck is a piston that stands proud", () => {
    expect(ask(compressionRatio, 249.2, 24.1, -3.1)).toEqual({
      code: "too-small",
      sentence: "COMPRESSIONRATIO: gasket -3.1 is too small: it must be a volume of at least 0",
    });
    expect(ask(compressionRatio, 120, 21, 0, -1)).toBe(7);
  });
});

describe("blanks", () => {
  test("a blank swept volume or chamber leaves the ratio blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(compressionRatio, blank, 24.1)).toBe("");
      expect(ask(compressionRatio, 249.2, blank)).toBe("");
    }
  });

  test("a blank gasket, deck or piston counts as none", () => {
    for (const blank of [...BLANKS, 0]) expect(ask(compressionRatio, 120, 20, blank, blank, blank)).toBe(7);
  });
});
