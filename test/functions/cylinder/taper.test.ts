import fc from "fast-check";
import { outOfRound } from "../../../src/functions/cylinder/out-of-round.ts";
import { taper } from "../../../src/functions/cylinder/taper.ts";
import { verdict } from "../../../src/functions/verdict/verdict.ts";
import { bore, boreOf, inInches, transpose } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // FAA-H-8083-32: taper is the difference between the diameter at the top and at the bottom of the
  // cylinder. The readings are ours; the differences follow by subtraction.
  test("top against bottom, along each axis, the worse of the two axes", () => {
    expect(
      ask(taper, [
        [73.05, 73.04],
        [73.02, 73.03],
        [73.01, 73.03],
      ]),
    ).toBe(0.04);
  });

  // TM 10-3930-243-34 and TM 5-3810-303-24: taper of at most .002 in.
  test("a bore at the .002 in limit of TM 10-3930-243-34 is within it", () => {
    const answer = number(taper, [
      [3.877, 3.8765],
      [3.876, 3.876],
      [3.875, 3.875],
    ]);
    expect(answer).toBe(0.002);
    expect(ask(verdict, answer, undefined, 0.002)).toBe("within");
  });

  test("a barrel or a waist shows in the middle height", () => {
    expect(ask(taper, [[73], [73.03], [73]])).toBe(0.03);
    expect(ask(taper, [[73.03], [73], [73.03]])).toBe(0.03);
  });
});

describe("identities", () => {
  test("the order of the heights and of the axes does not matter", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        const turned = readings.toReversed().map((row) => row.toReversed());
        expect(ask(taper, turned)).toBe(ask(taper, readings));
      }),
    );
  });

  test("taper along one way is out-of-round along the other", () => {
    // Turned over, heights become axes, of which there are no more than four.
    const square = fc.tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 4 })).chain(([heights, axes]) => boreOf(heights, axes));
    fc.assert(fc.property(square, (readings) => expect(ask(taper, transpose(readings))).toBe(ask(outOfRound, readings))));
  });

  test("a bore in inches has the same taper, in inches", () => {
    fc.assert(fc.property(bore, (readings) => expect(number(taper, inInches(readings)) * 25.4).toBeCloseTo(number(taper, readings), 7)));
  });

  test("one more height never makes the taper smaller", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        for (let heights = 2; heights < readings.length; heights++) {
          expect(number(taper, readings.slice(0, heights + 1))).toBeGreaterThanOrEqual(number(taper, readings.slice(0, heights)));
        }
      }),
    );
  });
});

describe("at the limits", () => {
  test("one height has no taper and is refused, so that a forgotten axes cannot pass for a straight bore", () => {
    const refused = { code: "too-few", sentence: "TAPER: readings has one height: taper needs two or more; where each row is one bore, give its axes" };
    expect(ask(taper, 73.01)).toEqual(refused);
    expect(ask(taper, [[73.01, 73.05, 73.02, 73.03]])).toEqual(refused);
    expect(ask(taper, [[73.01, 73.05]], 2)).toEqual(refused);
  });

  test("with axes given each row is one bore, height by height", () => {
    expect(
      ask(
        taper,
        [
          [73.03, 73.02, 73.01, 73],
          [73, 73, 73, 73],
        ],
        2,
      ),
    ).toEqual([[0.02], [0]]);
    expect(ask(taper, [[73.03, 73.02, 73.01]], 1)).toBe(0.02);
  });

  test("a bore of a million readings is taken as it comes", () => {
    const readings = Array.from({ length: 1_000_000 }, (_, i) => [73 + (i % 7) / 100]);
    expect(ask(taper, readings)).toBe(0.06);
  });
});

describe("faults", () => {
  test("axes that do not divide the row are refused with both numbers", () => {
    expect(ask(taper, [[73, 73, 73]], 2)).toEqual({
      code: "axes",
      sentence: "TAPER: axes 2 does not divide the 3 columns of readings: each row must hold every height of one bore",
    });
  });

  test("a bad reading is named with its place in the range", () => {
    expect(
      ask(taper, [
        [73.01, 73.02],
        [73, "73,01"],
      ]),
    ).toEqual({
      code: "decimal-comma",
      sentence: 'TAPER: readings holds the text "73,01": a decimal comma is not read, type it with this sheet\'s decimal sign (row 2, column 2)',
    });
  });

  test("an inch among millimetres is refused with its place", () => {
    expect(ask(taper, [[73.01], [2.874], [73]])).toEqual({
      code: "units",
      sentence: "TAPER: readings 2.874 is about 1/25.4 of the middle reading 73: is one in inches, the other in millimetres? (row 2)",
    });
  });

  test("of several bores only the bad one shows the check text", () => {
    expect(
      ask(
        taper,
        [
          [73.03, 73.01],
          [73, -73],
          [73.02, 73],
        ],
        1,
      ),
    ).toEqual([[0.02], ["check: readings -73 is too small: it must be a length above 0 (row 2, column 2)"], [0.02]]);
  });
});

describe("blanks", () => {
  test("one blank reading leaves the bore blank: an unfinished bore must not look straight", () => {
    for (const blank of BLANKS_AND_ZERO)
      expect(
        ask(taper, [
          [73.01, 73.02],
          [73, blank as number],
        ]),
      ).toBe("");
  });

  test("of several bores only the unfinished one stays blank", () => {
    expect(
      ask(
        taper,
        [
          [73.03, 73.01],
          [73, ""],
          [73.02, 73],
        ],
        1,
      ),
    ).toEqual([[0.02], [""], [0.02]]);
  });
});
