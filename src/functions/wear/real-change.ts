import { define, value } from "../../core/define.ts";
import { length } from "../../core/param.ts";
import { changeParams, changeWords, drawnAsChange, slipFault, uncertaintyOfChange } from "./change-params.ts";

/** Whether a change is larger than what the measuring alone explains. Sources: JCGM 100:2008, 5.1.2; ISO/IEC 17043 (|En| ≤ 1 agrees). */
export const realChange = define({
  name: "REALCHANGE",
  group: "wear",
  role: "assists",
  summary: "Says whether a size has really changed, or only been measured twice",
  definition: "no real change: |after − before| ≤ √(uBefore² + uAfter²); otherwise real increase or real decrease",
  source: "JCGM 100:2008 (GUM), 5.1.2; ISO/IEC 17043, En number of at most 1",
  params: { ...changeParams, uAfter: length("expanded uncertainty U of the size after; blank when the same gauge was used").optional() },
  returns: value("no real change, real increase or real decrease"),
  draws: drawnAsChange,
  examples: [
    { formula: "=HATCH.REALCHANGE(73.01, 73.02, 0.008)", gives: "no real change" },
    {
      formula: "=HATCH.REALCHANGE({73.01;73.01;72.98}, {73.016;73.05;72.95}, 0.006, 0.008)",
      gives: [["no real change"], ["real increase"], ["real decrease"]],
    },
  ],
  notes: [
    "No real change does not mean no wear: it means that this gauge cannot see any.",
    "Sizes that differ fivefold, and are known to a hundredth of themselves, are refused: a decimal point or a unit is wrong.",
    "With both U at 95 %, about one unchanged size in 20 still counts as changed.",
  ],
  compute: ({ before, after, uBefore, uAfter = uBefore }) =>
    slipFault(before, after, Math.max(uBefore, uAfter)) ?? changeWords(before, after, uncertaintyOfChange(uBefore, uAfter)),
});
