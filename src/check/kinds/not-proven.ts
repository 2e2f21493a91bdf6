import { uncertaintyText } from "../../core/number-text.ts";
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
  cause: ({ cell }, { uncertainty }) =>
    uncertainty > 0 ? `readings on the sheet ${cell.sheet} are too close to a limit for a gauge with U ${uncertaintyText(uncertainty)}` : null,
  severity: shareOutside,
  sentence: judgedSentence,
});
