import fc from "fast-check";
import { studentQuantile } from "../../src/math/distributions.ts";
import { lineThrough, meetingOf } from "../../src/math/regression.ts";
import { columns, digits } from "../reference/columns.ts";
import { fromR } from "../reference/r-values.ts";

// NIST Statistical Reference Datasets, linear regression, Norris; certified values from the file's header.
describe("cited values: Norris", () => {
  const rows = columns("nist-strd/Norris.dat", /^Data: /);
  const line = lineThrough(
    rows.map(([, x]) => x!),
    rows.map(([y]) => y!),
  )!;

  test("all 36 points are read", () => {
    expect(rows).toHaveLength(36);
    expect(line.degreesOfFreedom).toBe(34);
  });

  test.each([
    ["slope", line.slope, 1.00211681802045, 13],
    ["intercept", line.intercept, -0.262323073774029, 11],
    ["standard deviation of the slope", line.slopeDeviation, 0.429796848199937e-3, 12],
    ["residual standard deviation", line.residual, 0.884796396144373, 12],
  ])("%s: %p is the certified %p to %p digits", (_, value, certified, reached) => {
    expect(digits(value, certified)).toBeGreaterThanOrEqual(reached);
  });
});

describe("cited values: where a line meets a level", () => {
  // Graybill and Iyer, Regression Analysis: Concepts and Applications, p. 431, thermometer, and p. 434, growing crystals; the ends are where the
  // band of R's predict(interval = "confidence") reaches the level, found there by uniroot.
  test.each([
    ["thermometer", [96, 98, 100, 102, 104, 106, 108, 110], [95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21], 104],
    ["crystals", Array.from({ length: 14 }, (_, i) => 2 + 2 * i), [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04], 8],
  ])("%s", (name, x, y, level) => {
    const [at, earliest, latest] = fromR(name) as [number, number, number];
    const line = lineThrough(x, y)!;
    const found = meetingOf(line, level, studentQuantile(0.95, line.degreesOfFreedom), line.residual ** 2);
    expect(found).toEqual({ slopeIsReal: true, at: expect.closeTo(at, 9), earliest: expect.closeTo(earliest, 7), latest: expect.closeTo(latest, 7) });
  });

  // The same with the deviation of a point known: u = 0.002, by the normal law, from R's unscaled covariance.
  test("a bore with a known gauge", () => {
    const [at, earliest, latest] = fromR("known-life") as [number, number, number];
    const line = lineThrough([0, 500, 1000, 1500], [73, 73.011, 73.019, 73.031])!;
    const found = meetingOf(line, 73.1, studentQuantile(0.95, Number.POSITIVE_INFINITY), 0.002 ** 2);
    expect(found).toEqual({ slopeIsReal: true, at: expect.closeTo(at, 6), earliest: expect.closeTo(earliest, 5), latest: expect.closeTo(latest, 5) });
  });
});

describe("at the limits", () => {
  test("equal x have no line", () => {
    expect(lineThrough([500, 500, 500], [1, 2, 3])).toBeUndefined();
  });

  test("x so near together that the squares of their differences vanish have no line", () => {
    expect(lineThrough([1e-200, 2e-200, 3e-200], [1, 2, 3])).toBeUndefined();
  });

  test("two points make a line of which only something else can say how well it is known", () => {
    const line = lineThrough([0, 10], [5, 7])!;
    expect(line).toMatchObject({ slope: 0.2, degreesOfFreedom: 0, residual: Number.NaN });
    // By hand: variance 0.01 of a point, quantile 2: the band at x is ±2 × 0.1 × √(1/2 + (x − 5)²/50).
    const found = meetingOf(line, 8, 2, 0.01);
    if (!found.slopeIsReal) throw new Error("a slope of 7 deviations is real");
    for (const x of [found.earliest, found.latest]) expect(Math.abs(8 - 5 - 0.2 * x) / (0.2 * Math.sqrt(1 / 2 + (x - 5) ** 2 / 50))).toBeCloseTo(1, 9);
    expect(found.at).toBeCloseTo(15, 9);
  });

  test("a slope that the quantile cannot tell from zero has no meeting, only an x before which there is none", () => {
    const line = lineThrough([0, 1, 2, 3], [0, 1, 1, 2])!;
    const critical = line.slope / line.slopeDeviation;
    const variance = line.residual ** 2;
    expect(meetingOf(line, 5, critical * 0.999, variance)).toMatchObject({ slopeIsReal: true, at: expect.closeTo((5 - 0.1) / 0.6, 9) });
    const found = meetingOf(line, 5, critical * 1.001, variance);
    if (found.slopeIsReal) throw new Error("a slope of less than the quantile is not real");
    const x = found.notBefore!;
    expect(x).toBeGreaterThan(1.5);
    expect((5 - 0.1 - 0.6 * x) / (critical * 1.001 * line.residual * Math.sqrt(1 / 4 + (x - 1.5) ** 2 / 5))).toBeCloseTo(1, 9);
  });

  test("a level within the doubt of the points themselves has not even that; a level line without doubt never meets another", () => {
    const line = lineThrough([0, 1, 2, 3], [5, 5, 5, 5])!;
    expect(meetingOf(line, 5.4, 2, 0.25)).toEqual({ slopeIsReal: false, notBefore: undefined });
    expect(meetingOf(line, 6, 2, 0)).toEqual({ slopeIsReal: false, notBefore: Number.POSITIVE_INFINITY });
    expect(meetingOf(line, 5, 2, 0)).toEqual({ slopeIsReal: false, notBefore: undefined });
  });
});

describe("identities", () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 3000 }), fc.integer({ min: 0, max: 1000 })), { minLength: 3, maxLength: 20 });

  test("at each end of the interval the band of the line just reaches the level", () => {
    fc.assert(
      fc.property(points, fc.integer({ min: -500, max: 1500 }), (list, level) => {
        const line = lineThrough(
          list.map(([x]) => x),
          list.map(([, y]) => y),
        );
        fc.pre(line !== undefined && line.residual > 1e-6);
        const t = studentQuantile(0.95, line!.degreesOfFreedom);
        const found = meetingOf(line!, level, t, line!.residual ** 2);
        const ends = found.slopeIsReal ? [found.earliest, found.latest] : found.notBefore === undefined ? [] : [found.notBefore];
        fc.pre(ends.every((x) => Math.abs(x) < 1e6) && (!found.slopeIsReal || found.latest - found.earliest < 1e6));
        for (const x of ends) {
          const off = Math.abs(level - line!.intercept - line!.slope * x);
          const variance = line!.residual ** 2 * (1 / list.length + (x - line!.centre.x) ** 2 / line!.spreadOfX);
          expect(off / (t * Math.sqrt(variance))).toBeCloseTo(1, 5);
        }
        if (!found.slopeIsReal) return;
        expect(found.earliest).toBeLessThanOrEqual(found.at);
        expect(found.latest).toBeGreaterThanOrEqual(found.at);
      }),
    );
  });
});
