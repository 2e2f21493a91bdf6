import { defineKind } from "./define-kind.ts";
import { judgedFields, judgedSentence, shareOutside } from "./judged-reading.ts";

/** Within, but no further from a limit than the distance that the shop has set. */
export const nearLimitKind = defineKind({
  name: "near limit",
  order: 50,
  meaning: "a reading within its limits, no further from one than the distance that the shop has set",
  mark: "near",
  followsFromReading: true,
  fields: judgedFields,
  severity: shareOutside,
  sentence: judgedSentence,
});
