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
