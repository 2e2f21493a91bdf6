import fc from "fast-check";
import { amplitudes, coreRoughness, equalParts, levelled, meanLine, meanLineOverValleys, wholeCutoffs } from "../../src/math/surface-texture.ts";

const wave = (points: number, perWave: number, amplitude: number) =>
  Array.from({ length: points }, (_, i) => amplitude * Math.sin((2 * Math.PI * (i + 0.5)) / perWave));

describe("the Gaussian mean line, against ISO 16610-21", () => {
  // The standard's transmission of a sine: exp(−π (α λc ÷ wave)²), one half at the cut-off.
  test.each([0.4, 0.7, 1, 1.6, 3])("a wave of %s cut-offs keeps its share", (share) => {
    const [spacing, cutoff] = [0.004, 0.8];
    const perWave = (share * cutoff) / spacing;
    const profile = wave(4001, perWave, 1);
    const line = meanLine(profile, spacing, cutoff);
    const middle = (all: readonly number[]) => all.slice(1000, 3000);
    const passed = Math.max(...middle(line)) / Math.max(...middle(profile));
    expect(passed).toBeCloseTo(Math.exp(-Math.LN2 / share ** 2), 2);
    if (share === 1) expect(passed).toBeCloseTo(0.5, 3);
  });

  test("a level stays one to the very ends, and so does what is between the same bounds", () => {
    const line = meanLine(new Array(200).fill(3), 0.04, 0.8);
    expect(Math.max(...line.map((height) => Math.abs(height - 3)))).toBeLessThan(1e-12);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 41, maxLength: 90 }), (profile) => {
        for (const height of meanLine(profile, 0.04, 0.8)) {
          expect(height).toBeLessThanOrEqual(Math.max(...profile) + 1e-9);
          expect(height).toBeGreaterThanOrEqual(Math.min(...profile) - 1e-9);
        }
      }),
    );
  });

  test("valleys pull the line over them down less than the plain one, and never up", () => {
    const profile = Array.from({ length: 600 }, (_, i) => (i % 40 < 4 ? -20 : (i * 7919) % 5));
    const plain = meanLine(profile, 0.01, 0.8);
    const over = meanLineOverValleys(profile, plain, 0.01, 0.8);
    expect(plain.every((height, i) => over[i]! >= height - 1e-9)).toBe(true);
    expect(over[300]! - plain[300]!).toBeGreaterThan(1);
  });
});

test("tilt and zero point leave nothing behind", () => {
  for (const height of levelled(Array.from({ length: 50 }, (_, i) => 7 - 0.3 * i))) expect(Math.abs(height)).toBeLessThan(1e-12);
});

describe("the whole cut-offs in the middle", () => {
  test.each([
    [121, 0.04, 5, 100],
    [120, 0.04, 4, 80],
    [41, 0.04, 1, 20],
    [4801, 0.001, 5, 4000],
    [6000, 0.001, 6, 4800],
  ])("%s heights %s apart hold %s cut-offs of 0.8 with %s heights", (points, spacing, sections, kept) => {
    const found = wholeCutoffs(new Array(points).fill(0), spacing, 0.8)!;
    expect([found.sections, found.heights.length]).toEqual([sections, kept]);
    expect(new Set(found.section).size).toBe(sections);
  });

  test("less than two cut-offs hold none, and equal parts are equal", () => {
    expect(wholeCutoffs(new Array(40).fill(0), 0.04, 0.8)).toBeUndefined();
    expect(equalParts(new Array(100).fill(0), 5).section.filter((at) => at === 2)).toHaveLength(20);
  });
});

describe("amplitudes, against their closed forms", () => {
  // A sine of amplitude A: Ra 2A/π, Rq A/√2, Rz 2A. A triangle of height h: Ra h/4, Rq h/2√3.
  test("a sine and a triangle", () => {
    const sine = amplitudes(equalParts(wave(10_000, 200, 3), 5));
    expect(sine.ra).toBeCloseTo(6 / Math.PI, 3);
    expect(sine.rq).toBeCloseTo(3 / Math.SQRT2, 9);
    expect(sine.rz).toBeCloseTo(6, 2);
    const triangle = amplitudes(
      equalParts(
        Array.from({ length: 10_000 }, (_, i) => Math.abs(((i + 0.5) % 200) - 100) / 25 - 2),
        5,
      ),
    );
    expect(triangle.ra).toBeCloseTo(1, 3);
    expect(triangle.rq).toBeCloseTo(4 / (2 * Math.sqrt(3)), 3);
  });
});

/** The height at which a share of a normal law lies above, by halving its distribution (Abramowitz and Stegun 26.2.17). */
function normalHeights(n: number): number[] {
  const below = (x: number): number => {
    const t = 1 / (1 + 0.2316419 * Math.abs(x));
    const tail =
      (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    return x >= 0 ? 1 - tail : tail;
  };
  return Array.from({ length: n }, (_, i) => {
    let [low, high] = [-8, 8];
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (below(middle) < (i + 0.5) / n) low = middle;
      else high = middle;
    }
    return low;
  });
}

describe("core roughness, against the closed forms of ISO 13565-2", () => {
  test("a triangle is all core", () => {
    const { rk, rpk, rvk, mr1, mr2 } = coreRoughness(Array.from({ length: 1000 }, (_, i) => (4 * (i + 0.5)) / 1000));
    expect(rk).toBeCloseTo(4, 9);
    expect(rpk).toBeCloseTo(0, 9);
    expect(rvk).toBeCloseTo(0, 9);
    expect(mr1).toBeLessThan(0.002);
    expect(mr2).toBeGreaterThan(0.998);
  });

  test("a core of slope s under peaks of P on a share m₁: Rpk P, Mr1 P ÷ (s + P ÷ m₁)", () => {
    const [slope, peak, share, n] = [2, 3, 0.1, 20_000];
    const heights = Array.from({ length: n }, (_, i) => {
      const p = (i + 0.5) / n;
      return -slope * p + (p < share ? peak * (1 - p / share) : 0);
    });
    const { rk, rpk, rvk, mr1, mr2 } = coreRoughness(heights);
    expect(rk).toBeCloseTo(slope, 6);
    expect(mr1).toBeCloseTo(peak / (slope + peak / share), 3);
    expect(rpk).toBeCloseTo(peak, 2);
    expect(rvk).toBeCloseTo(0, 6);
    expect(mr2).toBeGreaterThan(0.999);
  });

  // Normal law: Rk 2.574 σ, Rpk .945 σ, Mr1 9.9 % (worked out apart from the definitions).
  test("heights of a normal law", () => {
    const { rk, rpk, rvk, mr1, mr2 } = coreRoughness(normalHeights(20_001));
    expect(rk).toBeCloseTo(2.574, 2);
    expect(rpk).toBeCloseTo(0.945, 2);
    expect(rvk).toBeCloseTo(0.945, 2);
    expect(100 * mr1).toBeCloseTo(9.9, 1);
    expect(100 * mr2).toBeCloseTo(90.1, 1);
  });

  test("a flat surface has none of it", () => {
    expect(coreRoughness(new Array(100).fill(0))).toEqual({ rk: 0, rpk: 0, rvk: 0, mr1: 0, mr2: 1, top: 0 });
  });

  test("a surface turned over has peaks for valleys", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: -5000, max: 5000 }), { minLength: 40, maxLength: 120 }), (heights) => {
        const [up, over] = [coreRoughness(heights), coreRoughness(heights.map((height) => -height))];
        // Of windows that fall equally the first one counts, which is another one seen from below.
        const sorted = [...heights].sort((a, b) => b - a);
        const width = Math.round(0.4 * sorted.length);
        const falls = sorted.slice(0, sorted.length - width).map((height, i) => height - sorted[i + width]!);
        fc.pre(falls.filter((fall) => fall === Math.min(...falls)).length === 1);
        expect(over.rk).toBeCloseTo(up.rk, 6);
        expect(over.rpk).toBeCloseTo(up.rvk, 4);
        expect(over.mr1).toBeCloseTo(1 - up.mr2, 6);
      }),
      { numRuns: 400 },
    );
  });
});
