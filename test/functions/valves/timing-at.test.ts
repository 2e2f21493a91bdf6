import fc from "fast-check";
import { timingAt } from "../../../src/functions/valves/timing-at.ts";
import { fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["opens", "closes", "duration", "centre"];
const column = (numbers: readonly (number | string)[]) => numbers.map((n) => [n]);
const timing = (angles: readonly number[], lifts: readonly number[], lift: number) => (ask(timingAt, column(angles), column(lifts), lift) as number[][])[1]!;

describe("cited values", () => {
  // NumPy: numpy.interp along both flanks of an unequal lobe read every 5°.
  test.each([0.15, 1.27])("an unequal lobe at a lift of %s", (lift) => {
    for (const [i, degrees] of timing(fromScipy("valve-angles"), fromScipy("valve-lifts"), lift).entries())
      expect(degrees).toBeCloseTo(fromScipy(`valve-${lift}`)[i]!, 8);
  });
});

/** Lifts that rise to one peak and fall again, ending shut at both ends; angles with unequal steps. */
const lobe = fc
  .record({
    rise: fc.array(fc.integer({ min: 0, max: 9000 }), { minLength: 1, maxLength: 9 }),
    fall: fc.array(fc.integer({ min: 0, max: 9000 }), { minLength: 1, maxLength: 9 }),
    peak: fc.integer({ min: 9001, max: 9500 }),
    steps: fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 21, maxLength: 21 }),
    from: fc.integer({ min: -360, max: 360 }),
    lift: fc.integer({ min: 1, max: 9000 }),
  })
  .map(({ rise, fall, peak, steps, from, lift }) => {
    const lifts = [0, ...[...rise].sort((a, b) => a - b), peak, ...[...fall].sort((a, b) => b - a), 0];
    const angles = lifts.map((_, i) => from + steps.slice(0, i).reduce((a, b) => a + b, 0));
    return { angles, lifts, lift };
  });

/** By halving: the angle at which a piecewise straight curve passes a lift on a flank. */
function passed(angles: readonly number[], lifts: readonly number[], lift: number, low: number, high: number): number {
  const at = (angle: number) => {
    const i = Math.max(
      1,
      angles.findIndex((a) => a >= angle),
    );
    return lifts[i - 1]! + ((lifts[i]! - lifts[i - 1]!) * (angle - angles[i - 1]!)) / (angles[i]! - angles[i - 1]!);
  };
  const isBelowFirst = at(low) < lift;
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i++) {
    const middle = (a + b) / 2;
    if (at(middle) < lift === isBelowFirst) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

describe("against halving along each flank", () => {
  test("opens and closes where the curve passes the lift, and duration and centre follow", () => {
    fc.assert(
      fc.property(lobe, ({ angles, lifts, lift }) => {
        // A flank that rests at the very lift passes it over a span: only strict flanks have one angle.
        fc.pre(lifts.every((l) => l !== lift));
        const top = angles[lifts.indexOf(Math.max(...lifts))]!;
        const [opens, closes, duration, centre] = timing(
          angles,
          lifts.map((l) => l / 1000),
          lift / 1000,
        ) as [number, number, number, number];
        expect(opens).toBeCloseTo(passed(angles, lifts, lift, angles[0]!, top), 5);
        expect(closes).toBeCloseTo(passed(angles, lifts, lift, top, angles.at(-1)!), 5);
        expect(duration).toBeCloseTo(closes - opens, 8);
        expect(centre).toBeCloseTo((opens + closes) / 2, 8);
      }),
      { numRuns: 500 },
    );
  });

  test("in inches the same angles; another zero of the wheel moves them along; a higher lift never lasts longer", () => {
    fc.assert(
      fc.property(lobe, fc.integer({ min: -90, max: 90 }), ({ angles, lifts, lift }, turn) => {
        const mm = lifts.map((l) => l / 1000);
        const [opens, closes, duration] = timing(angles, mm, lift / 1000) as [number, number, number];
        const inch = timing(
          angles,
          mm.map((l) => l / 25.4),
          lift / 25_400,
        );
        expect(Math.abs(inch[0]! - opens) < 1e-4 && Math.abs(inch[1]! - closes) < 1e-4).toBe(true);
        const turned = timing(
          angles.map((a) => a + turn),
          mm,
          lift / 1000,
        );
        expect(turned[0]).toBeCloseTo(opens + turn, 7);
        expect(turned[2]).toBeCloseTo(duration, 7);
        expect(timing(angles, mm, (lift + 200) / 1000 > 9 ? lift / 1000 : (lift + 200) / 1000)[2]).toBeLessThanOrEqual(duration + 1e-7);
      }),
      { numRuns: 400 },
    );
  });

  test("readings every 5° cost about 0.3° at an edge of a cam that is gentle there, every 2° hardly more than 0.05°", () => {
    const half = 120;
    const exact = (angle: number) => (Math.abs(angle) < half ? 9 * (1 - (angle / half) ** 2) ** 3 : 0);
    const worst = (step: number, lift: number) => {
      const edge = half * Math.sqrt(1 - Math.cbrt(lift / 9));
      let most = 0;
      for (let shift = 0; shift < step; shift += step / 25) {
        const angles = Array.from({ length: Math.ceil(260 / step) + 1 }, (_, i) => -130 + shift + i * step);
        most = Math.max(most, Math.abs(timing(angles, angles.map(exact), lift)[1]! - edge));
      }
      return most;
    };
    expect(worst(5, 0.15)).toBeLessThan(0.35);
    expect(worst(5, 0.15)).toBeGreaterThan(0.1);
    expect(worst(2, 0.15)).toBeLessThan(0.06);
  });
});

describe("at the limits", () => {
  test("a reading that is just the lift is the edge; the largest lift itself lasts no time", () => {
    expect(timing([0, 10, 20, 30], [0, 2, 4, 1], 2)).toEqual([10, 26.666666667, 16.666666667, 18.333333333]);
    expect(timing([0, 10, 20], [0, 2, 0], 2)).toEqual([10, 10, 0, 10]);
  });

  test("of a lift that stays at its largest the first angle is the peak, and its last angle the edge", () => {
    expect(timing([0, 10, 20, 30], [0, 2, 2, 0], 2)).toEqual([10, 20, 10, 15]);
  });

  test("a second opening further out is not looked at", () => {
    expect(timing([0, 10, 20, 30, 40, 50], [0, 3, 0, 5, 0, 4], 1).slice(0, 2)).toEqual([22, 38]);
  });
});

describe("faults", () => {
  test.each<[string, number[], number[], number, string]>([
    [
      "angles that start again after a full turn",
      [350, 355, 5, 10],
      [0, 2, 2, 0],
      1,
      "TIMINGAT: angles 5: after 355 they must rise: carry on past a full turn, 365 and not 5",
    ],
    [
      "an angle that is the same as the first",
      [0, 0, 20],
      [0, 2, 0],
      1,
      "TIMINGAT: angles 0: after 0 they must rise: carry on past a full turn, 365 and not 5",
    ],
    ["a lift that is never reached", [0, 10, 20], [0, 2, 0], 2.1, "TIMINGAT: lift 2.1: the lifts never reach it, the largest is 2"],
    ["readings that begin above it", [0, 10, 20], [1.5, 2, 0], 1, "TIMINGAT: lifts 1.5: at 0 degrees, where they end, they are not below 1 yet: read on"],
    ["readings that end above it", [0, 10, 20], [0, 2, 1], 1, "TIMINGAT: lifts 1: at 20 degrees, where they end, they are not below 1 yet: read on"],
    ["more than two turns", [0, 300, 721], [0, 2, 0], 1, "TIMINGAT: angles 721: it is more than 720 degrees after the first: the valve opens again by then"],
  ])("%s", (_, angles, lifts, lift, sentence) => {
    expect(ask(timingAt, column(angles), column(lifts), lift)).toEqual({ code: "unfit", sentence });
  });

  test("angles and lifts of unequal length are refused", () => {
    expect(ask(timingAt, column([0, 10]), column([0, 1, 0]), 1)).toEqual({
      code: "shape",
      sentence: "TIMINGAT: angles is 2×1 cells, which does not fit lifts of 3×1: ranges must be of one size, or one row, one column or one cell",
    });
  });
});

describe("blanks", () => {
  const BLANK = [HEADER, ["", "", "", ""]];
  test("a missing reading in between leaves the row blank, unused rows at the end do not", () => {
    for (const blank of BLANKS) {
      const none = blank as string;
      expect(ask(timingAt, column([0, 10, 20, none, none]), column([0, 2, 0, none, none]), 1)).toEqual([HEADER, [5, 15, 10, 10]]);
      expect(ask(timingAt, column([0, 10, 20]), column([0, none, 0]), 1)).toEqual(BLANK);
      expect(ask(timingAt, column([0, 10, none]), column([0, 2, 0]), 1)).toEqual(BLANK);
      expect(ask(timingAt, column([0, 10, 20]), blank, 1)).toEqual(BLANK);
    }
    for (const blank of BLANKS_AND_ZERO) expect(ask(timingAt, column([0, 10, 20]), column([0, 2, 0]), blank)).toEqual(BLANK);
  });
});
