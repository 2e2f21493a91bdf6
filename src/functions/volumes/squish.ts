import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";

/** Squish: the gap between the flat of the piston and the flat of the head at top dead centre. Source: common practice. */
export const squish = define({
  name: "SQUISH",
  group: "volumes",
  role: "measures",
  summary: "Squish clearance: piston to head at top dead centre, from deck height and gasket",
  definition: "deck + gasket",
  source: "common practice",
  params: {
    deck: length("deck height at top dead centre: piston below the deck +, standing proud −").unbounded(),
    gasket: length("thickness of the head gasket when compressed"),
  },
  returns: value("squish clearance, in the unit of the deck; 0 or below means that piston and head meet"),
  examples: [
    { formula: "=HATCH.SQUISH(0.15, 0.9)", gives: 1.05 },
    { formula: "=HATCH.SQUISH({0.15;-0.1;0}, {0.9;0.9;0.9})", gives: [[1.05], [0.8], [0.9]] },
  ],
  notes: [
    "Check it with soft solder wire over the pin axis, on both sides: the piston rocks, rods stretch and parts grow when hot.",
    "A deck height of 0 counts as measured; an empty cell reaches some sheets' functions as 0.",
  ],
  compute: ({ deck, gasket }) => decimal(deck + gasket),
});
