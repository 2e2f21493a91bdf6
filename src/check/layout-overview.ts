import { argumentArea } from "../formula/precedents.ts";
import { CellSet, cellsOf, type WorkbookCells } from "../formula/workbook-cells.ts";
import { blocksOf } from "../layout/blocks.ts";
import { labelledNumbers } from "../layout/heading-fields.ts";
import { locate } from "../layout/locate.ts";
import { limitCount, readLayout } from "../layout/mapped-readings.ts";
import { type MappedRange, type Mapping, NO_MAPPING } from "../layout/mapping.ts";
import { heldText, proposeLayout } from "../layout/propose.ts";
import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import type { CellAddress, CellArea } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { Analysis } from "./analysis.ts";
import { findingOf } from "./finding.ts";
import { tableRows } from "./long-tables.ts";
import { judgedRows } from "./mapped-rows.ts";

/** What a layout makes of a workbook, for a person to look at before it is kept. */
interface LayoutSummary {
  readings: number;
  limits: number;
  engines: string[];
  /** Rows that a check judges by it. */
  judged: number;
  /** What a person should know before keeping it, in sentences. */
  notes: string[];
  /** Where typed numbers stand that belong to no range and that no function of ours reads. */
  unplaced: { area: CellArea; numbers: number }[];
}

export function layoutSummaryOf(analysis: Analysis, mapping: Mapping): LayoutSummary {
  const { readings, limits } = analysis.mapped(mapping);
  const { candidates, findings } = judgedRows(analysis, mapping);
  return {
    readings: readings.length,
    limits: limitCount(readings, limits),
    engines: [...new Set([...readings, ...limits].map(({ engine }) => engine))].filter(Boolean),
    judged: candidates.length,
    unplaced: unplacedIn(analysis, mapping),
    notes: findings.flatMap(({ kind, about, details }) => (kind === "missing limit" ? [findingOf(kind, about, details).sentence] : [])),
  };
}

/** Larger areas are whole columns and the like, which read every number there is. */
const LARGEST = 10_000;

/** What functions of ours, tables in long form and a layout read; of a layout also the cells that name its numbers. */
function readIn({ book, calls, origins }: Analysis, { ranges }: Mapping): CellSet {
  const read = new CellSet();
  for (const { args, context } of calls)
    for (const arg of args) {
      const area = argumentArea(arg, context);
      if (area && area.rows * area.columns <= LARGEST) for (const cell of cellsOf(area)) read.add(cell);
    }
  for (const { cell, beside } of tableRows(origins)) for (const one of [cell, ...Object.values(beside)]) read.add(one);
  for (const range of ranges) for (const cell of placedIn(book, range)) read.add(cell);
  return read;
}

function placedIn(book: WorkbookCells, saved: MappedRange): CellAddress[] {
  const range = locate(book, saved);
  if ("lost" in range) return [];
  return [...labelledNumbers(book, range).map(({ cell }) => cell), ...headsOf(range)];
}

/** Cells that name the numbers of a range, such as those of cylinders. */
const headsOf = ({ sheet, row, column, rows, columns, rowHeads, columnHeads }: MappedRange): CellAddress[] => [
  ...rowHeads.flatMap(({ at }) => Array.from({ length: rows }, (_, r) => ({ sheet, row: row + r, column: at }))),
  ...columnHeads.flatMap(({ at }) => Array.from({ length: columns }, (_, c) => ({ sheet, row: at, column: column + c }))),
];

/** The typed numbers of a sheet that nothing reads; null in place of everything else. */
const unreadOn = ({ name, row, column, values, formulas }: SheetSnapshot, read: CellSet): (number | null)[][] =>
  values.map((line, r) =>
    line.map((value, c) =>
      typeof value === "number" && (formulas[r]?.[c] ?? null) === null && !read.has({ sheet: name, row: row + r, column: column + c }) ? value : null,
    ),
  );

const countOf = (cells: readonly (readonly (number | null)[])[]): number => cells.reduce((sum, line) => sum + line.filter((cell) => cell !== null).length, 0);

function unplacedIn(analysis: Analysis, mapping: Mapping): LayoutSummary["unplaced"] {
  const read = readIn(analysis, mapping);
  return analysis.book.sheets.flatMap((sheet) => {
    const { name, row, column } = sheet;
    const left = unreadOn(sheet, read);
    return blocksOf({ ...sheet, values: left }).map((box) => {
      const cells = left.slice(box.row - row, box.row - row + box.rows).map((line) => line.slice(box.column - column, box.column - column + box.columns));
      return { area: { sheet: name, ...box }, numbers: countOf(cells) };
    });
  });
}

/** Rows of a sheet of which people read every one; a longer list is not looked through with every check. */
const LONGEST = 2000;

/** A few numbers beside a form are none that somebody waits to see judged. */
const FEWEST = 3;

/**
 * Sheets of which most typed numbers look like readings and are read by nothing, in a workbook in which other things are judged;
 * as a sentence without a full stop. Nothing where there is none.
 */
export function looseText(analysis: Analysis, mapping: Mapping = NO_MAPPING): string | undefined {
  const { book } = analysis;
  const read = readIn(analysis, mapping);
  const loose = book.sheets.flatMap((sheet) => {
    if (sheet.values.length > LONGEST || countOf(unreadOn(sheet, read)) < FEWEST) return [];
    const proposals = proposeLayout({ sheets: [sheet] });
    const readings = readLayout(book, { version: 1, ranges: proposals.map(({ range }) => range) }).readings.filter(
      ({ cell, value, characteristic }) =>
        typeof value === "number" && !isOrdinal(value) && book.formula(cell) === null && !read.has(cell) && isMeasured(characteristic),
    );
    const named = new CellSet();
    for (const { range } of proposals) for (const cell of headsOf(range)) named.add(cell);
    return readings.length >= FEWEST && readings.length * 2 > countOf(unreadOn(sheet, named)) ? [{ name: sheet.name, proposals }] : [];
  });
  if (loose.length === 0) return undefined;
  const names = loose.map(({ name }) => name).join(", ");
  const held = heldText(loose.flatMap(({ proposals }) => proposals));
  return `most numbers of the ${loose.length === 1 ? "sheet" : "sheets"} ${names} are judged by nothing, and look like readings laid out in the shop's own way (${held})`;
}

/** A small whole number may count cylinders or valves of a table in which nothing has been typed yet. */
const isOrdinal = (value: number): boolean => Number.isInteger(value) && value >= 0 && value <= 32;

/** A size that is only gone by, such as a standard bore, waits for no verdict. */
const isMeasured = (characteristic: string): boolean => Object.hasOwn(CHARACTERISTICS, characteristic) && !CHARACTERISTICS[characteristic]!.isSetting;
