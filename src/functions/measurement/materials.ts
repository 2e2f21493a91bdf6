import { Fault } from "../../core/fault.ts";

export interface Material {
  name: string;
  /** Mean linear expansion near room temperature, in 10⁻⁶ per K (µm per metre and K). */
  coefficient: number;
  source: string;
  /** Other words for the same row. */
  aliases?: readonly string[];
}

const CALLISTER = "Callister & Rethwisch, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6";
const SWYT = "D. Swyt, J. Res. NIST 99(1), 31, 1994";

/** Engine materials. A named row is a fair average of its kind; a coefficient typed from the maker's data is better. */
export const MATERIALS: readonly Material[] = [
  { name: "grey iron", coefficient: 11.4, source: `${CALLISTER}, grades G1800 to G4000`, aliases: ["gray iron", "cast iron"] },
  { name: "ductile iron", coefficient: 11.2, source: `${CALLISTER}, grade 60-40-18`, aliases: ["nodular iron"] },
  { name: "steel", coefficient: 11.5, source: SWYT },
  { name: "carbon steel", coefficient: 11.7, source: `${CALLISTER}, steel 1020` },
  { name: "alloy steel", coefficient: 12.3, source: `${CALLISTER}, steel 4140` },
  { name: "stainless steel", coefficient: 17.2, source: `${CALLISTER}, stainless 304` },
  { name: "aluminium", coefficient: 23.1, source: SWYT, aliases: ["aluminum"] },
  { name: "cast aluminium", coefficient: 21.5, source: `${CALLISTER}, alloy 356.0`, aliases: ["cast aluminum"] },
  { name: "wrought aluminium", coefficient: 23.6, source: `${CALLISTER}, alloy 6061`, aliases: ["wrought aluminum"] },
  {
    name: "piston alloy",
    coefficient: 20,
    source: "a piston maker's published sheet for the 12 % silicon alloy: 19.5 to 20.5 between 20 and 100 °C, the middle taken",
  },
  { name: "magnesium", coefficient: 26, source: `${CALLISTER}, alloy AZ91D` },
  { name: "brass", coefficient: 20.5, source: `${CALLISTER}, C36000` },
  { name: "bronze", coefficient: 18, source: `${CALLISTER}, bearing bronze C93200` },
  { name: "copper", coefficient: 17, source: `${CALLISTER}, C11000` },
  { name: "titanium", coefficient: 8.6, source: `${CALLISTER}, Ti-6Al-4V` },
];

export const MATERIAL_NAMES: readonly string[] = MATERIALS.map(({ name }) => name);

const PER_MILLION = 1e-6;
/** No solid part of an engine lies outside these, in 10⁻⁶ per K; a number outside was typed in another unit. */
const LEAST = 0.1;
const MOST = 200;

const WANT = "a coefficient in millionths per K, such as 11.5";

const known = new Map(MATERIALS.flatMap((material) => [material.name, ...(material.aliases ?? [])].map((word) => [word, material.coefficient] as const)));

/**
 * Linear expansion per K (so 11.5e-6 for steel) of a named material, or of a coefficient typed in
 * millionths per K. `param` is the name that a fault gives to the argument.
 */
export function coefficientOf(materialOrNumber: string | number, param = "material"): number | Fault {
  const text = String(materialOrNumber).trim();
  const named = known.get(text) ?? known.get(text.toLowerCase().replace(/\s+/g, " "));
  if (named !== undefined) return named * PER_MILLION;
  const typed = text === "" ? Number.NaN : Number(text);
  if (Number.isNaN(typed)) return new Fault("not-a-choice", param, materialOrNumber, `one of ${MATERIAL_NAMES.join(", ")}, or ${WANT}`);
  if (typed < LEAST) return new Fault("too-small", param, typed, WANT);
  return typed > MOST ? new Fault("too-large", param, typed, WANT) : typed * PER_MILLION;
}

const FAHRENHEIT_PER_KELVIN = 1.8;
export const TEMPERATURE_UNITS = ["C", "F"] as const;
export type TemperatureUnit = (typeof TEMPERATURE_UNITS)[number];

/** The reference temperature of every dimension on a drawing: 20 °C, which is 68 °F (ISO 1). */
export const REFERENCE_TEMPERATURE: Record<TemperatureUnit, number> = { C: 20, F: 68 };

/** From one temperature to another in kelvins, whichever scale both were read on. */
export const kelvins = (from: number, to: number, unit: TemperatureUnit): number => (to - from) / (unit === "F" ? FAHRENHEIT_PER_KELVIN : 1);
