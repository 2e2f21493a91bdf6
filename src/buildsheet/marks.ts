import { placeName } from "../workbook/address.ts";
import type { Mark, MarkTone } from "../workbook/port.ts";
import type { Finding, FindingKind } from "./finding.ts";

/** How a finding is coloured, in lists and in its cell: by what it asks for, not by its exact kind. */
export const TONES: Readonly<Record<FindingKind, MarkTone>> = {
  "outside limit": "outside",
  refused: "fault",
  "not proven": "doubt",
  "near limit": "near",
  "likely slip": "doubt",
  "missing reading": "fault",
  "missing limit": "fault",
  "calibration overdue": "doubt",
  "coarse gauge": "doubt",
  "mixed units": "fault",
  "overwritten formula": "fault",
  "limit in formula": "fault",
};

/** The word that stands first: for a reading outside its limits the one that the sheet's verdict cell says. */
export const wordOf = ({ kind, verdict }: Pick<Finding, "kind" | "verdict">): string => (kind === "outside limit" && verdict ? verdict : kind);

/** One mark a cell: findings stand worst first, so the first tone that a cell gets is its worst. */
export function marksOf(findings: readonly Finding[]): Mark[] {
  const marks = new Map<string, Mark>();
  for (const { cell, kind } of findings) {
    const place = placeName(cell);
    if (!marks.has(place)) marks.set(place, { cell, tone: TONES[kind] });
  }
  return [...marks.values()];
}
