import fc from "fast-check";
import { wearRate } from "../../../src/functions/wear/wear-rate.ts";
import { columns } from "../../reference/columns.ts";
import { ask, BLANKS } from "../ask.ts";

type Cells = readonly (number | string | null)[];
const answer = (use: Cells, size: Cells) =>
  ask(
    wearRate,
    [...use].map((x) => [x]),
    [...size].map((y) => [y]),
  );
const rated = (use: Cells, size: Cells) => (answer(use, size) as (number | string)[][])[1] as [number, number, number, string];

describe("cited values", () => {
  // NIST StRD Norris: slope 1.00211681802045, its standard deviation 0.429796848199937e-3, 34 degrees of freedom; t95(34) = 2.0322.
  test("Norris: the slope to 13 digits, and the interval from its certified standard deviation", () => {
    const rows = columns("nist-strd/Norris.dat", /^Data: /);
    const [rate, from, to, change] = rated(
      rows.map(([, x]) => x!),
      rows.map(([y]) => y!),
    );
    expect(rate).toBeCloseTo(1.00211681802045, 13);
    expect((to - from) / 2 / 0.429796848199937e-3).toBeCloseTo(2.0322, 4);
    expect(change).toBe("grows");
  });

  // A marine engine maker's manual: rate = (D1 − D2) / hours × 1000, D1 the worn diameter, D2 the unworn. On a line the three agree.
  test("wear of 0.09 mm in 6000 h, seen half way too, is 0.015 mm per 1000 h", () => {
    const [rate] = rated([0, 3000, 6000], [73, 73.045, 73.09]);
    expect(rate * 1000).toBeCloseTo(0.015, 12);
  });

  // By hand: x 0…3, y 0, 1, 1, 2: slope 0.6, s² = 0.2/2, S = 5, so the deviation is √0.02; t95(2) = 4.3027.
  test("four points by hand: 0.6 ± 4.3027 × √0.02", () => {
    const [rate, from, to, change] = rated([0, 1, 2, 3], [10, 11, 11, 12]);
    expect(rate).toBeCloseTo(0.6, 12);
    expect(from).toBeCloseTo(0.6 - 4.302653 * Math.sqrt(0.02), 6);
    expect(to).toBeCloseTo(0.6 + 4.302653 * Math.sqrt(0.02), 6);
    expect(change).toBe("not distinguishable from zero");
  });
});

test("a piston that wears shrinks", () => {
  expect(rated([0, 500, 1000, 1500], [72.98, 72.971, 72.959, 72.95])[3]).toBe("shrinks");
});

describe("identities", () => {
  const history = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 7300, max: 7340 })), { minLength: 3, maxLength: 10 })
    .filter((pairs) => new Set(pairs.map(([use]) => use)).size > 1 && new Set(pairs.map(([, size]) => size)).size > 1)
    .map((pairs) => ({ use: pairs.map(([use]) => use * 50), size: pairs.map(([, size]) => size / 100) }));

  test("use in thousands, or sizes in inches, scale the rate and leave the words", () => {
    fc.assert(
      fc.property(history, ({ use, size }) => {
        const [rate, from, to, change] = rated(use, size);
        const thousands = rated(
          use.map((x) => x / 1000),
          size,
        );
        expect(thousands[0]).toBeCloseTo(rate * 1000, 7);
        const inch = rated(
          use,
          size.map((y) => y / 25.4),
        );
        expect(inch[0] * 25.4).toBeCloseTo(rate, 10);
        fc.pre(Math.min(Math.abs(from), Math.abs(to)) > 1e-12);
        expect(thousands[3]).toBe(change);
        expect(inch[3]).toBe(change);
      }),
    );
  });

  test("the same sizes backwards in use wear the other way", () => {
    fc.assert(
      fc.property(history, ({ use, size }) => {
        const last = Math.max(...use);
        const [rate, from, to] = rated(use, size);
        const back = rated(
          use.map((x) => last - x),
          size,
        );
        expect(back[0]).toBeCloseTo(-rate, 10);
        expect(back[1]).toBeCloseTo(-to, 8);
        expect(back[2]).toBeCloseTo(-from, 8);
      }),
    );
  });

  test("the order of the measurings is no matter", () => {
    fc.assert(fc.property(history, ({ use, size }) => expect(rated([...use].reverse(), [...size].reverse())[0]).toBeCloseTo(rated(use, size)[0], 12)));
  });
});

describe("faults", () => {
  const refused = (sentence: string) => ({ code: "unfit", sentence: `WEARRATE: ${sentence}` });

  test("one or two measurings cannot tell wear from scatter", () => {
    expect(answer([500], [73.01])).toEqual(refused("use 500: one measuring is given, at least 3 are needed to tell wear from scatter"));
    expect(answer([0, 500], [73, 73.01])).toEqual(refused("use 0: two measurings are given, at least 3 are needed to tell wear from scatter"));
  });

  test("equal uses leave nothing to set the wear against", () => {
    expect(answer([500, 500, 500], [73, 73.01, 73.02])).toEqual(refused("use 500: all uses are equal, there is no use to set the wear against"));
  });

  test("equal sizes are no wear yet", () => {
    expect(answer([0, 500, 1000], [73.01, 73.01, 73.01])).toEqual(refused("size 73.01: all sizes are equal, this gauge has seen no wear yet"));
  });

  test("ranges of unequal length are refused", () => {
    expect(answer([0, 500], [73, 73.01, 73.02])).toEqual({
      code: "shape",
      sentence: "WEARRATE: use is 2×1 cells, which does not fit size of 3×1: ranges must be of one size, or one row, one column or one cell",
    });
  });

  test("blocks of one shape go cell by cell, a column of uses goes with a row of sizes, other shapes are refused", () => {
    const rows = (use: number[][], size: number[][]) => ask(wearRate, use, size);
    const plain = answer([0, 500, 1000, 1500], [73, 73.011, 73.019, 73.031]);
    const use = [
      [0, 500],
      [1000, 1500],
    ];
    const size = [
      [73, 73.011],
      [73.019, 73.031],
    ];
    expect(rows(use, size)).toEqual(plain);
    expect(rows([[0], [500], [1000], [1500]], [size.flat()])).toEqual(plain);
    expect(rows([use.flat()], [[73], [73.011], [73.019], [73.031]])).toEqual(plain);
    const misfit = rows(use, [size.flat()]) as { sentence: string };
    expect(misfit.sentence).toBe("WEARRATE: use is 2×2 cells, which does not fit size of 1×4: ranges must be of one size, or one row, one column or one cell");
  });

  test("a negative size is refused where it stands", () => {
    expect(answer([0, 500, 1000], [73, -73.01, 73.02])).toEqual({
      code: "too-small",
      sentence: "WEARRATE: size -73.01 is too small: it wants a length above 0 (row 2)",
    });
  });
});

describe("blanks", () => {
  const blank = ["", "", "", ""];

  test("a history still too short to rate leaves it blank", () => {
    expect(rated([0, 500, null], [73, 73.01, null])).toEqual(blank);
    expect(rated([0, 500, 1000], [73, 73.01, null])).toEqual(blank);
    for (const nothing of BLANKS) expect((ask(wearRate, nothing, [[73], [73.1], [73.2]]) as unknown[])[1]).toEqual(blank);
  });

  test("a pair with a blank is left out, and the others stay paired", () => {
    expect(rated([0, 500, 1000, 1500], [73, null, 73.02, 73.04])).toEqual(rated([0, 1000, 1500], [73, 73.02, 73.04]));
    expect(rated([0, 500, null, 1500], [73, 73.01, 73.02, 73.04])).toEqual(rated([0, 500, 1500], [73, 73.01, 73.04]));
  });

  test("a use of 0 is the first measuring and not a blank", () => {
    expect(rated([0, 1000, 2000], [73, 73.011, 73.02])[0]).toBeCloseTo(1e-5, 12);
  });
});
