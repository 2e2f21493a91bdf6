import { isReadingText, readingInText } from "../../src/vocabulary/reading-text.ts";

// How rules, drawings and bore gauges give sizes in inches: common practice.
test.each([
  ["3 7/16", { fraction: 3.4375, isInch: false }],
  ["3-7/16", { fraction: 3.4375, isInch: false }],
  ['2 7/8"', { fraction: 2.875, isInch: true }],
  ["5/64 in", { fraction: 0.078125, isInch: true }],
  ["+0.0015", { deviation: 0.0015 }],
  ["-.002", { deviation: -0.002 }],
  ["\u2212 0,015", { deviation: -0.015 }],
])("%s is read, and is a reading whatever heads it", (text, read) => {
  expect(readingInText(text)).toEqual(read);
  expect(isReadingText(text)).toBe(true);
});

test("a bare fraction is read where a reading stands, and is none by itself: it may be a day", () => {
  expect(readingInText("3/16")).toEqual({ fraction: 0.1875, isInch: false });
  expect(isReadingText("3/16")).toBe(false);
});

test.each(["", "0.0015", "+1", "+1,250", "3 16/7", "3 1/3", "1/0", "7/16 mm", "top", "2026-03-21", "0.010 - 0.020", "+-0.02"])("%s is none", (text) => {
  expect(readingInText(text)).toBeUndefined();
});
