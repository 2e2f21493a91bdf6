import fc from "fast-check";
import { VERDICTS } from "../../../src/core/verdict.ts";
import { verdict } from "../../../src/functions/verdict/verdict.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const thousandths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 1000);

describe("cited values", () => {
  // ISO 14253-1:1998 (from memory): conformity is proven inside LSL + U to USL − U,
  // non-conformity outside LSL − U to USL + U, and neither in between. Limits 10 and 20, U 1.
  test.each([
    [8.9, "under"],
    [9, "not proven"],
    [10, "not proven"],
    [10.9, "not proven"],
    [11, "within"],
    [15, "within"],
    [19, "within"],
    [19.1, "not proven"],
    [20, "not proven"],
    [21, "not proven"],
    [21.1, "over"],
  ])("of limits 10 to 20 with an uncertainty of 1, %p is %s by ISO 14253-1", (value, word) => {
    expect(ask(verdict, value, 10, 20, 1)).toBe(word);
  });

  // A published micrometer example: limit of error ±0.003 mm, U 0.0010, so accepted within ±0.002;
  // +0.0017 conforms, +0.0025 is not proven.
  test.each([
    [0.0017, "within"],
    [0.002, "within"],
    [0.0025, "not proven"],
    [-0.0025, "not proven"],
    [0.0041, "over"],
  ])("a micrometer that errs by %p mm is %s of ±0.003 with an uncertainty of 0.0010", (error, word) => {
    expect(ask(verdict, error, -0.003, 0.003, 0.001)).toBe(word);
  });

  // ISO 286, Ø50 H7/g6: clearance 0.009 to 0.050 mm.
  test.each([
    [0.009, "within"],
    [0.05, "within"],
    [0.008, "under"],
    [0.051, "over"],
  ])("a clearance of %p is %s the 0.009 to 0.050 of a 50 H7/g6 fit", (clearance, word) => {
    expect(ask(verdict, clearance, 0.009, 0.05)).toBe(word);
  });
});

// ILAC-G8:09/2019: at the edge of a guard band of 1.645 u the risk is 4.998 %, at 1.64 u it is above 5 %. Limits 10 and 20, U 1, so u 0.5:
// the band is 0.8225 wide. Mirrored outside the limits for over and under.
describe("by the rule of 95 %", () => {
  const by95 = (value: number, lower: number | null, upper: number | null) => ask(verdict, value, lower, upper, 1, null, "95 %");
  test.each([
    [9.17, "under"],
    [9.18, "not proven"],
    [10, "not proven"],
    [10.82, "not proven"],
    [10.83, "within"],
    [15, "within"],
    [19.17, "within"],
    [19.18, "not proven"],
    [20, "not proven"],
    [20.82, "not proven"],
    [20.83, "over"],
  ])("of limits 10 to 20 with an uncertainty of 1, %p is %s", (value, word) => {
    expect(by95(value, 10, 20)).toBe(word);
  });

  // Both sides count: between −1.96 u and 1.96 u lies 95 % of the normal distribution (any table of it).
  test("between limits 3.92 u apart the middle alone is within, and between closer ones nothing", () => {
    expect([by95(0, -0.98, 0.98), by95(0.02, -0.98, 0.98), by95(0, -0.979, 0.979)]).toEqual(["within", "not proven", "not proven"]);
  });

  test("without an uncertainty the rule changes nothing", () => {
    expect(ask(verdict, [[9.9], [10], [20], [20.1]], 10, 20, null, null, "95 %")).toEqual([["under"], ["within"], ["within"], ["over"]]);
  });

  test("near is asked of what is within", () => {
    expect(ask(verdict, 19.1, 10, 20, 1, 1, "95 %")).toBe("near limit");
  });

  test("another rule is refused and named", () => {
    expect(ask(verdict, 19.1, 10, 20, 1, null, "90 %")).toEqual({
      code: "not-a-choice",
      sentence: 'VERDICT: rule "90 %" is not known: it must be one of full U, 95 %',
    });
  });

  test("what is proven by all of U is proven by it too, and nothing turns into its opposite", () => {
    const judged = fc.tuple(thousandths(-50, 150), thousandths(0, 40), thousandths(60, 100), thousandths(1, 15));
    fc.assert(
      fc.property(judged, ([value, lower, upper, uncertainty]) => {
        const word = ask(verdict, value, lower, upper, uncertainty);
        const other = ask(verdict, value, lower, upper, uncertainty, null, "95 %");
        if (word !== "not proven") expect(other).toBe(word);
      }),
    );
  });
});

describe("identities", () => {
  const judged = fc.tuple(thousandths(-50, 150), thousandths(0, 40), thousandths(60, 100), thousandths(0, 15), thousandths(0, 15));

  test("the verdict is always one of the five words", () => {
    fc.assert(fc.property(judged, (args) => expect(VERDICTS).toContain(ask(verdict, ...args))));
  });

  test("mirrored about zero, over and under change places and the rest stays", () => {
    const mirrored: Record<string, string> = { over: "under", under: "over" };
    fc.assert(
      fc.property(judged, ([value, lower, upper, uncertainty, near]) => {
        const word = ask(verdict, value, lower, upper, uncertainty, near) as string;
        expect(ask(verdict, -value, -upper, -lower, uncertainty, near)).toBe(mirrored[word] ?? word);
      }),
    );
  });

  test("with a wider uncertainty nothing becomes proven that was not", () => {
    fc.assert(
      fc.property(judged, thousandths(1, 10), ([value, lower, upper, uncertainty], wider) => {
        const before = ask(verdict, value, lower, upper, uncertainty);
        const after = ask(verdict, value, lower, upper, uncertainty + wider);
        expect([before, "not proven"]).toContain(after);
      }),
    );
  });

  test("as the value rises the verdict only ever moves from under to over", () => {
    const order = (word: unknown, value: number) => (word === "under" ? 0 : word === "over" ? 4 : word === "not proven" ? (value < 0.05 ? 1 : 3) : 2);
    fc.assert(
      fc.property(judged, thousandths(0, 50), ([value, lower, upper, uncertainty], rise) => {
        fc.pre(lower + uncertainty <= upper - uncertainty && lower + uncertainty <= 0.05 && upper - uncertainty >= 0.05);
        const before = order(ask(verdict, value, lower, upper, uncertainty), value);
        expect(order(ask(verdict, value + rise, lower, upper, uncertainty), value + rise)).toBeGreaterThanOrEqual(before);
      }),
    );
  });
});

describe("at the limits", () => {
  test("73.04 − 73.00 is within a limit of 0.04", () => {
    expect(73.04 - 73.0 > 0.04).toBe(true);
    expect(ask(verdict, 73.04 - 73.0, undefined, 0.04)).toBe("within");
    expect(ask(verdict, 73.04 - 73.0, 0.04)).toBe("within");
  });

  test("limits drawn in and let out by the uncertainty are compared as decimals too", () => {
    expect(ask(verdict, 0.3, undefined, 0.1, 0.2)).toBe("not proven");
    expect(ask(verdict, 0.1, undefined, 0.3, 0.2)).toBe("within");
    expect(ask(verdict, 0.3, 0.1, undefined, 0.2)).toBe("within");
  });

  test("near counts from the limit inwards, its own distance included", () => {
    expect(ask(verdict, 0.037, 0.02, 0.04, 0, 0.003)).toBe("near limit");
    expect(ask(verdict, 0.0369, 0.02, 0.04, 0, 0.003)).toBe("within");
    expect(ask(verdict, 0.023, 0.02, 0.04, 0, 0.003)).toBe("near limit");
    expect(ask(verdict, 0.041, 0.02, 0.04, 0, 0.003)).toBe("over");
    expect(ask(verdict, 0.04, 0.02, 0.04)).toBe("within");
  });

  test("one limit alone judges on its side only", () => {
    expect(ask(verdict, -100, undefined, 0.04)).toBe("within");
    expect(ask(verdict, 100, 0.02)).toBe("within");
    expect(ask(verdict, 0.041, undefined, 0.04, 0.002)).toBe("not proven");
    expect(ask(verdict, 0.019, 0.02, undefined, 0.002)).toBe("not proven");
  });

  test("both limits at one value leave that value within", () => {
    expect(ask(verdict, 0.1 + 0.2, 0.3, 0.3)).toBe("within");
  });

  test("an upper limit of 0 with a negative lower one is a limit like any other", () => {
    expect(ask(verdict, 0.01, -0.1, 0)).toBe("over");
    expect(ask(verdict, -0.05, -0.1, 0)).toBe("within");
  });
});

describe("faults", () => {
  test("limits the wrong way round are refused and both are named", () => {
    expect(ask(verdict, 0.03, 0.04, 0.02)).toEqual({ code: "swapped", sentence: "VERDICT: lower 0.04 is larger than upper 0.02: are they swapped?" });
  });

  test("a negative uncertainty or nearness is refused", () => {
    expect(ask(verdict, 0.03, 0.02, 0.04, -0.001)).toEqual({
      code: "too-small",
      sentence: "VERDICT: uncertainty -0.001 is too small: it must be a number of at least 0",
    });
    expect(ask(verdict, 0.03, 0.02, 0.04, 0, -0.001)).toEqual({
      code: "too-small",
      sentence: "VERDICT: near -0.001 is too small: it must be a number of at least 0",
    });
  });

  test("an uncertainty that is nothing but the noise of 0.1 + 0.2 − 0.3 below 0 is none", () => {
    expect(0.3 - 0.1 - 0.2).toBeLessThan(0);
    expect(ask(verdict, 0.03, 0.02, 0.04, 0.3 - 0.1 - 0.2)).toBe("within");
  });

  test("what an earlier function complains of is passed on with its numbers", () => {
    const swapped = "check: skirt 73.06 is larger than bore 73.02: are they swapped?";
    expect(ask(verdict, swapped, 0.02, 0.04)).toEqual({ code: "upstream", sentence: "VERDICT: skirt 73.06 is larger than bore 73.02: are they swapped?" });
    expect(ask(verdict, [[swapped], [0.03]], 0.02, 0.04)).toEqual([[swapped], ["within"]]);
  });
});

describe("blanks", () => {
  test("no value, no verdict; no limits, no verdict", () => {
    for (const blank of BLANKS) {
      expect(ask(verdict, blank, 0.02, 0.04)).toBe("");
      expect(ask(verdict, 0.03, blank, blank)).toBe("");
    }
  });

  test("a value of 0 is a value: a fit without clearance is under", () => {
    expect(ask(verdict, 0, 0.02, 0.04)).toBe("under");
  });

  test("a blank upper limit that a host hands over as 0 does not judge", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(verdict, 0.03, 0.02, blank)).toBe("within");
      expect(ask(verdict, 0.01, 0.02, blank)).toBe("under");
      expect(ask(verdict, 0.05, blank, 0.04)).toBe("over");
    }
    expect(ask(verdict, 0.03, 0, 0)).toBe("");
  });

  test("blank uncertainty and nearness are none", () => {
    for (const blank of BLANKS_AND_ZERO) expect(ask(verdict, 0.04, 0.02, 0.04, blank, blank)).toBe("within");
  });
});
