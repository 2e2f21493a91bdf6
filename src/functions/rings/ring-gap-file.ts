import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { type Fault, refuse, swapped } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";
import { show } from "../../core/sentences.ts";

/** How much a ring's ends must lose. By a target alone until the gap is the target; by limits nothing while the gap is inside them. */
export const ringGapFile = define({
  name: "RINGGAPFILE",
  group: "rings",
  role: "decides",
  summary: "How much to file off a ring's ends to reach the gap; 0 when it is open enough or inside its limits",
  definition:
    "max(target − measured, 0); with least 0 from least up, below it goal − measured, goal = target if least ≤ target ≤ most, else (least + most) ÷ 2, or least without most; above most: too wide",
  source: "common practice",
  params: {
    measured: length("end gap measured with the ring square in its bore; 0 for ends that touch").atLeast(0),
    target: length("end gap wanted; blank to go by the limits alone").optional().chosen(),
    least: length("least gap that the maker allows; a gap from here up stays as it is").optional().chosen(),
    most: length("largest gap that the maker allows").optional().chosen(),
  },
  returns: value("how much to take off both ends together, in the unit of the gaps, or text starting too wide:"),
  examples: [
    { formula: "=HATCH.RINGGAPFILE(0.22, 0.29)", gives: 0.07 },
    { formula: "=HATCH.RINGGAPFILE({0.22;0.29;0.35}, 0.29)", gives: [[0.07], [0], [0]] },
    { formula: "=HATCH.RINGGAPFILE({0.22;0.25;0.62}, , 0.25, 0.45)", gives: [[0.13], [0], ["too wide: 0.62 is over 0.45, and filing cannot close it"]] },
  ],
  notes: [
    "With a target alone 0 also where the gap is wider than wanted: give the limits too, or judge it with HATCH.VERDICT. Filing cannot close a gap.",
    "With limits a gap inside them stays, also where it is not the target. A target outside the limits is passed over.",
    "Ends that touch, 0, may be short of room by any amount: file what is said, then measure again. Some sheets hand an empty cell over as 0.",
  ],
  compute: ({ measured, target, least, most }) => {
    const goal = filingGoal({ target, least, most });
    if (typeof goal !== "number") return goal ?? "";
    if (most !== undefined && isAbove(measured, most)) return `too wide: ${show(measured)} is over ${show(most)}, and filing cannot close it`;
    return isBelow(measured, least ?? goal) ? decimal(goal - measured) : 0;
  },
});

/** What a ring's gap is to be, as far as it is typed. */
interface GapWanted {
  target: number | undefined;
  least: number | undefined;
  most: number | undefined;
}

/** The gap to which a ring is filed that is too close; `undefined` while nothing says so. */
function filingGoal({ target, least, most }: GapWanted): number | Fault | undefined {
  if (least !== undefined && most !== undefined && isAbove(least, most)) return swapped("least", least, "most", most);
  if (least === undefined) {
    if (target !== undefined && most !== undefined && isAbove(target, most)) return refuse("target", target, `it is wider than most ${show(most)} allows`);
    return target;
  }
  const isInside = target !== undefined && !isBelow(target, least) && !(most !== undefined && isAbove(target, most));
  if (isInside) return target;
  return most === undefined ? least : decimal((least + most) / 2);
}
