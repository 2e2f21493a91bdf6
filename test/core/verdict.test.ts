import fc from "fast-check";
import { decimal } from "../../src/core/decimal.ts";
import { judge, marginOf, verdictOf } from "../../src/core/verdict.ts";

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
