import { readingText } from "../../core/number-text.ts";
import { unitWords } from "../../core/words.ts";
import { defineKind, size, textField } from "./define-kind.ts";
import { causesField, causesText, expectedFields, farText, rounded } from "./mistyped.ts";

const LIKE_UNIT = "unit of similar readings";
const NAMES: Readonly<Record<string, string>> = { in: "inches", mm: "millimetres", "in³": "cubic inches", "cm³": "cubic centimetres" };

/** A reading in another unit than its like: written so beside it, or by its size (1 in = 25.4 mm, 1 in³ = 16.387 cm³). */
export const mixedUnitsKind = defineKind({
  name: "mixed units",
  order: 100,
  meaning: "a reading in another unit than similar readings, by the unit written beside it or by its size",
  mark: "fault",
  isCause: true,
  voidsVerdicts: true,
  fields: {
    unit: textField("the unit that the reading is in"),
    likeUnit: textField("the unit of similar readings"),
    expected: size(expectedFields.expected.meaning, LIKE_UNIT).orNull(),
    beside: expectedFields.beside.orNull(),
    converted: size("the reading in the unit of similar readings; null, like the two fields before, where the unit is written beside it", LIKE_UNIT).orNull(),
    causes: causesField,
  },
  cause: ({ cell }, { unit, likeUnit }) => `readings on the sheet ${cell.sheet} are in ${unitWords(unit)}, similar ones in ${unitWords(likeUnit)}`,
  sentence({ value }, { unit, likeUnit, expected, beside, converted, causes }) {
    if (expected === null || beside === null || converted === null)
      return `the unit says ${unitWords(unit)} where similar readings are in ${unitWords(likeUnit)}${causes.length > 0 ? `.${causesText(causes)}` : ""}`;
    const question = `${NAMES[unit] ?? unit} among ${NAMES[likeUnit] ?? likeUnit}?`;
    return `${farText(Number(value), expected, beside)}: ${question} ${readingText(Number(value))} ${unit} is ${rounded(converted)} ${likeUnit}${causes.length > 0 ? `.${causesText(causes)}` : ""}`;
  },
});
