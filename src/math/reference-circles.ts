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
  const left = withoutCircle(deviations, angles, leastSquares(deviations, angles));
  if (circle === "LS") return spread(left);
  // On a scale of 1, so that one measure of rounding serves traces in µm and in inches.
  const scale = Math.max(...left.map(Math.abs));
  if (!(scale > 0)) return 0;
  const trace = left.map((deviation) => deviation / scale);
  if (circle === "MZ") {
    const [outer, inner] = minimumZone(trace, angles);
    return scale * (outer + inner);
  }
  // The largest circle inside a trace is the smallest around the trace turned inside out.
  return scale * circumscribed(circle === "MC" ? trace : trace.map((deviation) => -deviation), angles);
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
function circumscribed(trace: readonly number[], angles: readonly Direction[]): number {
  const third = (t: number) => Math.floor((t * trace.length) / 3);
  const { prices, support } = maximise(
    angles.map(([cos, sin]) => [1, cos, sin]),
    trace,
    [1, 0, 0],
    [third(0), third(1), third(2)],
  );
  const [radius, a, b] = prices as [number, number, number];
  const centre = support.length === 2 ? nearestCentre(trace, angles, radius, [a, b], angles[support[0]!]!) : ([a, b] as const);
  return radius - Math.min(...trace.map((deviation, i) => deviation - along(centre, angles[i]!)));
}

/**
 * Two readings opposite each other hold a circle that may still slide crosswise. Of all its places the
 * one nearest to the least-squares centre counts, which is where the trace has its origin here.
 */
function nearestCentre(trace: readonly number[], angles: readonly Direction[], radius: number, centre: Centre, held: Direction): Centre {
  const inLine = along(centre, held);
  const base: Centre = [inLine * held[0], inLine * held[1]];
  const across: Centre = [-held[1], held[0]];
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const [i, angle] of angles.entries()) {
    const rate = along(across, angle);
    // The two that hold the circle, and no others, do not feel the slide.
    if (Math.abs(rate) < 1e-9) continue;
    const bound = (trace[i]! - radius - along(base, angle)) / rate;
    if (rate > 0) from = Math.max(from, bound);
    else to = Math.min(to, bound);
  }
  const slide = Math.min(Math.max(0, from), to);
  return [base[0] + slide * across[0], base[1] + slide * across[1]];
}

/** Gains are scaled to about 1 by the caller; anything below this is rounding. */
const TINY = 1e-11;

export interface Optimum {
  /** The price of each row: the solution of the dual programme. */
  prices: readonly number[];
  /** The columns with a share above nothing. */
  support: readonly number[];
}

/**
 * Largest Σ gain·share over shares ≥ 0 with Σ column·share = totals, from a basis (one column for each
 * row) whose shares are known to be ≥ 0. The gains must not grow without end.
 *
 * The small linear programmes of circle fitting, by the simplex method: many columns, three or four
 * rows. A column enters by its lowest index and leaves by its lowest index (Bland), which cannot go
 * round for ever; equally spaced readings make that a real danger.
 */
export function maximise(columns: readonly (readonly number[])[], gains: readonly number[], totals: readonly number[], start: readonly number[]): Optimum {
  const basis = [...start];
  for (;;) {
    const chosen = basis.map((i) => columns[i]!);
    const prices = solve(
      chosen,
      basis.map((i) => gains[i]!),
    );
    const rows = totals.map((_, r) => chosen.map((column) => column[r]!));
    const shares = solve(rows, totals);
    const entering = columns.findIndex((column, i) => gains[i]! - dot(prices, column) > TINY);
    if (entering < 0) return { prices, support: basis.filter((_, b) => shares[b]! > TINY) };
    basis[leavingPlace(basis, shares, solve(rows, columns[entering]!))] = entering;
  }
}

/** Where the entering column presses a share to nothing first; of equals, the lowest column. */
function leavingPlace(basis: readonly number[], shares: readonly number[], rates: readonly number[]): number {
  let place = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let b = 0; b < basis.length; b++) {
    if (rates[b]! <= TINY) continue;
    const ratio = Math.max(0, shares[b]!) / rates[b]!;
    if (ratio < least - TINY || (ratio < least + TINY && basis[b]! < basis[place]!)) place = b;
    least = Math.min(least, ratio);
  }
  return place;
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);

/** Solves matrix · x = right by elimination with row exchange; the matrix of a basis is never singular. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, r) => [...row, right[r]!]);
  const size = rows.length;
  for (let c = 0; c < size; c++) {
    let pivot = c;
    for (let r = c + 1; r < size; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[pivot]![c]!)) pivot = r;
    [rows[c], rows[pivot]] = [rows[pivot]!, rows[c]!];
    for (let r = 0; r < size; r++) {
      if (r === c) continue;
      const share = rows[r]![c]! / rows[c]![c]!;
      for (let k = c; k <= size; k++) rows[r]![k]! -= share * rows[c]![k]!;
    }
  }
  return rows.map((row, r) => row[size]! / row[r]!);
}
