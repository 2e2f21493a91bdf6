import fc from "fast-check";
import { wearLife } from "../../../src/functions/wear/wear-life.ts";
import { wearRate } from "../../../src/functions/wear/wear-rate.ts";
import { fromR } from "../../reference/r-values.ts";
import { ask, BLANKS } from "../ask.ts";

type Cells = readonly (number | string | null)[];
type Row = [at: number, earliest: number, latest: number, notBefore: number | string, by: string, verdict: string];
const answer = (use: Cells, size: Cells, limit: number | null, uncertainty?: number) =>
  ask(
    wearLife,
    [...use].map((x) => [x]),
    [...size].map((y) => [y]),
    limit,
    ...(uncertainty === undefined ? [] : [uncertainty]),
  );
const life = (use: Cells, size: Cells, limit: number, uncertainty?: number) => (answer(use, size, limit, uncertainty) as unknown[])[1] as Row;
const NO_RATE = "no life: the rate is not distinguishable from zero";

describe("cited values", () => {
  // Graybill and Iyer, Regression Analysis: Concepts and Applications, pp. 431 and 434; the ends are where the band of R's
  // predict(interval = "confidence") reaches the level.
  test.each([
    ["thermometer", [96, 98, 100, 102, 104, 106, 108, 110], [95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21], 104],
    ["crystals", Array.from({ length: 14 }, (_, i) => 2 + 2 * i), [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04], 8],
  ])("%s: where the line meets the level, by R", (name, use, size, limit) => {
    const [at, earliest, latest] = fromR(name) as [number, number, number];
    expect(life(use, size, limit)).toEqual([expect.closeTo(at, 9), expect.closeTo(earliest, 7), expect.closeTo(latest, 7), "", "scatter", "passed"]);
  });

  test("four bores that scatter less than their gauge, by R with the deviation known", () => {
    const [at, earliest, latest] = fromR("known-life") as [number, number, number];
    const row = life([0, 500, 1000, 1500], [73, 73.011, 73.019, 73.031], 73.1, 0.004);
    expect(row).toEqual([expect.closeTo(at, 6), expect.closeTo(earliest, 5), expect.closeTo(latest, 5), "", "gauge", "to come"]);
  });

  test("wear that starts at a typed 0: all five points count, and the line meets the limit at 826", () => {
    const [at] = life([0, 100, 250, 400, 600], [0, 0.02, 0.024, 0.03, 0.035], 0.05);
    expect(at).toBeCloseTo(fromR("wear-life")[0]!, 8);
    expect(Math.round(at)).toBe(826);
  });

  // A marine engine maker's manual: rate = (D1 − D2) / hours × 1000. At 0.015 mm per 1000 h, 0.15 mm are worn in 10 000 h.
  test("wear of 0.015 mm per 1000 h uses up 0.15 mm in 10 000 h; points on a line still have the width of their step", () => {
    const [at, earliest, latest, , by] = life([0, 3000, 6000], [73, 73.045, 73.09], 73.15);
    expect(at).toBeCloseTo(10_000, 6);
    expect(earliest).toBeLessThan(9800);
    expect(latest).toBeGreaterThan(10_200);
    expect(by).toBe("resolution only: the real band is wider");
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
        for (const column of [0, 1, 2] as const) expect(far[column]).toBeGreaterThan(near[column]);
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
        for (const column of [0, 1, 2] as const) expect((thousands[column] * 1000) / hours[column]).toBeCloseTo(1, 6);
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
        const [named, , , , , verdict] = life(use, size, 75);
        expect(named as unknown as string).toEqual(words === "not distinguishable from zero" ? "" : verdict.startsWith("no life") ? "" : expect.any(Number));
        expect(verdict === NO_RATE).toBe(words === "not distinguishable from zero");
      }),
    );
  });

  test("a better gauge never brings the ends farther apart, nor the use before which there is nothing nearer", () => {
    fc.assert(
      fc.property(worn.filter(seen), fc.integer({ min: 1, max: 20 }), ({ use, size }, n) => {
        const [coarse, fine] = [life(use, size, 73.6, n / 500), life(use, size, 73.6, n / 1000)];
        const from = ([, earliest, , notBefore]: Row) => (typeof earliest === "number" ? earliest : (notBefore as number));
        const to = ([, , latest]: Row) => (typeof latest === "number" ? latest : Number.POSITIVE_INFINITY);
        fc.pre(coarse[4] === "gauge" && fine[4] === "gauge" && typeof from(coarse) === "number");
        expect(from(fine)).toBeGreaterThanOrEqual(from(coarse) - 1e-6);
        expect(to(fine)).toBeLessThanOrEqual(to(coarse) + 1e-6);
      }),
    );
  });
});

describe("where no use can be named", () => {
  test("scatter without wear gives a use before which there is nothing, and no wild number", () => {
    expect(answer([0, 500, 1000, 1500], [73.01, 73, 73.02, 73.01], 73.1)).toEqual([
      ["use at the limit", "earliest", "latest", "not before", "by", "verdict"],
      ["", "", "", expect.closeTo(2907.506, 3), "scatter", NO_RATE],
    ]);
  });

  test("equal sizes with their uncertainty: not before the use at which their doubt alone comes to the limit", () => {
    // By hand: 0.05 = 1.96 × 0.002 × √(1/3 + (x − 500)²/500 000).
    const x = 500 + Math.sqrt(500_000 * ((0.05 / (1.959963984540054 * 0.002)) ** 2 - 1 / 3));
    expect(life([0, 500, 1000], [73, 73, 73], 73.05, 0.004)).toEqual(["", "", "", expect.closeTo(x, 4), "gauge", NO_RATE]);
  });

  test("a limit within what the sizes are known to can be told neither way", () => {
    expect(life([0, 500, 1000], [73, 73.001, 73], 73.001, 0.004)).toEqual([
      "",
      "",
      "",
      "",
      "gauge",
      "cannot tell: the rate is not distinguishable from zero, and the limit lies within what the sizes are known to",
    ]);
  });

  test("a limit on the other side of the first size has no life", () => {
    expect(life([0, 500, 1000], [73, 73.011, 73.02], 72.9, 0.004)).toEqual([
      "",
      "",
      "",
      "",
      "gauge",
      "no life: passed before the first measuring, or the size goes away from the limit",
    ]);
  });

  test("a limit that the first size stands on was reached there", () => {
    const [at, , , , , verdict] = life([0, 1, 2], [73, 73.5, 74], 73);
    expect(at).toBeCloseTo(0, 9);
    expect(verdict).toBe("passed");
  });

  test("a limit passed between two measurings is a use in the past, and said to be passed", () => {
    const [at, , , , , verdict] = life([0, 500, 1000, 1500], [73, 73.011, 73.019, 73.031], 73.015, 0.004);
    expect(at).toBeGreaterThan(500);
    expect(at).toBeLessThan(1000);
    expect(verdict).toBe("passed");
  });

  test("a limit just ahead may be passed already", () => {
    const [at, earliest, , , , verdict] = life([0, 500, 1000, 1500], [73, 73.011, 73.019, 73.031], 73.032, 0.004);
    expect(at).toBeGreaterThan(1500);
    expect(earliest).toBeLessThan(1500);
    expect(verdict).toBe("to come, or passed already");
  });

  test("a size that closes up comes to a limit of 0", () => {
    const [at, , , , , verdict] = life([0, 500, 1000, 1500], [0.2, 0.18, 0.16, 0.14], 0, 0.01);
    expect(at).toBeCloseTo(5000, 6);
    expect(verdict).toBe("to come");
  });
});

describe("faults", () => {
  const refused = (sentence: string) => ({ code: "unfit", sentence: `WEARLIFE: ${sentence}` });

  test("two measurings cannot tell wear from scatter", () => {
    expect(answer([0, 500], [73, 73.01], 73.1)).toEqual(
      refused("use 0: two measurings are given, at least 3 are needed to tell wear from scatter, or 2 with their uncertainty"),
    );
  });

  test("equal uses and equal sizes are refused", () => {
    expect(answer([500, 500, 500], [73, 73.01, 73.02], 73.1)).toEqual(refused("use 500: all uses are equal, there is no use to set the wear against"));
    expect(answer([0, 500, 1000], [73.01, 73.01, 73.01], 73.1)).toEqual(
      refused("size 73.01: all sizes are equal, only their uncertainty can say how much wear may hide"),
    );
  });

  test("a limit with its decimal point elsewhere, or in another unit, is refused beside diameters", () => {
    expect(answer([0, 500, 1000], [73, 73.01, 73.02], 730.5)).toEqual({
      code: "units",
      sentence: "WEARLIFE: limit 730.5 is about 10 times size 73.02: is a decimal point wrong?",
    });
    expect(answer([0, 500, 1000], [73, 73.01, 73.02], 2.876)).toEqual({
      code: "units",
      sentence: "WEARLIFE: limit 2.876 is about 1/25.4 of size 73.02: is one in inches, the other in millimetres?",
    });
  });

  test("wear that grows may well come to a limit ten times as far", () => {
    expect(life([0, 500, 1000], [0.01, 0.02, 0.03], 0.3, 0.002)[0]).toBeCloseTo(14_500, 6);
  });
});

test("a blank limit, or a history still too short, leaves it blank", () => {
  const use = [[0], [500], [1000]];
  const blank = ["", "", "", "", "", ""];
  for (const nothing of BLANKS) expect((ask(wearLife, use, [[73], [73.011], [73.02]], nothing) as unknown[])[1]).toEqual(blank);
  expect(life([0, 500, null], [73, 73.01, null], 73.1)).toEqual(blank);
});
