import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import type { Columns } from "../vocabulary/headings.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { cellText, tableLines } from "../vocabulary/table-lines.ts";
import { kindOfUnit, knownUnit, lengthUnitIn, type QuantityKind } from "../vocabulary/units.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { Reading } from "./readings.ts";

const isOfUnits = ({ at }: Columns): boolean => at.characteristic !== undefined && at.unit !== undefined && at.value === undefined && at.before === undefined;

/**
 * Gives readings that do not say their unit the one in which their workbook says that it keeps them: in its tables of limits, by their
 * characteristic or as the only unit of pressures there, and for lengths in its entry `Unit of length`. A workbook in millimetres is
 * then not taken for one in inches.
 */
export function fillUnits(readings: readonly Reading[], sheets: readonly SheetSnapshot[]): void {
  const byName = new Map<string, string>();
  const byKind = new Map<QuantityKind, Set<string>>();
  for (const sheet of sheets) {
    for (const { cells } of tableLines(sheet, isOfUnits, () => true, ["characteristic", "unit"])) {
      const unit = knownUnit(cellText(cells.unit));
      const kind = unit === undefined ? undefined : kindOfUnit(unit);
      if (unit === undefined || kind === undefined) continue;
      byName.set(ownCharacteristic(measuredBy(cellText(cells.characteristic), "")), unit);
      byKind.set(kind, (byKind.get(kind) ?? new Set()).add(unit));
    }
  }
  // Surfaces have a unit of their own, so that lengths go by what the workbook says of them all.
  const lengths = lengthUnitIn(sheets);
  byKind.set("length", new Set(lengths === undefined ? [] : [lengths]));
  for (const reading of readings) {
    if (reading.unit !== undefined) continue;
    const measured = measuredBy(reading.characteristic, reading.position);
    const { kind } = CHARACTERISTICS[measured.characteristic] ?? {};
    const units = [...((kind && byKind.get(kind)) ?? [])];
    reading.unit = byName.get(ownCharacteristic(measured)) ?? byName.get(measured.characteristic) ?? (units.length === 1 ? units[0] : undefined);
  }
}
