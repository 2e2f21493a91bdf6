import fc from "fast-check";
import { type Design, normalQuantile, powerOf, smallestSeen } from "../../src/math/power.ts";
import { fromR } from "../reference/r-values.ts";

const paired = (n: number, more: Partial<Design> = {}): Design => ({
  ...{ weight: 1 / n, degreesOfFreedom: n - 1, u: 0, scatter: 1, common: 0, level: 0.05 },
  ...more,
});
const two = (n: number): Design => ({ weight: 2 / n, degreesOfFreedom: 2 * n - 2, u: 0, scatter: 1, common: 0, level: 0.05 });

describe("cited values", () => {
  // R's power.t.test with both sides counted (strict).
  test("without a gauge it is the power of Student's paired t", () => {
    for (const [i, n] of [2, 3, 4, 8].entries()) expect(powerOf(paired(n), 1.5)).toBeCloseTo(fromR("power-paired-t")[i]!, 8);
  });

  test("and of the two-sample t", () => {
    for (const [delta, sizes] of [
      [1, [2, 10, 22, 23]],
      [2, [2, 6, 7]],
      [3, [2, 3, 4]],
    ] as const) {
      for (const [i, n] of sizes.entries()) expect(powerOf(two(n), delta)).toBeCloseTo(fromR(`power-two-t-${delta}`)[i]!, 8);
    }
  });

  // Simulated apart with NumPy 2.4.6 and SciPy 1.17.1 (400,000 pairs of groups judged by Welch's test, standard error 0.0008).
  test("and of Welch's test, which with few values in each group finds far less", () => {
    for (const [n, difference, chance] of [
      [2, 5.653, 0.477],
      [2, 6.796, 0.582],
      [3, 3.071, 0.696],
      [3, 3.589, 0.817],
      [6, 2, 0.865],
    ] as const)
      expect(Math.abs(powerOf({ ...two(n), isWelch: true }, difference) - chance)).toBeLessThan(0.003);
    expect(powerOf({ ...two(23), isWelch: true }, 1)).toBeCloseTo(powerOf(two(23), 1), 2);
  });

  test("the smallest difference seen nine times in ten is where R's power comes to 0.9", () => {
    for (const [i, n] of [3, 6, 12].entries()) expect(smallestSeen(paired(n), 0.9, 20)).toBeCloseTo(fromR("seen-paired-t")[i]!, 6);
  });

  test("a quantile of the normal law on either side", () => {
    for (const [i, power] of [0.8, 0.9].entries()) {
      expect(normalQuantile(power)).toBeCloseTo(fromR("z-power")[i]!, 12);
      expect(normalQuantile(1 - power)).toBeCloseTo(-fromR("z-power")[i]!, 12);
    }
    expect(normalQuantile(0.5)).toBe(0);
  });
});

describe("identities", () => {
  const design = fc.record({
    n: fc.integer({ min: 2, max: 40 }),
    u: fc.constantFrom(0, 0.5, 1, 2),
    common: fc.constantFrom(0, 0.3, 2),
    level: fc.constantFrom(0.05, 0.05 / 64),
  });

  test("where nothing differs, a t test finds something in just its level of cases", () => {
    for (const n of [2, 3, 9, 200]) expect(powerOf(paired(n), 0)).toBeCloseTo(0.05, 6);
  });

  test("a larger difference is never seen less often", () => {
    fc.assert(
      fc.property(design, fc.double({ min: 0, max: 6, noNaN: true }), fc.double({ min: 0, max: 6, noNaN: true }), ({ n, ...more }, a, b) => {
        expect(powerOf(paired(n, more), Math.max(a, b))).toBeGreaterThanOrEqual(powerOf(paired(n, more), Math.min(a, b)) - 1e-7);
      }),
      { numRuns: 40 },
    );
  });

  test("everything twice as large is seen as often", () => {
    fc.assert(
      fc.property(design, fc.double({ min: 0.1, max: 6, noNaN: true }), ({ n, u, common, level }, difference) => {
        const twice = powerOf(paired(n, { u: 2 * u, common: 2 * common, scatter: 2, level }), 2 * difference);
        expect(twice).toBeCloseTo(powerOf(paired(n, { u, common, level }), difference), 9);
      }),
      { numRuns: 40 },
    );
  });

  test("a million values are judged by the normal law", () => {
    const many = 2e6;
    const difference = 3 / Math.sqrt(many);
    expect(powerOf(paired(many), difference)).toBeCloseTo(0.85083, 4);
    expect(powerOf(paired(100_000), 3 / Math.sqrt(100_000))).toBeCloseTo(0.85083, 4);
  });

  test("one value has no scatter: its gauge alone decides", () => {
    expect(powerOf(paired(1, { u: 1 }), 1.959963984540054 + 1.2815515655446004)).toBeCloseTo(0.9, 6);
  });

  test("what must be exceeded besides is exceeded", () => {
    expect(smallestSeen(paired(50, { u: 1, floor: 2 }), 0.5, 10)).toBeCloseTo(2, 4);
    expect(smallestSeen(paired(50, { u: 1, floor: 2 }), 0.5, 1)).toBeUndefined();
  });
});
