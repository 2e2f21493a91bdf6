import { grouped } from "../core/number-text.ts";
import { placeName } from "../workbook/address.ts";
import type { CellMark } from "../workbook/port.ts";
import { FINDING_KINDS, type Finding, specOf } from "./finding.ts";

/** The word that stands first: that of its kind, or for a reading outside its limits the one that the sheet's verdict cell says. */
export const wordOf = ({ kind, verdict }: Pick<Finding, "kind" | "verdict">): string => specOf(kind).word({ verdict });

/** One mark a cell: findings stand worst first, so the first mark that a cell gets is its worst. */
export function marksOf(findings: readonly Finding[]): CellMark[] {
  const marks = new Map<string, CellMark>();
  for (const { cell, kind } of findings) {
    const place = placeName(cell);
    if (!marks.has(place)) marks.set(place, { cell, tone: specOf(kind).mark });
  }
  return [...marks.values()];
}

/** How many findings there are of each word, in the order in which the words first come up: worst first. */
export function tally(findings: Iterable<Pick<Finding, "kind" | "verdict">>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) counts.set(wordOf(finding), (counts.get(wordOf(finding)) ?? 0) + 1);
  return counts;
}

const PLURALS: ReadonlyMap<string, string> = new Map(FINDING_KINDS.map((kind) => [kind, specOf(kind).plural]));

/** `3 over, 2 missing readings`: in the order of the findings, which is worst first. */
export const tallyText = (words: ReadonlyMap<string, number>): string =>
  [...words].map(([word, count]) => `${grouped(count)} ${count === 1 ? word : (PLURALS.get(word) ?? word)}`).join(", ");
