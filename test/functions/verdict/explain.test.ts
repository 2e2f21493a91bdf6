import fc from "fast-check";
import { explain } from "../../../src/functions/verdict/explain.ts";
import { margin } from "../../../src/functions/verdict/margin.ts";
import { verdict } from "../../../src/functions/verdict/verdict.ts";
import { ask, BLANKS, number } from "../ask.ts";

describe("cited values", () => {
  // A published micrometer example: limit of error ±0.003 mm, U 0.0010; +0.0017 conforms, +0.0025 is not proven.
  test("the sentences of the micrometer example", () => {
    expect(ask(explain, 0.0017, -0.003, 0.003, 0.001)).toBe(
      "0.0017 is within -0.003 to 0.003, 0.0013 from the upper limit, proven with an uncertainty of 0.001",
    );
    expect(ask(explain, 0.0025, -0.003, 0.003, 0.001)).toBe(
      "0.0025 is inside the upper limit 0.003 by 0.0005, not proven either way with an uncertainty of 0.001",
    );
  });

  // ISO 286, Ø50 H7/g6: clearance 0.009 to 0.050 mm. ISO 14253-1:1998 (from memory) where U is given.
  test.each([
    [[0.03, 0.009, 0.05], "0.03 is within 0.009 to 0.05, 0.02 from the upper limit"],
    [[0.02, 0.009, 0.05], "0.02 is within 0.009 to 0.05, 0.011 from the lower limit"],
    [[0.051, 0.009, 0.05], "0.051 is over the upper limit 0.05 by 0.001"],
    [[0.004, 0.009, 0.05], "0.004 is under the lower limit 0.009 by 0.005"],
    [[0.054, 0.009, 0.05, 0.003], "0.054 is over the upper limit 0.05 by 0.004, proven with an uncertainty of 0.003"],
    [[0.052, 0.009, 0.05, 0.003], "0.052 is over the upper limit 0.05 by 0.002, not proven either way with an uncertainty of 0.003"],
    [[0.008, 0.009, 0.05, 0.003], "0.008 is under the lower limit 0.009 by 0.001, not proven either way with an uncertainty of 0.003"],
  ])("%p of a 50 H7/g6 fit", (args, sentence) => {
    expect(ask(explain, ...args)).toBe(sentence);
  });
});

test("by the rule of 95 % the sentence says so", () => {
  expect(ask(explain, 0.0483, 0.009, 0.05, 0.002, null, "95 %")).toBe(
    "0.0483 is within 0.009 to 0.05, 0.0017 from the upper limit, proven at 95 % with an uncertainty of 0.002",
  );
});

describe("identities", () => {
  const thousandths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n / 1000);
  const judged = fc.tuple(thousandths(-50, 150), thousandths(0, 40), thousandths(60, 100), thousandths(0, 15), thousandths(0, 15));

  test("the sentence says what VERDICT says", () => {
    const words: Record<string, RegExp> = {
      within: /^\S+ is within (?!.*near limit)/,
      "near limit": /^\S+ is within .*, near limit as it is no further than \S+$/,
      "not proven": /, not proven either way with an uncertainty of /,
      over: /^\S+ is over (?!.*not proven)/,
      under: /^\S+ is under (?!.*not proven)/,
    };
    fc.assert(fc.property(judged, (args) => expect(ask(explain, ...args)).toMatch(words[ask(verdict, ...args) as string]!)));
  });

  test("the sentence holds the value and the distance that MARGIN gives, and ends without a stop", () => {
    fc.assert(
      fc.property(judged, ([value, lower, upper, uncertainty, near]) => {
        const sentence = ask(explain, value, lower, upper, uncertainty, near) as string;
        const distance = Math.abs(number(margin, value, lower, upper));
        expect(sentence.startsWith(`${value} is `)).toBe(true);
        expect(sentence).toContain(distance === 0 ? "on" : String(distance));
        expect(sentence).not.toMatch(/\.$|e-|\d{10}/);
      }),
    );
  });
});

describe("at the limits", () => {
  test("on a limit the sentence says so, and 73.04 − 73.00 is read as 0.04", () => {
    expect(ask(explain, 73.04 - 73.0, 0.02, 0.04)).toBe("0.04 is within 0.02 to 0.04, exactly on the upper limit");
    expect(ask(explain, 73.04 - 73.0, undefined, 0.04)).toBe("0.04 is within the upper limit 0.04, exactly on it");
    expect(ask(explain, 0.04, undefined, 0.04, 0.002)).toBe("0.04 is on the upper limit 0.04, not proven either way with an uncertainty of 0.002");
  });

  test("one-sided limits read as one-sided", () => {
    expect(ask(explain, 0.03, undefined, 0.04)).toBe("0.03 is within the upper limit 0.04 by 0.01");
    expect(ask(explain, 0.03, 0.02)).toBe("0.03 is within the lower limit 0.02 by 0.01");
    expect(ask(explain, 0.01, 0.02)).toBe("0.01 is under the lower limit 0.02 by 0.01");
  });

  test("near a limit the sentence names both distances", () => {
    expect(ask(explain, 0.038, 0.02, 0.04, 0, 0.003)).toBe(
      "0.038 is within 0.02 to 0.04, 0.002 from the upper limit, near limit as it is no further than 0.003",
    );
    expect(ask(explain, 0.037, 0.02, 0.04, 0.002, 0.005)).toBe(
      "0.037 is within 0.02 to 0.04, 0.003 from the upper limit, proven with an uncertainty of 0.002, near limit as it is no further than 0.005",
    );
  });

  test("limits too close together for the uncertainty are called that", () => {
    expect(ask(explain, 0.03, 0.02, 0.04, 0.011)).toBe(
      "0.03 is inside the upper limit 0.04 by 0.01, not proven either way with an uncertainty of 0.011, which is too much for limits so close together",
    );
    expect(ask(explain, 0.03, 0.02, 0.04, 0.01)).toBe("0.03 is within 0.02 to 0.04, 0.01 from the upper limit, proven with an uncertainty of 0.01");
  });

  test("the middle between two limits counts from the upper one", () => {
    expect(ask(explain, 0.3, 0.2, 0.4)).toBe("0.3 is within 0.2 to 0.4, 0.1 from the upper limit");
  });
});

describe("faults", () => {
  test("limits the wrong way round are refused and both are named", () => {
    expect(ask(explain, 0.03, 0.04, 0.02)).toEqual({ code: "swapped", sentence: "EXPLAIN: lower 0.04 is larger than upper 0.02: are they swapped?" });
  });

  test("a value with an error is refused by that error", () => {
    expect(ask(explain, { error: "#DIV/0!" }, 0.02)).toEqual({
      code: "cell-error",
      sentence: "EXPLAIN: value holds the error #DIV/0!: correct that cell first",
    });
  });
});

describe("blanks", () => {
  test("no value or no limits, no sentence", () => {
    for (const blank of BLANKS) {
      expect(ask(explain, blank, 0.02, 0.04)).toBe("");
      expect(ask(explain, 0.03, blank, blank)).toBe("");
    }
  });

  test("one sentence for each reading of a half-filled column", () => {
    expect(ask(explain, [[0.03], [""], [0.05]], undefined, 0.04)).toEqual([
      ["0.03 is within the upper limit 0.04 by 0.01"],
      [""],
      ["0.05 is over the upper limit 0.04 by 0.01"],
    ]);
  });
});
