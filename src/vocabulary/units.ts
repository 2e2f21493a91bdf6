/** What a number measures: it decides what it is compared with, and what a slip can be. */
export type QuantityKind = "length" | "volume" | "pressure" | "ratio" | "percent" | "force" | "mass" | "flow" | "angle" | "content";

interface Unit {
  kind: QuantityKind;
  /** Other spellings; capitals do not matter. */
  words?: readonly string[];
  /** Spellings that are units in brackets or in a column of units only: in running text they are other words. */
  bracketed?: readonly string[];
}

/** The entry in which a build sheet says in what it keeps every length. */
export const LENGTH_UNIT_ENTRY = "Unit of length";

/** The units of readings and limits, each by its one spelling. Equal ones, as ml and cm³, are one unit. */
export const UNITS: Readonly<Record<string, Unit>> = {
  mm: { kind: "length", words: ["millimetre", "millimetres", "millimeter", "millimeters"] },
  in: { kind: "length", words: ["inch", "inches"], bracketed: ["in", "in.", '"', "″"] },
  thou: { kind: "length", words: ["mil", "mils"] },
  // The micro sign and the Greek letter look the same.
  µin: { kind: "length", words: ["μin", "uin", "microinch", "microinches"] },
  µm: { kind: "length", words: ["μm", "um", "micron", "microns"] },
  cm: { kind: "length" },
  cc: { kind: "volume", words: ["ml", "cm³", "cm3"] },
  "in³": { kind: "volume", words: ["in3", "cu in", "cubic inch", "cubic inches"] },
  bar: { kind: "pressure" },
  psi: { kind: "pressure" },
  kPa: { kind: "pressure" },
  MPa: { kind: "pressure" },
  "kg/cm²": { kind: "pressure", words: ["kg/cm2", "kgf/cm²", "kgf/cm2"] },
  N: { kind: "force", words: ["newton", "newtons"], bracketed: ["N"] },
  lbf: { kind: "force", words: ["lb f"] },
  g: { kind: "mass", words: ["gram", "grams"], bracketed: ["g"] },
  "L/h": { kind: "flow", words: ["l/hr", "litres per hour"] },
  "L/min": { kind: "flow", words: ["litres per minute"] },
  "ft³/h": { kind: "flow", words: ["ft3/h", "cubic feet per hour"] },
  "qt/h": { kind: "flow", words: ["quarts per hour"] },
  // 45° names an axis.
  "°": { kind: "angle", words: ["deg", "degrees"], bracketed: ["°", "deg"] },
  "mg/kg": { kind: "content", words: ["ppm"] },
  "%": { kind: "percent", words: ["per cent", "percent"] },
};

const BY_WORD = new Map<string, string>();
/** Words that are units wherever they stand. */
const ANYWHERE: string[] = [];

for (const [unit, { words = [], bracketed = [] }] of Object.entries(UNITS)) {
  for (const word of [unit, ...words, ...bracketed]) BY_WORD.set(word.toLowerCase(), unit);
  ANYWHERE.push(...[unit, ...words].filter((word) => !bracketed.includes(word)));
}

/** The one spelling of a unit that is known. */
export const knownUnit = (text: string): string | undefined => BY_WORD.get(text.trim().toLowerCase());

/** One spelling for each unit; one that is not known stays as typed, in small letters. `undefined` for none. */
export function unitOf(text: string): string | undefined {
  const typed = text.trim().toLowerCase();
  return typed === "" ? undefined : (BY_WORD.get(typed) ?? typed);
}

/** What a unit counts; `undefined` for one that is not known. */
export const kindOfUnit = (unit: string): QuantityKind | undefined => {
  const known = knownUnit(unit);
  return known === undefined ? undefined : UNITS[known]!.kind;
};

export const isLengthUnit = (unit: string): boolean => kindOfUnit(unit) === "length";

/** Every spelling, in small letters, of the units of length that are not this one. */
export const otherLengthWords = (unit: string): string[] =>
  [...BY_WORD].flatMap(([word, known]) => (known !== knownUnit(unit) && UNITS[known]!.kind === "length" ? [word] : []));

/** In what a workbook says that it keeps every length; nothing where two sheets say something else. */
export function lengthUnitIn(sheets: readonly { values: readonly (readonly unknown[])[] }[]): string | undefined {
  const lines = sheets.flatMap(({ values }) => values);
  const found = new Set(lines.flatMap((line) => line.flatMap((cell, c) => (cell === LENGTH_UNIT_ENTRY ? [knownUnit(String(line[c + 1]))] : []))));
  const [unit] = found;
  return found.size === 1 && unit !== undefined && isLengthUnit(unit) ? unit : undefined;
}

const IN_BRACKETS = /[([]([^)\]]*)[)\]]/g;

const oneOf = (words: readonly string[]): string => words.toSorted((a, b) => b.length - a.length).join("|");
const isWord = (unit: string): boolean => /^\p{L}/u.test(unit);

/**
 * The longest first, so that cm3 is no cm. With a letter before it, or a letter or figure behind it, it is part of another word; said
 * once for all words, since each such rule takes a millisecond to make ready.
 */
const WORDS = new RegExp(`(?<!\\p{L})(?:${oneOf(ANYWHERE.filter(isWord))})(?![\\p{L}\\p{N}/])|${oneOf(ANYWHERE.filter((unit) => !isWord(unit)))}`, "giu");

/** The unit that a text names, of any kind or of one: the last in brackets, or else the first as a word. `Thrust (mm)`, `bores and pistons, mm at 20 °C`. */
export function unitIn(text: string, kind?: QuantityKind): string | undefined {
  const isWanted = (unit: string | undefined): unit is string => unit !== undefined && (kind === undefined || UNITS[unit]!.kind === kind);
  return (
    [...text.matchAll(IN_BRACKETS)].map(([, inside]) => knownUnit(inside!)).findLast(isWanted) ??
    [...text.matchAll(WORDS)].map(([word]) => knownUnit(word)).find(isWanted)
  );
}

/** A text without the units that it names. */
export const withoutUnits = (text: string): string =>
  text.replace(IN_BRACKETS, (whole, inside: string) => (knownUnit(inside) === undefined ? whole : " ")).replace(WORDS, " ");
