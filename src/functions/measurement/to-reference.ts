import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { choice, length, temperature, text } from "../../core/inputs.ts";
import { coefficientOf, kelvins, REFERENCE_TEMPERATURE, TEMPERATURE_UNITS, type TemperatureUnit } from "./materials.ts";

/** 60 °C, which nobody holds in the hand. */
const HOTTEST: Record<TemperatureUnit, number> = { C: 60, F: 140 };

/** The length a part has at the reference temperature. Sources: ISO 1 (20 °C); materials.ts for each coefficient. */
export const toReference = define({
  name: "TOREFERENCE",
  group: "measurement",
  role: "assists",
  summary: "Length of a part at 20 °C from its length measured warm or cold",
  definition:
    "length × (1 + coefficient × (reference − 20 °C)) ÷ (1 + coefficient × (temperature − 20 °C)); × (1 + gauge's coefficient × (gaugeTemperature − 20 °C)) with a gauge given",
  source: "ISO 1 (reference temperature 20 °C); expansion coefficients: Callister & Rethwisch table B.6, D. Swyt J. Res. NIST 99(1)",
  params: {
    length: length("length or diameter as measured"),
    temperature: temperature("temperature of the part when measured"),
    material: text("its material by name, or its expansion coefficient in millionths per K"),
    reference: temperature("temperature wanted; blank for 20 °C").optional(),
    unit: choice("scale of all temperatures", TEMPERATURE_UNITS).default("C"),
    gaugeTemperature: temperature("temperature of the gauge; blank with its material given for that of the part").optional(),
    gaugeMaterial: text("material of the gauge, or its coefficient; blank for a gauge taken as right at any temperature").optional(),
  },
  returns: value("length at the reference temperature, in the unit of the length"),
  examples: [
    { formula: '=HATCH.TOREFERENCE(100.01155, 25, "aluminium")', gives: 100 },
    { formula: '=HATCH.TOREFERENCE(73.02, 77, 11.4, , "F")', gives: 73.015838 },
    { formula: '=HATCH.TOREFERENCE({73.02;73.05}, {26;20}, "grey iron")', gives: [[73.015006], [73.05]] },
    { formula: '=HATCH.TOREFERENCE(73.02, 26, "grey iron", , , 22, "steel")', gives: 73.016685 },
  ],
  notes: [
    "Part and gauge drift apart only as far as they differ: let both lie side by side until they are of one temperature.",
    'Temperatures are in °C unless unit is "F". Nobody measures by hand at more than 60 °C, so such a temperature is refused.',
    "A coefficient is per K: one per °F is smaller by 1.8, so that 6.4 for steel would be taken as it stands.",
    "A gauge set on a ring or master is right at the temperature at which it was set, if ring and gauge are of one material.",
    "A steel gauge read at the same temperature as a steel or iron part needs next to no correction.",
    "The coefficients hold near room temperature; a casting may differ from its row by a tenth. With the maker's figure, type that.",
  ],
  compute: ({ length: measured, temperature: at, material, reference, unit, gaugeTemperature, gaugeMaterial }) => {
    const hottest = HOTTEST[unit];
    if (isAbove(at, hottest)) return refuse("temperature", at, `nobody measures by hand above ${hottest} °${unit}${unit === "C" ? ", is it in °F?" : ""}`);
    const gauge = growthOfGauge(gaugeTemperature, gaugeMaterial, at, unit);
    if (gauge instanceof Fault) return gauge;
    const coefficient = coefficientOf(material);
    if (coefficient instanceof Fault) return coefficient;
    // Lengths at 20 °C carry the coefficient, so that going to a temperature and back ends where it began.
    const scale = (to: number) => 1 + coefficient * kelvins(REFERENCE_TEMPERATURE[unit], to, unit);
    const [now, wanted] = [scale(at), scale(reference ?? REFERENCE_TEMPERATURE[unit])];
    if (!isAbove(now, 0)) return refuse("temperature", at, "no part is as cold as that");
    return isAbove(wanted, 0) ? decimal((measured * gauge * wanted) / now) : refuse("reference", reference, "no part is as cold as that");
  },
});

/** How much longer a gauge's own scale is than at 20 °C, where it is right; 1 without a gauge given. */
function growthOfGauge(temperature: number | undefined, material: string | undefined, partTemperature: number, unit: TemperatureUnit): number | Fault {
  // Where a host hands empty cells over as 0, a temperature of 0 and no material are no gauge.
  if (material === undefined)
    return temperature ? new Fault("missing", "gaugeMaterial", undefined, "the material of the gauge whose temperature is given, such as steel") : 1;
  const coefficient = coefficientOf(material, "gaugeMaterial");
  if (coefficient instanceof Fault) return coefficient;
  const scale = 1 + coefficient * kelvins(REFERENCE_TEMPERATURE[unit], temperature ?? partTemperature, unit);
  return isAbove(scale, 0) ? scale : refuse("gaugeTemperature", temperature, "no gauge is as cold as that");
}
