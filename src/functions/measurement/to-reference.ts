import { decimal, isAbove } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { Fault, refuse } from "../../core/fault.ts";
import { choice, length, temperature, text } from "../../core/param.ts";
import { coefficientOf, kelvins, REFERENCE_TEMPERATURE, TEMPERATURE_UNITS } from "./materials.ts";

/** The length a part has at the reference temperature. Sources: ISO 1 (20 °C); materials.ts for each coefficient. */
export const toReference = define({
  name: "TOREFERENCE",
  group: "measurement",
  role: "assists",
  summary: "Length of a part at 20 °C from its length measured warm or cold",
  definition: "length × (1 + coefficient × (reference − 20 °C)) ÷ (1 + coefficient × (temperature − 20 °C))",
  source: "ISO 1 (reference temperature 20 °C); expansion coefficients: Callister & Rethwisch table B.6, D. Swyt J. Res. NIST 99(1)",
  params: {
    length: length("length or diameter as measured"),
    temperature: temperature("temperature of the part when measured"),
    material: text("its material by name, or its expansion coefficient in millionths per K"),
    reference: temperature("temperature wanted; blank for 20 °C").optional(),
    unit: choice("scale of both temperatures", TEMPERATURE_UNITS).default("C"),
  },
  returns: value("length at the reference temperature, in the unit of the length"),
  examples: [
    { formula: '=HATCH.TOREFERENCE(100.01155, 25, "aluminium")', gives: 100 },
    { formula: '=HATCH.TOREFERENCE(73.02, 77, 11.4, , "F")', gives: 73.015838 },
    { formula: '=HATCH.TOREFERENCE({73.02;73.05}, {26;20}, "grey iron")', gives: [[73.015006], [73.05]] },
  ],
  notes: [
    "Part and gauge drift apart only as far as they differ: let both lie side by side until they are of one temperature.",
    "A steel gauge read at the same temperature as a steel or iron part needs next to no correction.",
    "The coefficients hold near room temperature; a casting may differ from its row by a tenth. With the maker's figure, type that.",
  ],
  compute: ({ length: measured, temperature: at, material, reference, unit }) => {
    const coefficient = coefficientOf(material);
    if (coefficient instanceof Fault) return coefficient;
    // Lengths at 20 °C carry the coefficient, so that going to a temperature and back ends where it began.
    const scale = (to: number) => 1 + coefficient * kelvins(REFERENCE_TEMPERATURE[unit], to, unit);
    const [now, wanted] = [scale(at), scale(reference ?? REFERENCE_TEMPERATURE[unit])];
    if (!isAbove(now, 0)) return refuse("temperature", at, "no part is as cold as that");
    return isAbove(wanted, 0) ? decimal((measured * wanted) / now) : refuse("reference", reference, "no part is as cold as that");
  },
});
