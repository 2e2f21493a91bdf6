import type { Reading } from "../../compare/readings.ts";
import type { MappedReading } from "../../layout/mapped-readings.ts";
import { parseHeading } from "../../vocabulary/parse-heading.ts";
import { type LimitRow, NO_SHEET_CONTENT, type SheetContent } from "../content.ts";
import { cellText } from "./cells.ts";
import { drawnFrom } from "./layout.ts";

/** What readings in long form hold for a report: their limits, and what can be drawn of them. */
export function contentOfReadings(readings: readonly Reading[]): SheetContent {
  const drawn = drawnFrom(readings.map(mapped), [], () => false, linesOf);
  return { ...NO_SHEET_CONTENT, ...drawn, limits: limitsOf(readings) };
}

/** The same names for the same things, whatever the file calls them. */
function mapped({ engine, cylinder, characteristic, position, value, unit, lower, upper, cell }: Reading): MappedReading {
  return {
    ...{ engine, cylinder, cell, value, unit },
    characteristic: parseHeading(characteristic, ["characteristic"]).characteristic ?? characteristic,
    places: parseHeading(position, ["position"]).places,
    own: { given: { lower, upper }, beside: {} },
  };
}

/** `lines 2 to 7`; the row of a cell is that of its line. */
function linesOf(readings: readonly MappedReading[]): string {
  const lines = readings.map(({ cell }) => cell.row + 1);
  return lines.length === 1 ? `line ${lines[0]}` : `lines ${Math.min(...lines)} to ${Math.max(...lines)}`;
}

/** Every pair of limits once for each characteristic. */
function limitsOf(readings: readonly Reading[]): LimitRow[] {
  const found = new Map<string, LimitRow>();
  for (const { characteristic, lower, upper, unit = "" } of readings) {
    if (lower === undefined && upper === undefined) continue;
    const row = { characteristic, lower: cellText(lower), upper: cellText(upper), unit, near: "", source: "" };
    found.set(JSON.stringify(row), row);
  }
  return [...found.values()];
}
