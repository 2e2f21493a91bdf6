import type { Columns, ComparisonField } from "../vocabulary/headings.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { cellText, tableLines } from "../vocabulary/table-lines.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { Reading } from "./readings.ts";

const FIELDS: readonly ComparisonField[] = ["characteristic", "matters"];

/** A table of limits that says beside each what matters. */
const isOfLimits = ({ at }: Columns): boolean =>
  at.value === undefined && at.before === undefined && at.characteristic !== undefined && at.matters !== undefined;

/** Gives readings the smallest difference that matters from the sheets' own tables of limits, where their rows do not say it themselves. */
export function fillMatters(readings: readonly Reading[], sheets: readonly SheetSnapshot[]): void {
  const typed = new Map<string, number>();
  for (const sheet of sheets) {
    for (const { cells } of tableLines(sheet, isOfLimits, () => true, FIELDS)) {
      if (typeof cells.matters === "number" && cells.matters > 0) typed.set(ownCharacteristic(measuredBy(cellText(cells.characteristic), "")), cells.matters);
    }
  }
  if (typed.size === 0) return;
  for (const reading of readings) {
    const measured = measuredBy(reading.characteristic, reading.position);
    reading.matters ??= typed.get(ownCharacteristic(measured)) ?? typed.get(measured.characteristic);
  }
}
