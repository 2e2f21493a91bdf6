import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";
import { doubtOfOne } from "../../math/gauge-rule.ts";
import { COVERAGE_FACTOR, changeParams, directionBeyond, drawnAsChange, slipFault, uncertaintyOfChange } from "./change-params.ts";
import { differenceWords } from "./difference-words.ts";

const CONFIDENCE = 0.95;

/** Whether one size has stayed the same within what matters. Source: D. J. Schuirmann, J. Pharmacokinetics and Biopharmaceutics 15 (1987) 657. */
export const sameWithin = define({
  name: "SAMEWITHIN",
  group: "wear",
  role: "assists",
  summary: "Says whether a size differs, is the same within what matters, or how large a difference may still hide",
  definition:
    "differs: |d| > U, d = after − before, U = √(uBefore² + uAfter²); same within: |d| + 1.645 × U/2 ≤ matters; otherwise up to |d| + 1.645 × U/2 may hide",
  source: "two one-sided tests at 5 %: D. J. Schuirmann, J. Pharmacokinetics and Biopharmaceutics 15 (1987) 657; JCGM 100:2008 (GUM), 5.1.2",
  params: {
    ...{ before: changeParams.before, after: changeParams.after },
    matters: length("smallest difference that matters, in the unit of the sizes").chosen(),
    uBefore: changeParams.uBefore,
    uAfter: length("expanded uncertainty U of the size after; blank when the same gauge was used").optional(),
  },
  returns: value("differs; same within what matters; or cannot tell, with what may hide"),
  draws: drawnAsChange,
  examples: [
    { formula: "=HATCH.SAMEWITHIN(73.01, 73.012, 0.01, 0.004)", gives: "same within 0.01" },
    {
      formula: "=HATCH.SAMEWITHIN({73.01;73.01;73.01}, {73.012;73.017;73.015}, 0.008, 0.004)",
      gives: [["same within 0.008"], ["differs"], ["cannot tell: up to 0.0097 may hide"]],
    },
  ],
  notes: [
    "A difference beyond its gauge that is surely less than what matters is said as both: differs, but less than what matters.",
    "With a gauge of U, nothing less than 1.16 U can ever be called the same: what matters must be wider than that.",
    "Of unchanged sizes about one in 20 lies beyond its gauge by chance. HATCH.PAIREDCHANGE judges many places together.",
    "Sizes that differ fivefold, and are known to a hundredth of themselves, are refused: a decimal point or a unit is wrong.",
  ],
  compute: ({ before, after, matters, uBefore, uAfter = uBefore }) => {
    const fault = slipFault(before, after, Math.max(uBefore, uAfter));
    if (fault) return fault;
    const uncertainty = uncertaintyOfChange(uBefore, uAfter);
    const doubt = doubtOfOne(0, 0, uncertainty / COVERAGE_FACTOR);
    return differenceWords(after - before, doubt, directionBeyond(before, after, uncertainty) !== 0, CONFIDENCE, matters);
  },
});
