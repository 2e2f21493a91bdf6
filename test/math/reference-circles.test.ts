import fc from "fast-check";
import { CIRCLES, circlesOf, type FittedCircle, roundnessOf } from "../../src/math/reference-circles.ts";
import { cramer, threesOf } from "../helpers/cramer.ts";

type Point = readonly [cos: number, sin: number, deviation: number];

const onCircle = (deviations: readonly number[]): Point[] =>
  deviations.map((d, i) => [Math.cos((2 * Math.PI * i) / deviations.length), Math.sin((2 * Math.PI * i) / deviations.length), d]);

/** Radius and centre of the limaçons through each three readings, by Cramer's rule. */
function* through(points: readonly Point[]): Generator<[r: number, a: number, b: number]> {
  for (const three of threesOf(points)) {
    const circle = cramer(
      three.map(([cos, sin]) => [1, cos, sin]),
      three.map(([, , d]) => d),
    );
    if (circle) yield circle;
  }
}

/** Least width over every centre at which two readings are highest and two lowest, or three and one: all of them tried. */
function zoneByTrial(deviations: readonly number[]): number {
  const points = onCircle(deviations);
  const width = (a: number, b: number) => {
    const left = points.map(([cos, sin, d]) => d - a * cos - b * sin);
    return Math.max(...left) - Math.min(...left);
  };
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      for (let k = 0; k < points.length; k++) {
        for (let l = k + 1; l < points.length; l++) {
          // i and j equally high, k and l equally low: two equations for the centre.
          const [p, q, s, t] = [points[i]!, points[j]!, points[k]!, points[l]!];
          const [u, v, w, x] = [p[0] - q[0], p[1] - q[1], s[0] - t[0], s[1] - t[1]];
          const det = u * x - v * w;
          if (Math.abs(det) < 1e-9) continue;
          const [high, low] = [p[2] - q[2], s[2] - t[2]];
          best = Math.min(best, width((high * x - v * low) / det, (u * low - high * w) / det));
        }
      }
    }
  }
  for (const [, a, b] of through(points)) best = Math.min(best, width(a, b));
  return best;
}

/** Radius of the smallest circle around, by trying every three readings and every opposite two. */
function smallestAround(deviations: readonly number[]): number {
  const points = onCircle(deviations);
  let best = Number.POSITIVE_INFINITY;
  for (const [r, a, b] of through(points)) {
    if (points.every(([cos, sin, d]) => d <= r + a * cos + b * sin + 1e-9)) best = Math.min(best, r);
  }
  return best;
}

const trace = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 4, maxLength: 9 });

describe("cited values", () => {
  // Twelve deviations every 30° on a radius of 43 mm, µm; computed by exact enumeration over real circles, which the limaçon
  // meets within a thousandth of a µm.
  const deviations = [3, 6, 2, -4, -1, 5, 7, 1, -6, -2, 4, 0];

  test.each([
    ["LS", 12.4004],
    ["MZ", 11.4227],
    ["MC", 11.7321],
    ["MI", 15.3091],
  ] as const)("twelve readings by %s: %p", (circle, expected) => {
    expect(Math.abs(roundnessOf(deviations, circle) - expected)).toBeLessThanOrEqual(0.001);
  });

  // Four points (±1.1, 0), (0, ±0.9): least-squares radius 1.000, minimum-zone width 0.2 (computed).
  test.each(["LS", "MZ", "MC"] as const)("four points 1.1 and 0.9 from the centre by %s: 0.2", (circle) => {
    expect(roundnessOf([1.1, 0.9, 1.1, 0.9], circle)).toBeCloseTo(0.2, 12);
  });

  // By definition: lobes of amplitude a lie between −a and a about the centre (ISO 12181-1).
  test.each([2, 3, 4, 5, 6])("%p pure lobes of amplitude 1 have a minimum-zone roundness of 2", (lobes) => {
    const lobed = Array.from({ length: 720 }, (_, i) => Math.cos((2 * Math.PI * lobes * i) / 720));
    expect(roundnessOf(lobed, "MZ")).toBeCloseTo(2, 9);
  });
});

describe("against every possible circle", () => {
  test("the minimum zone is the narrowest of all rings", () => {
    fc.assert(
      fc.property(trace, (deviations) => expect(roundnessOf(deviations, "MZ")).toBeCloseTo(zoneByTrial(deviations), 8)),
      // In the example equal ratios and unequal ones meet where a reading leaves those that hold the zone.
      { numRuns: 60, examples: [[[0, 2, 3, 2, 0, 2, 2, 3, 3, 1, 3]]] },
    );
  });

  test("the circles around and inside leave the trace on one side, touch it, and are the best of all", () => {
    fc.assert(
      fc.property(trace, (deviations) => {
        const around = smallestAround(deviations);
        const inside = -smallestAround(deviations.map((d) => -d));
        // No circle around can be smaller, or the zone between it and the lowest reading would be.
        expect(roundnessOf(deviations, "MC")).toBeGreaterThanOrEqual(around - inside - 1e-9);
        expect(roundnessOf(deviations, "MI")).toBeGreaterThanOrEqual(around - inside - 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test("where three readings hold the circle around, its roundness is that circle's", () => {
    fc.assert(
      fc.property(trace, (deviations) => {
        const points = onCircle(deviations);
        const around = smallestAround(deviations);
        const holding = [...through(points)].filter(
          ([r, a, b]) => Math.abs(r - around) < 1e-9 && points.every(([cos, sin, d]) => d <= r + a * cos + b * sin + 1e-9),
        );
        const centres = new Set(holding.map(([, a, b]) => `${a.toFixed(6)} ${b.toFixed(6)}`));
        fc.pre(centres.size === 1);
        const [r, a, b] = holding[0]!;
        expect(roundnessOf(deviations, "MC")).toBeCloseTo(r - Math.min(...points.map(([cos, sin, d]) => d - a * cos - b * sin)), 8);
      }),
      { numRuns: 60 },
    );
  });
});

/** The same roundness with true circles through points of the plane, all pairs and threes of them tried. */
function byTrueCircles(deviations: readonly number[], radius: number, circle: "MC" | "MI"): number {
  const points = deviations.map((d, i): [x: number, y: number] => {
    const turn = (2 * Math.PI * i) / deviations.length;
    return [(radius + d) * Math.cos(turn), (radius + d) * Math.sin(turn)];
  });
  const distances = ([x, y]: readonly [number, number]) => points.map(([px, py]) => Math.hypot(px - x, py - y));
  const pairs = points.flatMap((p, i) => points.slice(i + 1).map((q): [number, number] => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]));
  const threes = [...threesOf(points)].flatMap(([p, q, r]): [number, number][] => {
    const [[ax, ay], [bx, by]] = [
      [q![0] - p![0], q![1] - p![1]],
      [r![0] - p![0], r![1] - p![1]],
    ] as [[number, number], [number, number]];
    const det = 2 * (ax * by - ay * bx);
    const [a, b] = [ax * ax + ay * ay, bx * bx + by * by];
    return [[p![0] + (by * a - ay * b) / det, p![1] + (ax * b - bx * a) / det]];
  });
  // No reference circle lies farther off than the readings depart; circles through neighbours may.
  const near = [...pairs, ...threes].filter(([x, y]) => Math.hypot(x, y) < 10 * Math.max(...deviations.map(Math.abs), 1e-3));
  const zones = near.map((centre) => distances(centre)).map((all): [least: number, most: number] => [Math.min(...all), Math.max(...all)]);
  // Around: the largest distance least. Inside: the smallest distance largest, of which there may be two: then the one that shows more.
  const size = ([least, most]: [number, number]) => (circle === "MC" ? most : -least);
  const best = Math.min(...zones.map(size));
  return Math.max(...zones.filter((zone) => size(zone) <= best + (circle === "MC" ? 0 : 1e-9)).map(([least, most]) => most - least));
}

describe("against true circles", () => {
  // Twelve thousandths on a bore of 73 mm: 0.0075 by a true circle, where a circle that lies elsewhere gives 0.007457.
  const held = [0, 0.004, 0, -0.002, 0.003, 0.005, -0.001, -0.003];

  test("two opposite readings hold a circle whose centre is midway between them", () => {
    expect(roundnessOf(held, "MC")).toBeCloseTo(0.0075, 9);
    expect(roundnessOf(held, "MC")).toBeCloseTo(byTrueCircles(held, 36.5, "MC"), 6);
    expect(roundnessOf(held, "MI")).toBeCloseTo(byTrueCircles(held, 36.5, "MI"), 6);
  });

  // Readings of whole numbers at an even count are full of ties. The true circle is so large that second order only breaks them.
  test.each(["MC", "MI"] as const)("traces of whole numbers are as far from round by %s", (circle) => {
    const even = fc.integer({ min: 2, max: 6 }).chain((half) => fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 2 * half, maxLength: 2 * half }));
    fc.assert(
      fc.property(even, (deviations) => {
        fc.pre(new Set(deviations).size > 1);
        expect(Math.abs(roundnessOf(deviations, circle) - byTrueCircles(deviations, 1e6, circle))).toBeLessThan(1e-3);
      }),
      { numRuns: 500, seed: 12181 },
    );
  });
});

describe("identities", () => {
  const circle = fc.constantFrom(...CIRCLES);
  const long = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 4, maxLength: 48 });

  /** An odd number of readings has no two opposite ones: then nothing but the trace says where a circle lies. */
  const odd = long.map((deviations) => (deviations.length % 2 === 0 ? [...deviations, 0] : deviations));

  test("setting the part off centre, or the gauge off zero, changes nothing", () => {
    fc.assert(
      fc.property(odd, circle, fc.integer({ min: -100, max: 100 }), fc.integer({ min: -100, max: 100 }), (deviations, by, a, b) => {
        const moved = onCircle(deviations).map(([cos, sin, d]) => d + 17 + a * cos + b * sin);
        expect(roundnessOf(moved, by)).toBeCloseTo(roundnessOf(deviations, by), 7);
      }),
    );
  });

  test("turning the part, or reading it the other way round, changes nothing", () => {
    fc.assert(
      fc.property(long, circle, fc.nat(47), (deviations, by, turn) => {
        const at = turn % deviations.length;
        const turned = [...deviations.slice(at), ...deviations.slice(0, at)];
        expect(roundnessOf(turned, by)).toBeCloseTo(roundnessOf(deviations, by), 7);
        expect(roundnessOf([...turned].reverse(), by)).toBeCloseTo(roundnessOf(deviations, by), 7);
      }),
    );
  });

  test("readings twice as large are twice as much out of round", () => {
    fc.assert(
      fc.property(long, circle, (deviations, by) => {
        expect(
          roundnessOf(
            deviations.map((d) => 2 * d),
            by,
          ),
        ).toBeCloseTo(2 * roundnessOf(deviations, by), 7);
      }),
    );
  });

  test("no circle gives less than the minimum zone", () => {
    fc.assert(
      fc.property(long, circle, (deviations, by) => {
        expect(roundnessOf(deviations, by)).toBeGreaterThanOrEqual(roundnessOf(deviations, "MZ") - 1e-9);
      }),
    );
  });

  test("a trace turned inside out swaps the circle around with the circle inside", () => {
    fc.assert(
      fc.property(odd, (deviations) => {
        const inverted = deviations.map((d) => -d);
        expect(roundnessOf(inverted, "MI")).toBeCloseTo(roundnessOf(deviations, "MC"), 9);
        expect(roundnessOf(inverted, "LS")).toBeCloseTo(roundnessOf(deviations, "LS"), 9);
      }),
    );
  });
});

test.each(CIRCLES)("a round part set off centre is round by %s", (circle) => {
  const deviations = Array.from({ length: 12 }, (_, i) => 5 + 3 * Math.cos((Math.PI * i) / 6));
  expect(roundnessOf(deviations, circle)).toBeCloseTo(0, 12);
});

test.each(CIRCLES)("a gauge that does not move at all shows a round part by %s", (circle) => {
  expect(roundnessOf([0, 0, 0, 0, 0, 0], circle)).toBe(0);
});

test.each(CIRCLES)("3600 readings are no harder than a dozen by %s", (circle) => {
  const deviations = Array.from({ length: 3600 }, (_, i) => 5 * Math.sin(i) + 3 * Math.cos((6 * Math.PI * i) / 3600));
  expect(roundnessOf(deviations, circle)).toBeGreaterThan(6);
});

describe("the circles themselves", () => {
  const trace = fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 4, maxLength: 24 });
  const at = ({ radius, a, b }: FittedCircle, i: number, n: number) => radius + a * Math.cos((2 * Math.PI * i) / n) + b * Math.sin((2 * Math.PI * i) / n);

  // Four points (±1.1, 0), (0, ±0.9): least-squares radius 1.000, zone from 0.9 to 1.1.
  test("a pure ellipse of four readings has its circles about its own centre", () => {
    const { leastSquares, outer, inner } = circlesOf([1.1, 0.9, 1.1, 0.9]);
    for (const [circle, radius] of [
      [leastSquares, 1],
      [outer, 1.1],
      [inner, 0.9],
    ] as const) {
      expect(circle.radius).toBeCloseTo(radius, 12);
      expect(circle.a).toBeCloseTo(0, 12);
      expect(circle.b).toBeCloseTo(0, 12);
    }
  });

  test("a round trace off centre gives three times the same circle, there where it stands", () => {
    const { leastSquares, outer, inner } = circlesOf(Array.from({ length: 8 }, (_, i) => at({ radius: 5, a: 0.3, b: -0.2 }, i, 8)));
    for (const circle of [leastSquares, outer, inner]) {
      expect(circle.radius).toBeCloseTo(5, 12);
      expect(circle.a).toBeCloseTo(0.3, 12);
      expect(circle.b).toBeCloseTo(-0.2, 12);
    }
  });

  test("a gauge that does not move at all gives three times the nominal circle", () => {
    for (const circle of Object.values(circlesOf([0, 0, 0, 0]))) expect([circle.radius + 0, circle.a + 0, circle.b + 0]).toEqual([0, 0, 0]);
  });

  test("a reading that lies on the least-squares circle, but for rounding, is no measure for the others", () => {
    const deviations = [2, 3, 1, 0, 1, 0];
    const { outer, inner } = circlesOf(deviations);
    expect(outer.radius - inner.radius).toBeCloseTo(zoneByTrial(deviations), 9);
  });

  test("in the smallest of units the circles are the same", () => {
    fc.assert(
      fc.property(trace, (deviations) => {
        // By a power of 2 nothing is rounded.
        const small = circlesOf(deviations.map((deviation) => deviation * 2 ** -40));
        const large = circlesOf(deviations);
        for (const one of ["leastSquares", "outer", "inner"] as const) {
          for (const part of ["radius", "a", "b"] as const) expect(small[one][part] * 2 ** 40).toBe(large[one][part]);
        }
      }),
      { numRuns: 10 },
    );
  });

  test("the zone's circles hold every reading between them and stand as far apart as the roundness says", () => {
    fc.assert(
      fc.property(trace, (deviations) => {
        const { outer, inner } = circlesOf(deviations);
        for (const [i, deviation] of deviations.entries()) {
          expect(at(outer, i, deviations.length)).toBeGreaterThanOrEqual(deviation - 1e-7);
          expect(at(inner, i, deviations.length)).toBeLessThanOrEqual(deviation + 1e-7);
        }
        expect(outer.radius - inner.radius).toBeCloseTo(roundnessOf(deviations, "MZ"), 7);
      }),
    );
  });
});
