import { lineThrough } from "./regression.ts";
import { mean, sum } from "./statistics.ts";

/** ISO 16610-21: at the cut-off wavelength the Gaussian mean line passes half of the amplitude. */
const ALPHA = Math.sqrt(Math.LN2 / Math.PI);
/** Lengths are multiples of the spacing only as decimals. */
const PLAY = 1e-9;

/** Heights of a profile over its whole cut-offs, one after the other; `section` says in which each lies. */
export interface EvaluatedProfile {
  heights: number[];
  section: number[];
  sections: number;
}

/** The heights about the least-squares line: tilt and the zero point are no roughness. */
export function levelled(profile: readonly number[]): number[] {
  const line = lineThrough([...profile.keys()], profile)!;
  return profile.map((height, i) => height - line.centre.y - line.slope * (i - line.centre.x));
}

/** The Gaussian mean line of ISO 16610-21, its weights cut at one cut-off either way and divided by their sum, also at the ends. */
export function meanLine(profile: readonly number[], spacing: number, cutoff: number): number[] {
  const reach = Math.floor(cutoff / spacing + PLAY);
  const weights = Float64Array.from({ length: reach + 1 }, (_, k) => Math.exp(-Math.PI * ((k * spacing) / (ALPHA * cutoff)) ** 2));
  const heights = Float64Array.from(profile);
  const last = heights.length - 1;
  return profile.map((height, i) => {
    let [total, weight] = [height, 1];
    // A trace has thousands of heights under as many weights: those that stand on both sides are taken in pairs.
    const both = Math.min(reach, i, last - i);
    for (let k = 1; k <= both; k++) {
      total += weights[k]! * (heights[i - k]! + heights[i + k]!);
      weight += 2 * weights[k]!;
    }
    for (let k = both + 1; k <= Math.min(reach, i); k++) {
      total += weights[k]! * heights[i - k]!;
      weight += weights[k]!;
    }
    for (let k = both + 1; k <= Math.min(reach, last - i); k++) {
      total += weights[k]! * heights[i + k]!;
      weight += weights[k]!;
    }
    return total / weight;
  });
}

/**
 * The mean line that valleys do not pull down, in the steps of ISO 13565-1: what lies below the first mean
 * line is raised to it, and the mean line of that is taken.
 */
export function meanLineOverValleys(profile: readonly number[], first: readonly number[], spacing: number, cutoff: number): number[] {
  return meanLine(
    profile.map((height, i) => Math.max(height, first[i]!)),
    spacing,
    cutoff,
  );
}

/** The whole cut-offs in the middle of a profile, half a cut-off dropped at each end, where the filter wants heights beyond it; nothing where none is left. */
export function wholeCutoffs(profile: readonly number[], spacing: number, cutoff: number): EvaluatedProfile | undefined {
  const length = (profile.length - 1) * spacing;
  const sections = Math.floor(length / cutoff - 1 + PLAY);
  if (sections < 1) return undefined;
  const start = (length - sections * cutoff) / 2;
  const section = profile.map((_, i) => Math.floor((i * spacing - start) / cutoff + PLAY));
  const isIn = (at: number) => at >= 0 && at < sections;
  return { heights: profile.filter((_, i) => isIn(section[i]!)), section: section.filter(isIn), sections };
}

/** Equal parts of a profile as it stands. */
export const equalParts = (profile: readonly number[], sections: number): EvaluatedProfile => ({
  heights: [...profile],
  section: profile.map((_, i) => Math.floor((i * sections) / profile.length)),
  sections,
});

/** Mean departure, root mean square, and the mean over the sections of highest less lowest (ISO 21920-2). */
export function amplitudes({ heights, section, sections }: EvaluatedProfile): { ra: number; rq: number; rz: number } {
  const [highest, lowest] = [new Array<number>(sections).fill(Number.NEGATIVE_INFINITY), new Array<number>(sections).fill(Number.POSITIVE_INFINITY)];
  for (const [i, height] of heights.entries()) {
    const at = section[i]!;
    highest[at] = Math.max(highest[at]!, height);
    lowest[at] = Math.min(lowest[at]!, height);
  }
  return {
    ra: mean(heights.map(Math.abs)),
    rq: Math.sqrt(mean(heights.map((height) => height * height))),
    rz: mean(highest.map((high, at) => high - lowest[at]!)),
  };
}

/** Core, peaks and valleys of the material ratio curve, by ISO 13565-2; material ratios as shares of 1. */
export interface CoreRoughness {
  rk: number;
  rpk: number;
  rvk: number;
  mr1: number;
  mr2: number;
  /** The height at which the core begins, on the scale of the heights. */
  top: number;
}

/** The share of the curve in which its flattest part is looked for. */
const SECANT = 0.4;

export function coreRoughness(heights: readonly number[]): CoreRoughness {
  const curve = [...heights].sort((a, b) => b - a);
  const n = curve.length;
  const ratio = (i: number) => (i + 0.5) / n;
  const width = Math.round(SECANT * n);
  let at = 0;
  for (let i = 1; i + width < n; i++) if (curve[i]! - curve[i + width]! < curve[at]! - curve[at + width]!) at = i;
  const window = curve.slice(at, at + width + 1);
  const { slope, centre } = lineThrough(
    window.map((_, i) => ratio(at + i)),
    window,
  )!;
  const [top, bottom] = [centre.y - slope * centre.x, centre.y + slope * (1 - centre.x)];
  // Where the curve comes down to the top, and where it goes below the bottom.
  const meets = (level: number, at: number) => {
    if (at <= 0) return at < 0 ? 1 : 0;
    return ratio(at - 1) + (curve[at - 1]! - level) / (curve[at - 1]! - curve[at]!) / n;
  };
  const [mr1, mr2] = [
    meets(
      top,
      curve.findIndex((height) => height <= top),
    ),
    meets(
      bottom,
      curve.findIndex((height) => height < bottom),
    ),
  ];
  const above = sum(curve.map((height) => Math.max(0, height - top))) / n;
  const below = sum(curve.map((height) => Math.max(0, bottom - height))) / n;
  return { rk: top - bottom, rpk: mr1 > 0 ? (2 * above) / mr1 : 0, rvk: mr2 < 1 ? (2 * below) / (1 - mr2) : 0, mr1, mr2, top };
}
