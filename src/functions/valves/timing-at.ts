import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";
import { curveParams, type LiftReading, liftCurve } from "./lift-curve.ts";

const COLUMNS = ["opens", "closes", "duration", "centre"] as const;
/** Two turns of the crank: a valve has then opened again. */
const CYCLE = 720;

/** When a valve opens and closes at a lift, from readings by crank angle. Source: common practice; straight line between readings. */
export const timingAt = define({
  name: "TIMINGAT",
  group: "valves",
  role: "describes",
  summary: "Valve timing at a lift from readings by crank angle: opens, closes, duration and centre",
  definition:
    "from the largest of lifts out each way to the first below lift, then a straight line between the two readings; duration = closes − opens; centre = (opens + closes) ÷ 2",
  source: "timing at a checking lift: common practice; linear interpolation",
  params: {
    ...curveParams("crank angles in degrees, rising throughout: after 355 comes 365, not 5"),
    lift: length("lift at which opening and closing count, in the unit of lifts").chosen(),
  },
  returns: row(COLUMNS, "a row of labels, then one of crank degrees for each lift; blank while a reading is missing"),
  examples: [
    { formula: "=HATCH.TIMINGAT({100,120,140,160,180}, {0,3,6,3,0}, 1.5)", gives: [[...COLUMNS], [110, 170, 60, 140]] },
    {
      formula: "=HATCH.TIMINGAT({340;350;360;370;380;390}, {0;1;4;5;2;0}, {1;2})",
      gives: [[...COLUMNS], [350, 385, 35, 367.5], [353.333333, 380, 26.666667, 366.666667]],
    },
  ],
  notes: [
    "centre is the middle between opening and closing, not the angle of most lift: a lobe whose flanks differ has them apart.",
    "Readings 5° apart cost about 0.3° at each edge, 2° apart hardly anything: take them close where the valve lifts off and sets down.",
    "Common checking lifts: .006 in at the valve, .050 in at the lobe. Timing is comparable only at one lift.",
    "Turn the engine one way only, by hand, with the plugs out; slack in the drive comes into the reading otherwise.",
  ],
  compute: ({ angles, lifts, lift }) => {
    const curve = liftCurve(angles, lifts);
    if (curve instanceof Fault) return curve;
    if (curve === undefined) return COLUMNS.map(() => "");
    const falls = curve.findIndex(({ angle }, i) => i > 0 && !isAbove(angle, curve[i - 1]!.angle));
    if (falls > 0) {
      const { angle } = curve[falls]!;
      return refuse("angles", angle, `after ${decimal(curve[falls - 1]!.angle)} they must rise: carry on past a full turn, 365 and not 5`);
    }
    const last = curve.at(-1)!.angle;
    if (isAbove(last - curve[0]!.angle, CYCLE))
      return refuse("angles", last, `it is more than ${CYCLE} degrees after the first: the valve opens again by then`);
    const peak = curve.reduce((best, reading, i) => (reading.lift > curve[best]!.lift ? i : best), 0);
    if (isBelow(curve[peak]!.lift, lift)) return refuse("lift", lift, `the lifts never reach it, the largest is ${decimal(curve[peak]!.lift)}`);
    const opens = edge(curve, peak, -1, lift);
    const closes = edge(curve, peak, 1, lift);
    if (opens === undefined || closes === undefined) {
      const end = opens === undefined ? curve[0]! : curve.at(-1)!;
      return refuse("lifts", end.lift, `at ${decimal(end.angle)} degrees, where they end, they are not below ${decimal(lift)} yet: read on`);
    }
    return [decimal(opens), decimal(closes), decimal(closes - opens), decimal((opens + closes) / 2)];
  },
});

/** The angle at which the lift is passed on one side of the peak; nothing where the readings end above it. */
function edge(curve: readonly LiftReading[], peak: number, side: 1 | -1, lift: number): number | undefined {
  for (let i = peak + side; i >= 0 && i < curve.length; i += side) {
    const [outer, inner] = [curve[i]!, curve[i - side]!];
    if (isBelow(outer.lift, lift)) return outer.angle + ((inner.angle - outer.angle) * (lift - outer.lift)) / (inner.lift - outer.lift);
  }
  return undefined;
}
