import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { length, number } from "../../core/inputs.ts";

/** Cross-hatch angle that a hone makes, from its strokes and its turns. Source: geometry of the scratch on the unrolled bore. */
export const honeAngle = define({
  name: "HONEANGLE",
  group: "surface",
  role: "decides",
  summary: "Cross-hatch angle of a honed bore from stroke rate, stroke length and speed of the hone",
  definition: "2 × atan(2 × strokeLength × strokeRate ÷ (π × bore × rpm))",
  source: "geometry: the mean speed along the bore by the speed round it",
  params: {
    bore: length("bore diameter"),
    strokeRate: number("full strokes a minute, each once up and down").above(0).chosen(),
    strokeLength: length("length of one stroke one way, in the unit of the bore").chosen(),
    rpm: number("turns of the hone a minute").above(0).chosen(),
  },
  returns: value("angle between the two families of scratches in degrees, about the line across the bore"),
  examples: [
    { formula: "=HATCH.HONEANGLE(73, 50, 110, 160)", gives: 33.375164 },
    { formula: "=HATCH.HONEANGLE(73, {40;60}, 110, 160)", gives: [[26.972235], [39.570743]] },
  ],
  notes: [
    "Read from the axis of the bore the same pattern is 180° less this: ask which one a maker's figure means.",
    "It is the mean of a stroke: near the turning points the hone slows down and the scratches lie flatter.",
    "The stone's travel counts, not the bore's length. Honing dust is hard and fine: wear eye protection and wash the bores afterwards.",
  ],
  compute: ({ bore, strokeRate, strokeLength, rpm }) => decimal((360 / Math.PI) * Math.atan((2 * strokeLength * strokeRate) / (Math.PI * bore * rpm))),
});
