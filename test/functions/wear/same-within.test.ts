import fc from "fast-check";
import { realChange } from "../../../src/functions/wear/real-change.ts";
import { sameWithin } from "../../../src/functions/wear/same-within.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

describe("cited values", () => {
  // Two one-sided tests at 5 % by hand: U 0.006 and 0.008 make 0.01, and 1.644854 × 0.01 ÷ 2 is 0.008224.
  test.each([
    [73, 73, 0.00823, "same within 0.00823"],
    [73, 73, 0.00822, "cannot tell: up to 0.0082 may hide"],
    [73, 73.004, 0.01223, "same within 0.01223"],
    [73, 72.996, 0.01222, "cannot tell: up to 0.012 may hide"],
    [73, 73.01, 0.02, "same within 0.02"],
    [73, 73.011, 0.02, "differs, but less than what matters"],
    [73, 73.011, 0.019, "differs"],
  ])("%p and %p, what matters is %p: %s", (before, after, matters, said) => {
    expect(ask(sameWithin, before, after, matters, 0.006, 0.008)).toBe(said);
  });
});

describe("identities", () => {
  const size = fc.integer({ min: 7300, max: 7304 }).map((n) => n / 100);
  const u = fc.integer({ min: 1, max: 100 }).map((n) => n / 1000);

  test("it differs exactly where REALCHANGE finds a change", () => {
    fc.assert(
      fc.property(size, size, u, u, u, (before, after, matters, uBefore, uAfter) => {
        const differs = String(ask(sameWithin, before, after, matters, uBefore, uAfter)).startsWith("differs");
        expect(differs).toBe(!String(ask(realChange, before, after, uBefore, uAfter)).startsWith("cannot tell"));
      }),
    );
  });

  test("before and after exchanged say the same", () => {
    fc.assert(
      fc.property(size, size, u, u, u, (before, after, matters, uBefore, uAfter) => {
        expect(ask(sameWithin, after, before, matters, uAfter, uBefore)).toBe(ask(sameWithin, before, after, matters, uBefore, uAfter));
      }),
    );
  });

  test("what is the same within a size is the same within a larger one", () => {
    fc.assert(
      fc.property(size, size, u, u, (before, after, matters, uBefore) => {
        fc.pre(String(ask(sameWithin, before, after, matters, uBefore)).startsWith("same"));
        expect(ask(sameWithin, before, after, 2 * matters, uBefore)).toMatch(/^same within/);
      }),
    );
  });

  test("inches say what millimetres say", () => {
    fc.assert(
      fc.property(size, size, u, u, (before, after, matters, uBefore) => {
        const first = (said: unknown) => String(said).split(/ within|:/)[0];
        const hidden = Math.abs(after - before) + 1.6448536 * (Math.SQRT2 / 2) * uBefore;
        // On a limit rounding decides.
        fc.pre(Math.abs(hidden - matters) > 1e-6 && Math.abs(Math.abs(after - before) - Math.SQRT2 * uBefore) > 1e-6);
        const inches = [before, after, matters, uBefore].map((mm) => mm / 25.4) as [number, number, number, number];
        expect(first(ask(sameWithin, ...inches))).toBe(first(ask(sameWithin, before, after, matters, uBefore)));
      }),
    );
  });
});

describe("faults", () => {
  test("a pair in two units is refused", () => {
    expect(ask(sameWithin, 73.01, 2.8748, 0.01, 0.0003)).toEqual({
      code: "units",
      sentence: "SAMEWITHIN: after 2.8748 is about 1/25.4 of before 73.01: is one in inches, the other in millimetres?",
    });
  });

  test("without what matters it asks for it", () => {
    expect(ask(sameWithin, 73, 73.1)).toEqual({ code: "missing", sentence: "SAMEWITHIN: matters is not given: it must be a length above 0" });
    expect(ask(sameWithin, 73, 73.1, -0.01, 0.004)).toEqual({
      code: "too-small",
      sentence: "SAMEWITHIN: matters -0.01 is too small: it must be a length above 0",
    });
  });
});

test("a blank size, size that matters or uncertainty leaves it blank", () => {
  for (const blank of BLANKS) expect(ask(sameWithin, blank, 73, 0.01, 0.004)).toBe("");
  for (const blank of BLANKS_AND_ZERO) {
    expect(ask(sameWithin, 73, 73.001, blank, 0.004)).toBe("");
    expect(ask(sameWithin, 73, 73.001, 0.01, blank)).toBe("");
    expect(ask(sameWithin, 73, 73.001, 0.01, 0.004, blank)).toBe("same within 0.01");
  }
});
