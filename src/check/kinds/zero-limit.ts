import { counted, readingText } from "../../core/number-text.ts";
import { VERDICTS } from "../../core/verdict.ts";
import { choiceField, countField, defineKind } from "./define-kind.ts";

/** A lower limit of 0 on what cannot be below 0: left out of the judgement, while the sheet's own verdict goes by it. Told once for each limit. */
export const zeroLimitKind = defineKind({
  name: "zero limit",
  plural: "zero limits",
  order: 125,
  meaning: "a lower limit of 0 where nothing can be below 0: Check leaves it out, but the sheet's own verdict goes by it and says something else",
  mark: "doubt",
  isOfReading: false,
  fields: {
    says: choiceField(VERDICTS, "what the sheet's own verdict says of the first such reading"),
    readings: countField("how many readings the sheet's verdict judges differently because of this limit", "reading"),
  },
  cause: () => "nothing can be below these lower limits of 0: leave them blank",
  sentence({ value }, { says, readings }) {
    const more = readings > 1 ? `, and differs from what is said here for ${counted(readings - 1, "more reading")}` : "";
    return `nothing can be below this lower limit of 0, so it is left out; the sheet's own verdict goes by it and says ${says} of ${readingText(Number(value))}${more}: leave the limit blank`;
  },
});
