import { counted, readingText } from "../../core/number-text.ts";
import { choiceField, listField, size } from "./define-kind.ts";

/** Where a reading that looks mistyped would belong. */
export const expectedFields = {
  expected: size("what the reading should be near"),
  beside: choiceField(["similar readings", "its limits", "its upper limit", "the reading before"], "of what that is the middle, or which one it is"),
};

/** To five figures, which is what a gauge shows. */
export const rounded = (value: number): number => Number(value.toPrecision(5));

export function farText(value: number, expected: number, beside: (typeof expectedFields)["beside"]["holds"]): string {
  const source = beside === "the reading before" || beside === "its upper limit" ? beside : `the middle of ${beside}`;
  return `${readingText(value)} is far from ${rounded(expected)}, ${source}`;
}

export const causesField = listField("what else is found because of it: the word of each finding, with its cell where that is another one");

/** So many are named; the list has them all. */
const MOST_NAMED = 5;

export function causesText(causes: readonly string[]): string {
  if (causes.length === 0) return "";
  const named = causes.slice(0, MOST_NAMED).join(", ");
  const more = causes.length > MOST_NAMED ? ` and ${causes.length - MOST_NAMED} more` : "";
  return ` It causes ${counted(causes.length, "other finding")}: ${named}${more}`;
}
