import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";
import { doubtOfOne } from "../../math/gauge-rule.ts";
import { COVERAGE_FACTOR, changeParams, DIRECTION_WORDS, directionBeyond, drawnAsChange, slipFault, uncertaintyOfChange } from "./change-params.ts";
import { cannotTell, mayHide } from "./difference-words.ts";

const CONFIDENCE = 0.95;

/** Whether a change is larger than what the measuring alone explains. Sources: JCGM 100:2008, 5.1.2; ISO/IEC 17043 (|En| ≤ 1 agrees). */
export const realChange = define({
  name: "REALCHANGE",
  group: "wear",
  role: "assists",
  summary: "Says whether a size has changed beyond its gauge, or how large a change may still hide",
  definition: "larger or smaller, beyond its gauge: |after − before| > U, U = √(uBefore² + uAfter²); otherwise up to |after − before| + 1.645 × U/2 may hide",
  source: "JCGM 100:2008 (GUM), 5.1.2; ISO/IEC 17043, En number of at most 1; what may hide: two one-sided tests at 5 %, Schuirmann 1987",
  params: { ...changeParams, uAfter: length("expanded uncertainty U of the size after; blank when the same gauge was used").optional() },
  returns: value("larger, beyond its gauge; smaller, beyond its gauge; or cannot tell, with what may hide"),
  examples: [
    { formula: "=HATCH.REALCHANGE(73.01, 73.02, 0.008)", gives: "cannot tell: up to 0.019 may hide" },
    {
      formula: "=HATCH.REALCHANGE({73.01;73.01;72.98}, {73.016;73.05;72.95}, 0.006, 0.008)",
      gives: [["cannot tell: up to 0.014 may hide"], ["larger, beyond its gauge"], ["smaller, beyond its gauge"]],
    },
  ],
  draws: drawnAsChange,
  notes: [
    "Cannot tell does not mean no change: one as large as is said may hide behind the gauge.",
    "Of unchanged sizes about one in 20 lies beyond its gauge by chance: in a sheet of 60 rows about three. HATCH.PAIREDCHANGE judges them together.",
    "Sizes that differ fivefold, and are known to a hundredth of themselves, are refused: a decimal point or a unit is wrong.",
  ],
  compute: ({ before, after, uBefore, uAfter = uBefore }) => {
    const fault = slipFault(before, after, Math.max(uBefore, uAfter));
    if (fault) return fault;
    const uncertainty = uncertaintyOfChange(uBefore, uAfter);
    const direction = directionBeyond(before, after, uncertainty);
    return direction === 0 ? cannotTell(mayHide(after - before, doubtOfOne(0, 0, uncertainty / COVERAGE_FACTOR), CONFIDENCE)) : DIRECTION_WORDS[direction];
  },
});
