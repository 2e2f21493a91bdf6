import { type Cell, isBlank } from "../core/cell.ts";
import { COMPARISON_FIELDS, type Columns, holdsBothSides, readHeadings } from "../vocabulary/headings.ts";
import { ownerIn, ownerKey } from "../vocabulary/subjects.ts";
import { type ColumnFields, cellText } from "../vocabulary/table-lines.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { type Reading, readingsFrom } from "./readings.ts";

/** Where the readings of each cylinder stand, and what else the table says. */
interface WideColumns {
  columns: Columns;
  cylinders: { at: number; cylinder: string }[];
}

/**
 * Readings in tables with a column for each cylinder: `Engine | Campaign | Characteristic | Position | Cylinder 1 | Cylinder 2`.
 * A row in which nothing is read yet is passed over; in one that is begun a blank cylinder is a reading that is missing.
 */
export function* wideReadings(sheet: SheetSnapshot): Generator<Reading> {
  let wide: WideColumns | undefined;
  for (const [r, line] of sheet.values.entries()) {
    const headings = wideHeadings(line);
    if (headings !== undefined || line.every(isBlank)) {
      wide = headings;
      continue;
    }
    if (wide === undefined || wide.cylinders.every(({ at }) => isBlank(line[at]))) continue;
    const { columns, cylinders } = wide;
    const fields: ColumnFields = Object.fromEntries(
      COMPARISON_FIELDS.flatMap((field) => (columns.at[field] === undefined ? [] : [[field, line[columns.at[field]]]])),
    );
    if (cellText(fields.characteristic).trim() === "") continue;
    for (const { at, cylinder } of cylinders) {
      yield* readingsFrom(columns, { ...fields, cylinder, value: line[at] as Cell }, () => ({
        cell: { sheet: sheet.name, row: sheet.row + r, column: sheet.column + at },
      }));
    }
  }
}

function wideHeadings(line: readonly Cell[]): WideColumns | undefined {
  const texts = line.map((cell) => (typeof cell === "string" ? cell : ""));
  if (texts.filter(Boolean).length < 3) return undefined;
  const columns = readHeadings(texts);
  // A shop's own table of cylinders may hold limits and averages as well; one that says before or after holds readings.
  if (columns.at.characteristic === undefined || columns.at.campaign === undefined || columns.at.value !== undefined || holdsBothSides(columns))
    return undefined;
  const cylinders = texts.flatMap((text, at) => {
    const { cylinder } = text === "" ? {} : ownerIn(text);
    return cylinder === undefined ? [] : [{ at, cylinder }];
  });
  const isClear = new Set(cylinders.map(({ cylinder }) => ownerKey("cylinder", cylinder))).size === cylinders.length;
  return cylinders.length > 0 && isClear ? { columns, cylinders } : undefined;
}
