import fc from "fast-check";
import { effectiveDegreesOfFreedom, mean, standardDeviation, sum, sumOfSquares, variance } from "../../src/math/statistics.ts";
import { columns, digits, grouped } from "../reference/columns.ts";

const univariate = (name: string, heading = /^-{5,}/) => columns(`nist-strd/${name}.dat`, heading).flat();

// NIST Statistical Reference Datasets, univariate summary statistics; certified values from the files' headers.
describe("cited values: NIST StRD", () => {
  test.each([
    ["Lottery", 518.95871559633, 291.699727470969, 13],
    ["Lew", -177.435, 277.332168044316, 13],
    ["NumAcc1", 10000002, 1, 14],
    // Tenths beside a million: a double holds about 9 digits of such a spread.
    ["NumAcc3", 1000000.2, 0.1, 9],
    ["NumAcc4", 10000000.2, 0.1, 8],
  ])("%s: the mean to 14 digits and the standard deviation to those that doubles can hold", (name, certifiedMean, certifiedDeviation, reached) => {
    const values = univariate(name);
    expect(digits(mean(values), certifiedMean)).toBeGreaterThanOrEqual(14);
    expect(digits(standardDeviation(values), certifiedDeviation)).toBeGreaterThanOrEqual(reached);
  });

  // NIST/SEMATECH e-Handbook data PIDIGITS, certified values as StRD prints them.
  test("PIDIGITS: mean 4.5348, standard deviation 2.86733906028871", () => {
    const values = columns("nist-handbook/PIDIGITS.DAT", /^Data:/).flat();
    expect(values).toHaveLength(5000);
    expect(digits(mean(values), 4.5348)).toBeGreaterThanOrEqual(14);
    expect(digits(standardDeviation(values), 2.86733906028871)).toBeGreaterThanOrEqual(13);
  });
});

// D. C. Montgomery, Introduction to Statistical Quality Control, 2nd ed., pp. 206–213: mean of means and mean range of
// the first 25 samples, computed from the listed data.
test("piston ring diameters, 25 samples of 5: mean of means 74.001176, mean range 0.02276", () => {
  const rows = columns("ring-diameters.txt", /^diameter/).map(([diameter, sample]) => [sample!, diameter!] as const);
  const samples = grouped(rows).slice(0, 25);
  expect(samples.every((sample) => sample.length === 5)).toBe(true);
  expect(mean(samples.map(mean))).toBeCloseTo(74.001176, 9);
  expect(mean(samples.map((sample) => Math.max(...sample) - Math.min(...sample)))).toBeCloseTo(0.02276, 9);
});

// NIST/SEMATECH e-Handbook 2.6.1, probe 2362 (printed values from memory; they follow from MPC61.DAT): within a day, between
// days, between runs.
test("gauge study of resistivity, probe 2362: s1 0.07287, s2 0.03617, s3 0.01965", () => {
  const rows = columns("nist-handbook/MPC61.DAT", /^-{5,}/).filter(([, , probe]) => probe === 2362);
  const pooled = (deviations: readonly number[]) => Math.sqrt(mean(deviations.map((s) => s * s)));
  const cells = [1, 2].map((run) => [138, 139, 140, 141, 142].map((wafer) => rows.filter((row) => row[0] === run && row[1] === wafer)));
  expect(cells.flat().every((cell) => cell.length === 6)).toBe(true);
  const averages = cells.map((run) => run.map((cell) => cell.map((row) => row[7]!)));
  const runMeans = averages[0]!.map((_, wafer) => averages.map((run) => mean(run[wafer]!)));
  expect(pooled(rows.map((row) => row[8]!))).toBeCloseTo(0.07287, 5);
  expect(pooled(averages.flat().map(standardDeviation))).toBeCloseTo(0.03617, 5);
  expect(pooled(runMeans.map(standardDeviation))).toBeCloseTo(0.01965, 5);
});

describe("effective degrees of freedom", () => {
  const shares = (...parts: [u: number, degreesOfFreedom: number][]) => parts.map(([u, degreesOfFreedom]) => ({ variance: u * u, degreesOfFreedom }));

  // JCGM 100:2008, G.4.1 (inputs from memory, result computed): relative u 0.25, 0.57, 0.82 % with n 10, 5, 15.
  test("GUM G.4.1: 18.9987", () => {
    expect(effectiveDegreesOfFreedom(shares([0.25, 9], [0.57, 4], [0.82, 14]))).toBeCloseTo(18.9987, 4);
  });

  // JCGM 100:2008, H.1.3.2: u 5.8 nm (ν 24), 3.9 nm (ν 5), 6.7 nm (ν 8).
  test("GUM H.1, the difference of two end gauges: 25.4472507774", () => {
    expect(effectiveDegreesOfFreedom(shares([5.8, 24], [3.9, 5], [6.7, 8]))).toBeCloseTo(25.4472507774, 9);
  });

  // JCGM 100:2008, H.1.6 (from memory): u 25 (ν 18), 9.7 (ν 25.6), 2.9 (ν 50), 16.6 nm (ν 2) give 16.7, truncated to 16.
  test("GUM H.1, the end gauge: 16.7, truncated to 16", () => {
    const degreesOfFreedom = effectiveDegreesOfFreedom(shares([25, 18], [9.7, 25.6], [2.9, 50], [16.6, 2]));
    expect(Math.floor(degreesOfFreedom * 10) / 10).toBe(16.7);
    expect(Math.floor(degreesOfFreedom)).toBe(16);
  });

  test("known variances only leave it infinite", () => {
    expect(effectiveDegreesOfFreedom(shares([0, 4], [0.2, Number.POSITIVE_INFINITY]))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("identities", () => {
  const values = fc.array(fc.integer({ min: -100_000, max: 100_000 }), { minLength: 2, maxLength: 40 });

  test("a variance does not feel a shift, and feels a stretch by its square", () => {
    fc.assert(
      fc.property(values, fc.integer({ min: -1_000_000, max: 1_000_000 }), (list, shift) => {
        expect(variance(list.map((x) => x + shift))).toBeCloseTo(variance(list), 5);
        expect(variance(list.map((x) => x * 3))).toBeCloseTo(9 * variance(list), 3);
      }),
    );
  });

  test("the mean of equal decimals is that decimal to its last digit", () => {
    expect((0.1 + 0.1 + 0.1) / 3).not.toBe(0.1);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 1, max: 30 }), (n, count) =>
        expect(mean(new Array(count).fill(n / 1000))).toBe(n / 1000),
      ),
    );
  });

  test("of two values half the square of their difference is left, also where no double is their mean", () => {
    for (const gap of [0.125, 0.375, 3]) expect(sumOfSquares([1e15, 1e15 + gap])).toBe(gap ** 2 / 2);
  });

  test("a sum keeps what a plain sum drops", () => {
    expect(sum([1e16, 1, -1e16, 1])).toBe(2);
    expect(sum([1, 1e16, 1, -1e16])).toBe(2);
  });
});
