import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { choice, length, speed } from "../../core/inputs.ts";

/** Strokes in a turn, over what brings mm a minute to m/s and inches a minute to ft/min. */
const PER_UNIT = { mm: 2 / (1000 * 60), in: 2 / 12 } as const;

/** Mean piston speed: two strokes a turn of the crank. Source: definition. */
export const pistonSpeed = define({
  name: "PISTONSPEED",
  group: "cylinder",
  role: "measures",
  summary: "Mean piston speed, in m/s from a stroke in mm or in ft/min from a stroke in inches",
  definition: "mm: 2 × stroke ÷ 1000 × rpm ÷ 60 in m/s; in: 2 × stroke ÷ 12 × rpm in ft/min",
  source: "definition: a piston makes two strokes in a turn of the crank",
  params: {
    stroke: length("stroke of the piston"),
    rpm: speed("turns of the crank a minute").chosen(),
    unit: choice("unit of the stroke: mm gives m/s, in gives ft/min", ["mm", "in"]).default("mm"),
  },
  returns: value("mean piston speed, m/s for mm and ft/min for in"),
  examples: [
    { formula: "=HATCH.PISTONSPEED(90, 3000)", gives: 9 },
    { formula: '=HATCH.PISTONSPEED(4.5, {600,900}, "in")', gives: [[450, 675]] },
  ],
  notes: ["The piston moves at about 1.6 times the mean near the middle of its stroke."],
  compute: ({ stroke, rpm, unit }) => decimal(stroke * rpm * PER_UNIT[unit]),
});
