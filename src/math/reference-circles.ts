import { maximise } from "./linear-programme.ts";
import { mean } from "./statistics.ts";

/**
 * Reference circles of a roundness trace: radial deviations at equally spaced angles, small beside the
 * radius, so that a circle with its centre at (a, b) shows as the limaçon r + a·cos θ + b·sin θ. Its
 * error is half the square of the distance off centre by the radius: 0.1 mm off in a bore of 73 mm
 * diameter costs 0.14 µm.
 */
export const CIRCLES = ["LS", "MZ", "MC", "MI"] as const;
/** Least squares, minimum zone, minimum circumscribed, maximum inscribed. */
export type Circle = (typeof CIRCLES)[number];

/** Largest less smallest radial distance from the centre of the reference circle; wants at least 4 deviations. */
export function roundnessOf(deviations: readonly number[], circle: Circle): number {
  const angles = deviations.map((_, i) => direction(i / deviations.length));
  const [a, b] = leastSquares(deviations, angles);
  const left = withoutCircle(deviations, angles, [a, b]);
  if (circle === "LS") return spread(left);
  // On a scale of 1, so that one measure of rounding serves traces in µm and in inches.
  const scale = Math.max(...left.map(Math.abs));
  if (!(scale > 0)) return 0;
  const trace = left.map((deviation) => deviation / scale);
  if (circle === "MZ") {
    const [outer, inner] = minimumZone(trace, angles);
    return scale * (outer + inner);
  }
  // What is left has its origin at the least-squares centre, the readings were taken from elsewhere.
  if (circle === "MC") return scale * circumscribed(trace, angles, [-a / scale, -b / scale]);
  // The largest circle inside a trace is the smallest around the trace turned inside out, where every centre lies on the other side.
  const inside = trace.map((deviation) => -deviation);
  return scale * inscribed(inside, angles, [a / scale, b / scale]);
}

/** A circle of a trace, on the scale of its deviations. At each angle it lies at radius + a·cos θ + b·sin θ. */
export interface FittedCircle {
  radius: number;
  a: number;
  b: number;
}

/** The least-squares circle and the two circles of the minimum zone, to be drawn; wants at least 4 deviations. */
export function circlesOf(deviations: readonly number[]): { leastSquares: FittedCircle; outer: FittedCircle; inner: FittedCircle } {
  const angles = deviations.map((_, i) => direction(i / deviations.length));
  const [a, b] = leastSquares(deviations, angles);
  const radius = mean(deviations);
  const left = withoutCircle(deviations, angles, [a, b]);
  const scale = Math.max(...left.map(Math.abs)) || 1;
  const [outer, inner, x, y] = minimumZone(
    left.map((deviation) => deviation / scale),
    angles,
  );
  const centre = { a: a + scale * x, b: b + scale * y };
  return { leastSquares: { radius, a, b }, outer: { radius: radius + scale * outer, ...centre }, inner: { radius: radius - scale * inner, ...centre } };
}

type Direction = readonly [cos: number, sin: number];
type Centre = readonly [a: number, b: number];

const direction = (turns: number): Direction => [Math.cos(2 * Math.PI * turns), Math.sin(2 * Math.PI * turns)];
const along = (centre: Centre, [cos, sin]: Direction): number => centre[0] * cos + centre[1] * sin;
const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** Equal spacing makes the three sums of the normal equations independent. */
function leastSquares(deviations: readonly number[], angles: readonly Direction[]): Centre {
  return [2 * mean(deviations.map((d, i) => d * angles[i]![0])), 2 * mean(deviations.map((d, i) => d * angles[i]![1]))];
}

function withoutCircle(deviations: readonly number[], angles: readonly Direction[], centre: Centre): number[] {
  const radius = mean(deviations);
  return deviations.map((deviation, i) => deviation - radius - along(centre, angles[i]!));
}

/**
 * The narrowest ring that holds the trace: its outer radius, its inner one with the sign turned, its centre. As a linear programme: two circles about one
 * centre, one held from outside by the peaks and one from inside by the valleys. Four readings that
 * alternate peak, valley, peak, valley round the circle are a basis to start from.
 */
function minimumZone(trace: readonly number[], angles: readonly Direction[]): [outer: number, inner: number, a: number, b: number] {
  const n = trace.length;
  const peaks = angles.map(([cos, sin]) => [1, 0, cos, sin]);
  const valleys = angles.map(([cos, sin]) => [0, 1, -cos, -sin]);
  const quarter = (q: number) => Math.floor((q * n) / 4);
  const start = [quarter(0), n + quarter(1), quarter(2), n + quarter(3)];
  const { prices } = maximise([...peaks, ...valleys], [...trace, ...trace.map((deviation) => -deviation)], [1, 1, 0, 0], start);
  return prices as [number, number, number, number];
}

/** Radial distance from the smallest circle around the trace to its lowest reading. */
function circumscribed(trace: readonly number[], angles: readonly Direction[], spindle: Centre): number {
  const { radius, from, to, centreAt } = smallestAround(trace, angles, spindle);
  // The true circle lies midway between the two readings that hold it, or as near to there as the others let it.
  return radius - lowest(trace, angles, centreAt(Math.min(Math.max(0, from), to)));
}

/** The same for the largest circle inside a trace that is given turned inside out. */
function inscribed(trace: readonly number[], angles: readonly Direction[], spindle: Centre): number {
  const { radius, from, to, centreAt } = smallestAround(trace, angles, spindle);
  // Sliding out from midway moves a circle away from both readings, so that it still grows: it goes to the farther end.
  const ends = Math.abs(from + to) < 1e-9 ? [from, to] : [-from > to ? from : to];
  // Of two circles as large the one counts that shows more, never the hopeful one.
  return Math.max(...ends.map((slide) => radius - lowest(trace, angles, centreAt(slide))));
}

const lowest = (trace: readonly number[], angles: readonly Direction[], centre: Centre): number =>
  Math.min(...trace.map((deviation, i) => deviation - along(centre, angles[i]!)));

/** A circle whose centre may slide crosswise to two readings that hold it; `from` and `to` are one where it may not. */
interface Sliding {
  radius: number;
  /** How far it may slide, counted from midway between the two. */
  from: number;
  to: number;
  centreAt(slide: number): Centre;
}

/**
 * The smallest circle around a trace. Two readings opposite each other hold a circle that may slide
 * crosswise as far as first order goes, in which all radii are alike; how it lies then is a matter of the
 * second. Midway between the two is on the line through the spindle, from which they were read.
 */
function smallestAround(trace: readonly number[], angles: readonly Direction[], spindle: Centre): Sliding {
  const third = (t: number) => Math.floor((t * trace.length) / 3);
  const { prices, support } = maximise(
    angles.map(([cos, sin]) => [1, cos, sin]),
    trace,
    [1, 0, 0],
    [third(0), third(1), third(2)],
  );
  const [radius, a, b] = prices as [number, number, number];
  if (support.length !== 2) return { radius, from: 0, to: 0, centreAt: () => [a, b] };
  const held = angles[support[0]!]!;
  const across: Direction = [-held[1], held[0]];
  const [inLine, beside] = [along([a, b], held), along(spindle, across)];
  const centreAt = (slide: number): Centre => [inLine * held[0] + (beside + slide) * across[0], inLine * held[1] + (beside + slide) * across[1]];
  const middle = centreAt(0);
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const [i, angle] of angles.entries()) {
    const rate = along(across, angle);
    // The two that hold the circle, and no others, do not feel the slide.
    if (Math.abs(rate) < 1e-9) continue;
    const bound = (trace[i]! - radius - along(middle, angle)) / rate;
    if (rate > 0) from = Math.max(from, bound);
    else to = Math.min(to, bound);
  }
  return { radius, from, to, centreAt };
}
