import { decimal, isAbove } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { Fault, refuse, unlike } from "../../core/fault.ts";
import { angle, length } from "../../core/inputs.ts";
import { pistonTravelAt } from "../../math/slider-crank.ts";
import { curveParams, liftCurve } from "./lift-curve.ts";

const COLUMNS = ["least", "at angle", "contact"] as const;
/** Rods are one and a half to three strokes long. */
const FURTHEST_APART = 5;

/** Least gap between valve and piston as the crank turns. Source: kinematics of the slider-crank; valve and piston measured along the stem. */
export const valveToPiston = define({
  name: "VALVETOPISTON",
  group: "valves",
  role: "describes",
  summary: "Least gap between valve and piston, from lifts by crank angle, and where it is",
  definition: "least of atTop + PISTONTRAVEL(angle, stroke, rod) × cos valveAngle − lift",
  source: "kinematics of the slider-crank; projection on the stem: geometry",
  params: {
    ...curveParams("crank angles in degrees from top dead centre between exhaust and inlet, before it negative"),
    stroke: length("stroke of the piston").chosen(),
    rod: length("connecting rod, centre to centre").chosen(),
    atTop: length("gap at top dead centre with the valve shut, along its stem"),
    valveAngle: angle("angle of the stem to the cylinder's axis, in degrees").atLeast(0).below(90).default(0).chosen(),
  },
  returns: row(COLUMNS, "a row of labels and one of values: the least gap, the crank angle of it, and the word touches where it is 0 or less"),
  examples: [
    { formula: "=HATCH.VALVETOPISTON({0,30,60}, {1,3,6}, 50, 100, 5)", gives: [[...COLUMNS], [4, 0, ""]] },
    { formula: "=HATCH.VALVETOPISTON({-20;-10;0;10;20}, {0.2;0.9;2.1;4;6.2}, 80, 130, 3.5, 12)", gives: [[...COLUMNS], [0.276046, 10, ""]] },
  ],
  notes: [
    "It knows the readings only: between two of them the gap can be a little less. Take readings every few degrees from 20° before to 20° after top dead centre.",
    "All lengths in one unit. The gap along the stem is not the one at the edge of a pocket: look at that too.",
    "Rods stretch, valves float and timing gear slackens at speed: how much must be left is the maker's to say. Check with clay or a light spring before starting; turn by hand, and stop at any resistance.",
  ],
  compute: ({ angles, lifts, stroke, rod, atTop, valveAngle }) => {
    const curve = liftCurve(angles, lifts);
    if (curve instanceof Fault) return curve;
    if (curve === undefined) return COLUMNS.map(() => "");
    if (!isAbove(rod, stroke / 2)) return refuse("rod", rod, `it must be longer than half the stroke, ${decimal(stroke / 2)}`);
    const apart = unlike("rod", rod, "stroke", stroke, FURTHEST_APART);
    if (apart) return apart;
    const most = Math.max(...curve.map(({ lift }) => lift));
    if (isAbove(most, stroke / 2)) return refuse("lifts", most, `no valve lifts by more than half the stroke, ${decimal(stroke / 2)}: are both in one unit?`);
    if (isAbove(atTop, stroke)) return refuse("atTop", atTop, `it is more than the stroke ${decimal(stroke)}: are both in one unit?`);
    const along = Math.cos((valveAngle * Math.PI) / 180);
    const gaps = curve.map((reading) => decimal(atTop + pistonTravelAt(reading.angle, stroke, rod) * along - reading.lift));
    const at = gaps.reduce((best, gap, i) => (gap < gaps[best]! ? i : best), 0);
    return [gaps[at]!, decimal(curve[at]!.angle), isAbove(gaps[at]!, 0) ? "" : "touches"];
  },
});
