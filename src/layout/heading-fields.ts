import { type Cell, isBlank } from "../core/cell.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { namesLimitOrStatistic } from "../vocabulary/headings.ts";
import { isLimitText } from "../vocabulary/limit-text.ts";
import { type ParsedHeading, parseHeading } from "../vocabulary/parse-heading.ts";
import { isReadingText } from "../vocabulary/reading-text.ts";
import type { CellAddress } from "../workbook/address.ts";
import type { HeaderRow, MappedRange, Role } from "./mapping.ts";

/** Of whom and of what a heading speaks. */
export interface HeadingNames extends Pick<ParsedHeading, "places"> {
  engine: string | undefined;
  cylinder: string | undefined;
  characteristic: string | undefined;
  /** Part of it stands over a column before its own, as where cells are merged. */
  isInherited: boolean;
}

/** One number of a range and everything that its headings say about it. */
export interface LabelledNumber {
  cell: CellAddress;
  value: Cell;
  says: ParsedHeading;
  role: Role;
  /** What its own heading says beyond what holds for the line: a limit may be for one of several readings in it. */
  named: HeadingNames;
  /** What holds for the whole line of a record that the number is in. */
  line: { key: string; says: ParsedHeading };
}

/** Every number of a range; `range` is where it stands now. */
export function labelledNumbers(book: WorkbookCells, range: MappedRange): LabelledNumber[] {
  const { sheet, row, column, columns, records, fixed, without } = range;
  const rows = grownRows(book, range);
  const own = fixedSays(range);
  const general: ParsedHeading = { places: [], rest: [], ...range.otherwise };
  const rowHead = (at: number, r: number): Cell => book.value({ sheet, row: r, column: at });
  const columnHead = (at: number, c: number): Cell => book.value({ sheet, row: at, column: c });
  const byRow = headingsAlong(rows, row, range.rowHeads, rowHead);
  const byColumn = headingsAlong(columns, column, range.columnHeads, columnHead);
  const byLine = (records === "row" ? byRow : records === "column" ? byColumn : []).map((says, i) => {
    const said = together([own, says]);
    return { key: `${records} ${i}`, said, says: together([said, general]) };
  });
  // What stands in their own cells, by which a blank beside the last of several is told from a merged one.
  const ownByRow = unmerged(range.rowHeads, byRow, (lines) => headingsAlong(rows, row, lines, rowHead));
  const ownByColumn = unmerged(range.columnHeads, byColumn, (lines) => headingsAlong(columns, column, lines, columnHead));
  const across = (r: number, c: number, said: ParsedHeading): HeadingNames => {
    if (records === "cell") return UNNAMED;
    const [heading, alone] = records === "row" ? [byColumn[c]!, ownByColumn[c]!] : [byRow[r]!, ownByRow[r]!];
    const named = beyond(said, ofNoLimit(heading));
    return { ...named, isInherited: JSON.stringify(named) !== JSON.stringify(beyond(said, ofNoLimit(alone))) };
  };
  const facts: LabelledNumber[] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const cell = { sheet, row: row + r, column: column + c };
      if (without.rows.includes(cell.row) || without.columns.includes(cell.column)) continue;
      const said = together([own, byRow[r]!, byColumn[c]!, general]);
      const value = book.value(cell);
      const role = fixed.role ?? said.role ?? (isLimitText(value) ? "upper" : "value");
      const says = role === "value" ? said : ofNoLimit(said);
      const line = records === "row" ? byLine[r]! : records === "column" ? byLine[c]! : { key: "", says, said: says };
      const named = role === "value" ? UNNAMED : across(r, c, line.said);
      facts.push({ cell, value, says, named, role, line });
    }
  }
  return facts;
}

const unmerged = (lines: readonly HeaderRow[], merged: ParsedHeading[], read: (lines: HeaderRow[]) => ParsedHeading[]): ParsedHeading[] =>
  lines.some((line) => line.merged) ? read(lines.map((line) => ({ ...line, merged: false }))) : merged;

const UNNAMED: HeadingNames = { engine: undefined, cylinder: undefined, characteristic: undefined, places: [], isInherited: false };

/** `Limits` among the cylinders or beside the engines is none of them. */
function ofNoLimit(says: ParsedHeading): ParsedHeading {
  const isNone = (name: string | undefined) => name !== undefined && namesLimitOrStatistic(name);
  if (!isNone(says.engine) && !isNone(says.cylinder)) return says;
  return { ...says, engine: isNone(says.engine) ? undefined : says.engine, cylinder: isNone(says.cylinder) ? undefined : says.cylinder };
}

/** What a heading says of whom and of what that the line does not say already. */
function beyond(line: ParsedHeading, { engine, cylinder, characteristic, places }: ParsedHeading): HeadingNames {
  const unless = (said: string | undefined, own: string | undefined) => (said === undefined ? own : undefined);
  return {
    engine: unless(line.engine, engine),
    cylinder: unless(line.cylinder, cylinder),
    characteristic: unless(line.characteristic, characteristic),
    places,
    isInherited: false,
  };
}

function fixedSays({ fixed: { engine, cylinder, characteristic, position, unit } }: MappedRange): ParsedHeading {
  return {
    ...(engine ? { engine } : {}),
    ...(cylinder ? { cylinder } : {}),
    ...(characteristic ? { characteristic } : {}),
    ...(unit ? { unit } : {}),
    places: position ? parseHeading(position, ["position"]).places : [],
    rest: [],
  };
}

/** What the headings say for each row or column of the range. */
export function headingsAlong(count: number, first: number, lines: readonly HeaderRow[], cellAt: (at: number, along: number) => Cell): ParsedHeading[] {
  const said = Array.from({ length: count }, (): { says: ParsedHeading; isInherited: boolean }[] => []);
  for (const { at, tells, merged } of lines) {
    let last: Cell = null;
    // The same words come again and again down a long table.
    const known = new Map<Cell, ParsedHeading>();
    const heard = (cell: Cell): ParsedHeading => {
      const says = known.get(cell) ?? parseHeading(cell, tells);
      known.set(cell, says);
      return says;
    };
    for (let i = 0; i < count; i++) {
      const cell = cellAt(at, first + i);
      if (!isBlank(cell)) last = cell;
      const isInherited = merged && isBlank(cell);
      said[i]!.push({ says: heard(isInherited ? last : cell), isInherited });
    }
  }
  return said.map((all) => {
    // A heading that names something else ends what was merged before it: a skirt beside bores has no height.
    const isOther = all.some(({ says, isInherited }) => !isInherited && says.characteristic !== undefined);
    return together(all.map(({ says, isInherited }) => (isOther && isInherited && says.characteristic === undefined ? { ...says, places: [] } : says)));
  });
}

/** What is said first counts; places add up, each kind once. */
function together(all: readonly ParsedHeading[]): ParsedHeading {
  const sum: ParsedHeading = { places: [], rest: [] };
  for (const { places, rest, ...others } of all) {
    for (const [key, value] of Object.entries(others)) if (value !== undefined) (sum as unknown as Record<string, unknown>)[key] ??= value;
    sum.places.push(...places);
    sum.rest.push(...rest);
  }
  return sum;
}

/** A longer table than when the layout was saved: rows below that have a heading of their own and a number. */
function grownRows(book: WorkbookCells, { sheet, row, column, rows, columns, rowHeads, grows }: MappedRange): number {
  if (!grows || rowHeads.length === 0) return rows;
  const page = book.sheet(sheet);
  const end = page ? page.row + page.values.length : 0;
  let grown = rows;
  const hasHeading = (r: number): boolean => rowHeads.some(({ at }) => !isBlank(book.value({ sheet, row: r, column: at })));
  const hasNumber = (r: number): boolean =>
    Array.from({ length: columns }, (_, c) => book.value({ sheet, row: r, column: column + c })).some(
      (cell) => typeof cell === "number" || isLimitText(cell) || isReadingText(cell),
    );
  while (row + grown < end && hasHeading(row + grown) && hasNumber(row + grown)) grown++;
  return grown;
}
