import { maximise, solve } from "./linear-programme.ts";
import { mean } from "./statistics.ts";

/** A reading of a face, or of a line, and where it was taken: one coordinate on a line, two on a face, in any unit. */
export interface FacePoint {
  height: number;
  at: readonly number[];
}

/** Least squares and minimum zone, as ISO 12781-1 names the two reference planes. */
export const PLANES = ["LS", "MZ"] as const;
export type Plane = (typeof PLANES)[number];

/** Largest less smallest distance from the reference plane, or line; the points must not all lie in one line (on a line: in one place). */
export function flatnessOf(points: readonly FacePoint[], plane: Plane): number {
  const left = withoutPlane(aboutMiddle(points));
  const heights = left.map(({ height }) => height);
  const leastSquares = Math.max(...heights) - Math.min(...heights);
  // On a scale of 1, so that one measure of rounding serves faces in µm and in inches.
  const scale = Math.max(...heights.map(Math.abs));
  return plane === "LS" || !(scale > 0) ? leastSquares : scale * zoneOf(left.map(({ height, at }) => ({ height: height / scale, at })));
}

/** How far each point lies from the least-squares plane, or line. */
export const offPlane = (points: readonly FacePoint[]): number[] => withoutPlane(aboutMiddle(points)).map(({ height }) => height);

/** The points that span the plane: three that are not in one line, or two places on a line; nothing where there are none. */
export function spanning(points: readonly FacePoint[]): number[] | undefined {
  const first = points[0]!.at;
  const off = (at: readonly number[]) => at.map((x, d) => x - first[d]!);
  const second = furthest(points, ({ at }) => Math.hypot(...off(at)));
  if (second === undefined || first.length === 1) return second === undefined ? undefined : [0, second];
  const [x, y] = off(points[second]!.at) as [number, number];
  const third = furthest(points, ({ at }) => Math.abs(x * off(at)[1]! - y * off(at)[0]!));
  return third === undefined ? undefined : [0, second, third];
}

/** The point for which something is largest, where that is more than nothing. */
function furthest(points: readonly FacePoint[], measure: (point: FacePoint) => number): number | undefined {
  const measured = points.map(measure);
  const most = measured.reduce((a, b) => Math.max(a, b), 0);
  return most > 0 ? measured.indexOf(most) : undefined;
}

function aboutMiddle(points: readonly FacePoint[]): FacePoint[] {
  const middle = mean(points.map(({ height }) => height));
  const centre = points[0]!.at.map((_, d) => mean(points.map(({ at }) => at[d]!)));
  return points.map(({ height, at }) => ({ height: height - middle, at: at.map((x, d) => x - centre[d]!) }));
}

/** Takes off the least-squares plane through the middle of all points. */
function withoutPlane(points: readonly FacePoint[]): FacePoint[] {
  const sums = (of: (point: FacePoint) => number) => points.reduce((total, point) => total + of(point), 0);
  const axes = [...points[0]!.at.keys()];
  const slopes = solve(
    axes.map((d) => axes.map((e) => sums(({ at }) => at[d]! * at[e]!))),
    axes.map((d) => sums(({ at, height }) => at[d]! * height)),
  );
  return points.map(({ height, at }) => ({ height: height - at.reduce((rise, x, d) => rise + x * slopes[d]!, 0), at }));
}

/**
 * The least distance of two parallel planes with all points between them. As a linear programme: one plane held
 * from above by the peaks, one from below by the valleys. The first point between both planes, with nothing on
 * the others that span, is a basis to start from.
 */
function zoneOf(points: readonly FacePoint[]): number {
  const peaks = points.map(({ at }) => [1, 0, ...at]);
  const valleys = points.map(({ at }) => [0, 1, ...at.map((x) => -x)]);
  const heights = points.map(({ height }) => height);
  const start = spanning(points)!;
  const totals = [1, 1, ...points[0]!.at.map(() => 0)];
  const { prices } = maximise([...peaks, ...valleys], [...heights, ...heights.map((height) => -height)], totals, [...start, points.length + start[0]!]);
  return prices[0]! + prices[1]!;
}
