import { defineKind } from "./define-kind.ts";
import { judgedFields, judgedSentence, shareOutside } from "./judged-reading.ts";

/** The uncertainty reaches across a limit: neither within nor outside is proven (ISO 14253-1). */
export const notProvenKind = defineKind({
  name: "not proven",
  order: 40,
  meaning: "a reading so close to a limit that its uncertainty reaches across it",
  mark: "doubt",
  followsFromReading: true,
  fields: judgedFields,
  severity: shareOutside,
  sentence: judgedSentence,
});
