import fc from "fast-check";
import { outOfRound } from "../../../src/functions/cylinder/out-of-round.ts";
import { verdict } from "../../../src/functions/verdict/verdict.ts";
import { bore, inInches } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // FAA-H-8083-32: out-of-round is the difference between two diameters in one plane, 90° apart.
  test("the two axes in one plane, at the height where they differ most", () => {
    expect(
      ask(outOfRound, [
        [73.05, 73.02],
        [73.02, 73.01],
        [73.01, 73.01],
      ]),
    ).toBe(0.03);
  });

  // Computed from the definition: the two-point diameters of a lobed bore of amplitude a are
  // 2R + 2a·cos(nφ) for even n and 2R for odd n, so two lobes show as 4a and three lobes not at all.
  test("two lobes of 5 µm show as 20 µm, three lobes of 5 µm as nothing", () => {
    const diameters = (lobes: number) =>
      [0, 45, 90, 135].map((degrees) => {
        const radius = (angle: number) => 36.5 + 0.005 * Math.cos((lobes * angle * Math.PI) / 180);
        return radius(degrees) + radius(degrees + 180);
      });
    expect(number(outOfRound, [diameters(2)])).toBeCloseTo(0.02, 8);
    expect(number(outOfRound, [diameters(3)])).toBeCloseTo(0, 8);
  });

  // TM 5-3810-303-24: out-of-round of at most .0025 in.
  test("a bore at the .0025 in limit of TM 5-3810-303-24 is within it, a ten-thousandth more is over", () => {
    expect(ask(verdict, number(outOfRound, [[4.0025, 4]]), undefined, 0.0025)).toBe("within");
    expect(ask(verdict, number(outOfRound, [[4.0026, 4]]), undefined, 0.0025)).toBe("over");
  });
});

describe("identities", () => {
  test("the order of the heights and of the axes does not matter", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        const turned = readings.toReversed().map((row) => row.toReversed());
        expect(ask(outOfRound, turned)).toBe(ask(outOfRound, readings));
      }),
    );
  });

  test("a bore in inches has the same out-of-round, in inches", () => {
    fc.assert(fc.property(bore, (readings) => expect(number(outOfRound, inInches(readings)) * 25.4).toBeCloseTo(number(outOfRound, readings), 7)));
  });

  test("a bore is as much out of round as its worst height", () => {
    fc.assert(
      fc.property(bore, (readings) => {
        expect(ask(outOfRound, readings)).toBe(Math.max(...readings.map((row) => number(outOfRound, [row]))));
      }),
    );
  });
});

describe("at the limits", () => {
  test("one axis has no out-of-round and is refused", () => {
    const refused = { code: "too-few", sentence: "OUTOFROUND: readings has one axis: out-of-round needs two or more, 90° apart" };
    expect(ask(outOfRound, 73.01)).toEqual(refused);
    expect(ask(outOfRound, [[73.01], [73.05]])).toEqual(refused);
  });

  test("with axes given each row is one bore, height by height", () => {
    const rows = [
      [73.03, 73.02, 73.01, 73],
      [73, 73, 73, 73.04],
    ];
    expect(ask(outOfRound, rows, 2)).toEqual([[0.01], [0.04]]);
    expect(ask(outOfRound, rows, 4)).toEqual([[0.03], [0.04]]);
  });
});

describe("faults", () => {
  test("a reading below zero is named with its place", () => {
    expect(ask(outOfRound, [[73.01, -73.02]])).toEqual({
      code: "too-small",
      sentence: "OUTOFROUND: readings -73.02 is too small: it must be a length above 0 (column 2)",
    });
  });

  test("a bore of more columns than axes can share is refused", () => {
    expect(ask(outOfRound, [[73, 73, 73, 73, 73]], 2)).toEqual({
      code: "axes",
      sentence: "OUTOFROUND: axes 2 does not divide the 5 columns of readings: each row must hold every height of one bore",
    });
  });
});

describe("blanks", () => {
  test("one blank reading leaves the bore blank: an unfinished bore must not look round", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(outOfRound, [[73.01, blank as number]])).toBe("");
  });
});
