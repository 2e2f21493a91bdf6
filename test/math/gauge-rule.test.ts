import fc from "fast-check";
import { studentQuantile } from "../../src/math/distributions.ts";
import { combined, type Doubt, doubtOfOne, equivalenceConfidence, halfWidth, tested, weighed } from "../../src/math/gauge-rule.ts";
import { standardDeviation } from "../../src/math/statistics.ts";
import { SeededNormal } from "../helpers/normal.ts";
import { fromR } from "../reference/r-values.ts";

const known = (u: number): Doubt => doubtOfOne(0, 0, u);
const seen = (s: number, degreesOfFreedom: number): Doubt => doubtOfOne(s, degreesOfFreedom, 0);

describe("cited values", () => {
  // JCGM 100:2008 (GUM), H.1: u of d from 5.8 (ν 24), 3.9 (ν 5) and 6.7 (ν 8) is 9.7 nm with ν 25.6, as the effective degrees of freedom print.
  test("GUM H.1: three standard deviations with their degrees of freedom make one", () => {
    const { variance, degreesOfFreedom } = combined([seen(5.8, 24), seen(3.9, 5), seen(6.7, 8)]);
    expect(Math.sqrt(variance)).toBeCloseTo(9.68194195397, 9);
    expect(degreesOfFreedom).toBeCloseTo(25.4472507774, 8);
  });

  // The normal law in any handbook: 1.960 for 95 %, 1.645 for 90 %; a U of k = 2 is then 1.02 times its 95 %.
  test("a gauge's interval is 1.960 u at 95 % and 1.645 u at 90 %", () => {
    expect(halfWidth(known(1), 0.95)).toBeCloseTo(1.959963984540054, 12);
    expect(halfWidth(known(1), equivalenceConfidence(0.95))).toBeCloseTo(1.6448536269514722, 12);
  });

  // R's t.test on six pairs: the scatter of the changes alone.
  test("six changes by their scatter are R's paired t", () => {
    const [estimate, lower, upper, t, degreesOfFreedom, p] = fromR("paired") as [number, number, number, number, number, number];
    const changes = [0.009, 0.016, 0.009, 0.007, 0.018, 0.01];
    const doubt = combined([weighed(seen(standardDeviation(changes), 5), 1 / 6)]);
    const found = tested(0.0115, doubt, 0.95);
    expect(estimate).toBeCloseTo(0.0115, 12);
    expect(found.lower).toBeCloseTo(lower, 10);
    expect(found.upper).toBeCloseTo(upper, 10);
    expect(found.statistic).toBeCloseTo(t, 8);
    expect(doubt.degreesOfFreedom).toBeCloseTo(degreesOfFreedom, 12);
    expect(found.p).toBeCloseTo(p, 10);
  });
});

describe("which of the two rules", () => {
  test("a scatter of up to u is the gauge's, above it its own", () => {
    expect(doubtOfOne(0.002, 3, 0.002)).toEqual({ variance: 0.002 ** 2, degreesOfFreedom: Number.POSITIVE_INFINITY, by: "gauge" });
    expect(doubtOfOne(0.1 + 0.2, 3, 0.3)).toMatchObject({ by: "gauge" });
    expect(doubtOfOne(0.0021, 3, 0.002)).toEqual({ variance: 0.0021 ** 2, degreesOfFreedom: 3, by: "scatter" });
  });

  test("without degrees of freedom there is no scatter, whatever it is said to be", () => {
    expect(doubtOfOne(Number.NaN, 0, 0.002)).toMatchObject({ variance: 0.002 ** 2, by: "gauge" });
    expect(doubtOfOne(5, 0, 0.002)).toMatchObject({ by: "gauge" });
  });

  test("a common part is not divided, and gives the scatter more degrees of freedom", () => {
    const alone = combined([weighed(seen(0.004, 3), 1 / 4)]);
    const both = combined([weighed(seen(0.004, 3), 1 / 4)], 0.003);
    expect(alone).toEqual({ variance: 0.000004, degreesOfFreedom: expect.closeTo(3, 12), by: "scatter" });
    expect(both.variance).toBeCloseTo(0.000004 + 0.000009, 15);
    // (4 + 9)² ÷ (4² ÷ 3)
    expect(both.degreesOfFreedom).toBeCloseTo(31.6875, 9);
  });

  test("no scatter but a common part is the gauge's, by the normal law", () => {
    expect(combined([weighed(seen(0, 5), 1 / 6)], 0.003)).toEqual({ variance: 0.000009, degreesOfFreedom: Number.POSITIVE_INFINITY, by: "gauge" });
    expect(combined([known(0.003), known(0.004)]).variance).toBeCloseTo(0.005 ** 2, 15);
  });
});

describe("identities", () => {
  const size = fc.integer({ min: 1, max: 50 }).map((n) => n / 1000);

  test("the law changes nothing but the quantile: half a width is the quantile times the deviation", () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 1, max: 30 }), size, (s, degreesOfFreedom, u) => {
        const doubt = doubtOfOne(s, degreesOfFreedom, u);
        const quantile = studentQuantile(0.95, s > u ? degreesOfFreedom : Number.POSITIVE_INFINITY);
        expect(halfWidth(doubt, 0.95)).toBeCloseTo(quantile * Math.max(s, u), 12);
      }),
    );
  });

  test("0 lies outside the interval exactly when p is below one less the confidence", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -40, max: 40 }),
        size,
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom(0.9, 0.95, 0.99),
        (n, s, degreesOfFreedom, confidence) => {
          const { lower, upper, p } = tested(n / 500, seen(s, degreesOfFreedom), confidence);
          fc.pre(Math.abs(p - (1 - confidence)) > 1e-9);
          expect(lower > 0 || upper < 0).toBe(p < 1 - confidence);
        },
      ),
    );
  });
});

// The rule's own figures, by simulation: the mean of n readings of a gauge that is as good as its u says.
test.each([2, 3, 4, 8])("the interval of a mean of %p readings covers the true value in at least 95 of 100 cases", (n) => {
  const random = new SeededNormal(8500 + n);
  const runs = 20_000;
  let covered = 0;
  for (let run = 0; run < runs; run++) {
    const readings = Array.from({ length: n }, () => random.normal());
    const mean = readings.reduce((a, b) => a + b) / n;
    const doubt = weighed(doubtOfOne(standardDeviation(readings), n - 1, 1), 1 / n);
    if (Math.abs(mean) <= halfWidth(doubt, 0.95)) covered++;
  }
  expect(covered / runs).toBeGreaterThanOrEqual(0.95);
});
