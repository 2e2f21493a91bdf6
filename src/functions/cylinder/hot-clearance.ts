import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { choice, length, temperature, text } from "../../core/inputs.ts";
import { coefficientOf, kelvins, REFERENCE_TEMPERATURE, TEMPERATURE_UNITS, type TemperatureUnit } from "../measurement/materials.ts";
import { fitClearance } from "./fit-clearance.ts";

/**
 * Running clearance with bore and piston each at its own temperature, both measured at 20 °C; below
 * 0 the piston is tight in the bore. Sources: linear expansion; ISO 1 (20 °C); materials.ts for each
 * coefficient.
 */
export const hotClearance = define({
  name: "HOTCLEARANCE",
  group: "cylinder",
  role: "measures",
  summary: "Piston-to-wall clearance when hot, from sizes at 20 °C, materials and temperatures",
  definition: "bore × (1 + its coefficient × (its temperature − 20 °C)) − piston × (1 + its coefficient × (its temperature − 20 °C))",
  source: "linear expansion; ISO 1 (reference temperature 20 °C); coefficients: Callister & Rethwisch table B.6, D. Swyt J. Res. NIST 99(1)",
  params: {
    bore: length("bore diameter at 20 °C"),
    boreMaterial: text("material of the bore by name, or its expansion coefficient in millionths per K"),
    boreTemperature: temperature("temperature of the bore in service").chosen(),
    piston: length("piston skirt at 20 °C"),
    pistonMaterial: text("material of the piston by name, or its expansion coefficient in millionths per K"),
    pistonTemperature: temperature("temperature of the piston skirt in service").chosen(),
    unit: choice("scale of both temperatures", TEMPERATURE_UNITS).default("C"),
  },
  returns: value("clearance when hot, in the unit of the bore; below 0 the piston is tight"),
  examples: [
    { formula: '=HATCH.HOTCLEARANCE(73, "grey iron", 90, 72.92, "piston alloy", 110)', gives: 0.006998 },
    { formula: '=HATCH.HOTCLEARANCE(3, "grey iron", {68,212}, 2.99, "piston alloy", {68,212}, "F")', gives: [[0.01, 0.007952]] },
  ],
  notes: [
    "An estimate: a piston is not at one temperature, and skirts are ground oval and tapered to allow for it. The maker's clearance decides.",
    'Temperatures are in °C unless the last input says "F": 194 °F typed without it counts as 194 °C.',
    "A coefficient is per K: one per °F is smaller by 1.8, so that 6.4 for steel would be taken as it stands.",
    "The coefficients hold near room temperature; with the maker's figure, type that.",
    "A temperature of 0 counts as measured; an empty cell reaches some sheets' functions as 0.",
  ],
  compute: ({ bore, boreMaterial, boreTemperature, piston, pistonMaterial, pistonTemperature, unit }) => {
    const cold = fitClearance(bore, piston, "bore", "piston");
    if (cold instanceof Fault) return cold;
    const hotBore = sizeAt(bore, boreMaterial, "boreMaterial", boreTemperature, "boreTemperature", unit);
    if (hotBore instanceof Fault) return hotBore;
    const hotPiston = sizeAt(piston, pistonMaterial, "pistonMaterial", pistonTemperature, "pistonTemperature", unit);
    return hotPiston instanceof Fault ? hotPiston : decimal(hotBore - hotPiston);
  },
});

function sizeAt(size: number, material: string, ofMaterial: string, at: number, ofTemperature: string, unit: TemperatureUnit): number | Fault {
  const coefficient = coefficientOf(material, ofMaterial);
  if (coefficient instanceof Fault) return coefficient;
  const scale = 1 + coefficient * kelvins(REFERENCE_TEMPERATURE[unit], at, unit);
  return isAbove(scale, 0) ? size * scale : refuse(ofTemperature, at, "no part is as cold as that");
}
