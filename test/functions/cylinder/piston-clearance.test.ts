import fc from "fast-check";
import { pistonClearance } from "../../../src/functions/cylinder/piston-clearance.ts";
import { verdict } from "../../../src/functions/verdict/verdict.ts";
import { bore, inInches } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const WORN = [
  [73.04, 73.03],
  [73.03, 73.02],
  [73.02, 73.02],
];

describe("cited values", () => {
  // TM 9-2815-260-24: piston clearance .003 to .006 in. Both ends of the range are within it.
  test.each([
    [4.003, "within"],
    [4.006, "within"],
    [4.0029, "under"],
    [4.0061, "over"],
  ])("a 4 in piston in a bore of %p in is %s by TM 9-2815-260-24", (size, word) => {
    expect(ask(verdict, number(pistonClearance, size, 4), 0.003, 0.006)).toBe(word);
  });

  test("the smallest reading counts unless told otherwise: there the piston seizes (common practice)", () => {
    expect(ask(pistonClearance, WORN, 72.98)).toBe(0.04);
    expect(ask(pistonClearance, WORN, 72.98, "largest")).toBe(0.06);
    expect(ask(pistonClearance, WORN, 72.98, "mean")).toBe(0.046666667);
  });
});

describe("identities", () => {
  test("smallest ≤ mean ≤ largest", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        const [least, middle, most] = ["smallest", "mean", "largest"].map((basis) => number(pistonClearance, readings, 72.5, basis));
        expect(least).toBeLessThanOrEqual(middle!);
        expect(middle).toBeLessThanOrEqual(most!);
      }),
    );
  });

  test("the order of the readings does not matter", () => {
    fc.assert(
      fc.property(bore, fc.constantFrom("smallest", "mean", "largest"), (readings, basis) => {
        const turned = readings.toReversed().map((row) => row.toReversed());
        expect(ask(pistonClearance, turned, 72.5, basis)).toBe(ask(pistonClearance, readings, 72.5, basis));
      }),
    );
  });

  test("in inches it is the same clearance, in inches", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        expect(number(pistonClearance, inInches(readings), 72.5 / 25.4) * 25.4).toBeCloseTo(number(pistonClearance, readings, 72.5), 7);
      }),
    );
  });
});

describe("at the limits", () => {
  test("73.04 − 73.00 is 0.04", () => {
    expect(ask(pistonClearance, 73.04, 73.0)).toBe(0.04);
  });

  test("a piston as large as its bore has no clearance", () => {
    expect(ask(pistonClearance, WORN, 73.02)).toBe(0);
  });

  test("the basis is read without regard to case or spaces", () => {
    expect(ask(pistonClearance, WORN, 72.98, " Largest ")).toBe(0.06);
  });

  test("one bore meets several pistons, and several bores several pistons", () => {
    expect(ask(pistonClearance, WORN, [[72.98], [72.99]])).toEqual([[0.04], [0.03]]);
    expect(
      ask(
        pistonClearance,
        [
          [73.02, 73.03],
          [73.04, 73.05],
        ],
        [[72.98], [72.99]],
        undefined,
        2,
      ),
    ).toEqual([[0.04], [0.05]]);
  });
});

describe("faults", () => {
  test("a skirt beside each row of readings without axes is asked about: four bores would be taken for one", () => {
    const bores = [
      [73.04, 73.03],
      [73.05, 73.04],
      [73.04, 73.04],
      [73.03, 73.02],
    ];
    const skirts = [[73], [73], [72.99], [72.98]];
    expect(ask(pistonClearance, bores, skirts)).toEqual({
      code: "missing",
      sentence:
        "PISTONCLEARANCE: axes is not given: it must be the number of axes measured at each height, as there are 4 rows of readings and 4 cells of skirt: is each row one bore?",
    });
    expect(ask(pistonClearance, bores, skirts, "", 2)).toEqual([[0.03], [0.04], [0.05], [0.04]]);
  });

  test("a skirt with its decimal point elsewhere is refused", () => {
    expect(ask(pistonClearance, 73.04, 7.3)).toEqual({
      code: "units",
      sentence: "PISTONCLEARANCE: skirt 7.3 is about 1/10 of bore 73.04: is a decimal point wrong?",
    });
  });

  test("a piston larger than its bore is refused and both are named", () => {
    expect(ask(pistonClearance, 73.02, 73.06)).toEqual({
      code: "swapped",
      sentence: "PISTONCLEARANCE: skirt 73.06 is larger than bore 73.02: are they swapped?",
    });
  });

  test("a skirt in inches is refused and both are named", () => {
    expect(ask(pistonClearance, WORN, 2.873)).toEqual({
      code: "units",
      sentence: "PISTONCLEARANCE: skirt 2.873 is about 1/25.4 of bore 73.02: is one in inches, the other in millimetres?",
    });
  });

  test("a basis that is not one of the three is refused with the three", () => {
    expect(ask(pistonClearance, WORN, 72.98, "middle")).toEqual({
      code: "not-a-choice",
      sentence: 'PISTONCLEARANCE: basis "middle" is not known: it must be one of smallest, mean, largest',
    });
  });
});

describe("blanks", () => {
  test("a blank reading or skirt leaves the clearance blank; a blank basis is the default", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(pistonClearance, [[73.04, blank as number]], 73)).toBe("");
      expect(ask(pistonClearance, 73.04, blank)).toBe("");
      expect(ask(pistonClearance, WORN, 72.98, blank)).toBe(0.04);
    }
  });
});
