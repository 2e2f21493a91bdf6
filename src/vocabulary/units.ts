/** Spellings of units of length, by the one they stand for. */
const LENGTHS: Readonly<Record<string, string>> = {
  mm: "mm",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  in: "in",
  "in.": "in",
  inch: "in",
  inches: "in",
  '"': "in",
  "″": "in",
  thou: "thou",
  mil: "thou",
  mils: "thou",
  µm: "µm",
  μm: "µm",
  um: "µm",
  micron: "µm",
  microns: "µm",
  cm: "cm",
};

/** One spelling for each unit; one that is not known stays as typed, in small letters. `undefined` for none. */
export function unitOf(text: string): string | undefined {
  const typed = text.trim().toLowerCase();
  if (typed === "") return undefined;
  return isLengthUnit(typed) ? LENGTHS[typed] : typed;
}

export const isLengthUnit = (unit: string): boolean => Object.hasOwn(LENGTHS, unit);

/** How units stand in headings and titles, by kind. `in` and `"` are units only in brackets. */
const WORD_LENGTHS = ["mm", "µm", "μm", "um", "thou", "inch", "inches"];
const PRESSURES = ["psi", "bar", "kPa", "MPa", "kg/cm²", "kgf/cm²"];
const BRACKETED_LENGTHS = [...WORD_LENGTHS, "in", '"', "in."];

const SPELT: Readonly<Record<string, string>> = { inch: "in", inches: "in", '"': "in", "in.": "in", μm: "µm", um: "µm" };

export type QuantityKind = "length" | "pressure";

/** The unit that a text names, in brackets or as a word: `Thrust (mm)`, `bores and pistons, mm at 20 °C`. */
export function unitIn(text: string, kind: QuantityKind): string | undefined {
  const bracketed = [...text.matchAll(/[([]([^)\]]*)[)\]]/g)].map(([, inside]) => inside!.trim());
  const words = text.split(/[\s,;:()[\]]+/).map((word) => word.replace(/\.+$/, ""));
  const found =
    bracketed.find((word) => named(word, kind === "length" ? BRACKETED_LENGTHS : PRESSURES)) ??
    words.find((word) => named(word, kind === "length" ? WORD_LENGTHS : PRESSURES));
  return found === undefined ? undefined : spelt(found);
}

const named = (word: string, units: readonly string[]): boolean => units.some((unit) => unit.toLowerCase() === word.toLowerCase());

function spelt(unit: string): string {
  const lower = unit.toLowerCase();
  return SPELT[lower] ?? PRESSURES.find((one) => one.toLowerCase() === lower) ?? lower;
}
