import fc from "fast-check";
import { enNumber } from "../../../src/functions/wear/en-number.ts";
import { realChange } from "../../../src/functions/wear/real-change.ts";
import { ask, BLANKS, BLANKS_AND_ZERO, number } from "../ask.ts";

const [LARGER, SMALLER] = ["larger, beyond its gauge", "smaller, beyond its gauge"];
const words = (said: unknown) => String(said).split(":")[0];

describe("cited values", () => {
  // ISO/IEC 17043: results agree when |En| ≤ 1; 3-4-5 makes the uncertainty of the difference 0.01 by hand.
  test.each([
    // 0.01 + 1.645 × 0.01 ÷ 2, two one-sided tests at 5 % (Schuirmann 1987), and 0.8224 × 0.01 for none.
    [73, 73.01, "cannot tell: up to 0.018 may hide"],
    [73, 72.99, "cannot tell: up to 0.018 may hide"],
    [73, 73.011, "larger, beyond its gauge"],
    [73, 72.989, "smaller, beyond its gauge"],
    [73, 73, "cannot tell: up to 0.0082 may hide"],
  ])("%p to %p with U 0.006 and 0.008: %s", (before, after, said) => {
    expect(ask(realChange, before, after, 0.006, 0.008)).toBe(said);
  });
});

describe("identities", () => {
  const size = fc.integer({ min: 7200, max: 7400 }).map((n) => n / 100);
  const u = fc.integer({ min: 1, max: 100 }).map((n) => n / 1000);

  test("it is beyond its gauge exactly when En is beyond 1", () => {
    fc.assert(
      fc.property(size, size, u, u, (before, after, uBefore, uAfter) => {
        const en = number(enNumber, before, after, uBefore, uAfter);
        fc.pre(Math.abs(Math.abs(en) - 1) > 1e-6);
        expect(words(ask(realChange, before, after, uBefore, uAfter))).toBe(en > 1 ? LARGER : en < -1 ? SMALLER : "cannot tell");
      }),
    );
  });

  test("before and after exchanged turn an increase into a decrease", () => {
    const other: Record<string, string> = { [LARGER]: SMALLER, [SMALLER]: LARGER };
    fc.assert(
      fc.property(size, size, u, u, (before, after, uBefore, uAfter) => {
        const said = ask(realChange, before, after, uBefore, uAfter) as string;
        expect(ask(realChange, after, before, uAfter, uBefore)).toBe(other[said] ?? said);
      }),
    );
  });

  test("a change beyond its gauge stays so with a better one", () => {
    fc.assert(
      fc.property(size, size, u, (before, after, uBefore) => {
        fc.pre(words(ask(realChange, before, after, uBefore)) !== "cannot tell");
        expect(ask(realChange, before, after, uBefore / 2)).toBe(ask(realChange, before, after, uBefore));
      }),
    );
  });
});

describe("at the limits", () => {
  test("a difference of exactly the uncertainty is none, in decimals", () => {
    // 73.04 − 73.00 and √(0.024² + 0.032²) are both 0.04.
    expect(ask(realChange, 73, 73.04, 0.024, 0.032)).toBe("cannot tell: up to 0.073 may hide");
    expect(ask(realChange, 73, 73.0401, 0.024, 0.032)).toBe("larger, beyond its gauge");
  });

  test("with one uncertainty both sides have it", () => {
    expect(ask(realChange, 73, 73.028, 0.02)).toBe("cannot tell: up to 0.051 may hide");
    expect(ask(realChange, 73, 73.029, 0.02)).toBe("larger, beyond its gauge");
  });
});

describe("faults", () => {
  test("a size in inches beside one in millimetres, or with its decimal point elsewhere, is refused", () => {
    expect(ask(realChange, 73.01, 2.8748, 0.0003)).toEqual({
      code: "units",
      sentence: "REALCHANGE: after 2.8748 is about 1/25.4 of before 73.01: is one in inches, the other in millimetres?",
    });
    expect(ask(realChange, -7.301, -73.02, 0.003)).toEqual({
      code: "units",
      sentence: "REALCHANGE: after -73.02 is about 10 times before -7.301: is a decimal point wrong?",
    });
  });

  test("a gap or a wear that has grown fivefold is a change: only sizes known to a hundredth of themselves are refused", () => {
    expect(ask(realChange, 0.3, 1.8, 0.02)).toBe("larger, beyond its gauge");
    expect(ask(realChange, 1, 5, 0.01)).toBe("larger, beyond its gauge");
    expect(ask(realChange, 1.01, 5.04, 0.01)).toBe("larger, beyond its gauge");
    expect(ask(realChange, 1.01, 5.05, 0.01)).toMatchObject({ code: "units" });
    expect(ask(realChange, 1.01, 5.05, 0.001, 0.02)).toBe("larger, beyond its gauge");
    expect(ask(realChange, -7.3, 73, 0.01)).toBe("larger, beyond its gauge");
    expect(ask(realChange, 0, 73, 0.01)).toBe("larger, beyond its gauge");
  });

  test("a negative uncertainty is refused and named", () => {
    expect(ask(realChange, 73, 73.1, -0.01)).toEqual({ code: "too-small", sentence: "REALCHANGE: uBefore -0.01 is too small: it must be a length above 0" });
  });

  test("a missing uncertainty is named", () => {
    expect(ask(realChange, 73, 73.1)).toEqual({ code: "missing", sentence: "REALCHANGE: uBefore is not given: it must be a length above 0" });
  });

  test("in a batch the one bad element says so and the others compute", () => {
    expect(ask(realChange, [[73], ["worn"]], 73.1, 0.01)).toEqual([["larger, beyond its gauge"], ['check: before holds the text "worn": it must be a number']]);
  });
});

test("a blank size or uncertainty leaves it blank", () => {
  for (const blank of BLANKS) {
    expect(ask(realChange, blank, 73, 0.01)).toBe("");
    expect(ask(realChange, 73, blank, 0.01)).toBe("");
  }
  for (const blank of BLANKS_AND_ZERO) {
    expect(ask(realChange, 73, 73.1, blank)).toBe("");
    expect(ask(realChange, 73, 73.1, 0.01, blank)).toBe("larger, beyond its gauge");
  }
});
