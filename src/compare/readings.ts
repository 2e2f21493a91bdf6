import { type Cell, isBlank } from "../core/cell.ts";
import { Fault, refuse } from "../core/fault.ts";
import { number } from "../core/inputs.ts";
import { BLANK, type Param } from "../core/param.ts";
import { faultBody } from "../core/sentences.ts";
import { dayOf, dayText } from "../vocabulary/dates.ts";
import type { Campaign, UseUnit, WearDirection } from "../vocabulary/heading-words.ts";
import {
  COMPARISON_FIELDS,
  type Columns,
  type ComparisonField,
  campaignOf,
  canBeCompared,
  holdsBothSides,
  labelFrom,
  positionFrom,
  unitMisfit,
  wearDirectionOf,
} from "../vocabulary/headings.ts";
import { type ColumnFields, cellText, tableLines } from "../vocabulary/table-lines.ts";
import { unitOf } from "../vocabulary/units.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { thermalFault } from "./temperatures.ts";

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
  /** The part of U that all readings of one measuring session share; 0 says that there is none. */
  common?: number | undefined;
  lower?: number | undefined;
  upper?: number | undefined;
  /** The smallest difference that matters. */
  matters?: number | undefined;
  /** Hours in service when it was measured; or miles or kilometres, where `useUnit` says so. */
  hours?: number | undefined;
  useUnit?: UseUnit;
  /** The way of treatment of its engine, as typed. */
  group?: string;
  /** Of the part when it was measured, in °C, and its material or expansion coefficient. */
  temperature?: number | undefined;
  material?: string;
  /** Where the row itself says in which direction alone it can wear. */
  wears?: WearDirection;
  /** With which gauge and on which day, as typed: readings with both alike were taken in one session. */
  gauge?: string;
  day?: string;
  /** Where the row itself says on which side it stands. */
  campaign?: Campaign;
  cell: CellAddress;
  /** Line of the file, for readings that stand in none of a workbook's cells. */
  line?: number;
  /** A row of a table in long form says all that tells it apart: a second row of the same thing is a second reading of it. */
  isListed?: boolean;
  /** The place of the reading that this one repeats, where a table says so. */
  repeats?: string;
}

/** Whose engine a sheet or workbook says that it is. */
export interface EngineIdentity {
  serial?: string;
  engine?: string;
}

/** One side of a comparison: everything that was read from a workbook or file. */
export interface ReadingSet {
  name: string;
  readings: Reading[];
  /** What a person should know about how it was read, in sentences. */
  notes: string[];
  identity?: EngineIdentity;
  /** How long the run-in is, where it says so, in the unit of its use. */
  runIn?: number | undefined;
}

/** `engine A, cylinder 2, bore, top thrust`, or the place of a reading that has no name. */
export const labelOf = (reading: ReadingSubject & Pick<Reading, "cell">): string => labelFrom(reading) || placeName(reading.cell);

/** The numbers that stand beside a reading, and what each may be. */
const NUMBERS = {
  uncertainty: number("expanded uncertainty U of the value, in its unit").atLeast(0),
  common: number("part of U that all readings of a session share, in the unit of the value").atLeast(0),
  lower: number("lower limit"),
  upper: number("upper limit"),
  matters: number("smallest difference that matters, in the unit of the value").atLeast(0),
  hours: number("hours in service at the measuring").atLeast(0),
  miles: number("miles run at the measuring").atLeast(0),
  km: number("kilometres run at the measuring").atLeast(0),
  temperature: number("temperature of the part, in °C"),
};

/** The fields of a row that are numbers, for whoever reads them from text. */
export const NUMBER_FIELDS: ReadonlySet<ComparisonField> = new Set<ComparisonField>([
  "value",
  "before",
  "after",
  ...(Object.keys(NUMBERS) as ComparisonField[]),
]);

const VALUE = number("the reading");

/** Where the reading of a column stands. */
type PlaceOf = (field: "value" | Campaign) => Pick<Reading, "cell" | "line">;

/** A row of a table as a reading, or as two where it has a column for each side. Whatever is no good in it becomes the reading's fault: it cannot be compared as typed. */
export function readingsFrom(columns: Columns, cells: ColumnFields, place: PlaceOf): Reading[] {
  if (!holdsBothSides(columns)) return [readingFrom(columns, cells, cells.value, place("value"))];
  return (["before", "after"] as const).map((campaign) => ({ ...readingFrom(columns, cells, cells[campaign], place(campaign)), campaign }));
}

function readingFrom(columns: Columns, cells: ColumnFields, typed: Cell, place: Pick<Reading, "cell" | "line">): Reading {
  const [engine, cylinder, characteristic] = (["engine", "cylinder", "characteristic"] as const).map((field) => cellText(cells[field]).trim());
  const position = positionFrom({ position: cellText(cells.position), height: cellText(cells.height), axis: cellText(cells.axis) });
  const reading: Reading = { engine: engine!, cylinder: cylinder!, characteristic: characteristic!, position, value: null, ...place, isListed: true };
  reading.unit = unitOf(cellText(cells.unit)) ?? columns.unit;
  if (!isBlank(cells.gauge)) reading.gauge = cellText(cells.gauge).trim();
  if (!isBlank(cells.day)) reading.day = dayIn(cells.day);
  const session = cellText(cells.campaign).trim();
  const campaign = campaignOf(session);
  if (campaign !== undefined) reading.campaign = campaign;
  else if (session !== "") reading.fault = `the campaign is called ${session}: it must be before or after`;
  for (const field of ["group", "material"] as const) if (!isBlank(cells[field])) reading[field] = cellText(cells[field]).trim();
  for (const [name, param] of Object.entries(NUMBERS) as [keyof typeof NUMBERS, Param<number>][]) {
    const taken = param.take(cells[name], name);
    if (taken instanceof Fault) reading.fault ??= faultBody(taken);
    else if (taken !== BLANK && (name === "miles" || name === "km")) takeUse(reading, name, taken as number);
    else if (taken !== BLANK) reading[name as Exclude<typeof name, UseUnit>] = taken as number;
  }
  const direction = cellText(cells.wearDirection).trim();
  if (direction !== "") {
    const wears = wearDirectionOf(direction);
    if (wears !== undefined) reading.wears = wears;
    else reading.fault ??= `the direction of wear is called ${direction}: it must be larger or smaller`;
  }
  const value = VALUE.take(typed, "value");
  if (value instanceof Fault) reading.fault = faultBody(value);
  else if (value === BLANK) reading.fault ??= "the reading is still blank";
  else if (reading.fault === undefined) reading.value = value as number;
  const { common, uncertainty = 0 } = reading;
  if (common !== undefined && uncertainty > 0 && common > uncertainty) reading.fault ??= faultBody(tooCommon(common, uncertainty));
  if (reading.value !== null) reading.fault ??= unitMisfit(columns, reading.unit) ?? thermalFault(reading);
  if (reading.fault !== undefined) reading.value = null;
  return reading;
}

/** A day as it is typed; the number by which a sheet keeps it is no words for anybody, and not those of another file. */
export function dayIn(cell: Cell | undefined): string {
  const day = typeof cell === "number" ? dayOf(cell) : undefined;
  return day === undefined ? cellText(cell ?? null).trim() : dayText(day);
}

/** Hours, miles and kilometres are one thing to wear, but for what it is told in. */
function takeUse(reading: Reading, unit: UseUnit, use: number): void {
  if (reading.hours !== undefined) reading.fault ??= `its use is given in ${reading.useUnit ?? "hours"} and in ${unit}: one of them is wanted`;
  reading.hours = use;
  if (unit !== "hours") reading.useUnit = unit;
}

const tooCommon = (common: number, uncertainty: number): Fault =>
  refuse("common", common, `it is a part of the uncertainty ${uncertainty}, which it cannot exceed`);

/** Readings in long form on a sheet: below headings that name a value, or one before and one after, and what it is of. */
export function* tableReadings(sheet: SheetSnapshot): Generator<Reading> {
  for (const { columns, cells, row } of tableLines(sheet, canBeCompared, looksLikeReading, COMPARISON_FIELDS)) {
    yield* readingsFrom(columns, cells, (field) => ({ cell: { sheet: sheet.name, row: sheet.row + row, column: sheet.column + columns.at[field]! } }));
  }
}

const looksLikeReading = ({ value, before, after, characteristic, position, height, axis }: ColumnFields): boolean =>
  [value, before, after].every((cell) => typeof cell === "number" || isBlank(cell)) && ![characteristic, position, height, axis].every(isBlank);
