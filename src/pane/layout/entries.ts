import type { Analysis } from "../../check/analysis.ts";
import { layoutSummaryOf } from "../../check/layout-overview.ts";
import { counted } from "../../core/number-text.ts";
import type { MappedRange, Mapping } from "../../layout/mapping.ts";
import { type Proposal, proposeLayout } from "../../layout/propose.ts";
import { meet, overlaps, rangeNow } from "../../layout/ranges.ts";
import { areaText } from "../../workbook/address.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";

/** A range that is listed: kept, proposed or pointed at. */
export interface ListedRange {
  id: number;
  range: MappedRange;
  doubts: readonly string[];
  /** It is to be part of the layout. */
  isUsed: boolean;
}

let last = 0;
const entryOf = (range: MappedRange, doubts: readonly string[], isUsed: boolean): ListedRange => ({ id: ++last, range, doubts, isUsed });

export const storedRanges = ({ ranges }: Mapping): ListedRange[] => ranges.map((range) => entryOf(range, [], true));

/** What somebody has pointed at counts first where others hold the same cells. */
export const withOwn = (entries: readonly ListedRange[], { range, doubts }: Proposal): ListedRange[] => [entryOf(range, doubts, true), ...entries];

export const changed = (entries: readonly ListedRange[], id: number, { range, doubts }: Proposal): ListedRange[] =>
  entries.map((entry) => (entry.id === id ? { ...entry, range, doubts, isUsed: true } : entry));

export const used = (entries: readonly ListedRange[], id: number, isUsed: boolean): ListedRange[] =>
  entries.map((entry) => (entry.id === id ? { ...entry, isUsed } : entry));

/** What the headings propose, behind what is listed; where a listed range is in use already, only to be looked at. */
export function withProposals(entries: readonly ListedRange[], snapshot: WorkbookSnapshot): ListedRange[] {
  const there = entries.map(({ range, isUsed }) => ({ area: rangeNow(snapshot, range).area, isUsed }));
  const proposed = proposeLayout(snapshot).flatMap(({ range, doubts }) => {
    const met = there.filter(({ area }) => meet(area, range));
    if (met.some(({ area }) => areaText(area) === areaText(range))) return [];
    return [entryOf(range, doubts, !met.some(({ isUsed }) => isUsed))];
  });
  return [...entries, ...proposed];
}

export const mappingOf = (entries: readonly ListedRange[]): Mapping => ({
  version: 1,
  ranges: entries.flatMap(({ range, isUsed }) => (isUsed ? [range] : [])),
});

/** What the ranges in use make of the workbook, in sentences. */
export function overviewText(analysis: Analysis, entries: readonly ListedRange[]): { says: string; notes: string[]; unplaced: string[] } {
  const mapping = mappingOf(entries);
  const { readings, limits, engines, judged, notes, unplaced } = layoutSummaryOf(analysis, mapping);
  const of = engines.length === 0 ? "" : `, ${engines.length === 1 ? "engine" : "engines"} ${engines.join(", ")}`;
  const shared = overlaps(mapping.ranges).map(([a, b]) => `${areaText(a)} and ${areaText(b)} share cells, which count with the first`);
  return {
    says: `${counted(readings, "reading")}, ${counted(limits, "limit")}${of}. Check judges ${counted(judged, "row")} by this.`,
    notes: [...shared, ...notes],
    unplaced: unplaced.map(({ area, numbers }) => `${areaText(area)} (${counted(numbers, "number")})`),
  };
}
