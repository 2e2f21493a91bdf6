import fc from "fast-check";
import { stepOf } from "../../../src/functions/wear/size-over-use.ts";
import { wearRate } from "../../../src/functions/wear/wear-rate.ts";
import { columns } from "../../reference/columns.ts";
import { fromR } from "../../reference/r-values.ts";
import { ask, BLANKS } from "../ask.ts";

type Cells = readonly (number | string | null)[];
const answer = (use: Cells, size: Cells, uncertainty?: number) =>
  ask(
    wearRate,
    [...use].map((x) => [x]),
    [...size].map((y) => [y]),
    ...(uncertainty === undefined ? [] : [uncertainty]),
  );
const rated = (use: Cells, size: Cells, uncertainty?: number) =>
  (answer(use, size, uncertainty) as (number | string)[][])[1] as [rate: number, from: number, to: number, change: string, by: string];

const RESOLUTION_ONLY = "resolution only: the real band is wider";

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

  // R's lm and confint on five wears that start at a typed 0, which scatter far more than their step.
  test("five wears from 0 on: R's slope and its interval", () => {
    const [slope, lower, upper] = fromR("wear-rate") as [number, number, number];
    const [rate, from, to, change, by] = rated([0, 100, 250, 400, 600], [0, 0.02, 0.024, 0.03, 0.035]);
    expect(rate).toBeCloseTo(slope, 14);
    expect(from).toBeCloseTo(lower, 12);
    expect(to).toBeCloseTo(upper, 12);
    expect([change, by]).toEqual(["grows", "scatter"]);
  });

  // The slope's interval with the deviation of a size known to be 0.002, from R's unscaled covariance and qnorm.
  test("four bores that scatter less than their gauge: the normal law with U/2", () => {
    const [slope, lower, upper] = fromR("known-rate") as [number, number, number];
    const [rate, from, to, , by] = rated([0, 500, 1000, 1500], [73, 73.011, 73.019, 73.031], 0.004);
    expect(rate).toBeCloseTo(slope, 14);
    expect(from).toBeCloseTo(lower, 13);
    expect(to).toBeCloseTo(upper, 13);
    expect(by).toBe("gauge");
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

describe("what gives the interval its width", () => {
  // By hand: S = 2 × 3000² = 18 000 000, u = 0.001 ÷ √12 for sizes in thousandths.
  test("three points on a line and no uncertainty: the step alone, and the result says so", () => {
    const [, from, to, , by] = rated([0, 3000, 6000], [73.001, 73.046, 73.091]);
    expect((to - from) / 2).toBeCloseTo((1.959963984540054 * (0.001 / Math.sqrt(12))) / Math.sqrt(18_000_000), 15);
    expect(by).toBe(RESOLUTION_ONLY);
  });

  test.each([
    [[73, 73.045, 73.09], 0.005],
    [[73, 73.04, 73.08], 0.02],
    [[0, 0.01, 0.02], 0.01],
    [[0, 0.02, 0.024, 0.03, 0.035], 0.001],
    [[-0.5, 0, 1], 0.5],
    [[2.874, 2.8741, 2.8755], 0.0001],
    [[150, 148, 146], 2],
    [[1000, 1200], 200],
    [[0.1 + 0.2, 0.3, 0.6], 0.1],
  ])("the step of %p is %p", (sizes, step) => {
    expect(stepOf(sizes)).toBe(step);
  });

  test("a scatter above u is the scatter's, by t; up to u it is the gauge's", () => {
    // Residuals of 0.4, −0.4 … about a slope of 0.6: s = √0.1.
    const history = [
      [0, 1, 2, 3],
      [10, 11, 11, 12],
    ] as const;
    expect(rated(...history, 2 * Math.sqrt(0.1) + 1e-6)[4]).toBe("gauge");
    expect(rated(...history, 2 * Math.sqrt(0.1) - 1e-6)[4]).toBe("scatter");
    expect(rated(...history, 0.2)).toEqual(rated(...history));
    expect((rated(...history, 2)[2] - 0.6) / 1.959963984540054).toBeCloseTo(1 / Math.sqrt(5), 9);
  });

  test("two measurings with their uncertainty: the gauge alone", () => {
    const [rate, from, to, change, by] = rated([0, 1000], [73, 73.02], 0.004);
    // By hand: u of the difference is 0.002 × √2.
    expect(rate).toBeCloseTo(0.00002, 12);
    expect((to - from) / 2).toBeCloseTo((1.959963984540054 * 0.002 * Math.SQRT2) / 1000, 12);
    expect([change, by]).toEqual(["grows", "gauge"]);
  });

  test("equal sizes with their uncertainty are no wear that this gauge could have seen", () => {
    const [rate, from, to, change, by] = rated([0, 500, 1000], [73.01, 73.01, 73.01], 0.004);
    expect([rate, change, by]).toEqual([0, "not distinguishable from zero", "gauge"]);
    expect(to).toBeCloseTo(-from, 15);
    expect(to).toBeGreaterThan(0);
  });

  test("a negative size is a size: readings against a master may be", () => {
    expect(rated([0, 500, 1000], [-0.01, 0, 0.01], 0.004)[0]).toBeCloseTo(0.00002, 12);
  });
});

describe("identities", () => {
  const history = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 7300, max: 7340 })), { minLength: 3, maxLength: 10 })
    .filter((pairs) => new Set(pairs.map(([use]) => use)).size > 1 && new Set(pairs.map(([, size]) => size)).size > 1)
    .map((pairs) => ({ use: pairs.map(([use]) => use * 50), size: pairs.map(([, size]) => size / 100) }));

  // With an uncertainty: without one the step of the sizes stands for it, and inches that were worked out have another step.
  test("use in thousands, or sizes and their uncertainty in inches, scale the rate and leave the words", () => {
    fc.assert(
      fc.property(history, fc.integer({ min: 1, max: 50 }), ({ use, size }, thousandths) => {
        const uncertainty = thousandths / 1000;
        const [rate, from, to, change] = rated(use, size, uncertainty);
        const thousands = rated(
          use.map((x) => x / 1000),
          size,
          uncertainty,
        );
        expect(thousands[0]).toBeCloseTo(rate * 1000, 7);
        const inch = rated(
          use,
          size.map((y) => y / 25.4),
          uncertainty / 25.4,
        );
        expect(inch[0] * 25.4).toBeCloseTo(rate, 10);
        fc.pre(Math.min(Math.abs(from), Math.abs(to)) > 1e-9);
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
    expect(answer([500], [73.01])).toEqual(
      refused("use 500: one measuring is given, at least 3 are needed to tell wear from scatter, or 2 with their uncertainty"),
    );
    expect(answer([0, 500], [73, 73.01])).toEqual(
      refused("use 0: two measurings are given, at least 3 are needed to tell wear from scatter, or 2 with their uncertainty"),
    );
    expect(answer([500], [73.01], 0.004)).toEqual(refused("use 500: one measuring is given, at least 2 are needed"));
  });

  test("equal uses leave nothing to set the wear against", () => {
    expect(answer([500, 500, 500], [73, 73.01, 73.02])).toEqual(refused("use 500: all uses are equal, there is no use to set the wear against"));
  });

  test("equal sizes are no wear yet", () => {
    expect(answer([0, 500, 1000], [73.01, 73.01, 73.01])).toEqual(
      refused("size 73.01: all sizes are equal, only their uncertainty can say how much wear may hide"),
    );
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

  test("a bad size is refused where it stands, and so is an uncertainty below 0", () => {
    expect(answer([0, 500, 1000], [73, "73,01", 73.02])).toEqual({
      code: "decimal-comma",
      sentence: 'WEARRATE: size holds the text "73,01": a decimal comma is not read, type it with this sheet\'s decimal sign (row 2)',
    });
    expect(answer([0, 500, 1000], [73, 73.01, 73.02], -0.004)).toEqual({
      code: "too-small",
      sentence: "WEARRATE: uncertainty -0.004 is too small: it must be a length above 0",
    });
  });
});

describe("blanks", () => {
  const blank = ["", "", "", "", ""];

  test("a history still too short to rate leaves it blank", () => {
    expect(rated([0, 500, null], [73, 73.01, null])).toEqual(blank);
    expect(rated([0, 500, 1000], [73, 73.01, null])).toEqual(blank);
    for (const nothing of BLANKS) expect((ask(wearRate, nothing, [[73], [73.1], [73.2]]) as unknown[])[1]).toEqual(blank);
  });

  test("a pair with a blank is left out, and the others stay paired", () => {
    expect(rated([0, 500, 1000, 1500], [73, null, 73.02, 73.04])).toEqual(rated([0, 1000, 1500], [73, 73.02, 73.04]));
    expect(rated([0, 500, null, 1500], [73, 73.01, 73.02, 73.04])).toEqual(rated([0, 500, 1500], [73, 73.01, 73.04]));
  });

  test("a size of 0 is a reading and not a blank, and a blank uncertainty is none", () => {
    expect(rated([0, 100, 250], [0, 0.02, 0.05])[0]).not.toBe(rated([0, 100, 250], [null, 0.02, 0.05])[0]);
    for (const nothing of [...BLANKS, 0])
      expect((ask(wearRate, [[0], [500], [1000]], [[73], [73.011], [73.02]], nothing) as unknown[])[1]).toEqual(rated([0, 500, 1000], [73, 73.011, 73.02]));
  });

  test("a use of 0 is the first measuring and not a blank", () => {
    expect(rated([0, 1000, 2000], [73, 73.011, 73.02])[0]).toBeCloseTo(1e-5, 12);
  });
});
