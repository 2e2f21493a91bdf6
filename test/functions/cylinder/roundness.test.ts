import fc from "fast-check";
import { outOfRound } from "../../../src/functions/cylinder/out-of-round.ts";
import { roundness } from "../../../src/functions/cylinder/roundness.ts";
import { ask, BLANKS, number } from "../ask.ts";

const METHODS = ["LS", "MZ", "MC", "MI"] as const;
const trace = [3, 6, 2, -4, -1, 5, 7, 1, -6, -2, 4, 0];
/** `count` radial readings of a bore of radius 36.5 with so many lobes of height 0.01. */
const lobed = (lobes: number, count: number) => Array.from({ length: count }, (_, i) => 36.5 + 0.01 * Math.cos((2 * Math.PI * lobes * i) / count));
/** The diameters a two-point gauge finds on it, axis by axis. */
const diameters = (radii: readonly number[]) => radii.slice(0, radii.length / 2).map((radius, i) => radius + radii[i + radii.length / 2]!);

describe("cited values", () => {
  // Twelve readings every 30° on a radius of 43 mm, µm, by exact enumeration over real circles (computed), within ±0.001.
  test.each([
    ["LS", 12.4004],
    ["MZ", 11.4227],
    ["MC", 11.7321],
    ["MI", 15.3091],
  ] as const)("twelve readings by %s: %p", (method, expected) => {
    expect(Math.abs(number(roundness, [trace], method) - expected)).toBeLessThanOrEqual(0.001);
  });

  // Computed with true circles of a radius of 36.5 through the same points, all pairs and threes of them tried.
  test("two opposite readings hold the circle around midway between them", () => {
    expect(number(roundness, [[0, 0.004, 0, -0.002, 0.003, 0.005, -0.001, -0.003]], "MC")).toBe(0.0075);
  });

  // By definition (computed): two lobes of height a are 4a between two diameters and 2a by minimum zone.
  test("two lobes of 0.01: a two-point gauge says 0.04, roundness 0.02", () => {
    expect(number(outOfRound, [diameters(lobed(2, 12))], 6)).toBeCloseTo(0.04, 9);
    expect(number(roundness, [lobed(2, 12)], "MZ")).toBeCloseTo(0.02, 9);
  });

  test("three lobes of 0.01: a two-point gauge says 0, roundness 0.02", () => {
    expect(number(outOfRound, [diameters(lobed(3, 12))], 6)).toBe(0);
    for (const method of METHODS) expect(number(roundness, [lobed(3, 12)], method)).toBeCloseTo(0.02, 9);
  });
});

test("the notes say what two axes cannot see", () => {
  expect(roundness.notes!.join(" ")).toContain("Two axes cannot see three lobes");
});

describe("identities", () => {
  const readings = fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 4, maxLength: 24 });

  test("a row and a column are read alike, and the gauge's zero is no matter", () => {
    fc.assert(
      fc.property(readings, fc.constantFrom(...METHODS), (list, method) => {
        const row = number(roundness, [list], method);
        expect(
          ask(
            roundness,
            list.map((x) => [x]),
            method,
          ),
        ).toBe(row);
        expect(number(roundness, [list.map((x) => x + 250)], method)).toBeCloseTo(row, 8);
      }),
    );
  });

  test("µm instead of mm is a thousand times as much", () => {
    fc.assert(
      fc.property(readings, fc.constantFrom(...METHODS), (list, method) => {
        expect(number(roundness, [list.map((x) => x / 1000)], method) * 1000).toBeCloseTo(number(roundness, [list], method), 5);
      }),
    );
  });
});

describe("at the limits", () => {
  test("four readings are enough", () => {
    expect(ask(roundness, [[1.1, 0.9, 1.1, 0.9]])).toBe(0.2);
  });

  test("equal readings are round by every circle", () => {
    for (const method of METHODS) expect(ask(roundness, [[36.5, 36.5, 36.5, 36.5, 36.5]], method)).toBe(0);
  });

  test("a method is read whatever its case, and is LS when left out", () => {
    expect(ask(roundness, [trace], "mz")).toBe(ask(roundness, [trace], "MZ"));
    expect(ask(roundness, [trace])).toBe(ask(roundness, [trace], "LS"));
    expect(ask(roundness, [trace], null)).toBe(ask(roundness, [trace], "LS"));
  });
});

describe("faults", () => {
  test("three readings are too few", () => {
    expect(ask(roundness, [[1, 2, 3]])).toEqual({ code: "unfit", sentence: "ROUNDNESS: deviations 3: readings are too few, at least 4 are needed" });
  });

  test("a block of rows and columns is refused", () => {
    expect(
      ask(roundness, [
        [1, 2, 3],
        [4, 5, 6],
      ]),
    ).toEqual({
      code: "unfit",
      sentence: 'ROUNDNESS: deviations "2×3 cells": one row or one column is wanted, one reading after the other round the circle',
    });
  });

  test("an unknown circle is answered with the known ones", () => {
    expect(ask(roundness, [trace], "LSC")).toEqual({
      code: "not-a-choice",
      sentence: 'ROUNDNESS: method "LSC" is not known: it must be one of LS, MZ, MC, MI',
    });
  });

  test("text among the readings is refused where it stands", () => {
    expect(ask(roundness, [[1], [2], ["3,5"], [4]])).toEqual({
      code: "decimal-comma",
      sentence: 'ROUNDNESS: deviations holds the text "3,5": a decimal comma is not read, type it with this sheet\'s decimal sign (row 3)',
    });
  });
});

test("a reading still to come leaves it blank, since the others would stand at wrong angles", () => {
  expect(ask(roundness, [[1, 2, null, 4, 5]])).toBe("");
  for (const blank of BLANKS) expect(ask(roundness, blank)).toBe("");
});
