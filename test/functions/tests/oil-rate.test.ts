import fc from "fast-check";
import { oilRate } from "../../../src/functions/tests/oil-rate.ts";
import { fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["rate", "last interval", "trend"];
const column = (numbers: readonly (number | string)[]) => numbers.map((n) => [n]);
const rates = (use: readonly (number | string)[], added: readonly (number | string)[]) =>
  (ask(oilRate, column(use), column(added)) as (number | string)[][])[1]!;

describe("cited values", () => {
  // NumPy: sums, and numpy.polyfit over the middles of the intervals.
  test("six entries of a log", () => {
    for (const [i, value] of rates(fromScipy("oil-use"), fromScipy("oil-added")).entries()) expect(value).toBeCloseTo(fromScipy("oil")[i]!, 12);
  });
});

const log = fc.array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 0, max: 60 })), { minLength: 3, maxLength: 10 }).map((intervals) => {
  let use = 500;
  return {
    use: [use, ...intervals.map(([hours]) => (use += hours))],
    added: [4, ...intervals.map(([, oil]) => oil / 100)],
    intervals: intervals.map(([hours, oil]) => ({ hours, oil: oil / 100 })),
  };
});

describe("against the intervals one by one", () => {
  test("all oil by all hours, the last by its own, and the slope by every pair of intervals", () => {
    fc.assert(
      fc.property(log, ({ use, added, intervals }) => {
        const [rate, last, trend] = rates(use, added) as number[];
        const oil = intervals.reduce((sum, { oil: litres }) => sum + litres, 0);
        const hours = intervals.reduce((sum, { hours: run }) => sum + run, 0);
        expect(rate).toBeCloseTo(oil / hours, 12);
        expect(last).toBeCloseTo(intervals.at(-1)!.oil / intervals.at(-1)!.hours, 12);
        // The least-squares slope is the mean of the slopes of all pairs, each weighed by the square of its step.
        const points = intervals.map(({ hours: run, oil: litres }, i) => ({ x: use[i]! + run / 2, y: litres / run }));
        let [up, across] = [0, 0];
        for (const [i, a] of points.entries())
          for (const b of points.slice(i + 1)) {
            up += (b.y - a.y) * (b.x - a.x);
            across += (b.x - a.x) ** 2;
          }
        expect(trend).toBeCloseTo(up / across, 12);
      }),
      { numRuns: 500 },
    );
  });

  test("another start of the counter and another first filling change nothing; in quarts and miles by their factors", () => {
    fc.assert(
      fc.property(log, fc.integer({ min: 1, max: 900 }), ({ use, added }, more) => {
        const [rate, last, trend] = rates(use, added) as number[];
        const later = rates(
          use.map((u) => u + more),
          [more, ...added.slice(1)],
        ) as number[];
        for (const [i, value] of [rate!, last!, trend!].entries()) expect(later[i]).toBeCloseTo(value, 10);
        const other = rates(
          use.map((u) => u * 30),
          added.map((oil) => oil * 1.057),
        ) as number[];
        expect(other[0]! * (30 / 1.057)).toBeCloseTo(rate!, 10);
        expect(other[2]! * (900 / 1.057)).toBeCloseTo(trend!, 10);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("two entries give a rate, and only from three intervals on a trend", () => {
    expect(rates([0, 40], [4, 0.1])).toEqual([0.0025, 0.0025, ""]);
    expect(rates([0, 40, 80], [4, 0.1, 0.2])[2]).toBe("");
    expect(typeof rates([0, 40, 80, 120], [4, 0.1, 0.2, 0.3])[2]).toBe("number");
  });

  test("nothing added is a rate of 0", () => {
    expect(rates([10, 40, 80, 120], [4, 0, 0, 0])).toEqual([0, 0, 0]);
  });
});

describe("faults", () => {
  test("use that does not rise is refused, and a lone entry", () => {
    expect(ask(oilRate, column([100, 150, 150]), column([4, 0.1, 0.1]))).toEqual({ code: "unfit", sentence: "OILRATE: use 150: after 150 it must rise" });
    expect(ask(oilRate, 100, 4)).toEqual({ code: "unfit", sentence: "OILRATE: use 100: one reading is given, at least 2 are needed" });
    expect(ask(oilRate, column([1, 2]), column([1, 2, 3]))).toMatchObject({ code: "shape" });
    expect(ask(oilRate, column([100, 150]), column([4, -1]))).toMatchObject({ code: "too-small" });
    expect(ask(oilRate, 0, 0)).toEqual({ code: "unfit", sentence: "OILRATE: use 0: one reading is given, at least 2 are needed" });
  });

  test("use and oil are paired as they stand; a row with a column too, but no blocks of two shapes", () => {
    const [use, added] = [
      [0, 50, 100, 150],
      [4, 0.25, 0.25, 0.25],
    ];
    const paired = [HEADER, [0.005, 0.005, 0]];
    const block = ([a, b, c, d]: number[]) => [
      [a!, b!],
      [c!, d!],
    ];
    for (const [one, other] of [
      [[use], column(added)],
      [column(use), [added]],
      [[use], block(added)],
      [block(use), block(added)],
    ])
      expect(ask(oilRate, one!, other!)).toEqual(paired);
    const tall = [...block(use), [200, 250]];
    const wide = [
      [4, 0.1, 0.1],
      [0.1, 0.1, 0.1],
    ];
    expect(ask(oilRate, tall, wide)).toEqual({ code: "shape", sentence: expect.stringMatching(/use.* 3×2.*added of 2×3/) });
    expect(ask(oilRate, column([1, 2]), column([1, 2, 3]))).toEqual({ code: "shape", sentence: expect.stringMatching(/use.* 2×1.*added of 3×1/) });
  });
});

describe("blanks", () => {
  test("rows below the last entry, blank or 0, are not used yet; a gap leaves it blank; the first filling may be missing", () => {
    for (const blank of BLANKS_AND_ZERO) {
      const none = blank as string;
      expect(rates([0, 40, none, none], [4, 0.1, none, none])).toEqual([0.0025, 0.0025, ""]);
      expect(rates([100, none], [4, none])).toEqual(["", "", ""]);
    }
    for (const blank of BLANKS) {
      const none = blank as string;
      expect(rates([0, 40, 80], [none, 0.1, 0.1])).toEqual([0.0025, 0.0025, ""]);
      expect(ask(oilRate, column([0, 40, 80]), column([4, none, 0.1]))).toEqual([HEADER, ["", "", ""]]);
      expect(ask(oilRate, column([0, none, 80]), column([4, 0.1, 0.1]))).toEqual([HEADER, ["", "", ""]]);
      expect(ask(oilRate, blank, blank)).toEqual([HEADER, ["", "", ""]]);
    }
  });
});
