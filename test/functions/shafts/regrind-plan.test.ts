import fc from "fast-check";
import { regrindPlan } from "../../../src/functions/shafts/regrind-plan.ts";
import { regrindSize } from "../../../src/functions/shafts/regrind-size.ts";
import { inInches } from "../arbitrary.ts";
import { ask, BLANKS_AND_ZERO } from "../ask.ts";

const HEADER = ["journal", "needed", "undersize", "finish", "least stock", "most stock"];
const STEPS = [[0.25, 0.5, 0.75]];
const NONE = "none: new shaft";
type Rows = (string | number)[][];
const plan = (...args: Parameters<typeof ask> extends [unknown, ...infer A] ? A : never) => ask(regrindPlan, ...args) as Rows;

describe("cited values", () => {
  // TM 5-3805-262-34 p. 4-24: if one journal is ground, all are. The readings are ours; the original centre line needs 2 − 2 × wear.
  test("the worst journal sets one undersize for all unless told otherwise", () => {
    const journals = [
      [1.9985, 1.998],
      [1.993, 1.992],
    ];
    expect(plan(journals, 2, [[0.01, 0.02, 0.03]], 0, "true", 2)).toEqual([
      HEADER,
      [1, 1.996, 0.02, 1.98, 0.018, 0.0185],
      [2, 1.984, 0.02, 1.98, 0.012, 0.013],
    ]);
    expect(plan(journals, 2, [[0.01, 0.02, 0.03]], 0, "true", 2, false).map((row) => row[2])).toEqual(["undersize", 0.01, 0.02]);
  });
});

const block = fc.array(
  fc.array(
    fc.integer({ min: 4945, max: 5002 }).map((hundredths) => hundredths / 100),
    { minLength: 2, maxLength: 2 },
  ),
  { minLength: 1, maxLength: 6 },
);
const stock = fc.integer({ min: 0, max: 8 }).map((hundredths) => hundredths / 100);
const centring = fc.constantFrom("true", "worn");

describe("against the journals one by one", () => {
  test("each its own is REGRINDSIZE; in common it is the largest of these, and sizes and stock add up", () => {
    fc.assert(
      fc.property(block, stock, centring, (journals, allowance, how) => {
        const each = ask(regrindSize, journals, 50, STEPS, allowance, how, 2) as Rows | number | string as unknown;
        const own = (Array.isArray(each) ? each : [[each]]).flat() as (number | string)[];
        expect(
          plan(journals, 50, STEPS, allowance, how, 2, false)
            .slice(1)
            .map((row) => row[2]),
        ).toEqual(own);
        const largest = Math.max(...own.filter((size) => typeof size === "number"));
        for (const [at, [number, , undersize, finish, least, most]] of plan(journals, 50, STEPS, allowance, how, 2).slice(1).entries()) {
          expect(number).toBe(at + 1);
          expect(undersize).toBe(typeof own[at] === "number" ? largest : NONE);
          if (typeof undersize !== "number") continue;
          expect(finish).toBe(Number((50 - undersize).toFixed(9)));
          expect(least).toBe(Number((Math.min(...journals[at]!) - (finish as number)).toFixed(9)));
          expect(most).toBe(Number((Math.max(...journals[at]!) - (finish as number)).toFixed(9)));
          expect(least as number).toBeGreaterThanOrEqual(allowance);
          expect(least as number).toBeGreaterThan(0);
        }
      }),
      { numRuns: 500 },
    );
  });

  test("in inches the same undersize", () => {
    fc.assert(
      fc.property(block, centring, (journals, how) => {
        const sizes = (rows: Rows, times: number) => rows.slice(1).map((row) => (typeof row[2] === "number" ? Number((row[2] * times).toFixed(6)) : row[2]));
        expect(sizes(plan(inInches(journals), 50 / 25.4, inInches(STEPS), 0, how, 2), 25.4)).toEqual(sizes(plan(journals, 50, STEPS, 0, how, 2), 1));
      }),
    );
  });

  test("shells that make exactly standard − undersize + clearance change nothing", () => {
    fc.assert(
      fc.property(block, centring, (journals, how) => {
        const shells = STEPS.map((line) => line.map((undersize) => (54 - 50 + undersize - 0.05) / 2));
        expect(plan(journals, 50, STEPS, 0, how, 2, true, 54, shells, 0.05)).toEqual(plan(journals, 50, STEPS, 0, how, 2));
      }),
    );
  });
});

describe("at the limits", () => {
  test("the measured shell decides what a journal is ground to; one not measured yet counts as listed", () => {
    expect(plan([[49.9]], 50, STEPS, 0, "worn", 1, true, 54, [[2.105, "", ""]], 0.05)[1]).toEqual([1, 49.9, 0.25, 49.74, 0.16, 0.16]);
    expect(plan([[49.745]], 50, STEPS, 0, "worn", 1, true, 54, [[2.1, "", ""]], 0.05)[1]).toEqual([1, 49.745, 0.5, 49.5, 0.245, 0.245]);
  });

  test("a journal past every size says so and does not hold up the others", () => {
    expect(plan([[49.2], [49.95]], 50, STEPS, 0, "true", 1)).toEqual([HEADER, [1, 48.4, NONE, "", "", ""], [2, 49.9, 0.25, 49.75, 0.2, 0.2]]);
  });
});

describe("faults", () => {
  test.each<[string, unknown[], string]>([
    [
      "shells without their housing",
      [49.9, 50, STEPS, 0, "true", "", true, "", [[2.1, 2.2, 2.3]], 0.05],
      "REGRINDPLAN: housing is not given: it must be the bore of the housing that the shells go into",
    ],
    [
      "shells without a clearance",
      [49.9, 50, STEPS, 0, "true", "", true, 54, [[2.1, 2.2, 2.3]]],
      "REGRINDPLAN: clearance is not given: it must be the oil clearance to grind for",
    ],
    [
      "shells in another shape",
      [49.9, 50, STEPS, 0, "true", "", true, 54, [[2.1, 2.2]], 0.05],
      "REGRINDPLAN: shells is 1×2 cells, which does not fit undersizes of 1×3: ranges must be of one size, or one row, one column or one cell",
    ],
    [
      "both walls typed as one",
      [49.9, 50, STEPS, 0, "true", "", true, 54, [[4.2, 4.45, 4.7]], 0.05],
      "REGRINDPLAN: shells 4.2: in housing 54 it would have the journal ground to 45.55 for undersize 0.25: is it one wall?",
    ],
    [
      "readings of six columns without axes",
      [[[49.9, 49.9, 49.9, 49.9, 49.9, 49.9]], 50, STEPS],
      "REGRINDPLAN: axes is not given: it must be the number of axes measured at each height, as journals of 6 columns are no journal measured on so many axes: is each row one bore?",
    ],
    [
      "columns that axes do not divide",
      [[[49.9, 49.9, 49.9]], 50, STEPS, 0, "true", 2],
      "REGRINDPLAN: axes 2 does not divide the 3 columns of journals: each row must hold every height of one bore",
    ],
  ])("%s: a fault of the call", (_, args, sentence) => {
    expect(ask(regrindPlan, ...(args as never[]))).toMatchObject({ sentence });
  });

  test("a bad reading, or one in another unit, keeps to the row of its journal", () => {
    expect(
      plan(
        [
          [49.9, "x"],
          [49.95, 49.94],
          [1.96, 49.9],
        ] as never,
        50,
        STEPS,
        0,
        "worn",
        2,
      ),
    ).toEqual([
      HEADER,
      [1, 'check: journals holds the text "x": it must be a length above 0 (row 1, column 2)', "", "", "", ""],
      [2, 49.94, 0.25, 49.75, 0.19, 0.2],
      [3, "check: journals 1.96 is about 1/25.4 of standard 50: is one in inches, the other in millimetres?", "", "", "", ""],
    ]);
  });
});

describe("one undersize listed twice, with two measured shells", () => {
  // By hand: 54 − 2 × 2.1 − 0.05 = 49.75 and 54 − 2 × 2.102 − 0.05 = 49.746; only the second cleans up both journals.
  test("all journals are ground to the size that cleans up the worst, whichever stands first", () => {
    for (const order of [(all: number[][]) => all, (all: number[][]) => [...all].reverse()]) {
      const rows = plan(
        order([
          [49.748, 49.748],
          [49.752, 49.752],
        ]),
        50,
        [[0.25, 0.25]],
        0,
        "worn",
        2,
        true,
        54,
        [[2.1, 2.102]],
        0.05,
      ).slice(1);
      expect(rows.map(([, needed, ...row]) => [needed, ...row]).sort()).toEqual([
        [49.748, 0.25, 49.746, 0.002, 0.002],
        [49.752, 0.25, 49.746, 0.006, 0.006],
      ]);
    }
  });
});

test("a list that ends below a thousandth of the journal is asked about in the row of the journal that it does not clean up", () => {
  const asked = "check: undersizes 0.02: even the largest cleans nothing up, and is less than a thousandth of the standard journal, 50: are both in one unit?";
  expect(
    plan(
      [
        [49.9, 49.9],
        [49.99, 49.99],
      ],
      50,
      [[0.02]],
      0,
      "worn",
      2,
    ),
  ).toEqual([HEADER, [1, 49.9, asked, "", "", ""], [2, 49.99, 0.02, 49.98, 0.01, 0.01]]);
});

describe("blanks", () => {
  test("without journals, standard or undersizes there is no plan; a journal with a reading missing keeps its number", () => {
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(regrindPlan, blank, 50, STEPS)).toBe("");
      expect(ask(regrindPlan, 49.9, blank, STEPS)).toBe("");
      expect(ask(regrindPlan, 49.9, 50, blank)).toBe("");
      const journals = [
        [49.9, blank as number],
        [49.95, 49.94],
        [blank as number, blank as number],
      ];
      expect(plan(journals, 50, STEPS, 0, "worn", 2)).toEqual([HEADER, [1, "", "", "", "", ""], [2, 49.94, 0.25, 49.75, 0.19, 0.2]]);
    }
  });
});
