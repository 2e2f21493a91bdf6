import { choiceField, defineKind } from "./define-kind.ts";
import { causesField, causesText, expectedFields, farText } from "./mistyped.ts";

const QUESTIONS = {
  "decimal point": "is the decimal point in its place?",
  "two digits swapped": "were two digits swapped?",
  "one digit wrong": "is one digit wrong?",
} as const;

/** A reading so far from its like that one slip of the keys explains it better than wear; the names are those of SLIP. */
export const likelySlipKind = defineKind({
  name: "likely slip",
  plural: "likely slips",
  order: 10,
  meaning: "a reading far from similar ones that one typing slip would explain; what else is found because of it stands behind it",
  mark: "doubt",
  isCause: true,
  fields: {
    slip: choiceField(Object.keys(QUESTIONS) as (keyof typeof QUESTIONS)[], "what the slip would be, as SLIP names it"),
    ...expectedFields,
    causes: causesField,
  },
  sentence: ({ value }, { slip, expected, beside, causes }) => `${farText(Number(value), expected, beside)}: ${QUESTIONS[slip]}${causesText(causes)}`,
});
