import fc from "fast-check";
import { lifeFromTwo } from "../../src/compare/change.ts";
import { changeBetween, compare, reading } from "./stand.ts";

describe("cited values", () => {
  // A marine engine maker's manual: rate = (D1 − D2) ÷ hours × 1000, D1 the worn diameter, D2 the unworn one.
  test.each([
    [73.02, 73.054, 850, 0.04],
    [73, 73.012, 600, 0.02],
    [72.98, 72.95, 1500, -0.02],
  ])("%p to %p in %p h wears %p in 1000 h", (before, after, hours, rate) => {
    expect(changeBetween(reading(before), reading(after), hours).wear!.rate).toBeCloseTo(rate, 9);
  });

  // By hand: 0.026 left at 0.04 in 1000 h is 650 h; the interval is 0.034 ± 0.005 in 850 h.
  test("hours, rate with its interval, and hours left to the limit, in one sentence", () => {
    const { wear } = changeBetween(reading(73.02, { upper: 73.08, hours: 0 }), reading(73.054, { uncertainty: 0.004, hours: 850, upper: 73.08 }));
    expect(wear).toMatchObject({ hours: 850, measurings: 2, isReal: true, limit: 73.08 });
    expect([wear!.from, wear!.to]).toEqual([expect.closeTo(29 / 850, 9), expect.closeTo(39 / 850, 9)]);
    expect(wear!.life!.left).toBeCloseTo(650, 6);
    expect(wear!.says).toBe(
      "grows 0.04 in 1000 h (0.0341 to 0.0459); at that rate it comes to its limit 73.08 after another 650 h, at the earliest after 487 h",
    );
  });

  // R 4.2.2: the slope's interval and where the line's band reaches the limit, by lm with a deviation of 0.0015, half of U, taken as known.
  test("three measurings or more are a line, as well known as their gauge while they scatter no more", () => {
    const at = (hours: number, value: number) => reading(value, { hours, upper: 73.1 });
    const { changes } = compare([at(0, 73), at(500, 73.011)], [at(1500, 73.031), at(1000, 73.019), at(500, 73.011)]);
    const { wear, change } = changes[0]!;
    // Each side is stood for by its last measuring.
    expect(change).toBe(0.02);
    expect(wear).toMatchObject({ hours: 1500, measurings: 4, isReal: true });
    expect([wear!.rate, wear!.from, wear!.to].map((rate) => Number(rate.toFixed(4)))).toEqual([0.0202, 0.0176, 0.0228]);
    expect([wear!.life!.left, wear!.life!.earliest].map((hours) => Number(hours.toFixed(2)))).toEqual([3445.54, 2957.46]);
  });
});

describe("the earliest at which a limit may be met", () => {
  const case_ = fc.record({
    grown: fc.integer({ min: 10, max: 60 }),
    uBefore: fc.integer({ min: 1, max: 6 }),
    uAfter: fc.integer({ min: 1, max: 6 }),
    left: fc.integer({ min: 8, max: 80 }),
  });

  test("is where line and uncertainty together reach it, and not before, looked for hour by hour", () => {
    fc.assert(
      fc.property(case_, fc.boolean(), ({ grown, uBefore, uAfter, left }, shrinks) => {
        const sign = shrinks ? -1 : 1;
        const life = lifeFromTwo({ value: 0, uncertainty: uBefore }, { value: sign * grown, uncertainty: uAfter }, sign * (grown + left), 1000);
        const reach = (hours: number) => {
          const t = 1 + hours / 1000;
          return grown * t + Math.sqrt((t * uAfter) ** 2 + ((1 - t) * uBefore) ** 2);
        };
        let first = 0;
        while (reach(first) < grown + left) first++;
        expect(Math.ceil(life.earliest - 1e-6)).toBe(first);
        expect(life.left).toBeCloseTo((left / grown) * 1000, 6);
      }),
    );
  });

  test("is now where the later reading may be at its limit already", () => {
    const { wear } = changeBetween(reading(73.02, { upper: 73.056 }), reading(73.054), 850);
    expect(wear!.life).toEqual({ left: expect.closeTo(50, 6), earliest: 0 });
    expect(wear!.says).toMatch(/after another 50 h, and it may be there already$/);
  });
});

describe("what has no rate or no life says so", () => {
  const words = (before: number, after: number, more: object = {}, hours: number | undefined = 850) =>
    changeBetween(reading(before, more), reading(after, more), hours).wear?.says;

  test("a change within the gauge has no rate, but a most", () => {
    // By hand: √2 × 0.003 = 0.00424; (0.002 + 0.00424) ÷ 850 × 1000.
    expect(words(73.02, 73.022)).toBe("no wear rate yet after 850 h: not distinguishable from zero, at most 0.00734 in 1000 h");
  });

  test("without a limit on the side to which it goes there is a rate only", () => {
    expect(words(73.02, 73.054)).toBe("grows 0.04 in 1000 h (0.035 to 0.045)");
    expect(words(73.054, 73.02, { upper: 73.08 })).toBe("shrinks 0.04 in 1000 h (0.035 to 0.045)");
  });

  test("past its limit it has no hours left", () => {
    expect(words(73.02, 73.054, { upper: 73.05 })).toBe("grows 0.04 in 1000 h (0.035 to 0.045); it is past its limit 73.05");
  });

  test("three measurings that are all equal say how much there can be at most", () => {
    const at = (hours: number) => reading(73.02, { hours });
    const { wear } = compare([at(0), at(500)], [at(1000)]).changes[0]!;
    // By hand: 1.960 × 0.0015 ÷ √(2 × 500²) in an hour.
    expect(wear).toMatchObject({ hours: 1000, measurings: 3, isReal: false, rate: 0, limit: null, life: null });
    expect(wear!.says).toBe("no wear rate yet after 1000 h: not distinguishable from zero, at most 0.00416 in 1000 h");
  });

  test("a line past its limit has no hours left either", () => {
    const at = (hours: number, value: number) => reading(value, { hours, upper: 73.03 });
    const { wear } = compare([at(0, 73), at(500, 73.011)], [at(1000, 73.019), at(1500, 73.031)]).changes[0]!;
    expect(wear).toMatchObject({ measurings: 4, life: { left: 0, earliest: 0 } });
    expect(wear!.says).toMatch(/^grows 0\.0202 in 1000 h .*; it is past its limit 73\.03$/);
  });

  test("hours that are missing, equal, or on one side only tell no wear, and the last is noted", () => {
    expect(changeBetween(reading(73), reading(73.1)).wear).toBeNull();
    expect(changeBetween(reading(73, { hours: 850 }), reading(73.1, { hours: 850 })).wear).toBeNull();
    const lone = compare([reading(73)], [reading(73.1, { hours: 850 })]);
    expect([lone.changes[0]!.wear, lone.notes]).toEqual([null, ["hours are given after only, so wear cannot be told by them: give the hours between"]]);
  });

  test("a life is noted as drawn on", () => {
    expect(compare([reading(73, { upper: 73.2 })], [reading(73.1)], { hours: 850 }).notes).toEqual([
      "a life draws the line on as if wear went on as before: measure again before the earliest",
    ]);
  });
});
