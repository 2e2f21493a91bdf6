import { defineKind } from "./define-kind.ts";
import { judgedFields, judgedSentence, shareOutside } from "./judged-reading.ts";

/** A reading over its upper or under its lower limit; with an uncertainty proven so (ISO 14253-1). */
export const outsideLimitKind = defineKind({
  name: "outside limit",
  order: 20,
  meaning: "a reading over or under its limits; with an uncertainty: proven to be so",
  mark: "outside",
  isGrave: true,
  followsFromReading: true,
  fields: judgedFields,
  // The word that the sheet's own verdict cell says.
  word: ({ verdict }) => verdict ?? "outside limit",
  severity: shareOutside,
  sentence: judgedSentence,
});
