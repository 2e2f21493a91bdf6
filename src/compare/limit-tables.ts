import { unitWords } from "../core/words.ts";
import type { WearDirection } from "../vocabulary/heading-words.ts";
import { type Columns, type ComparisonField, wearDirectionOf } from "../vocabulary/headings.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { cellText, tableLines } from "../vocabulary/table-lines.ts";
import { unitOf } from "../vocabulary/units.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { Reading } from "./readings.ts";

const FIELDS: readonly ComparisonField[] = ["characteristic", "lower", "upper", "unit", "matters", "wearDirection"];

/** A table that says of each characteristic what matters, and mostly what it may be; one of a least and a most alone may tell what was measured. */
const isOfLimits = ({ at }: Columns): boolean =>
  at.value === undefined && at.before === undefined && at.characteristic !== undefined && at.matters !== undefined;

/** What a row of such a table says. */
interface Limit extends Pick<Reading, "lower" | "upper" | "matters"> {
  unit: string | undefined;
  wears: WearDirection | undefined;
}

/**
 * Gives readings what the sheets' own tables of limits say of their characteristic and their rows do not say themselves: the smallest
 * difference that matters, and to rows of tables their limits and the direction of wear; other readings have the limits that judge them.
 * Limits in another unit are none of theirs: that is told in sentences.
 */
export function fillFromLimits(readings: readonly Reading[], sheets: readonly SheetSnapshot[]): string[] {
  const typed = limitsIn(sheets);
  const misfits = new Map<string, string>();
  for (const reading of typed.size === 0 ? [] : readings) {
    const measured = measuredBy(reading.characteristic, reading.position);
    const own = ownCharacteristic(measured);
    const limit = typed.get(own) ?? typed.get(measured.characteristic);
    if (limit === undefined) continue;
    if (limit.unit !== undefined && reading.unit !== undefined && limit.unit !== reading.unit) {
      misfits.set(own, `the limits of ${own} are in ${unitWords(limit.unit)} and its readings in ${unitWords(reading.unit)}: they are left out`);
      continue;
    }
    reading.matters ??= limit.matters;
    if (!reading.isListed) continue;
    if (reading.lower === undefined && reading.upper === undefined) Object.assign(reading, { lower: limit.lower, upper: limit.upper });
    if (reading.wears === undefined && limit.wears !== undefined) reading.wears = limit.wears;
  }
  return [...misfits.values()];
}

function limitsIn(sheets: readonly SheetSnapshot[]): ReadonlyMap<string, Limit> {
  const typed = new Map<string, Limit>();
  for (const sheet of sheets) {
    for (const { columns, cells } of tableLines(sheet, isOfLimits, () => true, FIELDS)) {
      const [lower, upper, matters] = [cells.lower, cells.upper, cells.matters].map((cell) => (typeof cell === "number" ? cell : undefined));
      const limit: Limit = {
        lower,
        upper,
        matters: matters && matters > 0 ? matters : undefined,
        unit: unitOf(cellText(cells.unit)) ?? columns.besideUnits[0]?.unit,
        wears: wearDirectionOf(cellText(cells.wearDirection)),
      };
      if ([limit.lower, limit.upper, limit.matters, limit.wears].some((one) => one !== undefined))
        typed.set(ownCharacteristic(measuredBy(cellText(cells.characteristic), "")), limit);
    }
  }
  return typed;
}
