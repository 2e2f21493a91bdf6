import fc from "fast-check";
import { honeAngle } from "../../../src/functions/surface/hone-angle.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const setting = fc.record({
  bore: fc.integer({ min: 500, max: 1500 }).map((tenths) => tenths / 10),
  rate: fc.integer({ min: 10, max: 120 }),
  stroke: fc.integer({ min: 30, max: 300 }),
  rpm: fc.integer({ min: 50, max: 400 }),
});

describe("cited values", () => {
  // Geometry: as fast along the bore as round it, each family stands at 45° to the line across.
  test("as fast up and down as round makes 90°", () => {
    expect(number(honeAngle, 80, 100, 80 * Math.PI, 200)).toBeCloseTo(90, 8);
  });
});

describe("against the scratch on the unrolled bore", () => {
  test("the angle between the way up and the way down; from the axis it is 180° less", () => {
    fc.assert(
      fc.property(setting, ({ bore, rate, stroke, rpm }) => {
        // One stroke up: so far along, and so far round in the half of a cycle that it takes.
        const up = [Math.PI * bore * rpm * (0.5 / rate), stroke] as const;
        const down = [up[0], -stroke] as const;
        const between = Math.acos((up[0] * down[0] + up[1] * down[1]) / (Math.hypot(...up) * Math.hypot(...down)));
        const angle = number(honeAngle, bore, rate, stroke, rpm);
        expect(angle).toBeCloseTo((between * 180) / Math.PI, 5);
        const fromAxis = Math.acos((up[1] * stroke + -up[0] * up[0]) / (Math.hypot(...up) * Math.hypot(up[0], stroke)));
        expect(180 - angle).toBeCloseTo((fromAxis * 180) / Math.PI, 5);
        expect(number(honeAngle, bore / 25.4, rate, stroke / 25.4, rpm)).toBeCloseTo(angle, 7);
      }),
      { numRuns: 400 },
    );
  });

  test("faster strokes make it steeper, faster turns flatter; twice both changes nothing", () => {
    fc.assert(
      fc.property(setting, ({ bore, rate, stroke, rpm }) => {
        const angle = number(honeAngle, bore, rate, stroke, rpm);
        expect(number(honeAngle, bore, rate + 1, stroke, rpm)).toBeGreaterThan(angle);
        expect(number(honeAngle, bore, rate, stroke, rpm + 1)).toBeLessThan(angle);
        expect(number(honeAngle, bore, 2 * rate, stroke, 2 * rpm)).toBeCloseTo(angle, 8);
      }),
      { numRuns: 400 },
    );
  });
});

describe("faults", () => {
  test("nothing that turns or strokes backwards is taken", () => {
    expect(ask(honeAngle, 73, -50, 110, 160)).toEqual({ code: "too-small", sentence: "HONEANGLE: strokeRate -50 is too small: it must be a number above 0" });
    expect(ask(honeAngle, 73, 50, 110, -160)).toMatchObject({ code: "too-small" });
  });
});

describe("blanks", () => {
  test("any setting not filled in leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      for (let i = 0; i < 4; i++)
        expect(ask(honeAngle, ...([73, 50, 110, 160] as (number | null)[]).map((size, at) => (at === i ? (blank as null) : size)))).toBe("");
    }
  });
});
