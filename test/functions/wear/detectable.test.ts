import fc from "fast-check";
import { detectable } from "../../../src/functions/wear/detectable.ts";
import { pairedChange } from "../../../src/functions/wear/paired-change.ts";
import { SeededNormal } from "../../helpers/normal.ts";
import { fromR } from "../../reference/r-values.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

const [Z80, Z90] = fromR("z-power") as [number, number];

describe("cited values", () => {
  // R's qnorm; U with k = 2, so u of a change is √2 × 0.002.
  test("one place by the quantiles of the normal law, never below 2", () => {
    const u = Math.SQRT2 * 0.002;
    const [, four, sixtyFour] = fromR("z-rows") as [number, number, number];
    expect(number(detectable, 0.004)).toBeCloseTo((2 + Z90) * u, 12);
    expect(number(detectable, 0.004, null, 1, 1, 0.8)).toBeCloseTo((2 + Z80) * u, 12);
    expect(number(detectable, 0.004, null, 1, 1, 0.9, 4)).toBeCloseTo((four + Z90) * u, 12);
    expect(number(detectable, 0.004, null, 1, 1, 0.9, 64)).toBeCloseTo((sixtyFour + Z90) * u, 12);
  });

  // 3-4-5: U 0.006 and 0.008 make 0.01; three repeats divide its square by 3; a common part of 0.006 adds 2 × 0.003².
  test("repeats divide the reading's own part, and what is common stays", () => {
    expect(number(detectable, 0.006, 0.008, 3)).toBeCloseTo(((2 + Z90) * 0.005) / Math.sqrt(3), 12);
    expect(number(detectable, 0.006, 0.008, 3, 1, 0.9, 1, 0.006)).toBeCloseTo((2 + Z90) * Math.sqrt(0.005 ** 2 / 3 + 2 * 0.003 ** 2), 12);
  });

  // R's power.t.test, paired: Student's t does not know the gauge. Of many places the rule sees a little less, as it takes no scatter below the gauge's.
  test("a mean of several places sees what the paired t test would, within a hundredth, and of few far more", () => {
    for (const [i, n] of [3, 6, 12].entries()) {
      const seen = number(detectable, 2, null, 1, n);
      expect(seen).toBeLessThanOrEqual([0.9, 1, 1.01][i]! * Math.SQRT2 * fromR("seen-paired-t")[i]!);
      // And no less than what a scatter known beforehand would.
      expect(seen).toBeGreaterThan((Math.SQRT2 * (1.96 + Z90)) / Math.sqrt(n));
    }
  });
});

test("of measured sizes that have changed by it, PAIREDCHANGE finds as many as was said", () => {
  const random = new SeededNormal(971);
  for (const [n, power, common] of [
    [4, 0.8, 0],
    [6, 0.9, 0],
    [6, 0.8, 0.003],
  ] as const) {
    const change = number(detectable, 0.004, null, 1, n, power, 1, common);
    const runs = 2000;
    let found = 0;
    for (let run = 0; run < runs; run++) {
      const setting = random.normal(common / Math.SQRT2);
      const sizes = (by: number) => Array.from({ length: n }, () => [73 + by + random.normal(0.002)]);
      const U = Math.hypot(0.004, common);
      const row = (ask(pairedChange, sizes(0), sizes(change + setting), U, null, null, common || "none") as unknown[][])[1]!;
      if (row[7] === "differs") found += 1 / runs;
    }
    // Three standard deviations of so many tries.
    expect(Math.abs(found - power)).toBeLessThan(3 * Math.sqrt((power * (1 - power)) / runs));
  }
});

describe("identities", () => {
  const plan = fc.record({
    U: fc.integer({ min: 1, max: 20 }).map((n) => n / 1000),
    repeats: fc.integer({ min: 1, max: 5 }),
    places: fc.integer({ min: 1, max: 12 }),
    rows: fc.integer({ min: 1, max: 64 }),
    common: fc.constantFrom(0, 0.001, 0.01),
  });
  const seen = ({ U, repeats, places, rows, common }: { U: number; repeats: number; places: number; rows: number; common: number }, power = 0.9, by = 1) =>
    number(detectable, by * U, null, repeats, places, power, rows, by * common);

  test("inches see in inches what millimetres see", () => {
    fc.assert(
      fc.property(plan, (own) => expect(seen(own, 0.9, 1 / 25.4)).toBeCloseTo(seen(own) / 25.4, 9)),
      { numRuns: 30 },
    );
  });

  test("more repeats, more places and less power see no less, more rows and a common part no more", () => {
    fc.assert(
      fc.property(plan, (own) => {
        const now = seen(own) * (1 + 1e-6);
        expect(seen({ ...own, repeats: own.repeats + 1 })).toBeLessThanOrEqual(now);
        expect(seen({ ...own, places: own.places + 1 })).toBeLessThanOrEqual(now);
        expect(seen(own, 0.8)).toBeLessThanOrEqual(now);
        expect(seen({ ...own, rows: own.rows + 10 }) * (1 + 1e-6)).toBeGreaterThanOrEqual(seen(own));
        // Of few places a common part also makes the scatter better known (Welch-Satterthwaite), so this holds for one place only.
        const one = { ...own, places: 1 };
        expect(seen({ ...one, common: own.common + 0.002 })).toBeGreaterThan(seen(one));
      }),
      { numRuns: 25 },
    );
  });

  test("several places never see less than one", () => {
    fc.assert(
      fc.property(plan, (own) => expect(seen(own)).toBeLessThanOrEqual(seen({ ...own, places: 1 }))),
      { numRuns: 30 },
    );
  });
});

describe("faults and blanks", () => {
  test("half a place is refused", () => {
    expect(ask(detectable, 0.004, null, 1, 2.5)).toEqual({
      code: "not-whole",
      sentence: "DETECTABLE: places 2.5 is not a whole number: it must be a whole number of at least 1",
    });
  });

  test("a negative common part is refused", () => {
    expect(ask(detectable, 0.004, null, 1, 1, 0.9, 1, -0.001)).toEqual({
      code: "too-small",
      sentence: "DETECTABLE: common -0.001 is too small: it must be a length of at least 0",
    });
  });

  test("without a U it stays blank, and what else is blank is as if left out", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(detectable, blank)).toBe("");
      expect(ask(detectable, 0.004, blank, blank, blank, blank, blank, blank)).toBe(ask(detectable, 0.004));
    }
  });
});
