import { CHARACTERISTICS, EMPTY_WORDS, ENGINE_NAMES, LINE_WORDS, ONE_SIDED_LIMIT, OTHER_UNITS, POSITION_WORDS, WORKED_OUT_WORDS } from "./characteristics.ts";
import { FIELD_WORDS, plain } from "./headings.ts";
import { unitOf } from "./units.ts";

/** What a line of headings can tell about the numbers beside it. */
export const HEADING_FIELDS = ["engine", "cylinder", "characteristic", "height", "axis", "position", "role", "unit"] as const;
export type HeadingField = (typeof HEADING_FIELDS)[number];

/** What a number in a range is. */
export const ROLES = ["value", "lower", "upper", "unit", "uncertainty", "near"] as const;
export type Role = (typeof ROLES)[number];

/** What a phrase can stand for. */
export type Meaning =
  | { tells: "characteristic"; name: string }
  | { tells: "height" | "axis" | "position"; word: string }
  | { tells: "role"; role: Role; isOneSided?: boolean }
  | { tells: "engine"; name: string }
  | { tells: "unit"; unit: string }
  /** The word is the heading of a line of such. */
  | { tells: "names"; field: HeadingField }
  | { tells: "worked out" }
  | { tells: "nothing" };

/** Words in the longest phrase that is known. */
export let longestPhrase = 1;

const DICTIONARY = new Map<string, Meaning[]>();

function teach(phrases: readonly string[], meaning: Meaning): void {
  for (const phrase of phrases) {
    const key = phrase === "%" ? phrase : plain(phrase);
    longestPhrase = Math.max(longestPhrase, key.split(" ").length);
    DICTIONARY.set(key, [...(DICTIONARY.get(key) ?? []), meaning]);
  }
}

// At one length, what is taught first goes first.
for (const [name, { words }] of Object.entries(CHARACTERISTICS)) teach([name, ...words], { tells: "characteristic", name });
for (const [word, { kind, words }] of Object.entries(POSITION_WORDS)) teach([word, ...words], { tells: kind === "place" ? "position" : kind, word });
for (const role of ["value", "lower", "upper", "uncertainty", "near"] as const) teach([role, ...FIELD_WORDS[role]], { tells: "role", role });
teach(ONE_SIDED_LIMIT, { tells: "role", role: "upper", isOneSided: true });
teach(["unit", ...FIELD_WORDS.unit], { tells: "role", role: "unit" });
for (const [name, words] of Object.entries(ENGINE_NAMES)) teach([name, ...words], { tells: "engine", name });
for (const field of ["engine", "cylinder", "characteristic", "position"] as const) teach([field, ...FIELD_WORDS[field]], { tells: "names", field });
for (const [field, words] of Object.entries(LINE_WORDS)) teach([field, ...words], { tells: "names", field: field as HeadingField });
for (const [word, unit] of Object.entries(OTHER_UNITS)) teach([word], { tells: "unit", unit });
// `in` alone is too common a word; brackets around it, as in headings, make it a unit.
for (const word of ["mm", "inch", "inches", "thou", "µm", "micron", "microns"]) teach([word], { tells: "unit", unit: unitOf(word)! });
teach(WORKED_OUT_WORDS, { tells: "worked out" });
teach(EMPTY_WORDS, { tells: "nothing" });

/** Everything that a phrase, in the spelling of `plain`, can stand for. */
export const meaningsOf = (phrase: string): readonly Meaning[] => DICTIONARY.get(phrase) ?? [];
