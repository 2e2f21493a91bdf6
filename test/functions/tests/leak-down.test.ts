import fc from "fast-check";
import { leakDown } from "../../../src/functions/tests/leak-down.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const pressure = fc.integer({ min: 1, max: 1000 }).map((tenths) => tenths / 10);

describe("cited values", () => {
  // FAA AC 43.13-1B paragraph 8-14: leakage = (regulated − cylinder) ÷ regulated; 80 psi supply; 60/80 is
  // the 25 % above which a cylinder is suspect, 70/80 is half of that.
  test.each([
    [80, 60, 25],
    [80, 70, 12.5],
    [80, 80, 0],
  ])("%p psi in and %p held is %p %%", (supply, held, leakage) => {
    expect(ask(leakDown, supply, held)).toBe(leakage);
  });
});

describe("identities", () => {
  test("the unit of the two pressures cancels", () => {
    fc.assert(
      fc.property(pressure, pressure, (a, b) => {
        const [supply, held] = [Math.max(a, b), Math.min(a, b)];
        expect(number(leakDown, supply * 6.894757, held * 6.894757)).toBeCloseTo(number(leakDown, supply, held), 7);
      }),
    );
  });

  test("what leaks and what is held make up 100 per cent", () => {
    fc.assert(
      fc.property(pressure, pressure, (a, b) => {
        const [supply, held] = [Math.max(a, b), Math.min(a, b)];
        expect(number(leakDown, supply, held) + (100 * held) / supply).toBeCloseTo(100, 7);
      }),
    );
  });
});

describe("at the limits", () => {
  test("a cylinder at 25 per cent is exactly there, a tenth of a psi less held is above", () => {
    expect(ask(leakDown, 0.8, 0.6)).toBe(25);
    expect(number(leakDown, 80, 59.9)).toBeGreaterThan(25);
  });

  test("a cylinder that holds nothing leaks all that goes in", () => {
    expect(ask(leakDown, 80, 0)).toBe(100);
  });

  test("one supply serves a row of cylinders", () => {
    expect(ask(leakDown, 80, [[78, 70, 60]])).toEqual([[2.5, 12.5, 25]]);
  });
});

describe("faults", () => {
  test("more held than goes in is refused and both are named", () => {
    expect(ask(leakDown, 60, 80)).toEqual({ code: "swapped", sentence: "LEAKDOWN: held 80 is larger than supply 60: are they swapped?" });
  });

  test("a negative pressure is refused, in its own cell where there are more", () => {
    expect(ask(leakDown, 80, [[78], [-60]])).toEqual([[2.5], ["check: held -60 is too small: it must be a pressure of at least 0"]]);
  });
});

describe("blanks", () => {
  test("a cylinder not tested yet stays blank", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(leakDown, blank, 60)).toBe("");
    for (const blank of BLANKS) expect(ask(leakDown, 80, blank)).toBe("");
  });
});
