import { decimal, isAbove } from "../../core/decimal.ts";
import { readingText, uncertaintyText } from "../../core/number-text.ts";
import { type Doubt, equivalenceConfidence, halfWidth } from "../../math/gauge-rule.ts";

/**
 * The largest difference that may still hide behind one that has been found: two tests on one side say
 * that it is no larger. Source: D. J. Schuirmann, J. Pharmacokinetics and Biopharmaceutics 15 (1987) 657.
 */
export const mayHide = (difference: number, doubt: Doubt, confidence: number): number =>
  Math.abs(difference) + halfWidth(doubt, equivalenceConfidence(confidence));

export const cannotTell = (hidden: number): string => `cannot tell: up to ${uncertaintyText(hidden)} may hide`;

/** What a difference comes to: it differs, is the same within what matters, or cannot be told. */
export function differenceWords(difference: number, doubt: Doubt, differs: boolean, confidence: number, matters: number | undefined): string {
  const hidden = mayHide(difference, doubt, confidence);
  const isLess = matters !== undefined && !isAbove(decimal(hidden), matters);
  if (differs) return isLess ? "differs, but less than what matters" : "differs";
  return isLess ? `same within ${readingText(matters)}` : cannotTell(hidden);
}
