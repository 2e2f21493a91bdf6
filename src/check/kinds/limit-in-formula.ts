import { readingText } from "../../core/number-text.ts";
import { countField, defineKind } from "./define-kind.ts";

/** A limit that stands as a number inside formulas, where nobody sees it; told once for each limit of a sheet. */
export const limitInFormulaKind = defineKind({
  name: "limit in formula",
  plural: "limits in formulas",
  order: 120,
  meaning: "a limit written as a number inside a formula, where nobody sees it or its source",
  mark: "fault",
  isOfReading: false,
  fields: { formulas: countField("how many cells of the sheet hold it", "cell") },
  cause: () => "limits are written inside formulas: type them into cells with their source beside them",
  sentence({ lower, upper }, { formulas }) {
    const more = formulas > 1 ? ` and in ${formulas - 1} more on this sheet` : "";
    return `${nameOf(lower, upper)} written inside the formula${more}: type it into a cell with its source beside it, and let the formula refer to that cell`;
  },
});

function nameOf(lower: number | null, upper: number | null): string {
  if (lower !== null && upper !== null) return `the limits ${readingText(lower)} and ${readingText(upper)} are`;
  return lower !== null ? `the lower limit ${readingText(lower)} is` : `the upper limit ${readingText(upper!)} is`;
}
