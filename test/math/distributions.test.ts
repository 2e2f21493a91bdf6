import fQuantile from "@stdlib/stats-base-dists-f-quantile";
import fc from "fast-check";
import { studentQuantile, twoSidedP, upperTailF } from "../../src/math/distributions.ts";
import { normalBelow } from "../../src/math/normal.ts";
import { fromR } from "../reference/r-values.ts";

describe("cited values", () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.2, critical values of Student's t, 0.975 and 0.995.
  test.each([
    [1, 12.706, 63.657],
    [2, 4.303, 9.925],
    [5, 2.571, 4.032],
    [10, 2.228, 3.169],
    [16, 2.12, 2.921],
    [18, 2.101, 2.878],
    [30, 2.042, 2.75],
    [60, 2, 2.66],
    [100, 1.984, 2.626],
    [Number.POSITIVE_INFINITY, 1.96, 2.576],
  ])("t with %p degrees of freedom covers 95 %% within ±%p and 99 %% within ±%p", (degreesOfFreedom, t95, t99) => {
    expect(studentQuantile(0.95, degreesOfFreedom)).toBeCloseTo(t95, 3);
    expect(studentQuantile(0.99, degreesOfFreedom)).toBeCloseTo(t99, 3);
  });

  // R's qnorm, qt, pnorm and pt.
  test("both laws agree with R's to twelve digits, the normal one as a t with endless degrees of freedom", () => {
    const [z, t] = [fromR("qnorm"), fromR("qt")];
    for (const [i, confidence] of [0.8, 0.9, 0.95, 0.99].entries()) expect(studentQuantile(confidence, Number.POSITIVE_INFINITY)).toBeCloseTo(z[i]!, 12);
    for (const [i, degreesOfFreedom] of [1, 2, 3.5, 10].entries()) expect(studentQuantile(0.95, degreesOfFreedom)).toBeCloseTo(t[i]!, 11);
    for (const [i, at] of [0.5, 1.959963984540054, 3, 8].entries()) expect(twoSidedP(at, Number.POSITIVE_INFINITY) / fromR("pnorm")[i]!).toBeCloseTo(1, 11);
    for (const [i, at] of [0.5, 2, 3, 8].entries()) expect(twoSidedP(at, 3.5) / fromR("pt")[i]!).toBeCloseTo(1, 11);
  });

  // JCGM 100:2008, H.1.6 (from memory): t99(16) = 2.92, so U99 = 2.92 × 32 nm = 93 nm.
  test("GUM H.1: 99 % coverage of an end gauge of u 32 nm and 16 degrees of freedom is 93 nm", () => {
    expect(Math.round(studentQuantile(0.99, 16) * 32)).toBe(93);
  });

  // NIST/SEMATECH e-Handbook 1.3.6.7.3, upper critical values of F at 5 and 1 % (from memory).
  test.each([
    [1, 1, 161.448, 0.05],
    [5, 10, 3.326, 0.05],
    [10, 10, 2.978, 0.05],
    [4, 20, 2.866, 0.05],
    [5, 10, 5.636, 0.01],
    [10, 10, 4.849, 0.01],
  ])("F(%p, %p) passes %p with probability %p", (above, below, critical, chance) => {
    expect(upperTailF(critical, above, below)).toBeCloseTo(chance, 4);
    expect(fQuantile(1 - chance, above, below)).toBeCloseTo(critical, 3);
  });

  // Table of the normal distribution in any handbook; the last two by JCGM 106 and ILAC-G8:09/2019 (guard band 2u and 1.645u).
  test.each([
    [0, 0.5],
    [1, 0.841345],
    [1.4, 0.919243],
    [-2, 0.02275],
    [-1.645, 0.04998],
  ])("the normal distribution has its share below %p at %p", (z, share) => {
    expect(normalBelow(z)).toBeCloseTo(share, 5);
  });
});

describe("identities", () => {
  const degreesOfFreedom = fc.integer({ min: 1, max: 200 });
  const confidence = fc.integer({ min: 1, max: 999 }).map((thousandths) => thousandths / 1000);

  test("what t leaves outside is the p of that t", () => {
    fc.assert(
      fc.property(confidence, degreesOfFreedom, (share, nu) => {
        expect(twoSidedP(studentQuantile(share, nu), nu)).toBeCloseTo(1 - share, 9);
      }),
    );
  });

  test("t² with ν is F with 1 and ν", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), degreesOfFreedom, (hundredths, nu) => {
        const t = hundredths / 100;
        expect(upperTailF(t * t, 1, nu)).toBeCloseTo(twoSidedP(t, nu), 9);
      }),
    );
  });

  test("a chance far out keeps its digits and does not drop to nothing", () => {
    // F(2, ν) has the closed form (1 + 2F/ν)^(−ν/2).
    expect(upperTailF(1000, 2, 20) / (1 + 100) ** -10).toBeCloseTo(1, 9);
  });

  test("more degrees of freedom never needs a wider t", () => {
    fc.assert(
      fc.property(confidence, degreesOfFreedom, (share, nu) => {
        expect(studentQuantile(share, nu + 1)).toBeLessThanOrEqual(studentQuantile(share, nu));
      }),
    );
  });
});
