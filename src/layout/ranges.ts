import { findingOf } from "../buildsheet/finding.ts";
import { applyMapping } from "../buildsheet/layout/apply.ts";
import { Book } from "../formula/workbook-cells.ts";
import type { CellArea } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { meet as boxesMeet } from "./blocks.ts";
import { locate } from "./locate.ts";
import { readLayout } from "./mapped-readings.ts";
import type { MappedRange, Mapping } from "./mapping.ts";
import { limitCount, summaryOf } from "./what.ts";

/** What a layout makes of a workbook, for a person to look at before it is kept. */
export interface Overview {
  readings: number;
  limits: number;
  engines: string[];
  /** Rows that a check judges by it. */
  judged: number;
  /** What a person should know before keeping it, in sentences. */
  notes: string[];
}

/** One range of a layout as the workbook stands. */
export interface RangeNow {
  area: CellArea;
  what: string;
  /** Why nothing can be read from it. */
  trouble?: string;
}

export function overviewOf(snapshot: Pick<WorkbookSnapshot, "sheets">, mapping: Mapping): Overview {
  const { readings, limits } = readLayout(new Book(snapshot), mapping);
  const { candidates, findings } = applyMapping(snapshot, mapping);
  return {
    readings: readings.length,
    limits: limitCount(readings, limits),
    engines: [...new Set([...readings, ...limits].map(({ engine }) => engine))].filter(Boolean),
    judged: candidates.length,
    notes: findings.flatMap(({ kind, about, details }) => (kind === "missing limit" ? [findingOf(kind, about, details).sentence] : [])),
  };
}

/** Where a range stands now and what it holds there. */
export function rangeNow(snapshot: Pick<WorkbookSnapshot, "sheets">, range: MappedRange): RangeNow {
  const book = new Book(snapshot);
  const found = locate(book, range);
  if ("lost" in found) return { area: areaOf(range), what: "", trouble: found.lost };
  const { what, isComplete } = summaryOf(book, found);
  return { area: areaOf(found), what, ...(isComplete ? {} : { trouble: "nothing says what these numbers are of" }) };
}

/** Ranges that share cells: what both hold counts with the first. */
export function overlaps(ranges: readonly MappedRange[]): [first: MappedRange, second: MappedRange][] {
  return ranges.flatMap((second, at) => ranges.slice(0, at).flatMap((first) => (meet(first, second) ? [[first, second] as [MappedRange, MappedRange]] : [])));
}

const areaOf = ({ sheet, row, column, rows, columns }: MappedRange): CellArea => ({ sheet, row, column, rows, columns });

export const meet = (a: CellArea, b: CellArea): boolean => a.sheet === b.sheet && boxesMeet(a, b);
