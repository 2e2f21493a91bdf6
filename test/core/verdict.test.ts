import fc from "fast-check";
import { decimal } from "../../src/core/decimal.ts";
import { judge, marginOf } from "../../src/core/verdict.ts";

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

describe("marginOf", () => {
  test("halfway between the limits counts from the upper one, whatever binary makes of the halves", () => {
    for (const [lower, value, upper] of [
      [0.02, 0.03, 0.04],
      [0.1, 0.2, 0.3],
      [72.99, 73, 73.01],
    ] as const) {
      expect(marginOf(value, { lower, upper })?.side).toBe("upper");
    }
  });

  test("a limit of 0 is a limit", () => {
    expect(marginOf(-0.1, { upper: 0 })).toEqual({ margin: 0.1, side: "upper", limit: 0 });
  });
});
