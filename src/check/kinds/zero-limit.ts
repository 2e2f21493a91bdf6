import { readingText } from "../../core/number-text.ts";
import { VERDICTS } from "../../core/verdict.ts";
import { choiceField, countField, defineKind } from "./define-kind.ts";

/** A lower limit of 0 on what cannot be below 0: left out of the judgement, while the sheet's own verdict goes by it. Told once for each limit. */
export const zeroLimitKind = defineKind({
  name: "zero limit",
  plural: "zero limits",
  order: 125,
  meaning: "a lower limit of 0 where nothing can be below 0: it is left out here, and the sheet's own verdict says otherwise because of it",
  mark: "doubt",
  isOfReading: false,
  fields: {
    says: choiceField(VERDICTS, "what the sheet's own verdict says of the first such reading"),
    readings: countField("of how many readings it says something else because of this limit", "reading"),
  },
  cause: () => "nothing can be below these lower limits of 0: leave them blank",
  sentence({ value }, { says, readings }) {
    const more = readings > 1 ? `, and something else than is told here of ${readings - 1} more` : "";
    return `nothing can be below this lower limit of 0, so it is left out; the sheet's own verdict goes by it and says ${says} of ${readingText(Number(value))}${more}: leave the limit blank`;
  },
});
