import { CHARACTERISTICS, DOCUMENT_WORDS, EMPTY_WORDS, ENGINE_NAMES, OTHER_PARTS } from "./characteristics.ts";
import { DERIVED_WORDS, DEVIATION_WORDS, FIELD_WORDS, NOMINAL_WORDS, ONE_SIDED_LIMIT } from "./heading-words.ts";
import { foldedHeading } from "./headings.ts";
import { POSITION_WORDS } from "./place-words.ts";

/** What a line of headings can tell about the numbers beside it. */
export const HEADING_FIELDS = ["engine", "cylinder", "characteristic", "height", "axis", "position", "role", "unit"] as const;
export type HeadingField = (typeof HEADING_FIELDS)[number];

/** What a number in a range is. */
export const ROLES = ["value", "lower", "upper", "unit", "uncertainty", "near", "nominal"] as const;
export type Role = (typeof ROLES)[number];

/** What a phrase can stand for. */
export type Meaning =
  /** A general word is that of other parts too. */
  | { is: "characteristic"; name: string; isGeneral: boolean }
  | { is: "height" | "axis" | "position"; word: string }
  | { is: "role"; role: Role; isOneSided?: boolean; isDeviation?: boolean }
  | { is: "engine"; name: string }
  /** The word is the heading of a line of such. */
  | { is: "names"; field: HeadingField }
  | { is: "other part" }
  | { is: "document" }
  | { is: "derived" }
  | { is: "nothing" };

/** Words in the longest phrase that is known. */
export let longestPhrase = 1;

const DICTIONARY = new Map<string, Meaning[]>();

function teach(phrases: readonly string[], meaning: Meaning): void {
  for (const phrase of phrases) {
    const key = foldedHeading(phrase);
    longestPhrase = Math.max(longestPhrase, key.split(" ").length);
    DICTIONARY.set(key, [...(DICTIONARY.get(key) ?? []), meaning]);
  }
}

// At one length, what is taught first goes first.
for (const [name, { words, general = [] }] of Object.entries(CHARACTERISTICS))
  for (const word of [name, ...words]) teach([word], { is: "characteristic", name, isGeneral: general.includes(word) });
for (const [word, { kind, words }] of Object.entries(POSITION_WORDS)) teach([word, ...words], { is: kind === "place" ? "position" : kind, word });
for (const role of ["value", "lower", "upper", "uncertainty", "near"] as const) teach([role, ...FIELD_WORDS[role]], { is: "role", role });
teach(ONE_SIDED_LIMIT, { is: "role", role: "upper", isOneSided: true });
teach(NOMINAL_WORDS, { is: "role", role: "nominal" });
teach(DEVIATION_WORDS, { is: "role", role: "value", isDeviation: true });
teach(["unit", ...FIELD_WORDS.unit], { is: "role", role: "unit" });
for (const [name, words] of Object.entries(ENGINE_NAMES)) teach([name, ...words], { is: "engine", name });
for (const field of ["engine", "cylinder", "characteristic", "position", "height", "axis"] as const)
  teach([field, ...FIELD_WORDS[field]], { is: "names", field });
teach(DERIVED_WORDS, { is: "derived" });
teach(OTHER_PARTS, { is: "other part" });
teach(DOCUMENT_WORDS, { is: "document" });
teach(EMPTY_WORDS, { is: "nothing" });

/** Everything that a phrase, in the spelling of `plain`, can stand for. */
export const meaningsOf = (phrase: string): readonly Meaning[] => DICTIONARY.get(phrase) ?? [];
