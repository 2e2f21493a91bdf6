import fc from "fast-check";
import { studentQuantile } from "../../src/math/distributions.ts";
import { inversePrediction, lineThrough } from "../../src/math/regression.ts";
import { columns, digits } from "../reference/columns.ts";

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

describe("cited values: inverse prediction", () => {
  // Graybill and Iyer, Regression Analysis: Concepts and Applications, p. 431, thermometer; as the tests of R's investr print them.
  const temperature = [96, 98, 100, 102, 104, 106, 108, 110];
  const reading = [95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21];

  test.each([
    [104, 0.95, 103.995, 103.4, 104.6, 1],
    [100, 0.9, 100.1, 99.63, 100.59, 2],
  ])("a thermometer that reads %p: at %p between the printed temperatures", (level, confidence, at, earliest, latest, decimals) => {
    const found = inversePrediction(lineThrough(temperature, reading)!, level, studentQuantile(confidence, 6))!;
    expect(found.at).toBeCloseTo(at, at === 103.995 ? 3 : 1);
    expect(found.earliest).toBeCloseTo(earliest, decimals);
    expect(found.latest).toBeCloseTo(latest, decimals);
  });

  // The same book, p. 434, growing crystals; investr's tests print 15.8882, 11.0946 and 20.7240 for 8 g.
  test("a crystal of 8 g: 15.8882 h, between 11.0946 and 20.7240 h", () => {
    const hours = Array.from({ length: 14 }, (_, i) => 2 + 2 * i);
    const grams = [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04];
    const found = inversePrediction(lineThrough(hours, grams)!, 8, studentQuantile(0.95, 12))!;
    expect(found.at).toBeCloseTo(15.8882, 4);
    expect(found.earliest).toBeCloseTo(11.0946, 4);
    expect(found.latest).toBeCloseTo(20.724, 4);
  });
});

describe("at the limits", () => {
  test("equal x have no line", () => {
    expect(lineThrough([500, 500, 500], [1, 2, 3])).toBeUndefined();
  });

  test("x so near together that the squares of their differences vanish have no line", () => {
    expect(lineThrough([1e-200, 2e-200, 3e-200], [1, 2, 3])).toBeUndefined();
  });

  test("a line that is level and without scatter reaches no level", () => {
    const line = lineThrough([0, 1, 2], [5, 5, 5])!;
    expect(line).toMatchObject({ slope: 0, residual: 0 });
    for (const level of [4, 5, 6]) expect(inversePrediction(line, level, 2)).toBeUndefined();
  });

  test("a slope that t cannot tell from zero has no inverse, just inside and just outside", () => {
    const line = lineThrough([0, 1, 2, 3], [0, 1, 1, 2])!;
    const critical = line.slope / line.slopeDeviation;
    expect(inversePrediction(line, 5, critical * 1.000001)).toBeUndefined();
    expect(inversePrediction(line, 5, critical * 0.999)?.at).toBeCloseTo((5 - 0.1) / 0.6, 9);
  });
});

describe("identities", () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 3000 }), fc.integer({ min: 0, max: 1000 })), { minLength: 3, maxLength: 20 });

  test("at each end of the interval the prediction band just reaches the level", () => {
    fc.assert(
      fc.property(points, fc.integer({ min: -500, max: 1500 }), (list, level) => {
        const line = lineThrough(
          list.map(([x]) => x),
          list.map(([, y]) => y),
        );
        fc.pre(line !== undefined && line.residual > 1e-6);
        const t = studentQuantile(0.95, line!.degreesOfFreedom);
        const found = inversePrediction(line!, level, t);
        fc.pre(found !== undefined && Math.abs(found.latest - found.earliest) < 1e6);
        for (const x of [found!.earliest, found!.latest]) {
          const off = Math.abs(level - line!.intercept - line!.slope * x);
          const band = t * line!.residual * Math.sqrt(1 + 1 / list.length + (x - line!.centre.x) ** 2 / line!.spreadOfX);
          expect(off / band).toBeCloseTo(1, 5);
        }
        expect(found!.earliest).toBeLessThanOrEqual(found!.at);
        expect(found!.latest).toBeGreaterThanOrEqual(found!.at);
      }),
    );
  });
});
