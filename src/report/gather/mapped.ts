import type { Reading } from "../../compare/readings.ts";
import { isBlank } from "../../core/cell.ts";
import type { Limits } from "../../core/verdict.ts";
import type { BoreReadings } from "../../drawings/bore.ts";
import type { CompressionTest } from "../../drawings/compression-bars.ts";
import { limitFor, type Mapped, type MappedLimit, type MappedReading } from "../../layout/mapped-readings.ts";
import { labelFrom } from "../../vocabulary/headings.ts";
import { parseHeading, positionText } from "../../vocabulary/parse-heading.ts";
import { type CellAddress, cellName, placeName } from "../../workbook/address.ts";
import { type LimitRow, NO_SHEET_CONTENT, type Placed, type SheetContent } from "../content.ts";
import { distinct, numberIn, reportText } from "./source.ts";

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
    const row = { characteristic, lower: reportText(lower), upper: reportText(upper), unit, near: "", source: "" };
    found.set(JSON.stringify(row), row);
  }
  return [...found.values()];
}

/** What readings whose subject is known hold for a report. */
interface MappedContent {
  bores: Placed<BoreReadings>[];
  tests: Placed<CompressionTest>[];
  limits: LimitRow[];
}

/** What a layout of the shop's own holds. `isDrawn` tells the cells that a function of the sheet has shown already. */
export function mappedContent({ readings, limits }: Mapped, isDrawn: (cell: CellAddress) => boolean): MappedContent {
  const rows = limits.map(limitRow).filter(({ lower, upper }) => lower !== "" || upper !== "");
  return { ...drawnFrom(readings, limits, isDrawn, placeOf), limits: rows };
}

/** What can be drawn of readings; `place` names where those of one drawing stand. */
function drawnFrom(
  readings: readonly MappedReading[],
  limits: readonly MappedLimit[],
  isDrawn: (cell: CellAddress) => boolean,
  place: (readings: readonly MappedReading[]) => string,
): Pick<MappedContent, "bores" | "tests"> {
  const free = readings.filter(({ cell }) => !isDrawn(cell));
  const of = (characteristic: string) => free.filter((reading) => reading.characteristic === characteristic);
  const standards = readings.filter(({ characteristic }) => characteristic === "standard bore");
  const measured = (groups: readonly MappedReading[][]) => groups.filter((own) => own.some((reading) => numberAt(reading) !== null));
  return {
    bores: measured(grouped(of("bore"), ({ engine, cylinder }) => `${engine}|${cylinder}`)).map((own) => ({
      what: boreOf(own, standards, limits),
      place: place(own),
    })),
    tests: measured(grouped(of("compression pressure"), ({ engine }) => engine)).map((own) => ({ what: testOf(own, limits), place: place(own) })),
  };
}

function grouped(readings: readonly MappedReading[], key: (reading: MappedReading) => string): MappedReading[][] {
  const groups = new Map<string, MappedReading[]>();
  for (const reading of readings) groups.set(key(reading), [...(groups.get(key(reading)) ?? []), reading]);
  return [...groups.values()];
}

const nameOf = ({ engine, cylinder, characteristic }: MappedReading): string => labelFrom({ engine, cylinder }) || characteristic;

/** `Bores!C4 to D6`, or the lines of a file. */
function placeOf(readings: readonly MappedReading[]): string {
  const [first, last] = [readings[0]!.cell, readings.at(-1)!.cell];
  const from = placeName(first);
  return readings.length === 1 ? from : `${from} to ${first.sheet === last.sheet ? cellName(last) : placeName(last)}`;
}

const numberAt = ({ value }: MappedReading): number | null => numberIn(value) || null;

function boreOf(own: readonly MappedReading[], standards: readonly MappedReading[], limits: readonly MappedLimit[]): BoreReadings {
  const words = ({ places }: MappedReading, isAxis: boolean) => positionText(places.filter(({ kind }) => (kind === "axis") === isAxis));
  const heights = [...new Set(own.map((reading) => words(reading, false)))];
  const axes = [...new Set(own.map((reading) => words(reading, true)))];
  const readings = heights.map((height) =>
    axes.map((axis) => {
      const reading = own.find((one) => words(one, false) === height && words(one, true) === axis);
      return reading ? numberAt(reading) : null;
    }),
  );
  const { engine, cylinder, unit } = own[0]!;
  const [standard] = standards.filter((one) => isOf(one.engine, engine) && isOf(one.cylinder, cylinder)).map(numberAt);
  const wear = numberIn(limitFor({ engine, cylinder, characteristic: "bore wear", places: [] }, limits)?.given.upper);
  const limit = standard && wear !== null ? standard + wear : largestAllowed(own);
  return { name: nameOf(own[0]!), unit, heights: distinct(heights, "height"), axes: distinct(axes, "axis"), readings, standard: standard ?? undefined, limit };
}

/** The upper limit that stands beside every reading of a bore, where it is one and the same. */
function largestAllowed(own: readonly MappedReading[]): number | undefined {
  const uppers = new Set(own.map((reading) => numberIn(reading.own?.given.upper)));
  return uppers.size === 1 ? ([...uppers][0] ?? undefined) : undefined;
}

/** A size of no engine or cylinder is that of all. */
const isOf = (owner: string, subject: string): boolean => owner === "" || owner.toLowerCase() === subject.toLowerCase();

function testOf(own: readonly MappedReading[], limits: readonly MappedLimit[]): CompressionTest {
  const { engine, unit } = own[0]!;
  const spread = numberIn(limitFor({ engine, cylinder: "", characteristic: "compression spread", places: [] }, limits)?.given.upper);
  const cylinders = own.map((reading, i) => ({ name: labelFrom({ cylinder: reading.cylinder }) || String(i + 1), pressure: numberIn(reading.value) }));
  const rule = spread === null ? undefined : { rule: "difference" as const, limit: spread };
  return { name: labelFrom({ engine }) || "compression", unit, cylinders, rule, limits: pressureLimits(own, limits) };
}

/** The limits of the pressures, where all of them have the same. */
function pressureLimits(own: readonly MappedReading[], limits: readonly MappedLimit[]): Limits | undefined {
  const each = own.map((reading) => {
    const own = reading.own?.given;
    const given = isBlank(own?.lower) && isBlank(own?.upper) ? limitFor(reading, limits)?.given : own;
    // No pressure is below 0, so that a lower limit of 0 is none.
    return { lower: numberIn(given?.lower) || undefined, upper: numberIn(given?.upper) ?? undefined };
  });
  return each.every(({ lower, upper }) => lower === each[0]!.lower && upper === each[0]!.upper) ? each[0] : undefined;
}

const limitRow = ({ engine, cylinder, characteristic, places, given, unit }: MappedLimit): LimitRow => ({
  characteristic: labelFrom({ engine, cylinder, characteristic, position: positionText(places) }),
  lower: reportText(given.lower),
  upper: reportText(given.upper),
  unit: unit ?? "",
  near: reportText(given.near),
  source: "",
});
