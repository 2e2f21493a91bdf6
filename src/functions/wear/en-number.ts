import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";
import { changeParams, drawnAsChange, slipFault, uncertaintyOfChange } from "./change-params.ts";

/** The En number of two results. Source: ISO/IEC 17043, annex on statistical methods; ISO 13528, 9.7. */
export const enNumber = define({
  name: "ENNUMBER",
  group: "wear",
  role: "assists",
  summary: "En number: the difference of two results by the uncertainty of that difference",
  definition: "(after − before) ÷ √(uBefore² + uAfter²)",
  source: "ISO/IEC 17043 and ISO 13528, En number",
  params: { ...changeParams, uAfter: length("expanded uncertainty U of the size after, at 95 %") },
  returns: value("the En number; between −1 and 1 the two results agree"),
  draws: drawnAsChange,
  examples: [
    { formula: "=HATCH.ENNUMBER(73.01, 73.02, 0.006, 0.008)", gives: 1 },
    { formula: "=HATCH.ENNUMBER({73.01;73.01}, {73.05;72.98}, 0.006, 0.008)", gives: [[4], [-3]] },
  ],
  notes: [
    "Two people, or two gauges, agree on a part when En is between −1 and 1. Above 0, the second result is the larger one.",
    "Results that differ fivefold, and are known to a hundredth of themselves, are refused: a decimal point or a unit is wrong.",
    "It takes the two results as independent: two gauges set on one ring share what that ring is off by.",
  ],
  compute: ({ before, after, uBefore, uAfter }) =>
    slipFault(before, after, Math.max(uBefore, uAfter)) ?? decimal((after - before) / uncertaintyOfChange(uBefore, uAfter)),
});
