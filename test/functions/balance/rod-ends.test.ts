import fc from "fast-check";
import { rodEnds } from "../../../src/functions/balance/rod-ends.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["big end", "small end", "total", "missing"];
const ends = (...args: number[]) => (ask(rodEnds, ...args) as (number | string)[][])[1]!;

describe("cited values", () => {
  // Common practice: the whole less the big end is the small end; subtracted by hand.
  test("a rod of 612 with 430 at its big end has 182 at its small end", () => {
    expect(ask(rodEnds, 612, 430)).toEqual([HEADER, [430, 182, 612, ""]]);
    expect(ask(rodEnds, 612, 430, 181.4)).toEqual([HEADER, [430, 181.4, 612, 0.6]]);
  });
});

describe("against the lever of a rod held level", () => {
  test("its two ends carry it by its centre of gravity, and nothing is missing; in ounces the same", () => {
    fc.assert(
      fc.property(fc.integer({ min: 3000, max: 9000 }), fc.integer({ min: 550, max: 800 }), fc.integer({ min: -5, max: 5 }), (tenths, share, slip) => {
        // Moments about the small end: the big end carries the share of the length at which the centre of gravity lies.
        const [total, big] = [tenths / 10, Number(((tenths * share) / 10_000).toFixed(3))];
        const [, small, , none] = ends(total, big);
        expect((big as number) + (small as number)).toBeCloseTo(total, 8);
        expect(none).toBe("");
        const weighed = Number(((small as number) + slip / 10).toFixed(3));
        expect(ends(total, big, weighed)[3]).toBeCloseTo(-slip / 10, 8);
        expect((ends(total / 28.3495, big / 28.3495)[1] as number) * 28.3495).toBeCloseTo(small as number, 6);
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("one hundredth of the total may be missing or too much", () => {
    expect(ends(600, 430, 164)[3]).toBe(6);
    expect(ends(600, 430, 176)[3]).toBe(-6);
    expect(ask(rodEnds, 600, 430, 163.9)).toEqual({
      code: "unfit",
      sentence: "RODENDS: smallEnd 163.9: with the big end it leaves 6.1 of the total 600, more than 1 %: weigh again, with the rod level",
    });
    expect(ask(rodEnds, 600, 430, 176.1)).toMatchObject({ code: "unfit" });
  });
});

describe("faults", () => {
  test("an end as heavy as the whole is refused", () => {
    expect(ask(rodEnds, 612, 612)).toEqual({ code: "unfit", sentence: "RODENDS: bigEnd 612: one end weighs less than the whole rod, 612" });
  });

  test("one bad rod of several keeps to its own row", () => {
    expect(ask(rodEnds, [[612], [600]], [[430], [700]])).toEqual([
      HEADER,
      [430, 182, 612, ""],
      ["check: bigEnd 700: one end weighs less than the whole rod, 600", "", "", ""],
    ]);
  });
});

describe("blanks", () => {
  test("a rod not weighed stays blank, a small end not weighed is the rest", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(rodEnds, blank, 430)).toEqual([HEADER, ["", "", "", ""]]);
      expect(ask(rodEnds, 612, blank)).toEqual([HEADER, ["", "", "", ""]]);
      expect(ask(rodEnds, 612, 430, blank)).toEqual([HEADER, [430, 182, 612, ""]]);
    }
  });
});
