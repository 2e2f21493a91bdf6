import fc from "fast-check";
import type { JudgedRow } from "../../src/check/finding.ts";
import { compareDecimals } from "../../src/core/decimal.ts";
import { counted, grouped, rowsText } from "../../src/core/number-text.ts";
import { mostDecimals } from "../../src/drawings/text.ts";
import { decimalsFor, limitText, typedDecimals } from "../../src/report/markup.ts";

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
  expect(rowsText({ rowsIn: 24, checked: 22 })).toBe("22 of 24 rows checked, 2 could not be");
});

describe("decimals of a value", () => {
  test("what was typed has the decimals of its like: 0.02 beside 0.025 is 0.020", () => {
    const row = (value: number | string, column: number, upper: number): JudgedRow => ({
      ...{ cell: { sheet: "Bores", row: 3, column }, label: "", value, lower: null, upper, margin: 0, verdict: "within", uncertainty: 0, near: 0, rule: null },
    });
    const rows = [row(0.02, 2, 0.03), row(0.025, 2, 0.03), row(10.072833977, 3, 10.4), row(0.3, 4, 0.55), row("0.3", 4, 0.6)];
    expect(rows.map(typedDecimals(rows))).toEqual([3, 3, 1, 2, 1]);
    expect([limitText(0.02, 0.04, 3), limitText(null, 0.0125, 3)]).toEqual(["0.020 to 0.040", "at most 0.0125"]);

    expect([decimalsFor(73.0254, [73, 73.08], 4), decimalsFor(2.875123, [2.8], 6)]).toEqual([4, 6]);
  });

  test("what was worked out gets two more than its limits, and three at least", () => {
    expect([decimalsFor(10.072833977, [9.8, 10.4], 1), decimalsFor(0.0123456789, [0.01, 0.055], 3)]).toEqual([3, 5]);
  });

  test("a value never seems to stand on the other side of a limit, or on it", () => {
    expect(decimalsFor(10.40000123, [9.8, 10.4], 1)).toBe(6);
    fc.assert(
      fc.property(fc.integer({ min: -100, max: 100 }), fc.integer({ min: -1_000_000, max: 1_000_000 }), (hundredths, millionths) => {
        const limit = hundredths / 100;
        const value = limit + millionths / 1e9 + 1e-9;
        const decimals = decimalsFor(value, [limit], mostDecimals([value]));
        const printed = Number(value.toFixed(decimals));
        expect(compareDecimals(printed, limit)).toBe(compareDecimals(value, limit));
      }),
    );
  });
});
