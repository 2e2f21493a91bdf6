import { define, row } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { list, ratio } from "../../core/param.ts";
import { studentQuantile, twoSidedP } from "../../math/distributions.ts";
import { allEqual, effectiveDegreesOfFreedom, mean, variance } from "../../math/statistics.ts";

const COLUMNS = ["difference", "from", "to", "t", "degrees of freedom", "p"] as const;

/** Difference of two groups' means with its interval. Source: B. L. Welch, Biometrika 34, 1947 (unequal spreads); NIST e-Handbook 1.3.5.3. */
export const compareGroups = define({
  name: "COMPAREGROUPS",
  group: "wear",
  role: "assists",
  summary: "Whether two groups of readings really differ: difference of the means, its interval, t and p (Welch)",
  definition: "d = mean(a) − mean(b); d ± t(confidence, ν) × √(s²a/na + s²b/nb); ν by Welch-Satterthwaite; p for no difference, on both sides",
  source: "B. L. Welch, Biometrika 34 (1947) 28; NIST/SEMATECH e-Handbook 1.3.5.3 (unequal variances)",
  params: {
    a: list("number", "readings of the first group, at least 2"),
    b: list("number", "readings of the second group, at least 2, in the same unit"),
    confidence: ratio("share of cases that the interval is to cover").below(1).default(0.95),
  },
  returns: row(COLUMNS, "a row of labels and a row of values; the groups differ when 0 is outside from … to"),
  examples: [
    {
      formula: "=HATCH.COMPAREGROUPS({5.1,2,4.1,6.2,7.1,8.3}, {1.5,6.4,3.3,5.8,4.8,7.2,5.6,4.5})",
      gives: [[...COLUMNS], [0.579167, -1.93542, 3.093754, 0.51703, 9.48, 0.617]],
    },
    {
      formula: "=HATCH.COMPAREGROUPS({0.011;0.013;0.012}, {0.021;0.024;0.022}, 0.99)",
      gives: [[...COLUMNS], [-0.010333, -0.01576, -0.004907, -9.8031, 3.4483, 0.00123]],
    },
  ],
  notes: [
    "A small p says that chance alone seldom makes such a difference; it does not say that the difference matters.",
    "Three cylinders a side show large differences only: an interval that holds 0 is no proof that the groups are alike.",
  ],
  compute: ({ a, b, confidence }) => {
    for (const [name, group] of [["a", a] as const, ["b", b] as const]) {
      if (group.length < 2) return refuse(name, group[0], "one reading shows no spread, at least 2 are needed");
    }
    if (allEqual(a) && allEqual(b)) return refuse("a", a[0], "neither group has any spread to judge the difference by");
    const shares = [a, b].map((group) => ({ variance: variance(group) / group.length, degreesOfFreedom: group.length - 1 }));
    const degreesOfFreedom = effectiveDegreesOfFreedom(shares);
    const deviation = Math.sqrt(shares[0]!.variance + shares[1]!.variance);
    const difference = mean(a) - mean(b);
    const half = studentQuantile(confidence, degreesOfFreedom) * deviation;
    const t = difference / deviation;
    return [difference, difference - half, difference + half, t, degreesOfFreedom, twoSidedP(t, degreesOfFreedom)];
  },
});
