import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { unlike } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/** A lobe wears most at its nose; one that has lost four fifths of its lift runs no engine. */
const FURTHEST_APART = 5;

/** Wear of a cam lobe, as the lift that it has lost. Source: TM 5-3805-260-24 p. 1-11. */
export const lobeWear = define({
  name: "LOBEWEAR",
  group: "valves",
  role: "measures",
  summary: "Wear of a cam lobe: the standard lift less the lift measured",
  definition: "standard − lift",
  source: "TM 5-3805-260-24 p. 1-11",
  params: {
    lift: length("lift measured, as HATCH.LOBELIFT or an indicator gives it"),
    standard: length("lift of the lobe when new").chosen(),
  },
  returns: value("lift that is lost, in the unit of both; negative above the standard lift"),
  examples: [
    { formula: "=HATCH.LOBEWEAR(6.35, 6.4)", gives: 0.05 },
    { formula: "=HATCH.LOBEWEAR({6.4;6.12}, {6.4;6.4})", gives: [[0], [0.28]] },
  ],
  notes: [
    "That manual replaces a camshaft over .010 in; the limit of this engine is in its own. A worn lobe has worn its follower too.",
    "Lobes of inlet and exhaust may differ when new.",
  ],
  compute: ({ lift, standard }) => unlike("lift", lift, "standard", standard, FURTHEST_APART) ?? decimal(standard - lift),
});
