import fc from "fast-check";
import { boreWear } from "../../../src/functions/cylinder/bore-wear.ts";
import { shaftWear } from "../../../src/functions/shafts/shaft-wear.ts";
import { bore, inInches } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // The smallest reading counts: common practice. 2.0000 − 1.9975.
  test("a crankpin of 2 in with 1.9975 as its smallest reading has worn by .0025", () => {
    expect(
      ask(
        shaftWear,
        [
          [1.9985, 1.998],
          [1.9985, 1.9975],
        ],
        2,
      ),
    ).toBe(0.0025);
  });
});

describe("identities", () => {
  test("standard less each reading, of which the largest; as a bore turned inside out; in inches the same", () => {
    fc.assert(
      fc.property(bore, fc.integer({ min: 7300, max: 7400 }), (readings, hundredths) => {
        const standard = hundredths / 100;
        const worst = Math.max(...readings.flat().map((reading) => hundredths - Math.round(reading * 100))) / 100;
        expect(number(shaftWear, readings, standard)).toBe(worst + 0);
        const mirrored = readings.map((line) => line.map((reading) => Number((2 * standard - reading).toFixed(2))));
        expect(number(boreWear, mirrored, standard)).toBe(worst + 0);
        expect(number(shaftWear, inInches(readings), standard / 25.4) * 25.4).toBeCloseTo(worst, 6);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("above its standard size a journal has negative wear, at it none", () => {
    expect(ask(shaftWear, [[50.005, 50.004]], 50)).toBe(-0.004);
    expect(ask(shaftWear, [[50, 50]], 50)).toBe(0);
  });
});

describe("faults", () => {
  test("readings in inches beside a standard in millimetres are refused", () => {
    expect(ask(shaftWear, [[1.9685, 1.9684]], 50)).toEqual({
      code: "units",
      sentence: "SHAFTWEAR: readings 1.9684 is about 1/25.4 of standard 50: is one in inches, the other in millimetres?",
    });
  });

  test("with axes each row is a journal, and a bad one keeps to itself", () => {
    expect(ask(shaftWear, [[49.98, 49.96], [49.98, "x"], [""]].map((line) => (line.length === 1 ? ["", ""] : line)) as never, 50, 2)).toEqual([
      [0.04],
      ['check: readings holds the text "x": it must be a length above 0 (row 2, column 2)'],
      [""],
    ]);
  });
});

describe("blanks", () => {
  test("a reading or the standard not filled in leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(shaftWear, [[49.98, blank as number]], 50)).toBe("");
      expect(ask(shaftWear, [[49.98, 49.97]], blank)).toBe("");
    }
  });
});
