import fc from "fast-check";
import { countsText } from "../../src/check/counts-text.ts";
import { compareDecimals } from "../../src/core/decimal.ts";
import { counted, grouped } from "../../src/core/number-text.ts";
import { decimalsFor, limitText } from "../../src/report/markup.ts";

test("limits are told in words", () => {
  expect([limitText(0.02, 0.04), limitText(null, 0.04), limitText(-0.02, null), limitText(null, null)]).toEqual([
    "0.02 to 0.04",
    "at most 0.04",
    "at least −0.02",
    "none",
  ]);
});

test("counts have their thousands apart and their own plural", () => {
  expect([counted(1, "row"), counted(12_345, "row"), grouped(999)]).toEqual(["1 row", "12\u202f345 rows", "999"]);
  expect(countsText({ rowsIn: 24, checked: 22, refused: 2 })).toBe("22 of 24 rows checked, 2 could not be");
});

describe("decimals of a value", () => {
  test("what was typed stays as typed", () => {
    expect([decimalsFor(73.0254, [73, 73.08]), decimalsFor(2.875123, [2.8])]).toEqual([undefined, undefined]);
  });

  test("what was worked out gets two more than its limits, and three at least", () => {
    expect([decimalsFor(10.072833977, [9.8, 10.4]), decimalsFor(0.0123456789, [0.01, 0.055])]).toEqual([3, 5]);
  });

  test("a value never seems to stand on the other side of a limit, or on it", () => {
    expect(decimalsFor(10.40000123, [9.8, 10.4])).toBe(6);
    fc.assert(
      fc.property(fc.integer({ min: -100, max: 100 }), fc.integer({ min: -1_000_000, max: 1_000_000 }), (hundredths, millionths) => {
        const limit = hundredths / 100;
        const value = limit + millionths / 1e9 + 1e-9;
        const decimals = decimalsFor(value, [limit]);
        const printed = decimals === undefined ? value : Number(value.toFixed(decimals));
        expect(compareDecimals(printed, limit)).toBe(compareDecimals(value, limit));
      }),
    );
  });
});
