import fc from "fast-check";
import { springForce } from "../../../src/functions/valves/spring-force.ts";
import { springRate } from "../../../src/functions/valves/spring-rate.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const spring = fc.record({
  rate: fc.integer({ min: 50, max: 900 }).map((tenths) => tenths / 10),
  free: fc.integer({ min: 400, max: 700 }).map((tenths) => tenths / 10),
  first: fc.integer({ min: 1, max: 100 }).map((tenths) => tenths / 10),
  second: fc.integer({ min: 0, max: 150 }).map((tenths) => tenths / 10),
});

describe("cited values", () => {
  // A spring maker's guide: free length .750 in, 22 lb/in, 5.5 lb at .500 in. A machining firm's note: 50 mm, 10 N/mm, 100 N at 40 mm.
  test("two springs as their makers print them", () => {
    expect(ask(springForce, 0, 0.75, 22, 0.5)).toBe(5.5);
    expect(ask(springForce, 0, 50, 10, 40)).toBe(100);
  });
});

describe("against Hooke's law from the free length", () => {
  test("rate × what it is shortened by, from whatever length it is reckoned; in pounds and inches the same", () => {
    fc.assert(
      fc.property(spring, ({ rate, free, first, second }) => {
        const wanted = rate * second;
        expect(number(springForce, rate * first, free - first, rate, free - second)).toBeCloseTo(wanted, 6);
        const [newton, inch] = [4.4482216152605, 25.4];
        const pounds = number(springForce, (rate * first) / newton, (free - first) / inch, (rate * inch) / newton, (free - second) / inch);
        expect(pounds * newton).toBeCloseTo(wanted, 4);
      }),
      { numRuns: 400 },
    );
  });

  test("SPRINGRATE of what it gives at two heights is the rate; shorter is never weaker", () => {
    fc.assert(
      fc.property(spring, ({ rate, free, first }) => {
        const force = number(springForce, rate * first, free - first, rate, free - first - 5);
        expect(number(springRate, rate * first, free - first, force, free - first - 5)).toBeCloseTo(rate, 5);
        expect(force).toBeGreaterThan(rate * first);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("at its free length a spring has no force", () => {
    expect(ask(springForce, 100, 40, 10, 50)).toBe(0);
    expect(ask(springForce, 0, 50, 10, 50)).toBe(0);
  });
});

describe("faults", () => {
  test("longer than free is refused, with the free length", () => {
    expect(ask(springForce, 100, 40, 10, 50.1)).toEqual({
      code: "unfit",
      sentence: "SPRINGFORCE: height 50.1: it is longer than free: the spring has no force from 50 on",
    });
  });

  test("a height in inches is refused, and so are no rate and a negative force", () => {
    expect(ask(springForce, 250, 40, 30, 1.5)).toEqual({
      code: "units",
      sentence: "SPRINGFORCE: height 1.5 is about 1/25.4 of length 40: is one in inches, the other in millimetres?",
    });
    expect(ask(springForce, 250, 40, -30, 31)).toEqual({ code: "too-small", sentence: "SPRINGFORCE: rate -30 is too small: it must be a number above 0" });
    expect(ask(springForce, -1, 40, 30, 31)).toMatchObject({ code: "too-small" });
  });
});

describe("blanks", () => {
  test("a blank input leaves it blank; a force of 0 is the free length's", () => {
    for (const blank of BLANKS) expect(ask(springForce, blank, 50, 10, 40)).toBe("");
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(springForce, 250, blank, 30, 31)).toBe("");
      expect(ask(springForce, 250, 40, blank, 31)).toBe("");
      expect(ask(springForce, 250, 40, 30, blank)).toBe("");
    }
  });
});
