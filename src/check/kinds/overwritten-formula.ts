import { readingText } from "../../core/number-text.ts";
import { defineKind, size, textField } from "./define-kind.ts";

/** A number typed where the cells beside it hold one and the same formula. */
export const overwrittenFormulaKind = defineKind({
  name: "overwritten formula",
  plural: "overwritten formulas",
  order: 110,
  meaning: "a number typed over a formula, so that its cell no longer follows its readings",
  mark: "fault",
  fields: {
    formula: textField("the formula of the cells beside it, as it would stand here"),
    wouldGive: size("what that formula would give here; null where that is no number").orNull(),
  },
  sentence({ value }, { formula, wouldGive }) {
    const gives = wouldGive === null ? "" : ` and would give ${readingText(wouldGive, [Number(value)])} here`;
    return `${readingText(Number(value))} is typed where the cells beside it hold a formula, which is ${formula} for this one${gives}: put the formula back, or this cell no longer follows its readings`;
  },
});
