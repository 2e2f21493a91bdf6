import fc from "fast-check";
import { springForce } from "../../../src/functions/valves/spring-force.ts";
import { springHeight } from "../../../src/functions/valves/spring-height.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const spring = fc.record({
  rate: fc.integer({ min: 50, max: 900 }).map((tenths) => tenths / 10),
  length: fc.integer({ min: 350, max: 600 }).map((tenths) => tenths / 10),
  force: fc.integer({ min: 100, max: 600 }),
  height: fc.integer({ min: -80, max: 10 }).map((tenths) => tenths / 10),
});

describe("cited values", () => {
  // A spring maker's guide: free length .750 in, 22 lb/in, 5.5 lb at .500 in.
  test("the height at which a spring of 22 lb/in and .750 in has 5.5 lb is .500 in", () => {
    expect(ask(springHeight, 0, 0.75, 22, 5.5)).toBe(0.5);
    expect(ask(springHeight, 5.5, 0.5, 22, 0)).toBe(0.75);
  });
});

describe("against SPRINGFORCE", () => {
  test("at the height given the spring has just the force wanted, and the other way about", () => {
    fc.assert(
      fc.property(spring, ({ rate, length, force, height }) => {
        const there = ask(springForce, force, length, rate, length + height);
        if (typeof there !== "number") return expect(there).toMatchObject({ code: "unfit" });
        expect(number(springHeight, force, length, rate, there)).toBeCloseTo(length + height, 6);
      }),
      { numRuns: 500 },
    );
  });

  test("in pounds and inches the same height; more force is never longer", () => {
    fc.assert(
      fc.property(spring, fc.integer({ min: 100, max: 600 }), ({ length, force }, wanted) => {
        const height = number(springHeight, force, length, 40, wanted);
        const [newton, inch] = [4.4482216152605, 25.4];
        expect(number(springHeight, force / newton, length / inch, (40 * inch) / newton, wanted / newton) * inch).toBeCloseTo(height, 6);
        expect(number(springHeight, force, length, 40, wanted + 1)).toBeLessThan(height);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("half the known length and twice it are taken, nothing beyond", () => {
    expect(ask(springHeight, 0, 40, 10, 200)).toBe(20);
    expect(ask(springHeight, 0, 40, 10, 200.1)).toMatchObject({ code: "unfit" });
    expect(ask(springHeight, 400, 40, 10, 0)).toBe(80);
    expect(ask(springHeight, 400.1, 40, 10, 0)).toMatchObject({ code: "unfit" });
  });
});

describe("faults", () => {
  test("a force in another unit asks for a height that cannot be", () => {
    expect(ask(springHeight, 250, 40, 30, 2500)).toEqual({
      code: "unfit",
      sentence: "SPRINGHEIGHT: wanted 2500: it asks for a height of -35 beside the length 40: are force and rate in one unit?",
    });
  });

  test("no rate and a negative force are refused", () => {
    expect(ask(springHeight, 250, 40, -1, 300)).toMatchObject({ code: "too-small" });
    expect(ask(springHeight, 250, 40, 30, -1)).toEqual({
      code: "too-small",
      sentence: "SPRINGHEIGHT: wanted -1 is too small: it must be a force of at least 0",
    });
  });
});

describe("blanks", () => {
  test("a blank input leaves it blank", () => {
    for (const blank of BLANKS) {
      expect(ask(springHeight, blank, 40, 30, 300)).toBe("");
      expect(ask(springHeight, 250, 40, 30, blank)).toBe("");
    }
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(springHeight, 250, blank, 30, 300)).toBe("");
      expect(ask(springHeight, 250, 40, blank, 300)).toBe("");
    }
  });
});
