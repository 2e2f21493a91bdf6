import type { Result } from "../../core/cell.ts";
import { decimal } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { length, list, ratio } from "../../core/inputs.ts";
import { combined, doubtOfOne, tested, weighed } from "../../math/gauge-rule.ts";
import { allEqual, mean, standardDeviation } from "../../math/statistics.ts";
import { COVERAGE_FACTOR, uncertaintyOfChange } from "./change-params.ts";
import { differenceWords } from "./difference-words.ts";

const COLUMNS = ["difference", "from", "to", "t", "degrees of freedom", "p", "by", "verdict"] as const;

/** Difference of two groups' means with its interval. Source: B. L. Welch, Biometrika 34, 1947 (unequal spreads); NIST e-Handbook 1.3.5.3. */
export const compareGroups = define({
  name: "COMPAREGROUPS",
  group: "wear",
  role: "assists",
  summary: "Whether two groups of readings really differ: difference of the means, its interval, t and p (Welch)",
  definition:
    "d = mean(a) − mean(b); d ± t(confidence, ν) × √(s²a/na + s²b/nb + c²); ν by Welch-Satterthwaite; c² = 2 × uncertainty²/4, not divided; without any spread by the normal law; p for no difference, on both sides",
  source: "B. L. Welch, Biometrika 34 (1947) 28; NIST/SEMATECH e-Handbook 1.3.5.3 (unequal variances); the gauge's part: JCGM 100:2008 (GUM), G.4.1",
  params: {
    a: list("number", "readings of the first group, at least 2"),
    b: list("number", "readings of the second group, at least 2, in the same unit"),
    confidence: ratio("share of cases that the interval is to cover").above(0.5).below(1).default(0.95),
    uncertainty: length("expanded uncertainty U (k = 2) of one reading; blank for the spread of the readings alone").optional(),
  },
  returns: row(COLUMNS, "a row of labels and a row of values; degrees of freedom blank for the normal law; differs, or cannot tell with what may hide"),
  examples: [
    {
      formula: "=HATCH.COMPAREGROUPS({5.1,2,4.1,6.2,7.1,8.3}, {1.5,6.4,3.3,5.8,4.8,7.2,5.6,4.5})",
      gives: [[...COLUMNS], [0.579167, -1.93542, 3.093754, 0.51703, 9.48, 0.617, "scatter", "cannot tell: up to 2.6 may hide"]],
    },
    {
      formula: "=HATCH.COMPAREGROUPS({0.011;0.013;0.012}, {0.021;0.024;0.022}, 0.99)",
      gives: [[...COLUMNS], [-0.010333, -0.01576, -0.004907, -9.8031, 3.4483, 0.00123, "scatter", "differs"]],
    },
    {
      formula: "=HATCH.COMPAREGROUPS({73.01;73.01;73.01}, {73.02;73.02;73.02}, , 0.004)",
      gives: [[...COLUMNS], [-0.01, -0.015544, -0.004456, -3.5355, "", 0.00041, "gauge", "differs"]],
    },
  ],
  notes: [
    "For two different lots of things, such as the cylinders of two engines. The same cylinders before and after are pairs: HATCH.PAIREDCHANGE sees far more.",
    "A small p says that chance alone seldom makes such a difference; it does not say that the difference matters.",
    "Three cylinders a side show large differences only: an interval that holds 0 is no proof that the groups are alike.",
    "All of U may be shared by a group, as a wrong setting is, so no number of readings makes it smaller. Without U the gauge is left out altogether.",
  ],
  compute: ({ a, b, confidence, uncertainty = 0 }) => {
    for (const [name, group] of [["a", a] as const, ["b", b] as const]) {
      if (group.length < 2) return refuse(name, group[0], "one reading shows no spread, at least 2 are needed");
    }
    const difference = mean(a) - mean(b);
    const spreads = [a, b].map((group) => {
      // What differs by the computer's noise only has no spread.
      const spread = allEqual(group.map(decimal)) ? 0 : standardDeviation(group);
      return weighed(doubtOfOne(spread, group.length - 1, 0), 1 / group.length);
    });
    const doubt = combined(spreads, uncertaintyOfChange(uncertainty, uncertainty) / COVERAGE_FACTOR);
    if (doubt.variance === 0)
      return [difference, "", "", "", "", "", "", "cannot tell: neither group has any spread, and no uncertainty says what that is worth"];
    const { lower, upper, statistic, p } = tested(difference, doubt, confidence);
    const degreesOfFreedom: Result = Number.isFinite(doubt.degreesOfFreedom) ? doubt.degreesOfFreedom : "";
    return [difference, lower, upper, statistic, degreesOfFreedom, p, doubt.by, differenceWords(difference, doubt, p <= 1 - confidence, confidence, undefined)];
  },
});
