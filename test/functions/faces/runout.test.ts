import fc from "fast-check";
import { runout } from "../../../src/functions/faces/runout.ts";
import { fromScipy } from "../../reference/scipy-values.ts";
import { ask, BLANKS } from "../ask.ts";

const HEADER = ["total", "eccentricity", "direction", "left"];
const parts = (readings: readonly number[]) => (ask(runout, [[...readings]]) as (number | string)[][])[1]! as number[];

describe("cited values", () => {
  // TM 10-3930-664-24 p. 3-41: 0, .003, −.002 and .003 in come to .005; eccentricity and form by hand.
  test("four readings of a drive shaft", () => {
    expect(ask(runout, [[0, 0.003, -0.002, 0.003]])).toEqual([HEADER, [0.005, 0.001, 0, 0.004]]);
  });

  // NumPy: first harmonic by numpy.fft.
  test.each(["seat", "shaft", "flange"])("the readings called %s", (name) => {
    const expected = fromScipy(`${name}-runout`);
    for (const [i, value] of parts(fromScipy(name)).entries()) expect(value).toBeCloseTo(expected[i]!, 8);
  });
});

const microns = fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 4, maxLength: 16 }).map((all) => all.map((n) => n / 1000));

test("an indicator far from its zero point gives the same to the last digit", () => {
  // In parts of 1024, which a computer adds to 1000 without rounding.
  const readings = [0, 3, -2, 3, 1].map((part) => part / 1024);
  expect(parts(readings.map((reading) => 1000 + reading))).toEqual(parts(readings));
});

describe("against a search for the best centre", () => {
  test("no other offset leaves less in squares, and moved by it only the form is left", () => {
    fc.assert(
      fc.property(microns, (readings) => {
        const [total, eccentricity, direction, left] = parts(readings) as [number, number, number | "", number];
        const n = readings.length;
        const [x, y] = [eccentricity * Math.cos((Number(direction) * Math.PI) / 180), eccentricity * Math.sin((Number(direction) * Math.PI) / 180)];
        const moved = (a: number, b: number) => readings.map((r, i) => r - a * Math.cos((2 * Math.PI * i) / n) - b * Math.sin((2 * Math.PI * i) / n));
        const squares = (a: number, b: number) => {
          const off = moved(a, b);
          const middle = off.reduce((s, r) => s + r, 0) / n;
          return off.reduce((s, r) => s + (r - middle) ** 2, 0);
        };
        for (const [a, b] of [
          [1, 0],
          [-1, 0],
          [0, 1],
          [0, -1],
        ] as const)
          expect(squares(x, y)).toBeLessThanOrEqual(squares(x + a * 1e-4, y + b * 1e-4));
        expect(Math.max(...moved(x, y)) - Math.min(...moved(x, y))).toBeCloseTo(left, 7);
        expect(total).toBeCloseTo(Math.max(...readings) - Math.min(...readings), 9);
      }),
      { numRuns: 500 },
    );
  });

  test("a round part off centre: half the total at the angle it was set up, nothing left, where a reading stands on the high side", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 0, max: 11 }), fc.integer({ min: -50, max: 50 }), (off, high, zero) => {
        const readings = Array.from({ length: 12 }, (_, i) => (zero + off * Math.cos((2 * Math.PI * (i - high)) / 12)) / 1000);
        const [total, eccentricity, direction, left] = parts(readings) as [number, number, number, number];
        expect(eccentricity).toBeCloseTo(off / 1000, 8);
        expect(total).toBeCloseTo((2 * off) / 1000, 8);
        expect(direction).toBeCloseTo(30 * high, 4);
        expect(left).toBeCloseTo(0, 8);
      }),
      { numRuns: 400 },
    );
  });

  test("started one reading later the direction goes back by a step; another zero point and inches change nothing else", () => {
    fc.assert(
      fc.property(microns, fc.integer({ min: -9, max: 9 }), (readings, zero) => {
        const [total, eccentricity, direction, left] = parts(readings) as [number, number, number, number];
        const later = parts([...readings.slice(1), readings[0]!]) as [number, number, number, number];
        expect([later[0], later[1], later[3]].map((v, i) => v - [total, eccentricity, left][i]!).every((d) => Math.abs(d) < 2e-9)).toBe(true);
        if (eccentricity > 1e-4) {
          const turn = Math.abs(((direction - later[2] - 360 / readings.length + 720 + 180) % 360) - 180);
          expect(turn).toBeLessThan(1e-3);
        }
        expect(parts(readings.map((r) => r + zero))[1]).toBeCloseTo(eccentricity, 8);
        expect(parts(readings.map((r) => r / 25.4))[3]! * 25.4).toBeCloseTo(left, 6);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("a true part has no direction; two lobes are all form", () => {
    expect(ask(runout, [[0.5, 0.5, 0.5, 0.5]])).toEqual([HEADER, [0, 0, "", 0]]);
    expect(ask(runout, [[0.01, -0.01, 0.01, -0.01]])).toEqual([HEADER, [0.02, 0, "", 0.02]]);
  });

  test("direction is never 360", () => {
    expect(parts([1, 0, -1, 1e-15])[2]).toBe(0);
  });
});

describe("faults", () => {
  test("too few readings, and a block of them, are refused", () => {
    expect(ask(runout, [[0, 1, 0]])).toEqual({ code: "unfit", sentence: "RUNOUT: readings 3: readings are too few, at least 4 are needed" });
    expect(
      ask(runout, [
        [0, 1],
        [1, 0],
      ]),
    ).toEqual({
      code: "unfit",
      sentence: 'RUNOUT: readings "2×2 cells": one row or one column is wanted, one reading after the other round the turn',
    });
  });
});

describe("blanks", () => {
  test("one reading not filled in leaves the row blank", () => {
    for (const blank of BLANKS) {
      expect(ask(runout, blank)).toEqual([HEADER, ["", "", "", ""]]);
      expect(ask(runout, [[0, 1, blank as string, 1]])).toEqual([HEADER, ["", "", "", ""]]);
    }
  });
});
