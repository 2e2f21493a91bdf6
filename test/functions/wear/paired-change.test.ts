import fc from "fast-check";
import { compareGroups } from "../../../src/functions/wear/compare-groups.ts";
import { pairedChange } from "../../../src/functions/wear/paired-change.ts";
import { realChange } from "../../../src/functions/wear/real-change.ts";
import { studentQuantile } from "../../../src/math/distributions.ts";
import { fromR } from "../../reference/r-values.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

type Cells = readonly (number | string | null)[];
type Row = [change: number, lower: number, upper: number, statistic: number, degreesOfFreedom: number | "", p: number, by: string, verdict: string];
interface Options {
  uncertainty?: number | string | null;
  matters?: number | string | null;
  confidence?: number | string | null;
  common?: number | string | null;
}
const answer = (before: Cells, after: Cells, { uncertainty, matters, confidence, common }: Options = {}) =>
  ask(
    pairedChange,
    before.map((x) => [x]),
    after.map((x) => [x]),
    uncertainty,
    matters,
    confidence,
    common,
  );
const paired = (before: Cells, after: Cells, options: Options = {}) => (answer(before, after, options) as unknown[])[1] as Row;

const BEFORE = [73.012, 73.01, 73.015, 73.011, 73.013, 73.012];
const AFTER = [73.021, 73.026, 73.024, 73.018, 73.031, 73.022];
const [Z95, Z90] = [1.959963984540054, 1.6448536269514722];

describe("cited values", () => {
  // R's t.test(after, before, paired = TRUE).
  test("six places measured twice: R's paired t", () => {
    const [change, lower, upper, t, degreesOfFreedom, p] = fromR("paired") as [number, number, number, number, number, number];
    expect(paired(BEFORE, AFTER)).toEqual([
      expect.closeTo(change, 12),
      expect.closeTo(lower, 11),
      expect.closeTo(upper, 11),
      expect.closeTo(t, 8),
      degreesOfFreedom,
      expect.closeTo(p, 11),
      "scatter",
      "differs",
    ]);
    const [low, high] = fromR("paired-99") as [number, number];
    const [, lower99, upper99] = paired(BEFORE, AFTER, { confidence: 0.99 });
    expect([lower99, upper99]).toEqual([expect.closeTo(low, 11), expect.closeTo(high, 11)]);
  });

  // Student, Biometrika 6 (1908) 1, hours of sleep gained by two drugs; R's t.test on its data set sleep.
  test("Student's sleepers", () => {
    const [change, lower, upper, t, degreesOfFreedom, p] = fromR("sleep") as [number, number, number, number, number, number];
    const row = paired(fromR("sleep-a"), fromR("sleep-b"));
    expect(row.slice(0, 6)).toEqual([change, lower, upper, t, degreesOfFreedom, p].map((value) => expect.closeTo(value, 9)));
  });

  // R's t.test at 90 % is the interval of two one-sided tests at 5 %: its farther end is what may hide.
  test("what may hide is the farther end of R's interval at 90 %", () => {
    const [, upper] = fromR("paired-90") as [number, number];
    expect(upper).toBeCloseTo(0.0151327, 6);
    expect(paired(BEFORE, AFTER, { matters: 0.0152 })[7]).toBe("differs, but less than what matters");
    expect(paired(BEFORE, AFTER, { matters: 0.0151 })[7]).toBe("differs");
  });
});

test("on the same cylinders it sees what a comparison of groups does not", () => {
  const worn = [73.012, 73.034, 73.055, 73.021];
  const more = worn.map((size, i) => size + [0.006, 0.007, 0.005, 0.006][i]!);
  const groups = ask(compareGroups, [more], [worn]) as Row[];
  expect(groups[1]![5]).toBeGreaterThan(0.4);
  expect(paired(worn, more)[5]).toBeLessThan(0.001);
});

describe("the gauge's part", () => {
  const before = [73.01, 73.012, 73.011];
  const after = [73.011, 73.012, 73.013];

  // By hand: u of one change is √2 × 0.002; the changes 0.001, 0, 0.002 scatter by 0.001, which is less.
  test("without a common part U divides by √n, by the normal law while the scatter is less", () => {
    const half = (Z95 * Math.SQRT2 * 0.002) / Math.sqrt(3);
    for (const none of ["none", " None "]) {
      expect(paired(before, after, { uncertainty: 0.004, common: none })).toEqual([
        expect.closeTo(0.001, 12),
        expect.closeTo(0.001 - half, 12),
        expect.closeTo(0.001 + half, 12),
        expect.closeTo((0.001 * Math.sqrt(3)) / (Math.SQRT2 * 0.002), 9),
        "",
        expect.closeTo(0.540291, 6),
        "gauge",
        "cannot tell: up to 0.0037 may hide",
      ]);
    }
  });

  test("a scatter above u rules by Student's t", () => {
    const [, lower, upper, , degreesOfFreedom, , by] = paired(before, after, { uncertainty: 0.001, common: "none" });
    expect((upper - lower) / 2).toBeCloseTo((studentQuantile(0.95, 2) * 0.001) / Math.sqrt(3), 12);
    expect([degreesOfFreedom, by]).toEqual([expect.closeTo(2, 12), "scatter"]);
  });

  // By hand: s²/n = 1e-6/3, c² = 2 × 0.002² = 8e-6; ν = (8.333e-6)² ÷ ((1e-6/3)²/2) = 1250.
  test("not split, left out, blank or 0: all of U is common, and the scatter counts beside it", () => {
    const variance = 0.001 ** 2 / 3 + 2 * 0.002 ** 2;
    const row = paired(before, after, { uncertainty: 0.004 });
    expect(row).toEqual([
      expect.closeTo(0.001, 12),
      expect.closeTo(0.001 - studentQuantile(0.95, 1250) * Math.sqrt(variance), 12),
      expect.closeTo(0.001 + studentQuantile(0.95, 1250) * Math.sqrt(variance), 12),
      expect.closeTo(0.001 / Math.sqrt(variance), 9),
      expect.closeTo(1250, 6),
      expect.closeTo(0.729093, 6),
      "scatter",
      "cannot tell: up to 0.0058 may hide",
    ]);
    for (const blank of BLANKS_AND_ZERO) expect(paired(before, after, { uncertainty: 0.004, common: blank as null })).toEqual(row);
  });

  // By hand: of U 0.01 a common 0.008 leaves an own 0.006; c² = 2 × 0.004², own² = 2 × 0.003².
  test("split, its own part divides and the common part does not", () => {
    const [, lower, upper, , degreesOfFreedom, , by] = paired([73, 73.1], [73.02, 73.12], { uncertainty: 0.01, common: 0.008 });
    expect((upper - lower) / 2).toBeCloseTo(Z95 * Math.sqrt((2 * 0.003 ** 2) / 2 + 2 * 0.004 ** 2), 12);
    expect([degreesOfFreedom, by]).toEqual(["", "gauge"]);
    // All of it common, typed: the same as not split, where there is no scatter.
    expect(paired([73, 73.1], [73.02, 73.12], { uncertainty: 0.01, common: 0.01 })).toEqual(paired([73, 73.1], [73.02, 73.12], { uncertainty: 0.01 }));
  });

  test("one pair is judged by the gauge alone, as REALCHANGE says what may hide", () => {
    for (const common of [null, "none", 0.002]) {
      const [change, lower, upper, z, degreesOfFreedom, , by, verdict] = paired([73], [73.003], { uncertainty: 0.004, common });
      expect(change).toBeCloseTo(0.003, 12);
      expect((upper - lower) / 2).toBeCloseTo(Z95 * Math.SQRT2 * 0.002, 12);
      expect(z).toBeCloseTo(0.003 / (Math.SQRT2 * 0.002), 9);
      expect([degreesOfFreedom, by]).toEqual(["", "gauge"]);
      expect(verdict).toBe(ask(realChange, 73, 73.003, 0.004));
    }
  });

  test("equal changes, whatever the computer makes of them, have no scatter", () => {
    // 73.02 − 73.01 and 73.04 − 73.03 are not the same in binary.
    expect(73.02 - 73.01).not.toBe(73.04 - 73.03);
    expect(paired([73.01, 73.03], [73.02, 73.04], { uncertainty: 0.004 })).toEqual(expect.arrayContaining(["gauge", "differs"]));
    expect(paired([73.01, 73.03], [73.02, 73.04])).toEqual([
      expect.closeTo(0.01, 12),
      "",
      "",
      "",
      "",
      "",
      "",
      "cannot tell: all changes are equal, and no uncertainty says what that is worth",
    ]);
  });
});

describe("what is said", () => {
  const pairs = (by: number): [Cells, Cells] => [[73, 73.1, 73.2, 73.3], [73, 73.1, 73.2, 73.3].map((size) => size + by)];
  const verdict = (by: number, matters?: number) => paired(...pairs(by), { uncertainty: 0.004, common: "none", ...(matters ? { matters } : {}) })[7];
  // Half the widths at 95 and 90 %: u of the mean is √2 × 0.002 ÷ 2.
  const u = Math.SQRT2 * 0.001;

  test("a difference that the gauge does not explain differs, one that it may explain cannot be told", () => {
    expect(verdict(Z95 * u + 1e-6)).toBe("differs");
    expect(verdict(Z95 * u - 1e-6)).toBe("cannot tell: up to 0.0051 may hide");
  });

  test("with what matters, one whose farther end at 90 % stays within it is the same", () => {
    expect(0.001 + Z90 * u).toBeCloseTo(0.003326, 6);
    expect(verdict(0.001, 0.00333)).toBe("same within 0.00333");
    expect(verdict(0.001, 0.00332)).toBe("cannot tell: up to 0.0033 may hide");
    expect(verdict(0, 0.005)).toBe("same within 0.005");
    expect(verdict(0.003, 0.02)).toBe("differs, but less than what matters");
    expect(verdict(0.003, 0.005)).toBe("differs");
  });
});

describe("identities", () => {
  const history = fc.array(fc.tuple(fc.integer({ min: 7300, max: 7310 }), fc.integer({ min: 7300, max: 7310 })), { minLength: 2, maxLength: 9 });
  const common = fc.constantFrom<string | number | null>(null, "none", 0.004);
  const sides = (pairs: readonly [number, number][]): [number[], number[]] => [pairs.map(([from]) => from / 100), pairs.map(([, to]) => to / 100)];

  test("before and after exchanged change the sign and nothing else", () => {
    fc.assert(
      fc.property(history, common, (pairs, part) => {
        const [before, after] = sides(pairs);
        const there = paired(before, after, { uncertainty: 0.01, common: part });
        const back = paired(after, before, { uncertainty: 0.01, common: part });
        for (const [i, j] of [
          [0, 0],
          [1, 2],
          [2, 1],
          [3, 3],
        ] as const)
          expect(back[i]).toBeCloseTo(-(there[j] as number), 9);
        expect(back.slice(4)).toEqual([there[4] === "" ? "" : expect.closeTo(there[4], 6), expect.closeTo(there[5], 9), there[6], there[7]]);
      }),
    );
  });

  test("the order of the pairs, and whether they stand across or down, is no matter", () => {
    fc.assert(
      fc.property(history, common, (pairs, part) => {
        const [before, after] = sides(pairs);
        const down = paired(before, after, { uncertainty: 0.01, common: part });
        const across = (ask(pairedChange, [[...before].reverse()], [[...after].reverse()], 0.01, null, null, part) as Row[])[1]!;
        for (const i of [0, 1, 2] as const) expect(across[i]).toBeCloseTo(down[i], 9);
      }),
    );
  });

  test("0 lies outside the interval exactly when it differs", () => {
    fc.assert(
      fc.property(history, common, fc.constantFrom(0.9, 0.95, 0.99), (pairs, part, confidence) => {
        const [, lower, upper, , , p, , said] = paired(...sides(pairs), { uncertainty: 0.01, common: part, confidence });
        fc.pre(Math.abs(p - (1 - confidence)) > 1e-9);
        expect(said === "differs").toBe(lower > 0 || upper < 0);
      }),
    );
  });

  test("not knowing the common part never finds more than knowing that there is none", () => {
    fc.assert(
      fc.property(history, (pairs) => {
        const [, lower, upper] = paired(...sides(pairs), { uncertainty: 0.01 });
        const [, from, to, , , , by] = paired(...sides(pairs), { uncertainty: 0.01, common: "none" });
        fc.pre(by === "gauge");
        expect(upper - lower).toBeGreaterThanOrEqual(to - from - 1e-9);
      }),
    );
  });
});

describe("faults", () => {
  const refused = (sentence: string) => ({ code: "unfit", sentence: `PAIREDCHANGE: ${sentence}` });

  test("one pair without an uncertainty is too few", () => {
    expect(answer([73], [73.01])).toEqual(refused("before 73: one pair shows no scatter, at least 2 are needed without an uncertainty"));
  });

  test("ranges of unequal shape are no pairs", () => {
    expect(answer([73, 73.1], [73.01])).toEqual({
      code: "shape",
      sentence: "PAIREDCHANGE: after is 1×1 cells, which does not fit before of 2×1: ranges must be of one size, or one row, one column or one cell",
    });
  });

  test("a pair in two units is refused where it stands", () => {
    expect(answer([73.01, 73.02], [73.02, 2.8748], { uncertainty: 0.0003 })).toEqual({
      code: "units",
      sentence: "PAIREDCHANGE: after 2.8748 is about 1/25.4 of before 73.02: is one in inches, the other in millimetres? (row 2)",
    });
  });

  test("a common part is a length, the word none, or nothing", () => {
    const of = (common: number | string) => answer([73, 73.1], [73.01, 73.11], { uncertainty: 0.01, common });
    expect(of("some")).toEqual({ code: "text", sentence: 'PAIREDCHANGE: common holds the text "some": it must be a length above 0, or the word none' });
    expect(of("0,004")).toMatchObject({ code: "decimal-comma" });
    expect(of(-0.004)).toEqual({ code: "too-small", sentence: "PAIREDCHANGE: common -0.004 is too small: it must be a length above 0, or the word none" });
    expect(of(0.02)).toEqual(refused("common 0.02: it is a part of uncertainty 0.01, which it cannot exceed"));
  });

  test("a confidence in per cent, or of no more than a half, is refused", () => {
    expect(answer([73, 73.1], [73.01, 73.11], { confidence: 95 })).toMatchObject({ code: "too-large" });
    expect(answer([73, 73.1], [73.01, 73.11], { confidence: 0.05 })).toEqual({
      code: "too-small",
      sentence: "PAIREDCHANGE: confidence 0.05 is too small: it must be a ratio above 0.5 and below 1",
    });
  });
});

describe("blanks", () => {
  const blank = new Array(8).fill("");

  test("a pair with a blank is left out, and the others stay paired", () => {
    for (const nothing of BLANKS) {
      const hole = nothing as null;
      expect(paired([...BEFORE, 73.02, hole], [...AFTER, hole, 73.05])).toEqual(paired(BEFORE, AFTER));
    }
  });

  test("a sheet still being filled stays blank", () => {
    for (const nothing of BLANKS) {
      const hole = nothing as null;
      expect(paired([73, 73.1], [73.01, hole])).toEqual(blank);
      expect(paired([73, 73.1], [hole, hole], { uncertainty: 0.01 })).toEqual(blank);
    }
    expect(paired([73, 73.1], [73.01, null], { uncertainty: 0.01 })[0]).toBeCloseTo(0.01, 12);
  });

  test("a size of 0 is a reading", () => {
    expect(paired([0, 0], [0.01, 0.03])[0]).toBeCloseTo(0.02, 12);
  });
});
