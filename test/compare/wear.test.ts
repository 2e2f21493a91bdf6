import fc from "fast-check";
import { compareReadings } from "../../src/compare/compare.ts";
import type { Reading } from "../../src/compare/readings.ts";
import { compare, csv, reading } from "./stand.ts";

const wearBetween = (before: Reading, after: Reading, hours?: number) => compare([before], [after], { hours }).wear[0];

/** The middle 95 % of the normal law, by its tables. */
const Q = 1.959964;

describe("cited values", () => {
  // A marine engine maker's manual: rate = (D1 − D2) ÷ hours × 1000, D1 the worn diameter, D2 the unworn one.
  test.each([
    [73.02, 73.054, 850, 0.04],
    [73, 73.012, 600, 0.02],
    [72.98, 72.95, 1500, -0.02],
  ])("%p to %p in %p h wears %p in 1000 h", (before, after, hours, rate) => {
    expect(wearBetween(reading(before), reading(after), hours)!.rate).toBeCloseTo(rate, 9);
  });

  // By hand: 0.026 left at 0.04 in 1000 h is 650 h; the half width of the change is 1.95996 × √2 × 0.002, U of the coarser gauge counting for both.
  test("hours, rate with its interval, and hours left to the limit, in one sentence", () => {
    const wear = wearBetween(reading(73.02, { upper: 73.08, hours: 0 }), reading(73.054, { uncertainty: 0.004, hours: 850, upper: 73.08 }))!;
    expect(wear).toMatchObject({ useFrom: 0, useTo: 850, n: 2, distinguishable: true, limit: 73.08, notBefore: null });
    const half = (Q * Math.SQRT2 * 0.002) / 0.85;
    expect([wear.lower, wear.upper]).toEqual([expect.closeTo(0.04 - half, 8), expect.closeTo(0.04 + half, 8)]);
    expect(wear.life).toBeCloseTo(1500, 6);
    expect(wear.says).toMatch(
      /^grows 0\.0400 in 1000 h \(0\.0335 to 0\.0465\); at that rate it comes to its limit 73\.080 after another 650 h, at the earliest after \d+ h$/,
    );
  });

  // R 4.2.2: the slope's interval and where the line's band reaches the limit, by lm with a deviation of 0.0015, half of U, taken as known.
  test("three measurings or more are a line, as well known as their gauge while they scatter no more", () => {
    const at = (hours: number, value: number) => reading(value, { hours, upper: 73.1 });
    const { places, wear } = compare([at(0, 73), at(500, 73.011)], [at(1500, 73.031), at(1000, 73.019), at(500, 73.011)]);
    // Each side is stood for by its last measuring.
    expect(places[0]!.difference).toBe(0.02);
    expect(wear[0]).toMatchObject({ useFrom: 0, useTo: 1500, n: 4, distinguishable: true });
    expect([wear[0]!.rate, wear[0]!.lower, wear[0]!.upper].map((rate) => Number(rate.toFixed(4)))).toEqual([0.0202, 0.0176, 0.0228]);
    expect([wear[0]!.life! - 1500, wear[0]!.earliest! - 1500].map((hours) => Number(hours.toFixed(2)))).toEqual([3445.54, 2957.46]);
  });
});

describe("the earliest at which a limit may be met", () => {
  const study = fc.record({ grown: fc.integer({ min: 10, max: 60 }), U: fc.integer({ min: 1, max: 6 }), left: fc.integer({ min: 8, max: 80 }) });

  test("is where line and uncertainty together reach it, and not before, looked for hour by hour", () => {
    fc.assert(
      fc.property(study, fc.boolean(), ({ grown, U, left }, shrinks) => {
        const sign = shrinks ? -1 : 1;
        const side = shrinks ? "lower" : "upper";
        const known = { uncertainty: U / 1000, [side]: 73 + (sign * (grown + left)) / 1000 };
        const { life, earliest } = wearBetween(reading(73, known), reading(73 + (sign * grown) / 1000, known), 1000)!;
        // The line through both readings at a share t of the time between them, and its standard uncertainty (JCGM 100, 5.1.2).
        const reach = (hours: number) => (grown * hours) / 1000 + (Q * U * Math.hypot(hours / 1000, 1 - hours / 1000)) / 2;
        let first = 0;
        while (reach(first) < grown + left) first++;
        // Found to a thousandth of an hour, so that it may lie on either side of a whole one.
        expect([earliest! > first - 1 - 1e-3, earliest! < first + 1e-3]).toEqual([true, true]);
        expect(life).toBeCloseTo(1000 + (left / grown) * 1000, 4);
      }),
    );
  });

  test("is now where the limit may have been met already", () => {
    const { life, earliest, says } = wearBetween(reading(73.02, { upper: 73.056 }), reading(73.054), 850)!;
    expect([life, earliest! < 850]).toEqual([expect.closeTo(900, 6), true]);
    expect(says).toMatch(/after another 50 h, and it may be there already$/);
  });
});

describe("what has no rate or no life says so", () => {
  const words = (before: number, after: number, more: object = {}, hours: number | undefined = 850) =>
    wearBetween(reading(before, more), reading(after, more), hours)?.says;

  test("a change within the gauge has no rate, but a most, and hours before which the limit is not met", () => {
    // By hand: 1.95996 × √2 × 0.0015 = 0.00416; (0.002 + 0.00416) ÷ 850 × 1000.
    expect(words(73.02, 73.022)).toBe("no wear rate yet after 850 h: not distinguishable from zero, at most 0.0072 in 1000 h");
    expect(words(73.02, 73.022, { upper: 73.08 })).toMatch(/at most 0\.0072 in 1000 h; it does not come to its limit 73\.08 before \d+ h$/);
  });

  test("without a limit on the side to which it goes there is a rate only", () => {
    expect(words(73.02, 73.054)).toBe("grows 0.0400 in 1000 h (0.0351 to 0.0449)");
    expect(words(73.054, 73.02, { upper: 73.08 })).toBe("shrinks 0.0400 in 1000 h (0.0351 to 0.0449)");
  });

  test("past its limit it has no hours left", () => {
    expect(words(73.02, 73.054, { upper: 73.05 })).toBe("grows 0.0400 in 1000 h (0.0351 to 0.0449); it is past its limit 73.050");
  });

  test("three measurings that are all equal say how much there can be at most", () => {
    const at = (hours: number) => reading(73.02, { hours });
    const [wear] = compare([at(0), at(500)], [at(1000)]).wear;
    // By hand: 1.960 × 0.0015 ÷ √(2 × 500²) in an hour.
    expect(wear).toMatchObject({ useTo: 1000, n: 3, distinguishable: false, rate: 0, limit: null, life: null });
    expect(wear!.says).toBe("no wear rate yet after 1000 h: not distinguishable from zero, at most 0.0042 in 1000 h");
  });

  test("a line past its limit has no hours left either", () => {
    const at = (hours: number, value: number) => reading(value, { hours, upper: 73.03 });
    const [wear] = compare([at(0, 73), at(500, 73.011)], [at(1000, 73.019), at(1500, 73.031)]).wear;
    expect(wear!.n).toBe(4);
    expect(wear!.says).toMatch(/^grows 0\.0202 in 1000 h .*; it is past its limit 73\.030$/);
  });

  test("hours that are missing, equal, or on one side only tell no wear, and the last is noted", () => {
    expect(wearBetween(reading(73), reading(73.1))).toBeUndefined();
    expect(wearBetween(reading(73, { hours: 850 }), reading(73.1, { hours: 850 }))).toBeUndefined();
    const lone = compare([reading(73)], [reading(73.1, { hours: 850 })]);
    expect([lone.wear, lone.notes]).toEqual([[], ["hours are given after only, so wear cannot be told by them: give the hours between"]]);
  });

  test("hours that were given stand in where those of the sheets do not tell the sides apart", () => {
    for (const [a, b] of [
      [undefined, 850],
      [850, 850],
      [undefined, undefined],
    ])
      expect(wearBetween(reading(73, { hours: a }), reading(73.1, { hours: b }), 500)).toMatchObject({ useFrom: 0, useTo: 500 });
  });

  test("fewer hours after than before are asked about", () => {
    const { notes } = compare([reading(73, { hours: 850 })], [reading(73.1, { hours: 0 })]);
    expect(notes).toContain("the hours before (850) are more than those after (0): are the two sides swapped?");
  });

  test("without an uncertainty there is no wear", () => {
    const bare = { uncertainty: undefined };
    expect(wearBetween(reading(73, bare), reading(73.1, bare), 850)).toBeUndefined();
  });

  test("a life is noted as drawn on", () => {
    expect(compare([reading(73, { upper: 73.2 })], [reading(73.1)], { hours: 850 }).notes).toEqual([
      "a life draws the line on as if wear went on as before: measure again before the earliest",
    ]);
  });
});

describe("the run-in", () => {
  const at = (hours: number, value: number) => reading(value, { hours, upper: 73.1 });
  const told = (points: readonly (readonly [number, number])[], runIn: number) => {
    const sides = points.map(([hours, value]) => at(hours, value));
    return compare(sides.slice(0, 1), sides.slice(1), { runIn }).wear;
  };

  test("has a rate of its own, and the life is drawn on from its end", () => {
    const [first, later] = told(
      [
        [0, 73],
        [50, 73.012],
        [550, 73.022],
      ],
      50,
    );
    expect(first).toMatchObject({ stage: "run-in", n: 2, life: null, limit: null });
    expect(first!.rate).toBeCloseTo(0.24, 9);
    expect(first!.says).toMatch(/^grows 0\.2400? in 1000 h, in the run-in \(/);
    expect(later).toMatchObject({ stage: "after the run-in", useFrom: 50, useTo: 550, limit: 73.1 });
    // 0.01 in 500 h: the 0.078 left take 3900 h.
    expect(later!.life).toBeCloseTo(550 + 3900, 4);
  });

  test("where nothing was measured at its end, what spans it is not drawn on", () => {
    const [only, ...more] = told(
      [
        [0, 73],
        [550, 73.022],
      ],
      50,
    );
    expect(more).toEqual([]);
    expect(only).toMatchObject({ stage: "the run-in and after", life: null, limit: null });
    expect(only!.says).toMatch(/in 1000 h, the run-in included, so no life is predicted from it \([\d.]+ to [\d.]+\)$/);
  });
});

describe("miles and kilometres", () => {
  test("stand for hours, as the sheet says", async () => {
    for (const unit of ["miles", "km"] as const) {
      const side = async (use: number, value: number) =>
        await csv(`cylinder,characteristic,value,unit,U,upper,${unit}\n1,bore,${value},mm,0.002,73.1,${use}\n`);
      const { wear } = compareReadings(await side(1000, 73), await side(21_000, 73.02));
      expect(wear[0]).toMatchObject({ useUnit: unit, useFrom: 1000, useTo: 21_000 });
      expect(wear[0]!.says).toMatch(new RegExp(`^grows 0\\.00100 in 1000 ${unit} .* after another 80000 ${unit}, at the earliest after \\d+ ${unit}$`));
    }
  });

  test("and are never set against hours", () => {
    const { wear, notes } = compare([reading(73, { hours: 0 })], [reading(73.03, { hours: 900, useUnit: "km" })]);
    expect(wear).toEqual([]);
    expect(notes).toContain("use is given in hours and in km: no wear is told of places with both");
  });

  test("a row with two of them is refused", async () => {
    const [row] = (await csv("cylinder,characteristic,value,hours,km\n1,bore,73,10,20\n")).readings;
    expect(row).toMatchObject({ value: null, fault: "its use is given in hours and in km: one of them is wanted" });
  });
});
