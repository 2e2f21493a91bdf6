import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { number, volume } from "../../core/inputs.ts";

/** Blow-by through the crankcase breather, per hour. Source: common practice. */
export const blowBy = define({
  name: "BLOWBY",
  group: "tests",
  role: "measures",
  summary: "Blow-by of a running engine: gas from the crankcase breather per hour",
  definition: "volume × 60 ÷ minutes",
  source: "common practice",
  params: {
    volume: volume("gas that passed the meter at the breather").atLeast(0),
    minutes: number("how long it was measured, in minutes").above(0).chosen(),
  },
  returns: value("volume per hour, in the unit of the volume"),
  examples: [
    { formula: "=HATCH.BLOWBY(0.24, 5)", gives: 2.88 },
    { formula: "=HATCH.BLOWBY({0.24;0.31}, 5)", gives: [[2.88], [3.72]] },
  ],
  notes: [
    "Minutes as a number: 5.5 for five and a half, not a time of day.",
    "Measure warm, at one load and speed, with every other opening of the crankcase shut; compare with the same engine's earlier readings: HATCH.WEARRATE.",
    "A running engine: exhaust gas kills indoors, belts and propeller shafts catch clothing, and a crankcase whose breather is blocked pushes its seals out.",
    "A volume of 0 counts as measured; an empty cell reaches some sheets' functions as 0.",
  ],
  compute: ({ volume: gas, minutes }) => decimal((gas * 60) / minutes),
});
