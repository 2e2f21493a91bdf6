import fc from "fast-check";
import { boreWear } from "../../../src/functions/cylinder/bore-wear.ts";
import { bore, inInches } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // US Navy Engineman training manual p. 3-5: every height and axis is recorded; that the largest
  // reading counts is common practice. The readings are ours, the difference follows by subtraction.
  test("the largest of three heights and two axes counts, wherever it is", () => {
    expect(
      ask(
        boreWear,
        [
          [73.05, 73.04],
          [73.07, 73.03],
          [73.01, 73.01],
        ],
        73,
      ),
    ).toBe(0.07);
  });

  // TM 55-1905-219-14-10 p. 5-368 reckons from the standard bore; 4.6285 in is its limit for boring.
  test("in inches, to the ten-thousandth", () => {
    expect(ask(boreWear, [[4.6285, 4.628]], 4.626)).toBe(0.0025);
  });
});

describe("identities", () => {
  test("the order of the readings does not matter", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        expect(
          ask(
            boreWear,
            readings.toReversed().map((row) => row.toReversed()),
            73,
          ),
        ).toBe(ask(boreWear, readings, 73));
      }),
    );
  });

  test("wear in inches is the same wear, in inches", () => {
    fc.assert(fc.property(bore, (readings) => expect(number(boreWear, inInches(readings), 73 / 25.4) * 25.4).toBeCloseTo(number(boreWear, readings, 73), 7)));
  });

  test("a standard larger by a hundredth leaves a hundredth less wear", () => {
    fc.assert(
      fc.property(bore, fc.integer({ min: 7250, max: 7350 }), (readings, hundredths) => {
        const less = number(boreWear, readings, (hundredths + 1) / 100);
        expect(less).toBeCloseTo(number(boreWear, readings, hundredths / 100) - 0.01, 9);
      }),
    );
  });
});

describe("at the limits", () => {
  test("a bore at its standard size has no wear, one below it has less than none", () => {
    expect(ask(boreWear, [[73, 73]], 73)).toBe(0);
    expect(ask(boreWear, [[72.99, 72.98]], 73)).toBe(-0.01);
  });

  test("each bore of a batch meets its own standard, or one for all", () => {
    const rows = [
      [73.05, 73.02],
      [73.29, 73.26],
    ];
    expect(ask(boreWear, rows, [[73], [73.25]], 1)).toEqual([[0.05], [0.04]]);
    expect(ask(boreWear, rows, 73, 1)).toEqual([[0.05], [0.29]]);
  });
});

describe("faults", () => {
  test("a reading, or a whole bore, with its decimal point elsewhere is refused", () => {
    expect(ask(boreWear, 7.305, 73)).toEqual({
      code: "units",
      sentence: "BOREWEAR: readings 7.305 is about 1/10 of standard 73: is a decimal point wrong?",
    });
  });

  test("a standard in inches for a bore in millimetres is refused and both are named", () => {
    expect(ask(boreWear, [[73.05]], 2.874)).toEqual({
      code: "units",
      sentence: "BOREWEAR: readings 73.05 is about 25.4 times standard 2.874: is one in inches, the other in millimetres?",
    });
  });

  test("without a standard there is nothing to subtract", () => {
    expect(ask(boreWear, [[73.05]])).toEqual({ code: "missing", sentence: "BOREWEAR: standard is not given: it must be a length above 0" });
  });

  test("as many standards as bores are wanted", () => {
    expect(ask(boreWear, [[73.05], [73.01], [73]], [[73], [73]], 1)).toEqual({
      code: "shape",
      sentence: "BOREWEAR: standard is 2×1 cells, which does not fit readings of 3×1: ranges must be of one size, or one row, one column or one cell",
    });
  });
});

describe("blanks", () => {
  test("a blank reading or a blank standard leaves the wear blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(boreWear, [[73.05, blank as number]], 73)).toBe("");
      expect(ask(boreWear, [[73.05, 73]], blank)).toBe("");
    }
  });
});
