import { WorkbookCells } from "../formula/workbook-cells.ts";
import { type CellArea, rectanglesMeet } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { locate } from "./locate.ts";
import { summaryOf } from "./mapped-readings.ts";
import type { MappedRange } from "./mapping.ts";

/** One range of a layout as the workbook stands. */
export interface RangeNow {
  area: CellArea;
  what: string;
  /** Why nothing can be read from it. */
  trouble?: string;
}

/** Where a range stands now and what it holds there. */
export function rangeNow(snapshot: Pick<WorkbookSnapshot, "sheets">, range: MappedRange): RangeNow {
  const book = new WorkbookCells(snapshot);
  const found = locate(book, range);
  if ("lost" in found) return { area: rangeArea(range), what: "", trouble: found.lost };
  const { what, isComplete } = summaryOf(book, found);
  return { area: rangeArea(found), what, ...(isComplete ? {} : { trouble: "nothing says what these numbers are of" }) };
}

/** Ranges that share cells: what both hold counts with the first. */
export function overlaps(ranges: readonly MappedRange[]): [first: MappedRange, second: MappedRange][] {
  return ranges.flatMap((second, at) => ranges.slice(0, at).flatMap((first) => (meet(first, second) ? [[first, second] as [MappedRange, MappedRange]] : [])));
}

const rangeArea = ({ sheet, row, column, rows, columns }: MappedRange): CellArea => ({ sheet, row, column, rows, columns });

export const meet = (a: CellArea, b: CellArea): boolean => a.sheet === b.sheet && rectanglesMeet(a, b);
