import { differenceText, readingText } from "../../core/number-text.ts";
import { DECISION_RULES, sentenceOn } from "../../core/verdict.ts";
import { choiceField, type Details, type FindingSubject, size, textField } from "./define-kind.ts";

/** What every reading with a verdict was judged by beside its limits. */
export const judgedFields = {
  uncertainty: size("the expanded uncertainty U of the reading; 0 where none is given"),
  rule: choiceField(DECISION_RULES, "how the uncertainty was taken, as in VERDICT; null where none is given or the formula cannot be looked into").orNull(),
  near: size("the distance from a limit inside which a reading is near it; 0 where none is given"),
  unseen: textField(
    "why the formula that judges cannot be looked into: its limits are then not known and the sheet's own word is taken; null where it was",
  ).orNull(),
};

/** The verdict with its numbers, as EXPLAIN gives it. */
export function judgedSentence(
  { value, lower, upper, margin, verdict }: FindingSubject,
  { uncertainty, near, rule, unseen }: Details<typeof judgedFields>,
): string {
  if (unseen === null)
    return sentenceOn(
      { verdict: verdict!, margin: margin! },
      value as number,
      { lower: lower ?? undefined, upper: upper ?? undefined },
      { uncertainty, near, rule: rule ?? "full U" },
    );
  const told = margin === null ? `the sheet says ${verdict}` : `the sheet gives a margin of ${readingText(margin)}, outside a limit`;
  return `${told}; its formula cannot be looked into (${unseen}), so its limits are not shown`;
}

/** How far outside, in shares of the room between the limits, so that bores and pressures can stand in one list. */
export function shareOutside({ margin, lower, upper }: FindingSubject): number {
  if (margin === null) return 0;
  const room = lower !== null && upper !== null ? upper - lower : Math.abs(lower ?? upper ?? 0);
  return -margin / (room > 0 ? room : 1);
}

/** `between 0.02 and 0.04`, and how wide that is. */
export const toleranceText = (lower: number, upper: number): string =>
  `the tolerance ${differenceText(upper - lower, [lower, upper])} between ${readingText(lower)} and ${readingText(upper)}`;
