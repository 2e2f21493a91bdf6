import fc from "fast-check";
import { decimal } from "../../src/core/decimal.ts";
import { judge, marginOf, verdictOf, verdictSentence } from "../../src/core/verdict.ts";

// The words are checked against ISO 14253-1 in test/functions/verdict; here is what else a judgement holds.
describe("judge", () => {
  test("names the limit that decides and the distance to it", () => {
    expect(judge(0.041, { lower: 0.02, upper: 0.04 })).toEqual({ verdict: "over", margin: -0.001, side: "upper", limit: 0.04 });
    expect(judge(0.019, { lower: 0.02, upper: 0.04 })).toEqual({ verdict: "under", margin: -0.001, side: "lower", limit: 0.02 });
    expect(judge(0.035, { lower: 0.02, upper: 0.04 })).toEqual({ verdict: "within", margin: 0.005, side: "upper", limit: 0.04 });
    expect(judge(0.025, { lower: 0.02, upper: 0.04 }, 0, 0.005)).toEqual({ verdict: "near limit", margin: 0.005, side: "lower", limit: 0.02 });
    expect(judge(0.039, { upper: 0.04 }, 0.002)).toEqual({ verdict: "not proven", margin: 0.001, side: "upper", limit: 0.04 });
  });

  test("without a limit there is no judgement", () => {
    expect(judge(0.03, {})).toBeUndefined();
    expect(marginOf(0.03, {})).toBeUndefined();
  });

  test("where the limits stand the wrong way round, the limit that is passed is the one that is named", () => {
    expect(judge(5, { lower: 10, upper: 3 })).toEqual({ verdict: "over", margin: -2, side: "upper", limit: 3 });
    expect(judge(2, { lower: 10, upper: 3 })).toEqual({ verdict: "under", margin: -8, side: "lower", limit: 10 });
  });

  test("a verdict of over names the upper limit, one of under the lower, with any limits and any uncertainty", () => {
    const tenths = fc.integer({ min: -30, max: 30 }).map((n) => n / 10);
    fc.assert(
      fc.property(tenths, tenths, tenths, fc.nat(20), (value, lower, upper, uncertainty) => {
        const judged = judge(value, { lower, upper }, uncertainty / 10)!;
        if (judged.verdict === "over") expect(judged).toMatchObject({ side: "upper", limit: upper, margin: decimal(upper - value) });
        if (judged.verdict === "under") expect(judged).toMatchObject({ side: "lower", limit: lower, margin: decimal(value - lower) });
      }),
      { numRuns: 1000 },
    );
  });

  test("not proven comes before near: what the gauge cannot see is not called close", () => {
    expect(judge(0.039, { upper: 0.04 }, 0.002, 0.005)?.verdict).toBe("not proven");
  });
});

// Common practice: near is a distance from a limit, so where there is only one limit nothing is near the other.
test("with one limit only a value far inside is within, however wide near is on that side", () => {
  expect(verdictOf(0.01, undefined, 0.04, 0, 0.005)).toBe("within");
  expect(verdictOf(0.036, undefined, 0.04, 0, 0.005)).toBe("near limit");
  expect(verdictOf(0.09, 0.04, undefined, 0, 0.005)).toBe("within");
  expect(verdictOf(0.044, 0.04, undefined, 0, 0.005)).toBe("near limit");
});

// Without an uncertainty the limits drawn in and let out are the limits themselves.
test("an uncertainty of nothing proves everything, and one of less than decimals tell apart is nothing", () => {
  for (const value of [0.019, 0.02, 0.03, 0.04, 0.041]) {
    for (const uncertainty of [0, -0, 4e-10, -4e-10]) expect(verdictOf(value, 0.02, 0.04, uncertainty)).toBe(verdictOf(value, 0.02, 0.04));
  }
});

describe("marginOf", () => {
  test("halfway between the limits counts from the upper one, whatever binary makes of the halves", () => {
    for (const [lower, value, upper] of [
      [0.02, 0.03, 0.04],
      [0.1, 0.2, 0.3],
      [72.99, 73, 73.01],
    ] as const) {
      expect(judge(value, { lower, upper })?.side).toBe("upper");
    }
  });

  test("a limit of 0 is a limit", () => {
    expect(judge(-0.1, { upper: 0 })).toEqual({ verdict: "within", margin: 0.1, side: "upper", limit: 0 });
    expect(marginOf(-0.1, { upper: 0 })).toBe(0.1);
  });

  test("is the least of the typed differences, and what a judgement that is not over measures", () => {
    const typed = fc.integer({ min: -5_000_000, max: 5_000_000 }).map((n) => n / 1000);
    const limit = fc.option(typed, { nil: undefined });
    fc.assert(
      fc.property(typed, limit, limit, (value, lower, upper) => {
        const distances = [upper === undefined ? [] : decimal(upper - value), lower === undefined ? [] : decimal(value - lower)].flat();
        const margin = marginOf(value, { lower, upper });
        expect(margin).toBe(distances.length === 0 ? undefined : Math.min(...distances));
        const judged = judge(value, { lower, upper });
        if (judged?.verdict !== "over") expect(judged?.margin).toBe(margin);
      }),
      { numRuns: 2000 },
    );
  });

  test("a limit too far off for a number is still the one that is named", () => {
    expect(judge(1.7e308, { lower: -1.7e308 })).toEqual({ verdict: "within", margin: Number.POSITIVE_INFINITY, side: "lower", limit: -1.7e308 });
  });
});

const FIT = { lower: 0.009, upper: 0.05 };

// Clearances of a 50 H7/g6 fit, 0.009 to 0.050 mm (ISO 286); the rule of ISO 14253-1:1998 (from memory) where an uncertainty is given.
describe("the sentence of a verdict", () => {
  test.each([
    [0.05, "0.05 is within 0.009 to 0.05, exactly on the upper limit"],
    [0.009, "0.009 is within 0.009 to 0.05, exactly on the lower limit"],
    [0.0295, "0.0295 is within 0.009 to 0.05, 0.0205 from the upper limit"],
    [0.0505, "0.0505 is over the upper limit 0.05 by 0.0005"],
    [0.0085, "0.0085 is under the lower limit 0.009 by 0.0005"],
  ])("of %p between two limits", (value, said) => {
    expect(verdictSentence(value, FIT)).toBe(said);
  });

  test("of one limit names that limit and the distance to it", () => {
    expect(verdictSentence(0.03, { upper: 0.05 })).toBe("0.03 is within the upper limit 0.05 by 0.02");
    expect(verdictSentence(0.05, { upper: 0.05 })).toBe("0.05 is within the upper limit 0.05, exactly on it");
    expect(verdictSentence(0.03, { lower: 0.009 })).toBe("0.03 is within the lower limit 0.009 by 0.021");
    expect(verdictSentence(0.009, { lower: 0.009 })).toBe("0.009 is within the lower limit 0.009, exactly on it");
  });

  test("without a limit is none", () => {
    expect(verdictSentence(0.03, {})).toBe("");
  });

  test("says that a value is near a limit, and what counts as near", () => {
    expect(verdictSentence(0.048, FIT, 0, 0.005)).toBe("0.048 is within 0.009 to 0.05, 0.002 from the upper limit, near limit as it is no further than 0.005");
    expect(verdictSentence(0.03, FIT, 0, 0.005)).toBe("0.03 is within 0.009 to 0.05, 0.02 from the upper limit");
    expect(verdictSentence(0.048, FIT, 0.001, 0.005)).toBe(
      "0.048 is within 0.009 to 0.05, 0.002 from the upper limit, proven with an uncertainty of 0.001, near limit as it is no further than 0.005",
    );
  });

  test("says what is proven, on either side of a limit", () => {
    expect(verdictSentence(0.03, FIT, 0.003)).toBe("0.03 is within 0.009 to 0.05, 0.02 from the upper limit, proven with an uncertainty of 0.003");
    expect(verdictSentence(0.054, FIT, 0.003)).toBe("0.054 is over the upper limit 0.05 by 0.004, proven with an uncertainty of 0.003");
    expect(verdictSentence(0.005, FIT, 0.003)).toBe("0.005 is under the lower limit 0.009 by 0.004, proven with an uncertainty of 0.003");
  });

  test("says on which side of the limit a value stands that is not proven", () => {
    expect(verdictSentence(0.049, FIT, 0.003)).toBe("0.049 is inside the upper limit 0.05 by 0.001, not proven either way with an uncertainty of 0.003");
    expect(verdictSentence(0.05, FIT, 0.003)).toBe("0.05 is on the upper limit 0.05, not proven either way with an uncertainty of 0.003");
    expect(verdictSentence(0.052, FIT, 0.003)).toBe("0.052 is over the upper limit 0.05 by 0.002, not proven either way with an uncertainty of 0.003");
    expect(verdictSentence(0.008, FIT, 0.003)).toBe("0.008 is under the lower limit 0.009 by 0.001, not proven either way with an uncertainty of 0.003");
  });

  test("says when limits less than twice the uncertainty apart leave nothing to prove, and only then", () => {
    const short = "0.05 is on the upper limit 0.05, not proven either way with an uncertainty of 0.02";
    expect(verdictSentence(0.05, { lower: 0.02, upper: 0.05 }, 0.02)).toBe(`${short}, which is too much for limits so close together`);
    expect(verdictSentence(0.05, { lower: 0.01, upper: 0.05 }, 0.02)).toBe(short);
    expect(verdictSentence(0.05, { upper: 0.05 }, 0.02)).toBe(short);
    expect(verdictSentence(0.05, { lower: 0.05 }, 0.02)).toBe("0.05 is on the lower limit 0.05, not proven either way with an uncertainty of 0.02");
  });
});
