import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/** Lift of a cam lobe from two sizes taken with a micrometer. Source: TM 5-3805-260-24 p. 1-11. */
export const lobeLift = define({
  name: "LOBELIFT",
  group: "valves",
  role: "measures",
  summary: "Lift of a cam lobe: its height less the base circle",
  definition: "height − base",
  source: "TM 5-3805-260-24 p. 1-11",
  params: {
    height: length("lobe from the back of the base circle to the nose"),
    base: length("base circle, across it where no flank reaches"),
  },
  returns: value("lift of the lobe, in the unit of both"),
  examples: [
    { formula: "=HATCH.LOBELIFT(38.4, 32)", gives: 6.4 },
    { formula: "=HATCH.LOBELIFT({38.4;38.35}, 32)", gives: [[6.4], [6.35]] },
  ],
  notes: [
    "Across the lobe the width is the base circle only where no flank reaches: long cams have none to measure. Turn the camshaft under an indicator instead.",
    "A height of more than twice the base circle is refused: a digit or a unit is wrong.",
    "HATCH.LOBEWEAR sets it against the standard lift, HATCH.VALVELIFT brings it to the valve.",
  ],
  compute: ({ height, base }) => {
    if (isBelow(height, base)) return refuse("height", height, `it is less than the base circle ${decimal(base)}: are they swapped?`);
    if (isAbove(height, 2 * base)) return refuse("height", height, `it is more than twice the base circle ${decimal(base)}: is a digit or a unit wrong?`);
    return decimal(height - base);
  },
});
