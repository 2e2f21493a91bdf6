import fc from "fast-check";
import { enNumber } from "../../../src/functions/wear/en-number.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

describe("cited values", () => {
  // ISO/IEC 17043 and ISO 13528: En = (x − X) / √(U² + U²); the numbers by hand, with 3-4-5 under the root.
  test.each([
    [73, 73.01, 0.006, 0.008, 1],
    [73, 73.04, 0.024, 0.032, 1],
    [73.05, 73.01, 0.006, 0.008, -4],
    [2.874, 2.874, 0.0001, 0.0002, 0],
  ])("%p and %p with U %p and %p: En %p", (before, after, uBefore, uAfter, en) => {
    expect(ask(enNumber, before, after, uBefore, uAfter)).toBe(en);
  });
});

describe("identities", () => {
  const size = fc.integer({ min: 7200, max: 7400 }).map((n) => n / 100);
  const u = fc.integer({ min: 1, max: 100 }).map((n) => n / 1000);

  test("the two results exchanged change its sign; the unit is no matter", () => {
    fc.assert(
      fc.property(size, size, u, u, (before, after, uBefore, uAfter) => {
        const en = number(enNumber, before, after, uBefore, uAfter);
        // Half a step of the grid of 1e-9 is rounded up, on either side of 0.
        expect(number(enNumber, after, before, uAfter, uBefore)).toBeCloseTo(-en, 8);
        expect(number(enNumber, before / 25.4, after / 25.4, uBefore / 25.4, uAfter / 25.4)).toBeCloseTo(en, 7);
      }),
    );
  });

  test("more uncertainty on either side brings it nearer to 0", () => {
    fc.assert(
      fc.property(size, size, u, u, (before, after, uBefore, uAfter) => {
        const en = Math.abs(number(enNumber, before, after, uBefore, uAfter));
        expect(Math.abs(number(enNumber, before, after, uBefore * 2, uAfter))).toBeLessThanOrEqual(en);
        expect(Math.abs(number(enNumber, before, after, uBefore, uAfter * 2))).toBeLessThanOrEqual(en);
      }),
    );
  });
});

describe("faults", () => {
  test("a result in inches beside one in millimetres is refused", () => {
    expect(ask(enNumber, 73.01, 2.8748, 0.0003, 0.0003)).toEqual({
      code: "units",
      sentence: "ENNUMBER: after 2.8748 is about 1/25.4 of before 73.01: is one in inches, the other in millimetres?",
    });
  });

  test("a negative uncertainty is refused and named", () => {
    expect(ask(enNumber, 73, 73.1, 0.01, -0.01)).toEqual({ code: "too-small", sentence: "ENNUMBER: uAfter -0.01 is too small: it must be a length above 0" });
  });

  test("a missing uncertainty is named", () => {
    expect(ask(enNumber, 73, 73.1, 0.01)).toEqual({ code: "missing", sentence: "ENNUMBER: uAfter is not given: it must be a length above 0" });
  });
});

test("a blank result or uncertainty leaves it blank", () => {
  for (const blank of BLANKS) expect(ask(enNumber, blank, 73, 0.01, 0.01)).toBe("");
  for (const blank of BLANKS_AND_ZERO) expect(ask(enNumber, 73, 73.1, 0.01, blank)).toBe("");
});
