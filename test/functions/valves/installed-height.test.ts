import fc from "fast-check";
import { installedHeight } from "../../../src/functions/valves/installed-height.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // Added and subtracted by hand; common practice.
  test("40.6 measured, the valve 0.3 further through, 0.8 of shims: 40.1", () => {
    expect(ask(installedHeight, 40.6, 0.8, 0.3)).toBe(40.1);
  });
});

describe("against whole hundredths", () => {
  test("measured + sunk − shims to the typed digit; in inches the same; a shim takes what it is thick", () => {
    fc.assert(
      fc.property(fc.integer({ min: 3000, max: 5500 }), fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 150 }), (measured, shims, sunk) => {
        const height = (measured + sunk - shims) / 100;
        expect(number(installedHeight, measured / 100, shims / 100, sunk / 100)).toBe(height);
        expect(number(installedHeight, measured / 2540, shims / 2540, sunk / 2540) * 25.4).toBeCloseTo(height, 6);
        expect(number(installedHeight, measured / 100, 0, sunk / 100)).toBeCloseTo(height + shims / 100, 9);
      }),
      { numRuns: 400 },
    );
  });
});

describe("faults", () => {
  test("shims or a sunk seat of more than half the height are in another unit", () => {
    expect(ask(installedHeight, 1.6, 0.8)).toBe(0.8);
    expect(ask(installedHeight, 1.6, 0.81)).toEqual({
      code: "unfit",
      sentence: "INSTALLEDHEIGHT: shims 0.81: they are more than half the height 1.6: are both in one unit?",
    });
    expect(ask(installedHeight, 1.6, 0, 0.81)).toEqual({
      code: "unfit",
      sentence: "INSTALLEDHEIGHT: sunk 0.81: it is more than half the height 1.6: are both in one unit?",
    });
  });

  test("negative shims are refused", () => {
    expect(ask(installedHeight, 40, -0.5)).toEqual({
      code: "too-small",
      sentence: "INSTALLEDHEIGHT: shims -0.5 is too small: it must be a length of at least 0",
    });
  });
});

describe("blanks", () => {
  test("a blank height leaves it blank, blank shims and seat are none", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(installedHeight, blank, 0.5, 0.2)).toBe("");
    for (const blank of BLANKS) expect(ask(installedHeight, 40, blank, blank)).toBe(40);
  });
});
