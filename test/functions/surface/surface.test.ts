import fc from "fast-check";
import { surface } from "../../../src/functions/surface/surface.ts";
import { fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["Ra", "Rq", "Rz", "Rk", "Rpk", "Rvk", "Mr1", "Mr2", "sections"];
const texture = (profile: readonly number[], ...rest: number[]) =>
  (
    ask(
      surface,
      profile.map((height) => [height]),
      ...rest,
    ) as (number | string)[][]
  )[1]!;

describe("cited values", () => {
  // NumPy: numpy.convolve, reshape, sort, polyfit and interp; the profiles stand in test/reference/scipy/shapes.txt.
  test.each(["plateau", "ground"])("the profile called %s", (name) => {
    const [cutoff, ...profile] = fromScipy(name);
    const found = texture(profile, 0.8 / cutoff!);
    for (const [i, value] of fromScipy(`${name}-texture`).entries()) expect(found[i]).toBeCloseTo(value, 8);
    expect(found[8]).toBe(5);
  });

  // ISO 16610-21: at the cut-off half of a wave is roughness. Ra of a sine is 2A/π, Rq A/√2, Rz 2A (ISO 21920-2, from memory).
  test("of a wave as long as the cut-off, half is roughness", () => {
    const profile = Array.from({ length: 4801 }, (_, i) => 2 * Math.sin((2 * Math.PI * i) / 800));
    const [ra, rq, rz] = texture(profile, 0.001, 0.8) as number[];
    expect(ra! / (2 / Math.PI)).toBeCloseTo(1, 1);
    expect(rq! / Math.SQRT1_2).toBeCloseTo(1, 1);
    expect(rz! / 2).toBeCloseTo(1, 1);
  });
});

const profile = fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 100, maxLength: 140 }).map((all) => all.map((height) => height / 100));

const average = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Intercept and slope by the textbook's sums. */
function lineOf(x: readonly number[], y: readonly number[]): [intercept: number, slope: number] {
  const slope = x.reduce((s, at, i) => s + (at - average(x)) * y[i]!, 0) / x.reduce((s, at) => s + (at - average(x)) ** 2, 0);
  return [average(y) - slope * average(x), slope];
}

/** The standards' steps again over lengths in cut-offs, for a spacing of a twentieth of one. */
function bySteps(heights: readonly number[]): number[] {
  const x = heights.map((_, i) => i / 20);
  const [intercept, slope] = lineOf(x, heights);
  const level = heights.map((z, i) => z - intercept - slope * x[i]!);
  const smooth = (line: readonly number[]) =>
    line.map((_, i) => {
      const near = x.map((at) => (Math.abs(at - x[i]!) < 1.0001 ? Math.exp((-Math.PI * Math.PI * (at - x[i]!) ** 2) / Math.LN2) : 0));
      return near.reduce((s, w, j) => s + w * line[j]!, 0) / near.reduce((s, w) => s + w, 0);
    });
  const plain = smooth(level);
  const over = smooth(level.map((z, i) => Math.max(z, plain[i]!)));
  const length = (heights.length - 1) / 20;
  const sections = Math.floor(length - 1 + 1e-9);
  const from = (length - sections) / 2;
  const sectionOf = x.map((at) => Math.floor(at - from + 1e-9));
  const kept = (line: readonly number[]) => level.map((z, i) => z - line[i]!).filter((_, i) => sectionOf[i]! >= 0 && sectionOf[i]! < sections);
  const rough = kept(plain);
  const parts = Array.from({ length: sections }, (_, part) => level.map((z, i) => z - plain[i]!).filter((_, i) => sectionOf[i] === part));
  const ranges = parts.map((part) => Math.max(...part) - Math.min(...part));
  return [average(rough.map(Math.abs)), Math.sqrt(average(rough.map((z) => z * z))), average(ranges), ...coreOf(kept(over))];
}

/** Rk, Rpk, Rvk by trying every window; areas as sums of steps. */
function coreOf(heights: readonly number[]): number[] {
  const curve = [...heights].sort((a, b) => b - a);
  const share = curve.map((_, i) => (i + 0.5) / curve.length);
  const width = Math.round(0.4 * curve.length);
  const falls = curve.slice(0, curve.length - width).map((z, i) => z - curve[i + width]!);
  const at = falls.indexOf(Math.min(...falls));
  const [top, slope] = lineOf(share.slice(at, at + width + 1), curve.slice(at, at + width + 1));
  const bottom = top + slope;
  // Material ratio at a level, by its two neighbours on the curve.
  const ratioAt = (level: number) => {
    const last = curve.filter((z) => z > level).length;
    if (last === 0 || last === curve.length) return last / curve.length;
    return share[last - 1]! + ((curve[last - 1]! - level) / (curve[last - 1]! - curve[last]!)) * (1 / curve.length);
  };
  const area = (over: (z: number) => number) => average(curve.map((z) => Math.max(0, over(z))));
  const [mr1, mr2] = [ratioAt(top), ratioAt(bottom)];
  const [peaks, valleys] = [mr1 > 0 ? (2 * area((z) => z - top)) / mr1 : 0, mr2 < 1 ? (2 * area((z) => bottom - z)) / (1 - mr2) : 0];
  return [top - bottom, peaks, valleys, 100 * mr1, 100 * mr2];
}

describe("against the standards' steps, point by point", () => {
  test("all figures of any profile; another scale, zero point and tilt change nothing but the unit", () => {
    fc.assert(
      fc.property(profile, fc.integer({ min: -50, max: 50 }), (heights, tilt) => {
        const found = texture(heights, 0.04);
        for (const [i, value] of bySteps(heights).entries()) expect(found[i]).toBeCloseTo(value, 6);
        const tilted = texture(
          heights.map((height, i) => height + 9 + tilt * i * 0.01),
          0.04,
        );
        for (const i of [0, 1, 2, 3]) expect(tilted[i]).toBeCloseTo(found[i] as number, 6);
        const inch = texture(
          heights.map((height) => height / 25.4),
          0.04 / 25.4,
          0.8 / 25.4,
        );
        for (const i of [0, 1, 2]) expect((inch[i] as number) * 25.4).toBeCloseTo(found[i] as number, 6);
        expect(found[0] as number).toBeLessThanOrEqual((found[1] as number) + 1e-9);
      }),
      { numRuns: 400 },
    );
  });
});

describe("a profile that is filtered already", () => {
  // ISO 21920-2, from memory: a saw of height 5 in ten steps.
  test("only the mean is taken off, and five equal parts are looked at", () => {
    const saw = Array.from({ length: 100 }, (_, i) => [0, 1, 2, 3, 4, 5, 4, 3, 2, 1][i % 10]! + 20);
    expect(texture(saw, 0.01, 0).slice(0, 3)).toEqual([1.3, 1.5, 5]);
    expect(texture(saw, 0.01, 0)[8]).toBe(5);
  });
});

describe("at the limits", () => {
  test("two cut-offs hold one section, and fewer than five say so", () => {
    const heights = Array.from({ length: 41 }, (_, i) => (i * 7919) % 13);
    expect(texture(heights, 0.04)[8]).toBe("1: fewer than 5");
    expect(texture([...heights, ...heights, ...heights.slice(1, 40)], 0.04)[8]).toBe(5);
    expect(ask(surface, [heights.slice(1)], 0.04)).toEqual({
      code: "unfit",
      sentence: "SURFACE: profile 40: heights are too few: at this spacing one cut-off with half of one at each end is 41",
    });
  });

  test("a single height is no profile", () => {
    expect(ask(surface, 3, 0.04)).toMatchObject({ code: "unfit" });
    expect(ask(surface, 3, 0.04, 0)).toMatchObject({ code: "unfit" });
  });

  test("a mirror has no roughness", () => {
    expect(texture(new Array(121).fill(5), 0.04)).toEqual([0, 0, 0, 0, 0, 0, 0, 100, 5]);
  });
});

describe("faults", () => {
  const heights = [Array.from({ length: 60 }, (_, i) => (i * 7919) % 13)];
  test.each<[string, unknown[], string]>([
    [
      "a step of more than a twentieth of the cut-off",
      [heights, 0.041],
      "SURFACE: spacing 0.041: it must be at most a twentieth of the cut-off 0.8: are both in one unit?",
    ],
    ["a filtered profile that is too short", [heights, 0.01, 0], "SURFACE: profile 60: heights are too few for 5 sections, at least 100 are needed"],
    [
      "a block",
      [
        [
          [1, 2],
          [3, 4],
        ],
        0.04,
      ],
      'SURFACE: profile "2×2 cells": one row or one column is wanted, one height after the other',
    ],
    ["a negative cut-off", [heights, 0.04, -0.8], "SURFACE: cutoff -0.8 is too small: it must be a length of at least 0"],
  ])("%s", (_, args, sentence) => {
    expect(ask(surface, ...(args as never[]))).toMatchObject({ sentence });
  });
});

describe("blanks", () => {
  test("a missing height leaves the row blank, unused cells at the end do not; a blank cut-off is 0.8", () => {
    const BLANK = [HEADER, HEADER.map(() => "")];
    const heights = Array.from({ length: 41 }, (_, i) => (i * 7919) % 13);
    for (const blank of BLANKS) {
      const none = blank as string;
      expect(ask(surface, [[...heights, none, none]], 0.04, blank)).toEqual(ask(surface, [heights], 0.04));
      expect(ask(surface, [[...heights.slice(0, 20), none, ...heights.slice(20)]], 0.04)).toEqual(BLANK);
      expect(ask(surface, blank, 0.04)).toEqual(BLANK);
    }
    for (const blank of BLANKS_AND_ZERO) expect(ask(surface, [heights], blank)).toEqual(BLANK);
  });
});

// By count: three passes over a third of a trace of six cut-offs are n² multiplications, of which some eight make one step.
test("a call costs an eighth of the square of its heights", () => {
  expect(surface.steps!({ profile: 1000, spacing: 1, cutoff: 1 })).toBe(125_000);
});
