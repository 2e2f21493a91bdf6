import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";
import { discArea, inVolumeUnit, volumeUnit } from "./volume-unit.ts";

/** Volume of a flat disc: a compressed gasket or the deck space. Source: geometry of the cylinder. */
export const discVolume = define({
  name: "DISCVOLUME",
  group: "volumes",
  role: "measures",
  summary: "Volume of a disc: the compressed head gasket, or the deck space above the piston",
  definition: "π/4 × diameter² × thickness; mm³ ÷ 1000 = cm³",
  source: "geometry: volume of a cylinder",
  params: {
    diameter: length("diameter: the gasket's bore, or the cylinder's"),
    thickness: length("thickness; negative for a piston that stands proud of the deck").unbounded(),
    unit: volumeUnit(),
  },
  returns: value("volume, cm³ from mm or in³ from in; negative where the thickness is"),
  examples: [
    { formula: "=HATCH.DISCVOLUME(75, 1.2)", gives: 5.3014 },
    { formula: '=HATCH.DISCVOLUME(4.1, 0.039, "in")', gives: 0.5149 },
    { formula: "=HATCH.DISCVOLUME(73, {0.5;0;-0.2})", gives: [[2.0927], [0], [-0.8371]] },
  ],
  notes: [
    "A gasket counts with its compressed thickness and its own bore, a little larger than the cylinder's: 75 instead of 73 mm is 5 % more volume.",
    "The deck space above the piston counts with the cylinder's bore.",
  ],
  compute: ({ diameter, thickness, unit }) => inVolumeUnit(discArea(diameter) * thickness, unit),
});
