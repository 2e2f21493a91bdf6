import { type Fields, tableLines, textOf } from "../check/long-tables.ts";
import { type Cell, isBlank } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { BLANK, number, type Param } from "../core/param.ts";
import { faultBody } from "../core/sentences.ts";
import { canBeCompared, positionFrom } from "../vocabulary/headings.ts";
import { unitOf } from "../vocabulary/units.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { Reading } from "./reading.ts";

/** The numbers that stand beside a reading, and what each may be. */
const NUMBERS = {
  uncertainty: number("expanded uncertainty U of the value, in its unit").atLeast(0),
  lower: number("lower limit"),
  upper: number("upper limit"),
  hours: number("hours in service at the measuring").atLeast(0),
};
const VALUE = number("the reading");

/** A row of a table as a reading. Whatever is no good in it becomes the reading's fault: it cannot be compared as typed. */
export function readingFrom(cells: Fields, unit: string | undefined, place: Pick<Reading, "cell" | "line">): Reading {
  const [engine, cylinder, characteristic] = (["engine", "cylinder", "characteristic"] as const).map((field) => textOf(cells[field]).trim());
  const position = positionFrom({ position: textOf(cells.position), height: textOf(cells.height), axis: textOf(cells.axis) });
  const reading: Reading = { engine: engine!, cylinder: cylinder!, characteristic: characteristic!, position, value: null, ...place };
  reading.unit = unitOf(textOf(cells.unit)) ?? unit;
  for (const [name, param] of Object.entries(NUMBERS) as [keyof typeof NUMBERS, Param<number>][]) {
    const taken = param.take(cells[name], name);
    if (taken instanceof Fault) reading.fault ??= faultBody(taken);
    else if (taken !== BLANK) reading[name] = taken as number;
  }
  const value = VALUE.take(cells.value as Cell, "value");
  if (value instanceof Fault) reading.fault = faultBody(value);
  else if (value === BLANK) reading.fault ??= "the reading is still blank";
  else if (reading.fault === undefined) reading.value = value as number;
  return reading;
}

/** Readings in long form on a sheet: below headings that name a value and what it is of. */
export function* tableReadings(sheet: SheetSnapshot): Generator<Reading> {
  for (const { columns, cells, row } of tableLines(sheet, canBeCompared, looksLikeReading)) {
    const cell = { sheet: sheet.name, row: sheet.row + row, column: sheet.column + columns.at.value! };
    yield readingFrom(cells, columns.unit, { cell });
  }
}

const looksLikeReading = ({ value, characteristic, position, height, axis }: Fields): boolean =>
  (typeof value === "number" || isBlank(value)) && ![characteristic, position, height, axis].every(isBlank);
