import fc from "fast-check";
import { uncertainty } from "../../../src/functions/measurement/uncertainty.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // JCGM 100:2008, 4.2.3 and G.6.4 with table G.2: five readings, nothing else to speak of: t95(4) = 2.776 × s/√5.
  test("readings alone: t of n − 1 times the deviation of the mean", () => {
    const half = (2.776445 * Math.sqrt(2.5)) / Math.sqrt(5);
    expect(number(uncertainty, [[1, 2, 3, 4, 5]], 1e-6)).toBeCloseTo(half, 5);
  });

  // JCGM 100:2008, F.2.2.1: a step δ of the display has the standard uncertainty 0.29 δ; k = 1.96 at 95 %.
  test("readings that all agree leave the step of the display: 1.96 × 0.2887 × 0.01", () => {
    expect(number(uncertainty, [[73.01, 73.01, 73.01]], 0.01)).toBeCloseTo((1.959964 * 0.01) / Math.sqrt(12), 8);
  });

  // JCGM 100:2008, 4.3.3: a certificate's U with k = 2 is halved.
  test("the certificate's U comes back when it is all there is: 0.98 of it, as k is 1.96 and not 2", () => {
    expect(number(uncertainty, [[5, 5]], 1e-6, 0.004)).toBeCloseTo(0.98 * 0.004, 6);
  });

  // By hand from G.4.1: s²/n = 6·10⁻⁶, 0.01²/12, 0.002²; ν = 4 × (18.3333/6)² = 37.3, truncated to 37; t95(37) = 2.0262.
  test("five readings of a bore with a gauge of 0.01 mm and U 0.004 mm: 0.0086757", () => {
    expect(number(uncertainty, [[73.01], [73.02], [73.01], [73.02], [73.01]], 0.01, 0.004)).toBeCloseTo(2.0261925 * Math.sqrt(18.333333e-6), 8);
  });
});

describe("identities", () => {
  const readings = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 2, maxLength: 12 });

  test("inches instead of millimetres give the same uncertainty in inches", () => {
    fc.assert(
      fc.property(readings, (steps) => {
        const metric = number(uncertainty, [steps.map((s) => 73 + s / 1000)], 0.001, 0.002);
        const inch = number(uncertainty, [steps.map((s) => (73 + s / 1000) / 25.4)], 0.001 / 25.4, 0.002 / 25.4);
        expect(inch * 25.4).toBeCloseTo(metric, 8);
      }),
    );
  });

  test("a coarser display, a worse certificate or more confidence never makes it less", () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 1, max: 20 }), (steps, step) => {
        // Equal degrees of freedom are needed for this: a known part grows ν and so shrinks t; the root alone must grow.
        const same = [steps.map(() => 73)];
        expect(number(uncertainty, same, step + 1, 2)).toBeGreaterThan(number(uncertainty, same, step, 2));
        expect(number(uncertainty, same, step, 3)).toBeGreaterThan(number(uncertainty, same, step, 2));
        expect(number(uncertainty, [steps], step, 2, 0.99)).toBeGreaterThan(number(uncertainty, [steps], step, 2, 0.95));
      }),
    );
  });

  test("where the readings' zero lies is no matter", () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: -50, max: 50 }), (steps, zero) => {
        expect(number(uncertainty, [steps.map((s) => s + zero)], 1)).toBeCloseTo(number(uncertainty, [steps], 1), 9);
      }),
    );
  });
});

describe("faults", () => {
  test("one reading is too few", () => {
    expect(ask(uncertainty, 73.02, 0.01)).toEqual({
      code: "unfit",
      sentence: "UNCERTAINTY: readings 73.02: one reading shows no spread, at least 2 are needed",
    });
  });

  test("a confidence in per cent is refused", () => {
    expect(ask(uncertainty, [[73.01, 73.02]], 0.01, 0, 95)).toEqual({
      code: "too-large",
      sentence: "UNCERTAINTY: confidence 95 is too large: it must be a ratio above 0 and below 1",
    });
  });

  test("a negative resolution is refused", () => {
    expect(ask(uncertainty, [[73.01, 73.02]], -0.01)).toEqual({
      code: "too-small",
      sentence: "UNCERTAINTY: resolution -0.01 is too small: it must be a length above 0",
    });
  });

  test("a missing resolution is named", () => {
    expect(ask(uncertainty, [[73.01, 73.02]])).toEqual({ code: "missing", sentence: "UNCERTAINTY: resolution is not given: it must be a length above 0" });
  });
});

describe("blanks", () => {
  test("no readings, or no resolution yet, leave it blank", () => {
    for (const blank of BLANKS) expect(ask(uncertainty, blank, 0.01)).toBe("");
    for (const blank of BLANKS_AND_ZERO) expect(ask(uncertainty, [[73.01, 73.02]], blank)).toBe("");
  });

  test("blank cells among the readings are left out", () => {
    expect(ask(uncertainty, [[73.01], [null], [73.02]], 0.01)).toBe(ask(uncertainty, [[73.01], [73.02]], 0.01));
  });

  test("a blank calibration counts as none, a blank confidence as 0.95", () => {
    expect(ask(uncertainty, [[73.01, 73.02]], 0.01, null, "")).toBe(ask(uncertainty, [[73.01, 73.02]], 0.01, 0, 0.95));
  });

  test("a reading of 0 counts, since a gauge may be set to zero on its ring", () => {
    expect(number(uncertainty, [[0, 1]], 0.01)).toBeGreaterThan(1);
  });
});
