import fc from "fast-check";
import { pistonTravel } from "../../../src/functions/volumes/piston-travel.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const stroke = fc.integer({ min: 400, max: 2000 }).map((tenths) => tenths / 10);
const angle = fc.integer({ min: -720, max: 720 });

describe("cited values", () => {
  // Kinematics of the slider-crank, throw 25 and rod 100 mm, computed outside from the definition.
  test.each([
    [0, 0],
    [30, 4.133691],
    [60, 14.871879],
    [90, 28.175416],
    [180, 50],
  ])("throw 25, rod 100: at %p° the piston is %p down", (degrees, travel) => {
    expect(number(pistonTravel, degrees, 50, 100)).toBeCloseTo(travel, 6);
  });

  // A published article on valve timing: with the valve closing 70° after bottom dead centre the piston
  // has risen 0.9053 in; stroke 3.48 and rod 5.7 in (from memory) give exactly that.
  test("stroke 3.48, rod 5.7: 70° after bottom dead centre the piston has risen 0.9053", () => {
    expect(3.48 - number(pistonTravel, 250, 3.48, 5.7)).toBeCloseTo(0.9053, 4);
  });
});

describe("identities", () => {
  test("the triangle of crank, rod and axis closes at every angle", () => {
    fc.assert(
      fc.property(angle, stroke, (degrees, s) => {
        const [crank, rod] = [s / 2, s * 1.7];
        const pin = crank + rod - number(pistonTravel, degrees, s, rod);
        const turn = (degrees * Math.PI) / 180;
        expect(Math.hypot(pin - crank * Math.cos(turn), crank * Math.sin(turn))).toBeCloseTo(rod, 6);
      }),
    );
  });

  test("half a turn further the two travels and the rod's lean make up the stroke", () => {
    fc.assert(
      fc.property(angle, stroke, (degrees, s) => {
        const rod = s * 1.6;
        const lean = rod - Math.sqrt(rod ** 2 - ((s / 2) * Math.sin((degrees * Math.PI) / 180)) ** 2);
        expect(number(pistonTravel, degrees, s, rod) + number(pistonTravel, degrees + 180, s, rod)).toBeCloseTo(s + 2 * lean, 7);
      }),
    );
  });

  test("in inches it is the same travel", () => {
    fc.assert(
      fc.property(angle, stroke, (degrees, s) =>
        expect(number(pistonTravel, degrees, s / 25.4, (s * 1.8) / 25.4) * 25.4).toBeCloseTo(number(pistonTravel, degrees, s, s * 1.8), 7),
      ),
    );
  });

  test("it never leaves the stroke", () => {
    fc.assert(
      fc.property(angle, stroke, (degrees, s) => {
        const travel = number(pistonTravel, degrees, s, s * 1.5);
        expect(travel).toBeGreaterThanOrEqual(0);
        expect(travel).toBeLessThanOrEqual(s);
      }),
    );
  });
});

describe("at the limits", () => {
  test("a whole turn is exactly 0, and never -0", () => {
    expect(Object.is(ask(pistonTravel, 360, 50, 100), 0)).toBe(true);
    expect(Object.is(ask(pistonTravel, 0, 50, 100), 0)).toBe(true);
  });

  test("angles down the sheet and rods across it give a block", () => {
    expect(ask(pistonTravel, [[0], [180]], 50, [[90, 100]])).toEqual([
      [0, 0],
      [50, 50],
    ]);
  });
});

describe("faults", () => {
  test("a rod no longer than half the stroke is refused", () => {
    expect(ask(pistonTravel, 90, 50, 25)).toEqual({ code: "unfit", sentence: "PISTONTRAVEL: rod 25: it must be longer than half the stroke, 25" });
    expect(ask(pistonTravel, 90, 50, 24)).toEqual({ code: "unfit", sentence: "PISTONTRAVEL: rod 24: it must be longer than half the stroke, 25" });
  });

  test("text for an angle is refused", () => {
    expect(ask(pistonTravel, "TDC", 50, 100)).toEqual({ code: "text", sentence: 'PISTONTRAVEL: angle holds the text "TDC": it must be an angle in degrees' });
  });
});

describe("blanks", () => {
  test("a blank input leaves it blank, an angle of 0 counts", () => {
    for (const blank of BLANKS) expect(ask(pistonTravel, blank, 50, 100)).toBe("");
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(pistonTravel, 90, blank, 100)).toBe("");
      expect(ask(pistonTravel, 90, 50, blank)).toBe("");
    }
    expect(ask(pistonTravel, 0, 50, 100)).toBe(0);
  });
});
