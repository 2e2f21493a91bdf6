import { define, value } from "../../core/define.ts";
import { count, length } from "../../core/inputs.ts";
import { discArea, inVolumeUnit, volumeUnit } from "./volume-unit.ts";

/** Swept volume (displacement) of so many cylinders. Source: FAA-H-8083-30, piston displacement. */
export const sweptVolume = define({
  name: "SWEPTVOLUME",
  group: "volumes",
  role: "measures",
  summary: "Swept volume (displacement) from bore, stroke and number of cylinders",
  definition: "π/4 × bore² × stroke × cylinders; mm³ ÷ 1000 = cm³",
  source: "FAA-H-8083-30 general handbook, piston displacement",
  params: {
    bore: length("bore diameter"),
    stroke: length("stroke"),
    cylinders: count("number of cylinders").default(1),
    unit: volumeUnit(),
  },
  returns: value("swept volume, cm³ from mm or in³ from in"),
  examples: [
    { formula: "=HATCH.SWEPTVOLUME(73, 74, 3)", gives: 929.156 },
    { formula: '=HATCH.SWEPTVOLUME(5.5, 5.4, 8, "in")', gives: 1026.36 },
    { formula: "=HATCH.SWEPTVOLUME({73;73.25;73.5}, 74)", gives: [[309.719], [311.844], [313.976]] },
  ],
  notes: ['The unit is that of bore and stroke; nothing shows which was meant, so say "in" where inches are typed.'],
  compute: ({ bore, stroke, cylinders, unit }) => inVolumeUnit(discArea(bore) * stroke * cylinders, unit),
});
