import fc from "fast-check";
import { chamberFor } from "../../../src/functions/volumes/chamber-for.ts";
import { compressionRatio } from "../../../src/functions/volumes/compression-ratio.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const cubic = fc.integer({ min: 100, max: 9000 }).map((tenths) => tenths / 10);

describe("cited values", () => {
  // FAA-H-8083-32 (from memory): 140 in³ with the piston down and 20 in³ with it up is 7:1.
  test("7:1 of 120 in³ swept wants 20 in³", () => {
    expect(ask(chamberFor, 7, 120)).toBe(20);
  });

  // A magazine's worked example: 43.731 in³ swept, piston 0.305, deck 0.62832, gasket 0.251328 and
  // chamber 4.272 in³ give 9.01:1; with all digits of its inputs 9.014261 (computed).
  test("the magazine's 9.01:1 wants its chamber of 4.272 in³", () => {
    expect(number(chamberFor, 9.0142607696, 43.731, 0.251328, 0.62832, 0.305)).toBeCloseTo(4.272, 8);
    expect(number(chamberFor, 9.01, 43.731, 0.251328, 0.62832, 0.305)).toBeCloseTo(4.272, 2);
  });
});

describe("identities", () => {
  test("COMPRESSIONRATIO with this chamber gives the ratio back", () => {
    const ratio = fc.integer({ min: 15, max: 220 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(ratio, cubic, fc.integer({ min: -50, max: 50 }), (wanted, swept, tenths) => {
        const parts = [swept / 100, tenths / 100, -tenths / 200] as const;
        fc.pre(swept / (wanted - 1) - parts[0] - parts[1] - parts[2] > 0.01);
        const chamber = number(chamberFor, wanted, swept, ...parts);
        expect(number(compressionRatio, swept, chamber, ...parts)).toBeCloseTo(wanted, 4);
      }),
    );
  });

  test("the unit of the volumes is that of the result", () => {
    fc.assert(
      fc.property(cubic, (swept) => {
        const per = 16.387064;
        expect(number(chamberFor, 9.5, swept / per, swept / 200 / per) * per).toBeCloseTo(number(chamberFor, 9.5, swept, swept / 200), 6);
      }),
    );
  });

  test("a dish in the piston wants a smaller chamber by as much, a dome a larger one", () => {
    expect(number(chamberFor, 9, 249.2, 0, 0, 2)).toBeCloseTo(number(chamberFor, 9, 249.2) - 2, 8);
    expect(number(chamberFor, 9, 249.2, 0, 0, -2)).toBeCloseTo(number(chamberFor, 9, 249.2) + 2, 8);
  });
});

describe("at the limits", () => {
  test("a ratio of 2 wants as much room as is swept", () => {
    expect(ask(chamberFor, 2, 249.2)).toBe(249.2);
  });

  test("ratios down the sheet and gaskets across it give a block", () => {
    expect(ask(chamberFor, [[7], [11]], 120, [[0, 2]])).toEqual([
      [20, 18],
      [12, 10],
    ]);
  });
});

describe("faults", () => {
  test("no room for a chamber is refused, also when exactly nothing is left", () => {
    const sentence = "CHAMBERFOR: ratio 13: gasket, deck and piston alone leave no room for a chamber at this ratio";
    expect(ask(chamberFor, 13, 120, 3, 4, 5)).toEqual({ code: "unfit", sentence });
    expect(ask(chamberFor, 13, 120, 3, 3, 3.9)).toBe(0.1);
    expect(ask(chamberFor, 13, 120, 3, 3, 3.9 + 0.1)).toEqual({ code: "unfit", sentence });
  });

  test("a ratio of 1 or less is refused", () => {
    expect(ask(chamberFor, 1, 120)).toEqual({ code: "too-small", sentence: "CHAMBERFOR: ratio 1 is too small: it must be a ratio above 1" });
  });

  test("a negative gasket is refused, a negative deck is a piston that stands proud", () => {
    expect(ask(chamberFor, 7, 120, -1)).toEqual({ code: "too-small", sentence: "CHAMBERFOR: gasket -1 is too small: it must be a volume of at least 0" });
    expect(ask(chamberFor, 7, 120, 0, -1)).toBe(21);
  });
});

describe("blanks", () => {
  test("a blank ratio or swept volume leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(chamberFor, blank, 120)).toBe("");
      expect(ask(chamberFor, 7, blank)).toBe("");
    }
  });

  test("a blank gasket, deck or piston counts as none", () => {
    for (const blank of [...BLANKS, 0]) expect(ask(chamberFor, 7, 120, blank, blank, blank)).toBe(20);
  });
});
