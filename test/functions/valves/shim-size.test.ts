import fc from "fast-check";
import { shimSize } from "../../../src/functions/valves/shim-size.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const NONE = "none: no multiple of 0.05 lands in the limits";

describe("cited values", () => {
  // Service practice: new = installed + (measured − wanted). 1.55 with 0.30 where 0.22 is wanted asks for
  // 1.63; the next size made is 1.65, which leaves 0.20. The limits 0.18 to 0.26 about 0.22 are ours.
  test("1.55 with 0.30 measured and 0.22 wanted gets 1.65", () => {
    expect(ask(shimSize, 1.55, 0.3, 0.18, 0.26)).toBe(1.65);
  });

  // Steps of 0.05 and 0.025 mm: common practice.
  test("in steps of 0.025 the same valve gets 1.625, nearer to the 1.63 it asks for", () => {
    expect(ask(shimSize, 1.55, 0.3, 0.18, 0.26, 0.025)).toBe(1.625);
  });
});

describe("against every step there is", () => {
  test("of all multiples of the step in the limits the nearest to the middle, the thinner of two", () => {
    const hundredths = (min: number, max: number) => fc.integer({ min, max });
    fc.assert(
      fc.property(
        hundredths(100, 320),
        hundredths(1, 60),
        hundredths(5, 30),
        hundredths(0, 14),
        fc.constantFrom(1, 2, 5, 10),
        (installed, clearance, least, span, step) => {
          const most = least + span;
          let best: number | undefined;
          for (let size = step; size < 500; size += step) {
            const left = installed + clearance - size;
            if (left < least || left > most) continue;
            const off = (shim: number) => Math.abs(2 * (installed + clearance - shim) - least - most);
            if (best === undefined || off(size) < off(best)) best = size;
          }
          const answer = ask(shimSize, installed / 100, clearance / 100, least / 100, most / 100, step / 100);
          expect(answer).toBe(best === undefined ? `none: no multiple of ${step / 100} lands in the limits` : best / 100);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe("identities", () => {
  test("in inches the same step is taken", () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 300 }), fc.integer({ min: 5, max: 40 }), (installed, clearance) => {
        // Limits that tie no two steps, so that rounding to inches cannot turn the choice.
        const metric = ask(shimSize, installed / 100, clearance / 100, 0.148, 0.249);
        const imperial = ask(shimSize, installed / 2540, clearance / 2540, 0.148 / 25.4, 0.249 / 25.4, 0.05 / 25.4);
        expect(typeof imperial).toBe(typeof metric);
        if (typeof metric === "number") expect((imperial as number) * 25.4).toBeCloseTo(metric, 5);
      }),
    );
  });

  test("a thicker shim with as much less clearance asks for the same shim", () => {
    expect(ask(shimSize, 1.6, 0.25, 0.18, 0.26)).toBe(ask(shimSize, 1.55, 0.3, 0.18, 0.26));
  });
});

describe("at the limits", () => {
  test("a clearance exactly on a limit is in it", () => {
    // 2.50 leaves 0.15: 2.45 + 0.20 − 2.50, which in binary is not 0.15.
    expect(2.45 + 0.2 - 2.5).not.toBe(0.15);
    expect(ask(shimSize, 2.45, 0.2, 0.15, 0.16)).toBe(2.5);
    expect(ask(shimSize, 2.45, 0.2, 0.14, 0.15)).toBe(2.5);
    expect(ask(shimSize, 2.45, 0.2, 0.151, 0.16)).toBe(NONE);
  });

  test("a tight valve is a reading of 0, and its shim the thickest that can be right", () => {
    expect(ask(shimSize, 2.5, 0, 0.15, 0.25)).toBe(2.3);
    expect(ask(shimSize, [[2.5], [2.5]], [[0], [0.2]], 0.15, 0.25)).toEqual([[2.3], [2.5]]);
  });

  test("halfway between two steps the thinner is taken", () => {
    expect(ask(shimSize, 2.525, 0.2, 0.15, 0.25)).toBe(2.5);
    expect(ask(shimSize, 2.526, 0.2, 0.15, 0.25)).toBe(2.55);
  });

  test("limits without any width ask for exactly that clearance", () => {
    expect(ask(shimSize, 2.45, 0.25, 0.2, 0.2)).toBe(2.5);
    expect(ask(shimSize, 2.45, 0.26, 0.2, 0.2)).toBe(NONE);
  });

  test("a valve that asks for a shim of nothing or less gets none", () => {
    expect(ask(shimSize, 0.02, 0.03, 0.15, 0.25, 0.05)).toBe(NONE);
    expect(ask(shimSize, 0.1, 0.05, 0.15, 0.25, 0.05)).toBe(NONE);
    // The thinnest step there is may still do.
    expect(ask(shimSize, 0.1, 0.1, 0.15, 0.25, 0.05)).toBe(0.05);
  });

  test("the answer is a clean decimal, whatever the step", () => {
    expect(number(shimSize, 2.3, 0.3, 0.19, 0.21, 0.1)).toBe(2.4);
    expect(number(shimSize, 0.118, 0.012, 0.008, 0.01, 0.001)).toBe(0.121);
  });
});

describe("the sizes that are made", () => {
  test("of them the nearest to the middle is taken, the limits of the list included", () => {
    expect(ask(shimSize, 2.5, 0.1, 0.15, 0.25)).toBe(2.4);
    expect(ask(shimSize, 2.5, 0.1, 0.15, 0.25, 0.05, 2.4, 3)).toBe(2.4);
    expect(ask(shimSize, 2.5, 0.1, 0.15, 0.25, 0.05, 2.41, 3)).toBe(2.45);
    expect(ask(shimSize, 2.5, 0.1, 0.15, 0.25, 0.05, 2, 2.39)).toBe(2.35);
    expect(ask(shimSize, 2.5, 0.1, 0.15, 0.25, 0.05, 2.46)).toBe("none: no multiple of 0.05 from 2.46 lands in the limits");
    expect(ask(shimSize, 2.5, 0.1, 0.15, 0.25, 0.05, "", 2.34)).toBe("none: no multiple of 0.05 up to 2.34 lands in the limits");
  });

  test("a list the wrong way round is refused", () => {
    expect(ask(shimSize, 2.5, 0.1, 0.15, 0.25, 0.05, 3, 2)).toEqual({
      code: "swapped",
      sentence: "SHIMSIZE: smallest 3 is larger than largest 2: are they swapped?",
    });
  });

  test("in inches their step has to be typed, as the usual one is in millimetres", () => {
    expect(ask(shimSize, 0.118, 0.012, 0.007, 0.009)).toEqual({
      code: "missing",
      sentence: "SHIMSIZE: step is not given: it must be a length above 0, as a shim of 0.118 is in inches and the usual 0.05 in mm",
    });
    expect(ask(shimSize, 0.118, 0.012, 0.007, 0.009, 0.002)).toBe(0.122);
    expect(ask(shimSize, 0.5, 0.3, 0.18, 0.26)).toBe(0.6);
  });
});

describe("faults", () => {
  test("limits the wrong way round are refused", () => {
    expect(ask(shimSize, 1.55, 0.3, 0.26, 0.18)).toEqual({ code: "swapped", sentence: "SHIMSIZE: least 0.26 is larger than most 0.18: are they swapped?" });
  });

  test("a negative step is refused", () => {
    expect(ask(shimSize, 1.55, 0.3, 0.18, 0.26, -0.05)).toEqual({
      code: "too-small",
      sentence: "SHIMSIZE: step -0.05 is too small: it must be a length above 0",
    });
  });

  test("one bad valve of several keeps to its own cell", () => {
    expect(ask(shimSize, [[1.55], ["1,55"]], 0.3, 0.18, 0.26)).toEqual([
      [1.65],
      ['check: installed holds the text "1,55": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    ]);
  });
});

describe("blanks", () => {
  test("a valve not measured, without clearance or without limits stays blank; a blank step is 0.05", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(shimSize, blank, 0.3, 0.18, 0.26)).toBe("");
      expect(ask(shimSize, 1.55, 0.3, blank, 0.26)).toBe("");
      expect(ask(shimSize, 1.55, 0.3, 0.18, blank)).toBe("");
      expect(ask(shimSize, 1.55, 0.3, 0.18, 0.26, blank)).toBe(1.65);
    }
    for (const blank of BLANKS) expect(ask(shimSize, 1.55, blank, 0.18, 0.26)).toBe("");
  });
});
