import fc from "fast-check";
import { isCoarse } from "../../../src/check/coarse-gauges.ts";
import { isClearlyWithin } from "../../../src/check/csv/rows.ts";
import { verdictOf } from "../../../src/core/verdict.ts";

/** Readings, limits and uncertainties that meet one another at and around the limits, as decimals and as doubles. */
const number = fc.oneof(
  fc.integer({ min: -40, max: 40 }).map((n) => n / 10),
  fc.integer({ min: 72_900, max: 73_100 }).map((n) => n / 1000),
  fc.constantFrom(0, -0, 1e-9, 0.5e-9, 73.04 - 73, 1e12, -1e12, 1e300, Number.MAX_VALUE, Number.MIN_VALUE),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
const given = (limit: number): number | undefined => (Number.isFinite(limit) ? limit : undefined);

test("what is clearly within is within by the verdict, by a gauge that is not coarse, between limits that mean what they say", () => {
  const lower = fc.oneof(number, fc.constant(Number.NEGATIVE_INFINITY));
  const upper = fc.oneof(number, fc.constant(Number.POSITIVE_INFINITY));
  let clear = 0;
  fc.assert(
    fc.property(number, lower, upper, fc.oneof(fc.constant(0), number), fc.oneof(fc.constant(0), number), (value, low, high, uncertainty, near) => {
      if (!isClearlyWithin(value, low, high, uncertainty, near)) return;
      clear++;
      expect(verdictOf(value, given(low), given(high), uncertainty, near)).toBe("within");
      expect(isCoarse(uncertainty, given(low), given(high))).toBe(false);
      expect(low <= high && (high !== 0 || low < 0)).toBe(true);
    }),
    { numRuns: 20_000 },
  );
  expect(clear).toBeGreaterThan(500);
});

test("readings beyond what the uncertainty leaves, at a limit of 0 or without any limit are looked at", () => {
  expect(isClearlyWithin(73.02, 73, 73.05, 0.003, 0)).toBe(true);
  expect(isClearlyWithin(73.048, 73, 73.05, 0.003, 0)).toBe(false);
  expect(isClearlyWithin(73.02, 73, 73.05, 0.02, 0)).toBe(false);
  expect(isClearlyWithin(73.02, 73, 73.05, 0.003, 0.01)).toBe(false);
  expect(isClearlyWithin(0, 0, 0, 0, 0)).toBe(false);
  expect(isClearlyWithin(-1, Number.NEGATIVE_INFINITY, 0, 0, 0)).toBe(true);
  expect(isClearlyWithin(1, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, 0, 0)).toBe(false);
  expect(isClearlyWithin(Number.NaN, 73, 73.05, 0, 0)).toBe(false);
});
