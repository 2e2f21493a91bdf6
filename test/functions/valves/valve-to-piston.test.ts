import fc from "fast-check";
import { valveToPiston } from "../../../src/functions/valves/valve-to-piston.ts";
import { fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["least", "at angle", "contact"];
const column = (numbers: readonly (number | string)[]) => numbers.map((n) => [n]);
const gapOf = (angles: readonly number[], lifts: readonly number[], ...rest: number[]) =>
  (ask(valveToPiston, column(angles), column(lifts), ...rest) as (number | string)[][])[1]!;

describe("cited values", () => {
  // Slider-crank of throw 25 and rod 100: 4.133691 at 30° (computed apart), so 5 + 4.133691 − 6.
  test("with a lift of 6 at 30° the gap of 5 at the top comes down to 3.133691", () => {
    expect(gapOf([0, 30, 60], [1, 6, 6], 50, 100, 5)[0]).toBeCloseTo(3.133691, 6);
    expect(gapOf([0, 30, 60], [1, 6, 6], 50, 100, 5).slice(1)).toEqual([30, ""]);
  });

  // NumPy, test/reference/scipy/shapes.py: the pin by the crankpin's complex number.
  test("overlap of a canted valve", () => {
    const [least, at, contact] = gapOf(fromScipy("overlap-angles"), fromScipy("overlap-lifts"), 80, 132, 3.6, 12);
    expect(least).toBeCloseTo(fromScipy("overlap-least")[0]!, 9);
    expect([at, contact]).toEqual([fromScipy("overlap-least")[1], ""]);
  });
});

const engine = fc.record({
  throw_: fc.integer({ min: 25, max: 55 }),
  rod: fc.integer({ min: 110, max: 190 }),
  atTop: fc.integer({ min: 1, max: 80 }).map((tenths) => tenths / 10),
  cant: fc.integer({ min: 0, max: 35 }),
  angles: fc.uniqueArray(fc.integer({ min: -40, max: 40 }), { minLength: 1, maxLength: 15 }),
  lifts: fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 15, maxLength: 15 }),
});

describe("against the triangle of crank, rod and bore", () => {
  test("the pin's height by the law of cosines, the least of all readings, the first where several are", () => {
    fc.assert(
      fc.property(engine, ({ throw_, rod, atTop, cant, angles, lifts }) => {
        const read = angles.map((_, i) => lifts[i]! / 100);
        const gaps = angles.map((angle, i) => {
          // height² − 2 · height · throw · cos angle + throw² = rod²
          const half = throw_ * Math.cos((angle * Math.PI) / 180);
          const height = half + Math.sqrt(half * half + rod * rod - throw_ * throw_);
          return atTop + (throw_ + rod - height) * Math.cos((cant * Math.PI) / 180) - read[i]!;
        });
        const [least, at, contact] = gapOf(angles, read, 2 * throw_, rod, atTop, cant) as [number, number, string];
        expect(least).toBeCloseTo(Math.min(...gaps), 7);
        expect(gaps[angles.indexOf(at)]).toBeCloseTo(least, 7);
        expect(contact).toBe(least > 0 ? "" : "touches");
        const inch = gapOf(
          angles,
          read.map((lift) => lift / 25.4),
          (2 * throw_) / 25.4,
          rod / 25.4,
          atTop / 25.4,
          cant,
        );
        expect((inch[0] as number) * 25.4).toBeCloseTo(least, 6);
        expect(gapOf(angles, read, 2 * throw_, rod, atTop + 1, cant)[0]).toBeCloseTo(least + 1, 7);
      }),
      { numRuns: 500 },
    );
  });

  test("before and after top dead centre are alike, and the order of the readings is nothing", () => {
    fc.assert(
      fc.property(engine, ({ throw_, rod, atTop, cant, angles, lifts }) => {
        const read = angles.map((_, i) => lifts[i]! / 100);
        const least = gapOf(angles, read, 2 * throw_, rod, atTop, cant)[0];
        expect(
          gapOf(
            angles.map((a) => -a),
            read,
            2 * throw_,
            rod,
            atTop,
            cant,
          )[0],
        ).toBe(least);
        expect(gapOf([...angles].reverse(), [...read].reverse(), 2 * throw_, rod, atTop, cant)[0]).toBe(least);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  // Twenty degrees before and after top dead centre the piston stands alike.
  test("of two angles with the same gap the first is named", () => {
    expect(gapOf([-20, 20], [3, 3], 80, 132, 5)[1]).toBe(-20);
  });

  test("a valve that just reaches the piston touches it", () => {
    expect(gapOf([0], [5], 80, 132, 5)).toEqual([0, 0, "touches"]);
    expect(gapOf([0], [5.001], 80, 132, 5)).toEqual([-0.001, 0, "touches"]);
    expect(gapOf([0], [4.999], 80, 132, 5)).toEqual([0.001, 0, ""]);
  });
});

describe("faults", () => {
  test("angles and lifts of unequal length are refused", () => {
    expect(ask(valveToPiston, column([0, 10]), column([1]), 80, 132, 5)).toMatchObject({ code: "shape" });
  });

  test.each<[string, number[], string]>([
    ["a rod shorter than the throw", [80, 40, 5], "VALVETOPISTON: rod 40: it must be longer than half the stroke, 40"],
    ["a stroke in inches", [3.15, 132, 5], "VALVETOPISTON: rod 132 is about 42 times stroke 3.15: is a digit, the decimal point or the unit wrong?"],
    ["a gap as large as the stroke", [80, 132, 81], "VALVETOPISTON: atTop 81: it is more than the stroke 80: are both in one unit?"],
    ["a valve lying down", [80, 132, 5, 90], "VALVETOPISTON: valveAngle 90 is too large: it must be an angle in degrees of at least 0 and below 90"],
  ])("%s", (_, rest, sentence) => {
    expect(ask(valveToPiston, column([0, 10]), column([2, 3]), ...rest)).toMatchObject({ sentence });
  });

  test("lifts in millimetres beside a stroke in inches are refused", () => {
    expect(ask(valveToPiston, column([0, 10]), column([2, 3]), 3.15, 5.2, 0.2)).toEqual({
      code: "unfit",
      sentence: "VALVETOPISTON: lifts 3: no valve lifts by more than half the stroke, 1.575: are both in one unit?",
    });
  });
});

describe("blanks", () => {
  test("a missing reading or size leaves the row blank, unused rows at the end do not", () => {
    const BLANK = [HEADER, ["", "", ""]];
    for (const blank of BLANKS) {
      const none = blank as string;
      expect(ask(valveToPiston, column([0, 10, none]), column([2, none, none]), 80, 132, 5)).toEqual(BLANK);
      expect(ask(valveToPiston, column([0, none]), column([2, none]), 80, 132, 5, blank)).toEqual([HEADER, [3, 0, ""]]);
    }
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(valveToPiston, 0, 2, blank, 132, 5)).toEqual(BLANK);
      expect(ask(valveToPiston, 0, 2, 80, blank, 5)).toEqual(BLANK);
      expect(ask(valveToPiston, 0, 2, 80, 132, blank)).toEqual(BLANK);
    }
  });
});
