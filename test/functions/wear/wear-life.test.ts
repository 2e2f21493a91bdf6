import fc from "fast-check";
import { wearLife } from "../../../src/functions/wear/wear-life.ts";
import { wearRate } from "../../../src/functions/wear/wear-rate.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

type Cells = readonly (number | string | null)[];
const answer = (use: Cells, size: Cells, limit: number | null) =>
  ask(
    wearLife,
    [...use].map((x) => [x]),
    [...size].map((y) => [y]),
    limit,
  );
const life = (use: Cells, size: Cells, limit: number) => (answer(use, size, limit) as (number | string)[][])[1] as [number, number, number];

describe("cited values", () => {
  // Graybill and Iyer, Regression Analysis: Concepts and Applications, p. 431; the interval as the tests of R's investr print it.
  test("a thermometer reads 104 at 103.995, between 103.4 and 104.6", () => {
    const [at, earliest, latest] = life([96, 98, 100, 102, 104, 106, 108, 110], [95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21], 104);
    expect(at).toBeCloseTo(103.995, 3);
    expect(earliest).toBeCloseTo(103.4, 1);
    expect(latest).toBeCloseTo(104.6, 1);
  });

  // The same book, p. 434; investr's tests print 15.8882, 11.0946 and 20.7240.
  test("a crystal weighs 8 g at 15.8882 h, between 11.0946 and 20.7240 h", () => {
    const hours = Array.from({ length: 14 }, (_, i) => 2 + 2 * i);
    const grams = [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04];
    expect(life(hours, grams, 8).map((x) => Number(x.toFixed(4)))).toEqual([15.8882, 11.0946, 20.724]);
  });

  // A marine engine maker's manual: rate = (D1 − D2) / hours × 1000. At 0.015 mm per 1000 h, 0.15 mm are worn in 10 000 h.
  test("wear of 0.015 mm per 1000 h uses up 0.15 mm in 10 000 h", () => {
    const [at, earliest, latest] = life([0, 3000, 6000], [73, 73.045, 73.09], 73.15);
    expect(at).toBeCloseTo(10_000, 6);
    expect(earliest).toBeCloseTo(10_000, 3);
    expect(latest).toBeCloseTo(10_000, 3);
  });
});

describe("identities", () => {
  const worn = fc.tuple(fc.integer({ min: 5, max: 40 }), fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 4, maxLength: 10 })).map(([rate, scatter]) => ({
    use: scatter.map((_, i) => i * 500),
    size: scatter.map((off, i) => 73 + (rate * i) / 1000 + off / 1000),
  }));
  const seen = ({ use, size }: { use: number[]; size: number[] }) => {
    const found = answer(use, size, 73.6);
    return Array.isArray(found) && typeof found[1]![0] === "number";
  };

  test("the earliest use is never after the use at the limit, nor the latest before it", () => {
    fc.assert(
      fc.property(worn.filter(seen), ({ use, size }) => {
        const [at, earliest, latest] = life(use, size, 73.6);
        expect(earliest).toBeLessThanOrEqual(at + 1e-6);
        expect(latest).toBeGreaterThanOrEqual(at - 1e-6);
      }),
    );
  });

  test("a wider limit lasts longer, and earliest and latest move with it", () => {
    fc.assert(
      fc.property(worn.filter(seen), ({ use, size }) => {
        const near = life(use, size, 73.6);
        const far = life(use, size, 73.7);
        for (const column of [0, 1, 2]) expect(far[column]!).toBeGreaterThan(near[column]!);
      }),
    );
  });

  test("use in thousands gives the life in thousands", () => {
    fc.assert(
      fc.property(worn.filter(seen), ({ use, size }) => {
        const hours = life(use, size, 73.6);
        const thousands = life(
          use.map((x) => x / 1000),
          size,
          73.6,
        );
        for (const column of [0, 1, 2]) expect((thousands[column]! * 1000) / hours[column]!).toBeCloseTo(1, 6);
      }),
    );
  });

  test("it names a use exactly when the rate is distinguishable from zero", () => {
    const noisy = fc
      .array(fc.integer({ min: -8, max: 8 }), { minLength: 3, maxLength: 7 })
      .filter((scatter) => new Set(scatter.map((off, i) => off + 3 * i)).size > 1)
      .map((scatter) => ({ use: scatter.map((_, i) => i * 100), size: scatter.map((off, i) => (7300 + 3 * i + off) / 100) }));
    fc.assert(
      fc.property(noisy, ({ use, size }) => {
        const [rate, from, to, words] = (ask(wearRate, [use], [size]) as (number | string)[][])[1] as [number, number, number, string];
        fc.pre(Math.min(Math.abs(from), Math.abs(to)) > Math.abs(rate) * 1e-6);
        const named = life(use, size, 75)[0];
        expect(String(named).startsWith("no wear rate yet")).toBe(words === "not distinguishable from zero");
      }),
    );
  });
});

describe("where no use can be named", () => {
  test("scatter without wear gives words and no wild number", () => {
    expect(answer([0, 500, 1000, 1500], [73.01, 73, 73.02, 73.01], 73.1)).toEqual([
      ["use at the limit", "earliest", "latest"],
      ["no wear rate yet: not distinguishable from zero", "", ""],
    ]);
  });

  test("a limit on the other side of the first size is said to lie before it", () => {
    expect(life([0, 500, 1000], [73, 73.011, 73.02], 72.9)).toEqual([
      "the limit lies before the first measuring: passed already, or the size wears away from it",
      "",
      "",
    ]);
  });

  test("a limit that the first size stands on was reached there", () => {
    expect(life([0, 1, 2], [73, 73.5, 74], 73)).toEqual([0, 0, 0]);
  });

  test("a limit passed between two measurings is a use in the past", () => {
    const [at] = life([0, 500, 1000, 1500], [73, 73.011, 73.019, 73.031], 73.015);
    expect(at).toBeGreaterThan(500);
    expect(at).toBeLessThan(1000);
  });
});

describe("faults", () => {
  const refused = (sentence: string) => ({ code: "unfit", sentence: `WEARLIFE: ${sentence}` });

  test("two measurings cannot tell wear from scatter", () => {
    expect(answer([0, 500], [73, 73.01], 73.1)).toEqual(refused("use 0: two measurings are given, at least 3 are needed to tell wear from scatter"));
  });

  test("equal uses and equal sizes are refused", () => {
    expect(answer([500, 500, 500], [73, 73.01, 73.02], 73.1)).toEqual(refused("use 500: all uses are equal, there is no use to set the wear against"));
    expect(answer([0, 500, 1000], [73.01, 73.01, 73.01], 73.1)).toEqual(refused("size 73.01: all sizes are equal, this gauge has seen no wear yet"));
  });

  test("a negative limit is refused", () => {
    expect(answer([0, 500, 1000], [73, 73.01, 73.02], -73)).toEqual({
      code: "too-small",
      sentence: "WEARLIFE: limit -73 is too small: it wants a length above 0",
    });
  });
});

test("a blank limit, or a history still too short, leaves it blank", () => {
  const use = [[0], [500], [1000]];
  for (const blank of BLANKS_AND_ZERO) expect((ask(wearLife, use, [[73], [73.011], [73.02]], blank) as unknown[])[1]).toEqual(["", "", ""]);
  expect(life([0, 500, null], [73, 73.01, null], 73.1)).toEqual(["", "", ""]);
});
