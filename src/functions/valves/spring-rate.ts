import { compareDecimals, decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { force, length } from "../../core/inputs.ts";

/** Spring rate from two forces at two lengths. Source: Hooke; EN 13906-1 defines the rate as ΔF ÷ Δs. */
export const springRate = define({
  name: "SPRINGRATE",
  group: "valves",
  role: "measures",
  summary: "Rate of a valve spring from its force at two lengths",
  definition: "(force2 − force1) ÷ (length1 − length2)",
  source: "Hooke's law; EN 13906-1, spring rate R = ΔF ÷ Δs (from memory)",
  params: {
    force1: force("force at the first length; 0 at the free length").atLeast(0),
    length1: length("first length, such as the fitted one"),
    force2: force("force at the second length"),
    length2: length("second length, such as at full lift"),
  },
  returns: value("spring rate, in the unit of force per unit of length (N/mm, lbf/in)"),
  examples: [
    { formula: "=HATCH.SPRINGRATE(250, 40, 520, 31)", gives: 30 },
    { formula: "=HATCH.SPRINGRATE({250;245}, 40, {520;506}, 31)", gives: [[30], [29]] },
  ],
  notes: [
    "A compressed valve spring can fly out: use a proper compressor and eye protection.",
    "Springs wound with a varying pitch get stiffer as they shorten: measure between the two lengths that they work at.",
  ],
  compute: ({ force1, length1, force2, length2 }) => {
    if (compareDecimals(length1, length2) === 0) return refuse("length2", length2, "a rate needs two different lengths");
    const rate = decimal((force2 - force1) / (length1 - length2));
    return isAbove(rate, 0)
      ? rate
      : refuse("force2", force2, `at length ${length2} it does not fit ${force1} at ${length1}: a spring pushes harder when shorter`);
  },
});
