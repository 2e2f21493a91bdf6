import fc from "fast-check";
import { bearingClearance } from "../../../src/functions/shafts/bearing-clearance.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["least", "mean", "most", "least at row", "least at axis"];
const valuesOf = (...args: Parameters<typeof ask> extends [unknown, ...infer A] ? A : never) => (ask(bearingClearance, ...args) as (number | string)[][])[1]!;

describe("cited values", () => {
  // TM 5-3810-300-24&P-3 p. 74: a wall of .1548 in at standard size, .1598 in at .010 in undersize: the clearance of the ground
  // journal in them is that of the standard one. Housing and journal are ours.
  test("a journal ground by .010 in keeps its clearance in shells of .010 undersize", () => {
    expect(ask(bearingClearance, 2.812, 0.1548, 2.5)).toEqual([HEADER, [0.0024, 0.0024, 0.0024, 1, 1]]);
    expect(valuesOf(2.812, 0.1598, 2.49)).toEqual(valuesOf(2.812, 0.1548, 2.5));
  });
});

/** Three columns of housing, one or two walls, two columns of journal; µm over round sizes, so that sums are exact there. */
const cases = fc.record({
  rows: fc.integer({ min: 1, max: 4 }),
  noise: fc.array(fc.integer({ min: -15, max: 15 }), { minLength: 30, maxLength: 30 }),
  pair: fc.boolean(),
  oneRow: fc.boolean(),
});

describe("against a turning journal, place by place", () => {
  test("the journal turns: every reading of its row comes past every axis of the housing", () => {
    fc.assert(
      fc.property(cases, ({ rows, noise, pair, oneRow }) => {
        const housing = Array.from({ length: rows }, (_, r) => [0, 1, 2].map((c) => 54_050 + noise[r * 3 + c]!));
        const walls = pair ? [1980 + noise[20]!, 1980 + noise[21]!] : [1980 + noise[20]!];
        const journal = Array.from({ length: oneRow ? 1 : rows }, (_, r) => [0, 1].map((c) => 50_000 + noise[22 + r * 2 + c]!));
        const taken = pair ? walls[0]! + walls[1]! : 2 * walls[0]!;
        const gaps = housing.flatMap((line, r) => line.flatMap((bore, c) => journal[oneRow ? 0 : r]!.map((pin) => ({ gap: bore - taken - pin, r, c }))));
        const least = gaps.reduce((a, b) => (b.gap < a.gap ? b : a));
        const average = (cells: number[]) => cells.reduce((a, b) => a + b, 0) / cells.length;
        const mm = (block: number[][]) => block.map((line) => line.map((size) => size / 1000));
        const [found, mean, most, row, axis] = valuesOf(mm(housing), mm([walls]), mm(journal)) as number[];
        expect(found).toBeCloseTo(least.gap / 1000, 9);
        expect(most).toBeCloseTo(Math.max(...gaps.map(({ gap }) => gap)) / 1000, 9);
        expect(mean).toBeCloseTo((average(housing.flat()) - taken - average(journal.flat())) / 1000, 8);
        expect([row, axis]).toEqual([least.r + 1, least.c + 1]);
        const inch = (block: number[][]) => mm(block).map((line) => line.map((size) => size / 25.4));
        expect((valuesOf(inch(housing), inch([walls]), inch(journal))[0] as number) * 25.4).toBeCloseTo(found!, 6);
      }),
      { numRuns: 400 },
    );
  });

  test("a thicker wall takes twice as much of the clearance, an undersize on both sides none", () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 90 }), fc.integer({ min: 1, max: 9 }), (gap, grown) => {
        const bore = 54 + gap / 1000;
        expect(valuesOf(bore, 1.98 + grown / 1000, 50)[0]).toBeCloseTo((gap + 40 - 2 * grown) / 1000, 9);
        expect(valuesOf(bore, 1.98 + grown / 1000, 50 - (2 * grown) / 1000)).toEqual(valuesOf(bore, 1.98, 50));
      }),
    );
  });
});

describe("at the limits", () => {
  test("no clearance at all is a result, a fiftieth of the journal the most", () => {
    expect(valuesOf(53.96, 1.98, 50)[0]).toBe(0);
    expect(valuesOf(54.96, 1.98, 50)[2]).toBe(1);
    expect(ask(bearingClearance, 54.961, 1.98, 50)).toMatchObject({ code: "unfit" });
  });

  test("of equal least places the first from the top is named", () => {
    expect(
      valuesOf(
        [
          [54.02, 54.01],
          [54.01, 54.01],
        ],
        1.98,
        50,
      ).slice(3),
    ).toEqual([1, 2]);
  });
});

describe("faults", () => {
  test.each<[string, unknown[], string]>([
    [
      "both walls typed as one",
      [54.01, 3.96, 50],
      "BEARINGCLEARANCE: shell 3.96: with it a journal of 50 does not go into a housing of 54.01: is shell one wall?",
    ],
    [
      "the shells left out",
      [54.01, 0, 50],
      "BEARINGCLEARANCE: shell 0: it leaves a clearance of 4.01, more than a fiftieth of the journal: is it one wall, and 0 only with the shells in?",
    ],
    [
      "a single wall of 0 beside another",
      [54.01, [[1.98, 0]], 50],
      "BEARINGCLEARANCE: shell 0: beside another wall it is none: 0 is for a bore measured with both shells in",
    ],
    [
      "three walls",
      [54.01, [[1.98, 1.98, 1.98]], 50],
      "BEARINGCLEARANCE: shell 3: walls are too many: one wall is wanted, or those of the upper and the lower shell",
    ],
    [
      "journal rows that are neither one nor those of the housing",
      [[[54.01], [54.01], [54.01]], 1.98, [[50], [50]]],
      "BEARINGCLEARANCE: journal is 2×1 cells, which does not fit housing of 3×1: ranges must be of one size, or one row, one column or one cell",
    ],
    [
      "one reading of the housing in inches",
      [[[54.01, 54.01, 2.126]], 1.98, 50],
      "BEARINGCLEARANCE: housing 2.126 is about 1/25.4 of the middle reading 54.01: is one in inches, the other in millimetres? (column 3)",
    ],
    [
      "a journal in inches",
      [54.01, 1.98, 1.9685],
      "BEARINGCLEARANCE: journal 1.9685 is about 1/25.4 of housing 54.01: is one in inches, the other in millimetres?",
    ],
    [
      "one reading of the journal in inches",
      [54.01, 1.98, [[50, 50, 1.9685]]],
      "BEARINGCLEARANCE: journal 1.9685 is about 1/25.4 of the middle reading 50: is one in inches, the other in millimetres? (column 3)",
    ],
    [
      "one wall in inches",
      [54.01, [[1.98, 0.07795]], 50],
      "BEARINGCLEARANCE: shell 0.07795 is about 1/25.4 of reading 1.98: is one in inches, the other in millimetres? (column 2)",
    ],
    [
      "a journal that is too thick at its largest reading",
      [54.01, 3.96, [[49.99, 50]]],
      "BEARINGCLEARANCE: shell 3.96: with it a journal of 50 does not go into a housing of 54.01: is shell one wall?",
    ],
    ["a negative wall", [54.01, -1.98, 50], "BEARINGCLEARANCE: shell -1.98 is too small: it must be a length of at least 0"],
  ])("%s", (_, args, sentence) => {
    expect(ask(bearingClearance, ...(args as Parameters<typeof valuesOf>))).toMatchObject({ sentence });
  });
});

describe("blanks", () => {
  test("a reading, wall or journal not filled in leaves the row blank; no wall is no 0", () => {
    const BLANK = [HEADER, ["", "", "", "", ""]];
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(bearingClearance, blank, 1.98, 50)).toEqual(BLANK);
      expect(ask(bearingClearance, 54.01, 1.98, blank)).toEqual(BLANK);
      expect(ask(bearingClearance, [[54.01, blank as number]], 1.98, 50)).toEqual(BLANK);
    }
    for (const blank of BLANKS) {
      expect(ask(bearingClearance, 54.01, blank, 50)).toEqual(BLANK);
      expect(ask(bearingClearance, 54.01, [[1.98, blank as number]], 50)).toEqual(BLANK);
    }
  });
});
