import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { angle, length } from "../../core/inputs.ts";
import { pistonTravelAt } from "../../math/slider-crank.ts";

/** Piston travel from top dead centre at a crank angle, pin not offset. Source: kinematics of the slider-crank. */
export const pistonTravel = define({
  name: "PISTONTRAVEL",
  group: "volumes",
  role: "measures",
  summary: "How far the piston stands below top dead centre at a crank angle",
  definition: "r × (1 − cos angle) + rod − √(rod² − r² × sin² angle), with r = stroke ÷ 2",
  source: "kinematics of the slider-crank; pin on the axis of the cylinder",
  params: {
    angle: angle("crank angle from top dead centre, in degrees").chosen(),
    stroke: length("stroke of the piston"),
    rod: length("connecting rod, centre to centre"),
  },
  returns: value("travel from top dead centre, in the unit of the stroke"),
  examples: [
    { formula: "=HATCH.PISTONTRAVEL(90, 50, 100)", gives: 28.175416 },
    { formula: "=HATCH.PISTONTRAVEL({0;30;60;180}, 50, 100)", gives: [[0], [4.133691], [14.871879], [50]] },
  ],
  notes: [
    "The angle is in degrees: 1.57 is a degree and a half, not a right angle. For radians write DEGREES(…) round them.",
    "Turn the engine by hand with the plugs out; a pin that is set off the cylinder's axis shifts the figures a little.",
  ],
  compute: ({ angle: degrees, stroke, rod }) =>
    isAbove(rod, stroke / 2)
      ? decimal(pistonTravelAt(degrees, stroke, rod))
      : refuse("rod", rod, `it must be longer than half the stroke, ${decimal(stroke / 2)}`),
});
