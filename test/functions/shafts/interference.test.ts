import fc from "fast-check";
import { clearance } from "../../../src/functions/cylinder/clearance.ts";
import { interference } from "../../../src/functions/shafts/interference.ts";
import { inches, millimetres, small } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // ISO 286-2, over 30 to 50 mm, from memory: H7 +25/0, p6 +42/+26 µm: 0.001 to 0.042 mm.
  test("the least and the most interference of a 40 H7/p6 fit", () => {
    expect(ask(interference, 40.026, 40.025)).toBe(0.001);
    expect(ask(interference, 40.042, 40)).toBe(0.042);
  });
});

describe("identities", () => {
  test("shaft = hole + interference to the typed digit, and in inches the same", () => {
    fc.assert(
      fc.property(millimetres, small, inches, (hole, tight, other) => {
        expect(number(interference, Number((hole + tight).toFixed(2)), hole)).toBe(tight);
        expect(number(interference, other * 25.4 + tight, other * 25.4)).toBeCloseTo(number(interference, other + tight / 25.4, other) * 25.4, 7);
      }),
      { numRuns: 400 },
    );
  });

  test("every pair of sizes is a fit of one of the two functions, and both only at 0", () => {
    fc.assert(
      fc.property(millimetres, fc.integer({ min: -60, max: 60 }), (hole, off) => {
        const shaft = Number((hole + off / 1000).toFixed(3));
        const [press, run] = [ask(interference, shaft, hole), ask(clearance, hole, shaft)];
        expect(typeof press === "number" ? press : press).toEqual(off >= 0 ? off / 1000 : expect.objectContaining({ code: "unfit" }));
        expect(run).toEqual(off <= 0 ? (off === 0 ? 0 : -off / 1000) : expect.objectContaining({ code: "swapped" }));
      }),
      { numRuns: 400 },
    );
  });
});

describe("at the limits", () => {
  test("a shaft as large as its hole, but for the noise of the computer, has none", () => {
    expect(ask(interference, 22, 22)).toBe(0);
    expect(ask(interference, 0.3, 0.1 + 0.2)).toBe(0);
  });
});

describe("faults", () => {
  test("a running fit is refused, and each function names the other", () => {
    expect(ask(interference, 21.98, 22)).toEqual({
      code: "unfit",
      sentence: "INTERFERENCE: shaft 21.98: it is smaller than hole 22: are they swapped? A running fit is one for HATCH.CLEARANCE",
    });
    expect(ask(clearance, 21.98, 22)).toEqual({
      code: "swapped",
      sentence: "CLEARANCE: shaft 22 is larger than hole 21.98: are they swapped? A press fit is one for HATCH.INTERFERENCE",
    });
  });

  test("a shaft in inches in a hole in millimetres is refused", () => {
    expect(ask(interference, 1.4, 35)).toEqual({
      code: "units",
      sentence: "INTERFERENCE: shaft 1.4 is about 1/25.4 of hole 35: is one in inches, the other in millimetres?",
    });
  });
});

describe("blanks", () => {
  test("a blank shaft or hole leaves it blank", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(interference, blank, 22)).toBe("");
      expect(ask(interference, 22, blank)).toBe("");
    }
  });
});
