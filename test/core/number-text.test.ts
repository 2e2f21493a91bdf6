import { differenceText, readingText, uncertaintyText } from "../../src/core/number-text.ts";

describe("a reading", () => {
  test("has the digits with which it was typed, and no noise of binary fractions", () => {
    expect([73.02, 73, 0.0125, -0.003, 150, 73.04 - 73].map((value) => readingText(value))).toEqual(["73.02", "73", "0.0125", "-0.003", "150", "0.04"]);
  });

  test("that was worked out gets two decimals more than what it is compared with", () => {
    // π × 0.01 beside a limit of 0.04, and √2 × 0.003 beside a reading of 0.006.
    expect(readingText(0.031415926535, [0.04])).toBe("0.0314");
    expect(readingText(0.004242640687, [0.006])).toBe("0.00424");
  });

  test("that is small keeps two of its figures, and all of them where they are few", () => {
    // A third of a tolerance of 0.0008 in, rounded down to four figures; π × 0.00005 beside nothing and beside a limit.
    expect([readingText(0.0002666), readingText(0.000157079633), readingText(0.000157079633, [0.04])]).toEqual(["0.0002666", "0.00016", "0.00016"]);
  });

  test("never seems to stand on the other side of its limit, or on it", () => {
    expect(readingText(0.0400001234, [0.04])).toBe("0.0400001");
    expect(readingText(0.0399996, [0.04])).toBe("0.0399996");
  });
});

test("a difference has the decimals of its parts", () => {
  expect(differenceText(0.035 - 0.025, [0.035, 0.025])).toBe("0.010");
  expect(differenceText(73.06 - 73.05, [73.06, 73.05])).toBe("0.01");
  expect(differenceText(0, [73, 73.05])).toBe("0.00");
  expect(differenceText(0.006 - 0.004242640687, [0.006, 0.004242640687])).toBe("0.00176");
});

// JCGM 100:2008, 7.2.6: an uncertainty is quoted to at most two significant digits, as in its example H.1: 2.92 × 32 nm is told as 93 nm (from memory).
test("an uncertainty has at most two significant digits", () => {
  expect([0.003, 0.0025, 0.00283, 0.000282843, 2.92 * 32, 12, 0].map(uncertaintyText)).toEqual(["0.003", "0.0025", "0.0028", "0.00028", "93", "12", "0"]);
});
