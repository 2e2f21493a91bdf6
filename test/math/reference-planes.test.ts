import fc from "fast-check";
import { type FacePoint, flatnessOf, spanning } from "../../src/math/reference-planes.ts";

/** Heights in µm over a grid, some of them holes. */
const face = fc
  .record({
    rows: fc.integer({ min: 2, max: 5 }),
    columns: fc.integer({ min: 2, max: 6 }),
    heights: fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 30, maxLength: 30 }),
    holes: fc.array(fc.boolean(), { minLength: 30, maxLength: 30 }),
  })
  .map(({ rows, columns, heights, holes }) =>
    Array.from({ length: rows * columns }, (_, i): FacePoint | undefined =>
      holes[i] && i % 3 === 0 ? undefined : { height: heights[i]!, at: [Math.floor(i / columns), i % columns] },
    ).filter((point) => point !== undefined),
  )
  .filter((points) => points.length >= 4 && spanning(points) !== undefined);

const lifted = (points: readonly FacePoint[], [a, b, c]: readonly number[]): number[] =>
  points.map(({ height, at }) => height - a! - b! * at[0]! - c! * at[1]!);
const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** The plane through three points, nothing where they are in line. */
function through(three: readonly FacePoint[]): [number, number] | undefined {
  const [p, q, r] = three as [FacePoint, FacePoint, FacePoint];
  const [ux, uy, uz] = [q.at[0]! - p.at[0]!, q.at[1]! - p.at[1]!, q.height - p.height];
  const [vx, vy, vz] = [r.at[0]! - p.at[0]!, r.at[1]! - p.at[1]!, r.height - p.height];
  const area = ux * vy - uy * vx;
  return area === 0 ? undefined : [(uz * vy - uy * vz) / area, (ux * vz - uz * vx) / area];
}

/** A narrowest zone is held by three points on one plane and one on the other, or by two on each: every slope that these can have. */
function narrowest(points: readonly FacePoint[]): number {
  let least = Number.POSITIVE_INFINITY;
  const look = (slope: readonly [number, number] | undefined) => {
    if (slope) least = Math.min(least, spread(lifted(points, [0, ...slope])));
  };
  const n = points.length;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++)
      for (let k = j + 1; k < n; k++) {
        look(through([points[i]!, points[j]!, points[k]!]));
        for (let l = k + 1; l < n; l++)
          for (const [a, b, c, d] of [
            [i, j, k, l],
            [i, k, j, l],
            [i, l, j, k],
          ] as const) {
            // Parallel to the edge a–b and to the edge c–d.
            const [p, q, r, s] = [points[a]!, points[b]!, points[c]!, points[d]!];
            const moved = { height: p.height + s.height - r.height, at: p.at.map((x, at) => x + s.at[at]! - r.at[at]!) };
            look(through([p, q, moved]));
          }
      }
  return least;
}

describe("against every zone there is", () => {
  test("the minimum zone is the narrowest of all that points can hold", () => {
    fc.assert(
      fc.property(face, (points) => {
        const some = points.slice(0, 14);
        fc.pre(spanning(some) !== undefined);
        expect(flatnessOf(some, "MZ")).toBeCloseTo(narrowest(some), 8);
      }),
      { numRuns: 400 },
    );
  });

  test("of points on a line it is the narrowest strip between two parallel lines, one of them through two points", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 3, maxLength: 12 }), (heights) => {
        const slopes = heights.flatMap((a, i) => heights.slice(i + 1).map((b, j) => (b - a) / (j + 1)));
        const strip = Math.min(...slopes.map((slope) => spread(heights.map((height, i) => height - slope * i))));
        expect(
          flatnessOf(
            heights.map((height, i) => ({ height, at: [i] })),
            "MZ",
          ),
        ).toBeCloseTo(strip, 8);
      }),
      { numRuns: 400 },
    );
  });
});

describe("least squares", () => {
  test("no other plane leaves less in squares: shifting and tilting it either way leaves more", () => {
    fc.assert(
      fc.property(face, fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (points, b, c) => {
        // The plane is found by descending to it: two slopes about the middle, each its own quadratic.
        const best = descend(points);
        expect(flatnessOf(points, "LS")).toBeCloseTo(spread(lifted(points, best)), 5);
        const squares = (plane: readonly number[]) => lifted(points, plane).reduce((sum, left) => sum + left * left, 0);
        expect(squares(best)).toBeLessThanOrEqual(squares([best[0]!, best[1]! + b, best[2]! + c]) + 1e-6);
      }),
      { numRuns: 400 },
    );
  });

  test("a tilt added to the face changes neither plane; turned over it is as flat; the zone is never wider", () => {
    fc.assert(
      fc.property(face, fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), (points, b, c) => {
        for (const plane of ["LS", "MZ"] as const) {
          const flat = flatnessOf(points, plane);
          const tilted = points.map(({ height, at }) => ({ height: height + 7 + b * at[0]! + c * at[1]!, at }));
          expect(flatnessOf(tilted, plane)).toBeCloseTo(flat, 8);
          const turned = points.map(({ height, at }) => ({ height: -height, at: [at[1]!, at[0]!] }));
          expect(flatnessOf(turned, plane)).toBeCloseTo(flat, 8);
        }
        expect(flatnessOf(points, "MZ")).toBeLessThanOrEqual(flatnessOf(points, "LS") + 1e-9);
      }),
      { numRuns: 400 },
    );
  });
});

/** Least squares without normal equations: each unknown in turn to its own best, until nothing moves. */
function descend(points: readonly FacePoint[]): [number, number, number] {
  const plane: [number, number, number] = [0, 0, 0];
  for (let round = 0, moved = true; moved && round < 4000; round++) {
    moved = false;
    for (const d of [0, 1, 2] as const) {
      const along = points.map(({ at }) => [1, at[0]!, at[1]!][d]!);
      const left = lifted(points, plane);
      const squares = along.reduce((sum, x) => sum + x * x, 0);
      const step = squares > 0 ? left.reduce((sum, height, i) => sum + height * along[i]!, 0) / squares : 0;
      plane[d] += step;
      moved ||= Math.abs(step) > 1e-12;
    }
  }
  return plane;
}

test("three points that span are found wherever they stand, and points in one line span nothing", () => {
  const line = [0, 1, 2, 3].map((i) => ({ height: i * i, at: [i, 2 * i] }));
  expect(spanning(line)).toBeUndefined();
  expect(spanning([...line, { height: 0, at: [3, 0] }])).toEqual([0, 3, 4]);
  expect(spanning([{ height: 1, at: [2] }])).toBeUndefined();
});

test("a flat face, also one that is tilted, is flat to the last place but a few", () => {
  const tilted = Array.from({ length: 12 }, (_, i) => ({ height: 0.1 * (i % 4) - 0.3 * Math.floor(i / 4), at: [Math.floor(i / 4), i % 4] }));
  for (const plane of ["LS", "MZ"] as const) expect(flatnessOf(tilted, plane)).toBeLessThan(1e-12);
});

test("the largest zone programme that a face gives is done in a moment", () => {
  const points = Array.from({ length: 900 }, (_, i) => ({ height: Math.sin(i * 1.7) + 0.01 * i, at: [Math.floor(i / 30), i % 30] }));
  const start = performance.now();
  expect(flatnessOf(points, "MZ")).toBeLessThanOrEqual(flatnessOf(points, "LS"));
  expect(performance.now() - start).toBeLessThan(2000);
});
