import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { angle, length, ratio } from "../../core/inputs.ts";
import { pistonTravelAt } from "../../math/slider-crank.ts";

/** Ratio over the part of the stroke that is left when the intake valve closes. Source: definition; slider-crank. */
export const trappedRatio = define({
  name: "TRAPPEDRATIO",
  group: "volumes",
  role: "measures",
  summary: "Compression ratio from the point where the intake valve closes (dynamic ratio)",
  definition: "1 + (ratio − 1) × piston travel left ÷ stroke",
  source: "definition; piston travel from the kinematics of the slider-crank",
  params: {
    ratio: ratio("static compression ratio").above(1).chosen(),
    stroke: length("stroke of the piston"),
    rod: length("connecting rod, centre to centre"),
    intakeCloses: angle("intake valve closes, degrees after bottom dead centre").above(0).below(180).chosen(),
  },
  returns: value("compression ratio of what is trapped"),
  examples: [
    { formula: "=HATCH.TRAPPEDRATIO(9, 50, 100, 60)", gives: 7.379501 },
    { formula: "=HATCH.TRAPPEDRATIO(9.5, 76, 130, {30;45;60})", gives: [[9.086735], [8.569171], [7.848578]] },
  ],
  notes: ["Use the closing point at the lift at which the maker times the valve; at the seat it closes later than at 1 mm or .050 in of lift."],
  compute: ({ ratio: full, stroke, rod, intakeCloses }) => {
    if (!isAbove(rod, stroke / 2)) return refuse("rod", rod, `it must be longer than half the stroke, ${decimal(stroke / 2)}`);
    return decimal(1 + ((full - 1) * pistonTravelAt(180 + intakeCloses, stroke, rod)) / stroke);
  },
});
