import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { unlike } from "../../core/fault.ts";
import { axes, length, readings } from "../../core/inputs.ts";
import { drawnAsBore, largestOf } from "./bore-readings.ts";

/**
 * Bore wear, on the diameter: the largest reading less the standard bore. Positive is worn, negative
 * is a bore nowhere above its standard size. Source: US Navy Engineman training manual, p. 3-5 (every
 * height and axis is recorded, the worst one counts).
 */
export const boreWear = define({
  name: "BOREWEAR",
  group: "cylinder",
  role: "measures",
  summary: "Bore wear: the largest reading less the standard bore",
  definition: "max of readings − standard",
  source: "US Navy Engineman training manual p. 3-5; the largest reading counts: common practice",
  params: {
    readings: readings(),
    standard: length("standard bore, or the size it was last finished to").chosen(),
    axes: axes(),
  },
  returns: value("wear on the diameter, in the unit of the readings; negative below the standard bore"),
  draws: { ...drawnAsBore, standard: "standard", resultIs: "wear" },
  derives: [{ characteristic: "bore wear", from: ["bore", "standard bore"], per: "cylinder" }],
  examples: [
    { formula: "=HATCH.BOREWEAR({73.05,73.04;73.02,73.02}, 73)", gives: 0.05 },
    { formula: "=HATCH.BOREWEAR({73.05,73.04;73.26,73.27}, {73;73.25}, 2)", gives: [[0.05], [0.02]] },
  ],
  notes: [
    "Readings further than a fifth from the standard are refused: a decimal point or a unit is wrong.",
    "For wear since the last strip-down use the size measured then as the standard.",
  ],
  compute: ({ readings: bore, standard }) => {
    const { reading } = largestOf(bore);
    return unlike("readings", reading, "standard", standard) ?? decimal(reading - standard);
  },
});
