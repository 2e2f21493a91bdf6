import fc from "fast-check";
import { compressionCheck } from "../../../src/functions/tests/compression-check.ts";
import { ask, BLANKS, BLANKS_AND_ZERO } from "../ask.ts";

const ENGINE = [[150], [148], [152], [118]];
const words = (answer: ReturnType<typeof ask>) => (answer as string[][]).flat().map((text) => text.split(":")[0]);

describe("cited values", () => {
  // Service practice: the lowest at least 75 % of the highest; 0.75 × 152 = 114.
  test("150, 148, 152, 118 pass the share rule of 75 %", () => {
    expect(ask(compressionCheck, ENGINE, "share", 0.75)).toEqual([
      ["within: 150, share rule asks at least 114 (0.75 of the highest, 152)"],
      ["within: 148, share rule asks at least 114 (0.75 of the highest, 152)"],
      ["within: 152, share rule asks at least 114 (0.75 of the highest, 152)"],
      ["within: 118, share rule asks at least 114 (0.75 of the highest, 152)"],
    ]);
  });

  // TM 1-1500-204-23-1: a cylinder 20 % below the average is investigated; average 142, 0.8 × 142 = 113.6.
  test("they pass the rule of 20 % below the average", () => {
    expect(words(ask(compressionCheck, ENGINE, "average", 0.2))).toEqual(["within", "within", "within", "within"]);
    expect((ask(compressionCheck, ENGINE, "average", 0.2) as string[][])[3]).toEqual([
      "within: 118, average rule asks at least 113.6 (0.2 below the average, 142)",
    ]);
  });

  // TM 10-3930-618-20: a spread of at most 10 psi.
  test("they fail the rule of 10 psi, and only the low one does", () => {
    expect(words(ask(compressionCheck, ENGINE, "difference", 10))).toEqual(["within", "within", "within", "under"]);
    expect((ask(compressionCheck, ENGINE, "difference", 10) as string[][])[3]).toEqual(["under: 118, difference rule asks at least 142 (highest 152 less 10)"]);
  });
});

const pressures = fc.array(
  fc.integer({ min: 500, max: 2000 }).map((tenths) => tenths / 10),
  { minLength: 2, maxLength: 8 },
);
const rule = fc.constantFrom("share", "average", "difference");
const limitFor = (name: string) => ({ share: 0.75, average: 0.2, difference: 10 })[name]!;

describe("identities", () => {
  test("a verdict depends on the rule's own bound, reckoned in whole tenths", () => {
    fc.assert(
      fc.property(pressures, rule, (read, name) => {
        const tenths = read.map((x) => Math.round(x * 10));
        const [highest, sum] = [Math.max(...tenths), tenths.reduce((a, b) => a + b)];
        const within = {
          share: (x: number) => 100 * x >= 75 * highest,
          average: (x: number) => 10 * x * tenths.length >= 8 * sum,
          difference: (x: number) => x >= highest - 100,
        }[name]!;
        expect(words(ask(compressionCheck, [read], name, limitFor(name)))).toEqual(tenths.map((x) => (within(x) ? "within" : "under")));
      }),
      { numRuns: 1000 },
    );
  });

  test("bar or psi, the share and the average rule say the same", () => {
    fc.assert(
      fc.property(pressures, fc.constantFrom("share", "average"), (read, name) => {
        // A scale that keeps decimals exact, as 10 kPa to 0.1 bar does.
        expect(words(ask(compressionCheck, [read.map((x) => x * 10)], name, limitFor(name)))).toEqual(
          words(ask(compressionCheck, [read], name, limitFor(name))),
        );
      }),
    );
  });

  test("the highest cylinder is within every rule, and every verdict names its rule", () => {
    fc.assert(
      fc.property(pressures, rule, (read, name) => {
        const texts = (ask(compressionCheck, [read], name, limitFor(name)) as string[][])[0]!;
        expect(texts[read.indexOf(Math.max(...read))]).toMatch(/^within: /);
        for (const text of texts) expect(text).toContain(`${name} rule asks at least`);
      }),
    );
  });
});

describe("at the limits", () => {
  test("a cylinder on the limit is within it, a tenth less is under", () => {
    expect(words(ask(compressionCheck, [[152, 114, 113.9]], "share", 0.75))).toEqual(["within", "within", "under"]);
    expect(words(ask(compressionCheck, [[152, 142, 141.9]], "difference", 10))).toEqual(["within", "within", "under"]);
    // 0.8 × 142 in binary is above 113.6.
    expect(0.8 * 142).not.toBe(113.6);
    expect(words(ask(compressionCheck, [[170.4, 113.6]], "average", 0.2))).toEqual(["within", "within"]);
    expect(words(ask(compressionCheck, [[170.5, 113.6]], "average", 0.2))).toEqual(["within", "under"]);
  });

  test("a share of 1 asks every cylinder to be the highest", () => {
    expect(words(ask(compressionCheck, [[152, 152, 151.9]], "share", 1))).toEqual(["within", "within", "under"]);
  });

  test("verdicts lie as the readings lie", () => {
    expect(
      ask(
        compressionCheck,
        [
          [12.4, 11.8],
          [12.1, 9],
        ],
        "difference",
        1,
      ),
    ).toEqual([
      ["within: 12.4, difference rule asks at least 11.4 (highest 12.4 less 1)", "within: 11.8, difference rule asks at least 11.4 (highest 12.4 less 1)"],
      ["within: 12.1, difference rule asks at least 11.4 (highest 12.4 less 1)", "under: 9, difference rule asks at least 11.4 (highest 12.4 less 1)"],
    ]);
  });

  test("a dead cylinder is a reading, and the lowest there is", () => {
    expect(words(ask(compressionCheck, [[150, 0, 152]], "share", 0.75))).toEqual(["within", "under", "within"]);
    expect(words(ask(compressionCheck, [[150, 0, 152]], "difference", 20))).toEqual(["within", "under", "within"]);
    expect((ask(compressionCheck, [[150, 0, 150]], "average", 0.2) as string[][])[0]![1]).toBe(
      "under: 0, average rule asks at least 80 (0.2 below the average, 100)",
    );
  });

  test("half of the highest is the least share, and the largest difference or average, that is taken", () => {
    expect(words(ask(compressionCheck, [[152, 76, 75.9]], "share", 0.5))).toEqual(["within", "within", "under"]);
    expect(words(ask(compressionCheck, [[152, 76, 75.9]], "difference", 76))).toEqual(["within", "within", "under"]);
    expect(words(ask(compressionCheck, [[152, 76, 10]], "average", 0.5))).toEqual(["within", "within", "under"]);
  });

  test("an average is shown with no more than three decimals and judged with all", () => {
    expect((ask(compressionCheck, [[10, 10, 9]], "average", 0.1) as string[][])[0]![2]).toBe(
      "within: 9, average rule asks at least 8.7 (0.1 below the average, 9.667)",
    );
  });
});

describe("faults", () => {
  test("a per cent where a share is wanted is refused, with the share to type", () => {
    expect(ask(compressionCheck, ENGINE, "share", 75)).toEqual({
      code: "unfit",
      sentence: "COMPRESSIONCHECK: limit 75: for the share rule type the least share of the highest reading, from 0.5 to 1, such as 0.75",
    });
    expect(ask(compressionCheck, ENGINE, "average", 20)).toEqual({
      code: "unfit",
      sentence: "COMPRESSIONCHECK: limit 20: for the average rule type how far below the average a cylinder may be, as a share up to 0.5, such as 0.2",
    });
  });

  test("limits that would pass every cylinder are refused: a share of 0.25, an average of 0.8, psi beside bar", () => {
    expect(ask(compressionCheck, [[150, 60]], "share", 0.25)).toEqual({
      code: "unfit",
      sentence: "COMPRESSIONCHECK: limit 0.25: for the share rule type the least share of the highest reading, from 0.5 to 1, such as 0.75",
    });
    expect(ask(compressionCheck, [[150, 60]], "average", 0.8)).toEqual({
      code: "unfit",
      sentence: "COMPRESSIONCHECK: limit 0.8: for the average rule type how far below the average a cylinder may be, as a share up to 0.5, such as 0.2",
    });
    expect(ask(compressionCheck, [[12.4, 5.1]], "difference", 10)).toEqual({
      code: "unfit",
      sentence:
        "COMPRESSIONCHECK: limit 10: the difference rule takes a pressure, and this is more than half of the highest reading 12.4: is it in their unit?",
    });
  });

  test("an engine of dead cylinders passes no rule", () => {
    for (const [rule, limit] of [["share", 0.75] as const, ["average", 0.2] as const, ["difference", 10] as const]) {
      expect(ask(compressionCheck, [[0], [0]], rule, limit)).toEqual({
        code: "unfit",
        sentence: "COMPRESSIONCHECK: pressures 0: no cylinder shows any pressure, so there is none to judge the others by",
      });
    }
  });

  test("an unknown rule and a missing limit are refused: no rule is built in", () => {
    expect(ask(compressionCheck, ENGINE, "spread", 10)).toEqual({
      code: "not-a-choice",
      sentence: 'COMPRESSIONCHECK: rule "spread" is not known: it must be one of share, average, difference',
    });
    expect(ask(compressionCheck, ENGINE, "share")).toEqual({
      code: "missing",
      sentence: "COMPRESSIONCHECK: limit is not given: it must be a number above 0",
    });
  });

  test("a bad reading keeps to its own cell and the others are judged without it", () => {
    expect(ask(compressionCheck, [[150, "low", 130]], "difference", 10)).toEqual([
      [
        "within: 150, difference rule asks at least 140 (highest 150 less 10)",
        'check: pressures holds the text "low": it must be a pressure of at least 0 (column 2)',
        "under: 130, difference rule asks at least 140 (highest 150 less 10)",
      ],
    ]);
  });

  test("a lone bad reading is a fault of the call", () => {
    expect(ask(compressionCheck, "low", "share", 0.75)).toEqual({
      code: "text",
      sentence: 'COMPRESSIONCHECK: pressures holds the text "low": it must be a pressure of at least 0',
    });
  });
});

describe("blanks", () => {
  test("nothing is judged until two cylinders, a rule and a limit are there", () => {
    for (const blank of BLANKS) {
      const cell = blank as number;
      expect(ask(compressionCheck, cell, "share", 0.75)).toBe("");
      expect(ask(compressionCheck, [[150, cell]], "share", 0.75)).toEqual([["", ""]]);
    }
    for (const blank of BLANKS_AND_ZERO) {
      expect(ask(compressionCheck, ENGINE, blank, 0.75)).toBe("");
      expect(ask(compressionCheck, ENGINE, "share", blank)).toBe("");
    }
  });

  test("a cylinder not measured yet stays blank beside the others", () => {
    for (const blank of BLANKS) {
      expect(ask(compressionCheck, [[150], [blank as number], [118]], "difference", 10)).toEqual([
        ["within: 150, difference rule asks at least 140 (highest 150 less 10)"],
        [""],
        ["under: 118, difference rule asks at least 140 (highest 150 less 10)"],
      ]);
    }
  });
});
