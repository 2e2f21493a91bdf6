import { isLimitText, limitsInText } from "../../src/vocabulary/limit-text.ts";

// How workshop manuals and build sheets write limits: common practice.
test.each([
  ["0.0012-0.0028", { lower: 0.0012, upper: 0.0028 }],
  [".014 - .024", { lower: 0.014, upper: 0.024 }],
  ["0.0012\u20130.0028", { lower: 0.0012, upper: 0.0028 }],
  ["0.010 to 0.022", { lower: 0.01, upper: 0.022 }],
  ["0,03 - 0,045", { lower: 0.03, upper: 0.045 }],
  ["0.25\u20260.45", { lower: 0.25, upper: 0.45 }],
  ["-0.02 to 0.01", { lower: -0.02, upper: 0.01 }],
  ["165 min", { lower: 165 }],
  ["165 Min.", { lower: 165 }],
  ["at least 10", { lower: 10 }],
  ["\u2265 10", { lower: 10 }],
  [".002 max", { upper: 0.002 }],
  ["max 0.05", { upper: 0.05 }],
  ["0.05 or less", { upper: 0.05 }],
  ["up to 0.05", { upper: 0.05 }],
  ["73.00 \u00b10.02", { lower: 72.98, upper: 73.02 }],
  ["0.0012-0.0028 in", { lower: 0.0012, upper: 0.0028, unit: "in" }],
  ["165 psi min", { lower: 165, unit: "psi" }],
  ["min 165 psi", { lower: 165, unit: "psi" }],
  ["73.00 \u00b10.02 mm", { lower: 72.98, upper: 73.02, unit: "mm" }],
])("%s", (text, limits) => {
  expect(limitsInText(text)).toEqual(limits);
  expect(isLimitText(text)).toBe(true);
});

test.each(["", "0.05", "see manual", "0.0028-0.0012", "2026-03-21", "1,250 to 1,400", "< 0.05", "0.05 mm", "1/2", "max", "12-34-56", "0.1 max 0.2", "5 men"])(
  "%j is no limit that can be read",
  (text) => {
    expect(limitsInText(text)).toBeUndefined();
    expect(isLimitText(text)).toBe(false);
  },
);

test("1-3 may be cylinders: it is a limit only where a heading says so", () => {
  expect(limitsInText("1-3")).toEqual({ lower: 1, upper: 3 });
  expect(isLimitText("1-3")).toBe(false);
  expect(isLimitText("10-40")).toBe(true);
});
