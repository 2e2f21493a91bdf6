import fc from "fast-check";
import { compareGroups } from "../../../src/functions/wear/compare-groups.ts";
import { studentQuantile } from "../../../src/math/distributions.ts";
import { columns } from "../../reference/columns.ts";
import { ask, BLANKS } from "../ask.ts";

const compared = (a: readonly number[], b: readonly number[], confidence?: number) => (ask(compareGroups, [[...a]], [[...b]], confidence) as number[][])[1]!;

describe("cited values", () => {
  // R's t.test on these two lists, as a tutorial prints it: t = 0.51703, df = 9.48, p = 0.617, interval −1.935420 to 3.093754.
  test("two lists by R's Welch test", () => {
    const [difference, from, to, t, degreesOfFreedom, p] = compared([5.1, 2, 4.1, 6.2, 7.1, 8.3], [1.5, 6.4, 3.3, 5.8, 4.8, 7.2, 5.6, 4.5]);
    expect(difference).toBeCloseTo(5.466667 - 4.8875, 6);
    expect(from).toBeCloseTo(-1.93542, 6);
    expect(to).toBeCloseTo(3.093754, 6);
    expect(t).toBeCloseTo(0.51703, 5);
    expect(degreesOfFreedom).toBeCloseTo(9.48, 3);
    expect(p).toBeCloseTo(0.617, 3);
  });

  // Equal numbers and equal variances make Welch's test Student's: by hand, t = 3/√(2.5/5 × 2) = 3, ν = 8; p from the t table between
  // 0.01 (3.355) and 0.02 (2.896).
  test("equal spreads give Student's t with 2n − 2 degrees of freedom", () => {
    const [difference, from, to, t, degreesOfFreedom, p] = compared([4, 5, 6, 7, 8], [1, 2, 3, 4, 5]);
    expect([difference, t, degreesOfFreedom]).toEqual([3, expect.closeTo(3, 12), expect.closeTo(8, 12)]);
    expect(from).toBeCloseTo(3 - 2.306, 3);
    expect(to).toBeCloseTo(3 + 2.306, 3);
    expect(p).toBeGreaterThan(0.01);
    expect(p).toBeLessThan(0.02);
  });

  // D. C. Montgomery, Introduction to Statistical Quality Control: his ring diameters are in control over the first 25 samples.
  test("the odd and the even samples of the ring diameters do not differ", () => {
    const rows = columns("ring-diameters.txt", /^diameter/).filter(([, sample]) => sample! <= 24);
    const [, from, to] = compared(
      rows.filter(([, sample]) => sample! % 2 === 1).map(([diameter]) => diameter!),
      rows.filter(([, sample]) => sample! % 2 === 0).map(([diameter]) => diameter!),
      0.99,
    );
    expect(from).toBeLessThan(0);
    expect(to).toBeGreaterThan(0);
  });
});

test("a row of labels stands above the values", () => {
  expect((ask(compareGroups, [[1, 2]], [[3, 5]]) as unknown[])[0]).toEqual(["difference", "from", "to", "t", "degrees of freedom", "p", "by", "verdict"]);
});

describe("identities", () => {
  const group = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 2, maxLength: 10 }).filter((list) => new Set(list).size > 1);

  test("the groups exchanged change the sign and leave the degrees of freedom and p", () => {
    fc.assert(
      fc.property(group, group, (a, b) => {
        const [difference, from, to, t, degreesOfFreedom, p] = compared(a, b) as [number, number, number, number, number, number];
        const back = compared(b, a);
        expect(back[0]).toBeCloseTo(-difference, 9);
        expect(back[1]).toBeCloseTo(-to, 9);
        expect(back[2]).toBeCloseTo(-from, 9);
        expect(back[3]).toBeCloseTo(-t, 9);
        expect(back.slice(4, 6)).toEqual([expect.closeTo(degreesOfFreedom, 9), expect.closeTo(p, 9)]);
      }),
    );
  });

  test("the interval holds 0 exactly when p is more than what confidence leaves", () => {
    fc.assert(
      fc.property(group, group, fc.constantFrom(0.8, 0.9, 0.95, 0.99), (a, b, confidence) => {
        const [, from, to, , , p] = compared(a, b, confidence) as [number, number, number, number, number, number];
        fc.pre(Math.abs(p - (1 - confidence)) > 1e-6);
        expect(from < 0 && to > 0).toBe(p > 1 - confidence);
      }),
    );
  });

  test("the degrees of freedom lie between those of the smaller group and those of both", () => {
    fc.assert(
      fc.property(group, group, (a, b) => {
        const degreesOfFreedom = compared(a, b)[4]!;
        expect(degreesOfFreedom).toBeGreaterThanOrEqual(Math.min(a.length, b.length) - 1 - 1e-9);
        expect(degreesOfFreedom).toBeLessThanOrEqual(a.length + b.length - 2 + 1e-9);
      }),
    );
  });

  test("inches give the same t and p, and the difference in inches", () => {
    fc.assert(
      fc.property(group, group, (a, b) => {
        const metric = compared(a, b);
        const inch = compared(
          a.map((x) => x / 25.4),
          b.map((x) => x / 25.4),
        );
        expect(inch[0]! * 25.4).toBeCloseTo(metric[0]!, 9);
        expect(inch[3]).toBeCloseTo(metric[3]!, 6);
        expect(inch[5]).toBeCloseTo(metric[5]!, 6);
      }),
    );
  });
});

describe("at the limits", () => {
  test("one group without spread is compared by the spread of the other", () => {
    const [difference, , , , degreesOfFreedom] = compared([5, 5, 5], [1, 2, 3]);
    expect(difference).toBe(3);
    expect(degreesOfFreedom).toBeCloseTo(2, 12);
  });
});

describe("with and without the gauge's uncertainty", () => {
  const row = (...args: Parameters<typeof ask> extends [unknown, ...infer A] ? A : never) => (ask(compareGroups, ...args) as unknown[])[1];

  test("no spread in either group and no uncertainty: it cannot be told, and the difference stands", () => {
    const why = "cannot tell: neither group has any spread, and no uncertainty says what that is worth";
    expect(row([[3.5, 3.5]], [[4, 4, 4]])).toEqual([-0.5, "", "", "", "", "", "", why]);
    expect(row([[0.1 + 0.2, 0.3]], [[0.4, 0.4]])).toEqual([expect.closeTo(-0.1, 12), "", "", "", "", "", "", why]);
  });

  // By hand: the gauge's part of a difference is √2 × 0.002, not divided; 1.960 of it by the normal law.
  test("no spread in either group is answered from the uncertainty", () => {
    const half = 1.959963984540054 * Math.SQRT2 * 0.002;
    expect(row([[73.01, 73.01]], [[73.02, 73.02]], 0.95, 0.004)).toEqual([
      expect.closeTo(-0.01, 12),
      expect.closeTo(-0.01 - half, 12),
      expect.closeTo(-0.01 + half, 12),
      expect.closeTo(-0.01 / (Math.SQRT2 * 0.002), 9),
      "",
      expect.closeTo(0.000407, 6),
      "gauge",
      "differs",
    ]);
    expect(row([[73.01, 73.01]], [[73.012, 73.012]], 0.95, 0.004)).toEqual(expect.arrayContaining(["cannot tell: up to 0.0067 may hide"]));
  });

  test("the gauge's part widens the interval and lends degrees of freedom, more readings do not take it away", () => {
    const [, from, to, , degreesOfFreedom, , by] = row([[1, 2, 3]], [[5, 6, 7]], 0.95, 4) as number[];
    // By hand: 1/3 + 1/3 + 2 × 2² = 8.667; its square over 2 × (1/3)² ÷ 2.
    expect(degreesOfFreedom).toBeCloseTo((26 / 3) ** 2 / (1 / 9), 6);
    expect((to! - from!) / 2).toBeCloseTo(studentQuantile(0.95, degreesOfFreedom!) * Math.sqrt(26 / 3), 9);
    expect(by).toBe("scatter");
    const many = (value: number) => [Array.from({ length: 60 }, (_, i) => value + (i % 2))];
    const [, low, high] = row(many(1), many(5), 0.95, 4) as number[];
    expect((high! - low!) / 2).toBeGreaterThan(1.96 * Math.sqrt(8));
  });

  test("what is said of the difference follows from p and the interval", () => {
    expect(row([[4, 5, 6, 7, 8]], [[1, 2, 3, 4, 5]])).toEqual(expect.arrayContaining(["scatter", "differs"]));
    // 3 + 1.860 × 1 by t of 8 degrees of freedom, at 90 %.
    expect(row([[4, 5, 6, 7, 8]], [[1, 2, 3, 4, 5]], 0.99)).toEqual(expect.arrayContaining(["cannot tell: up to 5.9 may hide"]));
  });
});

describe("faults", () => {
  test("one reading in a group is too few, and the group is named", () => {
    const sentence = (name: string) => `COMPAREGROUPS: ${name} 0.01: one reading shows no spread, at least 2 are needed`;
    expect(ask(compareGroups, 0.01, [[0.02, 0.03]])).toEqual({ code: "unfit", sentence: sentence("a") });
    expect(ask(compareGroups, [[0.02, 0.03]], 0.01)).toEqual({ code: "unfit", sentence: sentence("b") });
  });

  test("a confidence in per cent is refused", () => {
    expect(ask(compareGroups, [[1, 2]], [[3, 4]], 95)).toEqual({
      code: "too-large",
      sentence: "COMPAREGROUPS: confidence 95 is too large: it must be a ratio above 0.5 and below 1",
    });
  });
});

test("an empty group leaves it blank, blank cells in a group are left out", () => {
  const blank = new Array(8).fill("");
  for (const nothing of BLANKS) expect((ask(compareGroups, nothing, [[1, 2]]) as unknown[])[1]).toEqual(blank);
  expect(ask(compareGroups, [[1], [null], [2]], [[3, 5]])).toEqual(ask(compareGroups, [[1, 2]], [[3, 5]]));
});
