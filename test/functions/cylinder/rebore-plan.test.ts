import fc from "fast-check";
import { broadcast } from "../../../src/core/broadcast.ts";
import { finishBore } from "../../../src/functions/cylinder/finish-bore.ts";
import { reborePlan } from "../../../src/functions/cylinder/rebore-plan.ts";
import { reboreSize } from "../../../src/functions/cylinder/rebore-size.ts";
import { inInches } from "../arbitrary.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["bore", "needed", "oversize", "finish bore", "least stock", "most stock"];
const STEPS = [[0.25, 0.5, 0.75, 1]];
type Rows = (string | number)[][];
const plan = (...args: Parameters<typeof ask> extends [unknown, ...infer A] ? A : never) => ask(reborePlan, ...args) as Rows;

describe("cited values", () => {
  // TM 55-1905-219-14-10 p. 5-368: bores over 4.6285 in go to the +.005 size, bored to 4.631; the next
  // are 4.636 and 4.646, from a standard bore of 4.626 in.
  test("the sizes of TM 55-1905-219-14-10, each bore its own", () => {
    const oversizes = [[0.005, 0.01, 0.02]];
    expect(plan([[4.6286], [4.632], [4.6395]], 4.626, oversizes, 0, "worn", 1, false)).toEqual([
      HEADER,
      [1, 4.6286, 0.005, 4.631, 0.0024, 0.0024],
      [2, 4.632, 0.01, 4.636, 0.004, 0.004],
      [3, 4.6395, 0.02, 4.646, 0.0065, 0.0065],
    ]);
  });

  // One oversize for the whole block: common practice.
  test("the worst bore sets one oversize for the block unless told otherwise", () => {
    expect(plan([[4.6286], [4.632], [4.6395]], 4.626, [[0.005, 0.01, 0.02]], 0, "worn", 1).map((row) => row[2])).toEqual(["oversize", 0.02, 0.02, 0.02]);
  });

  // Geometry: with all the wear on one side, the true centre line needs standard + 2 × wear.
  test("kept on the true centre line a bore worn by 0.20 needs 73.40", () => {
    expect(plan([[73.2, 73.02]], 73, STEPS, 0, "true")).toEqual([HEADER, [1, 73.4, 0.5, 73.5, 0.3, 0.48]]);
    expect(plan([[73.2, 73.02]], 73, STEPS, 0, "worn")).toEqual([HEADER, [1, 73.2, 0.25, 73.25, 0.05, 0.23]]);
  });
});

/** Bores near 73 mm, one a row, two heights by two axes. */
const block = fc.array(
  fc.array(
    fc.integer({ min: 7295, max: 7415 }).map((hundredths) => hundredths / 100),
    { minLength: 4, maxLength: 4 },
  ),
  { minLength: 1, maxLength: 6 },
);
const centring = fc.constantFrom("worn", "true");
const allowance = fc.integer({ min: 0, max: 10 }).map((hundredths) => hundredths / 100);

describe("identities", () => {
  test("bore by bore the oversize is the one of REBORESIZE", () => {
    fc.assert(
      fc.property(block, centring, allowance, (bores, how, stock) => {
        const own = plan(bores, 73, STEPS, stock, how, 2, false).slice(1);
        expect(own.map((row) => row[2])).toEqual([ask(reboreSize, bores, 73, STEPS, stock, how, 2)].flat(2));
      }),
    );
  });

  test("in common the oversize is the largest of those, bores for a sleeve left out", () => {
    fc.assert(
      fc.property(block, centring, allowance, (bores, how, stock) => {
        const sizes = (rows: Rows) => rows.slice(1).map((row) => row[2]);
        const own = sizes(plan(bores, 73, STEPS, stock, how, 2, false));
        const largest = Math.max(...own.filter((size) => typeof size === "number"));
        expect(sizes(plan(bores, 73, STEPS, stock, how, 2))).toEqual(own.map((size) => (typeof size === "number" ? largest : "none: sleeve")));
      }),
    );
  });

  test("readings and stock add up to the finish bore, and the stock is never less than the allowance", () => {
    fc.assert(
      fc.property(block, centring, allowance, (bores, how, stock) => {
        for (const [bore, , oversize, finish, least, most] of plan(bores, 73, STEPS, stock, how, 2).slice(1)) {
          if (typeof oversize !== "number") continue;
          const readings = bores[(bore as number) - 1]!;
          expect(finish).toBe(Number((73 + oversize).toFixed(9)));
          expect(Number((Math.max(...readings) + (least as number)).toFixed(9))).toBe(finish);
          expect(Number((Math.min(...readings) + (most as number)).toFixed(9))).toBe(finish);
          expect(least as number).toBeGreaterThanOrEqual(stock);
          expect(least as number).toBeGreaterThan(0);
        }
      }),
    );
  });

  test("in inches the same size of the list is chosen", () => {
    fc.assert(
      fc.property(block, centring, (bores, how) => {
        const metric = plan(bores, 73, STEPS, 0, how, 2);
        const imperial = plan(inInches(bores), 73 / 25.4, inInches(STEPS), 0, how, 2);
        expect(imperial.map((row) => (typeof row[2] === "number" ? Number((row[2] * 25.4).toFixed(6)) : row[2]))).toEqual(metric.map((row) => row[2]));
      }),
    );
  });

  test("pistons of exactly standard + oversize − clearance change nothing", () => {
    fc.assert(
      fc.property(block, centring, (bores, how) => {
        const pistons = STEPS.map((row) => row.map((oversize) => 73 + oversize - 0.04));
        expect(plan(bores, 73, STEPS, 0, how, 2, true, pistons, 0.04)).toEqual(plan(bores, 73, STEPS, 0, how, 2));
      }),
    );
  });
});

describe("at the limits", () => {
  test("a bore that the finish bore just reaches leaves nothing to cut and goes to the next, a thousandth less cleans up", () => {
    expect(plan(73.25, 73, STEPS)).toEqual([HEADER, [1, 73.25, 0.5, 73.5, 0.25, 0.25]]);
    expect(plan(73.249, 73, STEPS)).toEqual([HEADER, [1, 73.249, 0.25, 73.25, 0.001, 0.001]]);
    expect(plan(73.22, 73, STEPS, 0.03)[1]![2]).toBe(0.25);
    expect(plan(73.22, 73, STEPS, 0.031)[1]![2]).toBe(0.5);
  });

  test("the measured piston decides what a size cleans up", () => {
    // 0.25 over nominally, but its piston came out small: 73.20 + 0.04 is 73.24.
    const [pistons, wall] = [[[73.2, 73.46, 73.71, 73.96]], 0.04];
    expect(ask(finishBore, 73.2, wall)).toBe(73.24);
    expect(plan(73.23, 73, STEPS, 0.01, "worn", "", true, pistons, wall)).toEqual([HEADER, [1, 73.24, 0.25, 73.24, 0.01, 0.01]]);
    expect(plan(73.24, 73, STEPS, 0, "worn", "", true, pistons, wall)).toEqual([HEADER, [1, 73.24, 0.5, 73.5, 0.26, 0.26]]);
    expect(plan(73.245, 73, STEPS, 0, "worn", "", true, pistons, wall)).toEqual([HEADER, [1, 73.245, 0.5, 73.5, 0.255, 0.255]]);
  });

  test("a size whose piston is not measured yet is reckoned from the standard", () => {
    expect(plan(73.3, 73, STEPS, 0, "worn", "", true, [["", "", 73.71, ""]], 0.04)[1]).toEqual([1, 73.3, 0.5, 73.5, 0.2, 0.2]);
  });

  test("oversizes may be listed in any order, with gaps", () => {
    expect(plan(73.3, 73, [[1], [""], [0.5], [0.75]])[1]).toEqual([1, 73.3, 0.5, 73.5, 0.2, 0.2]);
    expect(plan(72.9, 73, [[0.5], [""], [0.25]])[1]).toEqual([1, 72.9, 0.25, 73.25, 0.35, 0.35]);
  });

  test("oversizes that may be in inches condemn no bore", () => {
    expect(plan([[73.015], [73.11]], 73, [[0.01, 0.02, 0.03]], 0, "worn", 1)).toEqual([
      HEADER,
      [1, 73.015, 0.02, 73.02, 0.005, 0.005],
      [
        2,
        73.11,
        "check: oversizes 0.03: even the largest cleans nothing up, and is less than a thousandth of the standard bore, 73: are both in one unit?",
        "",
        "",
        "",
      ],
    ]);
  });

  test("a bore past every size says so and does not hold up the others", () => {
    expect(plan([[74.2], [73.1]], 73, STEPS, 0, "worn", 1)).toEqual([HEADER, [1, 74.2, "none: sleeve", "", "", ""], [2, 73.1, 0.25, 73.25, 0.15, 0.15]]);
  });

  test("without axes the whole range is one bore", () => {
    expect(
      plan(
        [
          [73.05, 73.02],
          [73.27, 73.2],
        ],
        73,
        STEPS,
      ),
    ).toEqual([HEADER, [1, 73.27, 0.5, 73.5, 0.23, 0.48]]);
  });
});

describe("faults", () => {
  test("readings of six columns without axes are asked about: each row may be a bore", () => {
    expect(plan([[73.05, 73.02, 73.04, 73.03, 73.01, 73.02]], 73, STEPS)).toEqual({
      code: "missing",
      sentence:
        "REBOREPLAN: axes is not given: it must be the number of axes measured at each height, as bores of 6 columns are no bore measured on so many axes: is each row one bore?",
    });
  });

  test("a bad reading, or one in another unit, keeps to the row of its bore", () => {
    expect(
      plan(
        [
          [73.05, "73,02"],
          [73.27, 73.2],
          [2.874, 73.1],
        ],
        73,
        STEPS,
        0,
        "worn",
        2,
      ),
    ).toEqual([
      HEADER,
      [1, 'check: bores holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign (row 1, column 2)', "", "", "", ""],
      [2, 73.27, 0.5, 73.5, 0.23, 0.3],
      [3, "check: bores 2.874 is about 1/25.4 of standard 73: is one in inches, the other in millimetres?", "", "", "", ""],
    ]);
  });

  test.each<[string, unknown[], string, string]>([
    [
      "columns that axes do not divide",
      [[[73.1, 73.1, 73.1]], 73, STEPS, 0, "worn", 2],
      "axes",
      "REBOREPLAN: axes 2 does not divide the 3 columns of bores: each row must hold every height of one bore",
    ],
    [
      "finished sizes for oversizes",
      [73.1, 73, [[73.25, 73.5]]],
      "unfit",
      "REBOREPLAN: oversizes 73.25: type what is added to the standard bore 73, not the finished size",
    ],
    [
      "pistons in another shape than the oversizes",
      [73.1, 73, STEPS, 0, "worn", "", true, [[73.21, 73.46]], 0.04],
      "shape",
      "REBOREPLAN: pistons is 1×2 cells, which does not fit oversizes of 1×4: ranges must be of one size, or one row, one column or one cell",
    ],
    [
      "pistons without a clearance",
      [73.1, 73, STEPS, 0, "worn", "", true, [[73.21, 73.46, 73.71, 73.96]]],
      "missing",
      "REBOREPLAN: pistonClearance is not given: it must be the clearance to add to the pistons",
    ],
    [
      "pistons in another unit",
      [73.1, 73, STEPS, 0, "worn", "", true, [[2.882, 2.892, 2.902, 2.912]], 0.04],
      "units",
      "REBOREPLAN: pistons 2.882 is about 1/25.4 of standard 73: is one in inches, the other in millimetres?",
    ],
    ["an unknown centring", [73.1, 73, STEPS, 0, "old"], "not-a-choice", 'REBOREPLAN: centring "old" is not known: it must be one of worn, true'],
    ["a word for TRUE or FALSE", [73.1, 73, STEPS, 0, "worn", "", "yes"], "text", 'REBOREPLAN: common holds the text "yes": it must be TRUE or FALSE'],
    ["a lone bad bore", ["x", 73, STEPS], "text", 'REBOREPLAN: bores holds the text "x": it must be a length above 0'],
  ])("%s: a fault of the call", (_, args, code, sentence) => {
    expect(ask(reborePlan, ...(args as Parameters<typeof plan>))).toEqual({ code, sentence });
  });

  test("axes that do not divide the columns are a fault of the bores, in which they are looked for", () => {
    expect(broadcast(reborePlan, [[[73.1, 73.1, 73.1]], 73, STEPS, 0, "worn", 2])).toMatchObject({ code: "axes", param: "bores", got: 2 });
  });
});

describe("blanks", () => {
  test("without bores, standard or oversizes there is no plan", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(reborePlan, blank, 73, STEPS)).toBe("");
      expect(ask(reborePlan, 73.1, blank, STEPS)).toBe("");
      expect(ask(reborePlan, 73.1, 73, blank)).toBe("");
    }
  });

  test("a bore with a reading missing keeps its number; blank bores at the end are left out", () => {
    for (const blank of BLANKS_AND_ZERO) {
      const bores = [
        [73.05, blank as number],
        [73.27, 73.2],
        [blank as number, blank as number],
      ];
      expect(plan(bores, 73, STEPS, 0, "worn", 2)).toEqual([HEADER, [1, "", "", "", "", ""], [2, 73.27, 0.5, 73.5, 0.23, 0.3]]);
    }
  });

  test("blank settings are the defaults", () => {
    for (const blank of BLANKS) expect(plan(73.3, 73, STEPS, blank, blank, blank, blank, blank, blank)).toEqual(plan(73.3, 73, STEPS));
  });
});
