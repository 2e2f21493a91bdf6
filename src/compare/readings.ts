import { type ColumnFields, tableLines, textOf } from "../check/long-tables.ts";
import { type Cell, isBlank } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { BLANK, number, type Param } from "../core/param.ts";
import { faultBody } from "../core/sentences.ts";
import { canBeCompared, labelFrom, positionFrom } from "../vocabulary/headings.ts";
import { positionText } from "../vocabulary/parse-heading.ts";
import { measuredBy, ownerKey } from "../vocabulary/subjects.ts";
import { unitOf } from "../vocabulary/units.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";

/** Readings of one thing on both sides, in the order of their hours where they have some. */
export interface ReadingPair {
  before: Reading[];
  after: Reading[];
}

/** Readings that cannot be matched. */
interface Unmatched {
  before: Reading[];
  after: Reading[];
  why: string;
}

/** Brings together the readings of the same thing; every reading ends in a pair or among the unmatched. */
export function pairReadings(before: readonly Reading[], after: readonly Reading[], withEngine: boolean): { pairs: ReadingPair[]; unmatched: Unmatched[] } {
  const sides = [grouped(before, withEngine), grouped(after, withEngine)] as const;
  const pairs: ReadingPair[] = [];
  const unmatched: Unmatched[] = [];
  for (const key of new Set([...sides[0].keys(), ...sides[1].keys()])) {
    const [own, other] = [sides[0].get(key) ?? [], sides[1].get(key) ?? []];
    if (own.length === 0 || other.length === 0) unmatched.push(...alone(own, other));
    else if (isHistory(own) && isHistory(other)) pairs.push({ before: byHours(own), after: byHours(other) });
    else matchByPlace(own, other, pairs, unmatched);
  }
  return { pairs, unmatched };
}

function grouped(readings: readonly Reading[], withEngine: boolean): Map<string, Reading[]> {
  const groups = new Map<string, Reading[]>();
  for (const reading of readings) {
    const named = keyOf(reading, withEngine);
    // A reading that nothing names can only be told by its place.
    const key = /^\|*$/.test(named) ? `@${placeName(reading.cell)}` : named;
    const group = groups.get(key);
    if (group) group.push(reading);
    else groups.set(key, [reading]);
  }
  return groups;
}

function alone(before: readonly Reading[], after: readonly Reading[]): Unmatched[] {
  return [
    ...before.map((reading) => ({ before: [reading], after: [], why: "it is measured before only" })),
    ...after.map((reading) => ({ before: [], after: [reading], why: "it is measured after only" })),
  ];
}

/** One reading, or several that were taken at different hours. */
const isHistory = (readings: readonly Reading[]): boolean =>
  readings.length === 1 || (readings.every(({ hours }) => hours !== undefined) && new Set(readings.map(({ hours }) => hours)).size === readings.length);

const byHours = (readings: readonly Reading[]): Reading[] => [...readings].sort((a, b) => (a.hours ?? 0) - (b.hours ?? 0));

/** Several readings of one name: two copies of a workbook hold each in the same cell. */
function matchByPlace(before: readonly Reading[], after: readonly Reading[], pairs: ReadingPair[], unmatched: Unmatched[]): void {
  const places = new Map(after.filter(({ line }) => line === undefined).map((reading) => [placeName(reading.cell), reading]));
  const left = new Set(after);
  const rest: Reading[] = [];
  for (const reading of before) {
    const partner = reading.line === undefined ? places.get(placeName(reading.cell)) : undefined;
    if (partner) {
      pairs.push({ before: [reading], after: [partner] });
      left.delete(partner);
    } else rest.push(reading);
  }
  if (rest.length + left.size > 0) unmatched.push({ before: rest, after: [...left], why: ambiguous(before, after) });
}

function ambiguous(before: readonly Reading[], after: readonly Reading[]): string {
  const times = (readings: readonly Reading[]) => (readings.length === 1 ? "once" : `${readings.length} times`);
  return `it stands ${times(before)} before and ${times(after)} after, and nothing tells which belong together`;
}

/** What a reading is of, in the words of the sheet or file; `""` where it does not say. */
export interface ReadingSubject {
  engine: string;
  cylinder: string;
  characteristic: string;
  position: string;
}

/** One reading of one side of a comparison, with all that stands beside it. */
export interface Reading extends ReadingSubject {
  /** `null` for a reading that is still blank, or no good: then `fault` says why. */
  value: number | null;
  fault?: string;
  unit?: string | undefined;
  /** Expanded uncertainty U of the value, in its unit. */
  uncertainty?: number | undefined;
  lower?: number | undefined;
  upper?: number | undefined;
  /** Hours in service when it was measured. */
  hours?: number | undefined;
  cell: CellAddress;
  /** Line of the file, for readings that stand in none of a workbook's cells. */
  line?: number;
}

/** One side of a comparison: everything that was read from a workbook or file. */
export interface ReadingSet {
  name: string;
  readings: Reading[];
  /** What a person should know about how it was read, in sentences. */
  notes: string[];
}

/** `engine A, cylinder 2, bore, top thrust`, or the place of a reading that has no name. */
export const labelOf = (reading: ReadingSubject & Pick<Reading, "cell">): string => labelFrom(reading) || placeName(reading.cell);

/** The same for readings of the same thing, however it is spelt; of one engine against another without the engine. */
function keyOf({ engine, cylinder, characteristic, position }: ReadingSubject, withEngine: boolean): string {
  const measured = measuredBy(characteristic, position);
  const owners = [withEngine ? ownerKey("engine", engine) : "", ownerKey("cylinder", cylinder)];
  return [...owners, measured.characteristic, positionText(measured.places)].join("|");
}

/** The numbers that stand beside a reading, and what each may be. */
const NUMBERS = {
  uncertainty: number("expanded uncertainty U of the value, in its unit").atLeast(0),
  lower: number("lower limit"),
  upper: number("upper limit"),
  hours: number("hours in service at the measuring").atLeast(0),
};

const VALUE = number("the reading");

/** A row of a table as a reading. Whatever is no good in it becomes the reading's fault: it cannot be compared as typed. */
export function readingFrom(cells: ColumnFields, unit: string | undefined, place: Pick<Reading, "cell" | "line">): Reading {
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

const looksLikeReading = ({ value, characteristic, position, height, axis }: ColumnFields): boolean =>
  (typeof value === "number" || isBlank(value)) && ![characteristic, position, height, axis].every(isBlank);
