import fc from "fast-check";
import { pistonSpeed } from "../../../src/functions/cylinder/piston-speed.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const stroke = fc.integer({ min: 300, max: 2000 }).map((tenths) => tenths / 10);
const rpm = fc.integer({ min: 300, max: 9000 });

describe("cited values", () => {
  // An encyclopedia's article on mean piston speed: a stroke of 90 mm at 3000 a minute moves at 9 m/s.
  test("90 mm at 3000 a minute is 9 m/s", () => {
    expect(ask(pistonSpeed, 90, 3000)).toBe(9);
  });

  // A formulary for apprentices in the motor trade: 85 mm at 5500 a minute, 15.58 m/s.
  test("85 mm at 5500 a minute is 15.58 m/s", () => {
    expect(number(pistonSpeed, 85, 5500)).toBeCloseTo(15.58, 2);
  });

  // The fuel-rating engine, 4.5 in of stroke; its 900 turns a minute by the motor method (from memory): 675 ft/min.
  test("4.5 in at 900 a minute is 675 ft/min", () => {
    expect(ask(pistonSpeed, 4.5, 900, "in")).toBe(675);
  });
});

describe("identities", () => {
  test("m/s and ft/min of one engine differ by 0.3048 ÷ 60", () => {
    fc.assert(fc.property(stroke, rpm, (s, n) => expect((number(pistonSpeed, s / 25.4, n, "in") * 0.3048) / 60).toBeCloseTo(number(pistonSpeed, s, n), 8)));
  });

  test("twice the stroke, or twice the turns, is twice the speed", () => {
    fc.assert(
      fc.property(stroke, rpm, (s, n) => {
        expect(number(pistonSpeed, 2 * s, n)).toBeCloseTo(2 * number(pistonSpeed, s, n), 8);
        expect(number(pistonSpeed, s, 2 * n)).toBeCloseTo(2 * number(pistonSpeed, s, n), 8);
      }),
    );
  });
});

describe("at the limits", () => {
  test("strokes down the sheet and turns across it give a block", () => {
    expect(ask(pistonSpeed, [[90], [75]], [[1000, 2000]])).toEqual([
      [3, 6],
      [2.5, 5],
    ]);
  });
});

describe("faults", () => {
  test("turning backwards is refused", () => {
    expect(ask(pistonSpeed, 90, -3000)).toEqual({ code: "too-small", sentence: "PISTONSPEED: rpm -3000 is too small: it must be a speed above 0" });
  });

  test("an unknown unit is refused", () => {
    expect(ask(pistonSpeed, 90, 3000, "cm")).toEqual({ code: "not-a-choice", sentence: 'PISTONSPEED: unit "cm" is not known: it must be one of mm, in' });
  });
});

describe("blanks", () => {
  test("a blank stroke or speed leaves it blank, a blank unit is mm", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(pistonSpeed, blank, 3000)).toBe("");
      expect(ask(pistonSpeed, 90, blank)).toBe("");
      expect(ask(pistonSpeed, 90, 3000, blank)).toBe(9);
    }
  });
});
