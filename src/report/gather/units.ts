/** How units stand in headings and titles, by kind. `in` and `"` are units only in brackets. */
const LENGTHS = ["mm", "µm", "μm", "um", "thou", "inch", "inches"];
const PRESSURES = ["psi", "bar", "kPa", "MPa", "kg/cm²", "kgf/cm²"];
const BRACKETED_LENGTHS = [...LENGTHS, "in", '"', "in."];

const SPELT: Readonly<Record<string, string>> = { inch: "in", inches: "in", '"': "in", "in.": "in", μm: "µm", um: "µm" };

export type UnitKind = "length" | "pressure";

/** The unit that a text names, in brackets or as a word: `Thrust (mm)`, `bores and pistons, mm at 20 °C`. */
export function unitIn(text: string, kind: UnitKind): string | undefined {
  const bracketed = [...text.matchAll(/[([]([^)\]]*)[)\]]/g)].map(([, inside]) => inside!.trim());
  const words = text.split(/[\s,;:()[\]]+/).map((word) => word.replace(/\.+$/, ""));
  const found =
    bracketed.find((word) => named(word, kind === "length" ? BRACKETED_LENGTHS : PRESSURES)) ??
    words.find((word) => named(word, kind === "length" ? LENGTHS : PRESSURES));
  return found === undefined ? undefined : spelt(found);
}

const named = (word: string, units: readonly string[]): boolean => units.some((unit) => unit.toLowerCase() === word.toLowerCase());

function spelt(unit: string): string {
  const lower = unit.toLowerCase();
  return SPELT[lower] ?? PRESSURES.find((one) => one.toLowerCase() === lower) ?? lower;
}
