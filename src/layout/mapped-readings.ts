import { type Cell, isBlank } from "../core/cell.ts";
import { decimal } from "../core/decimal.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import { limitsInText } from "../vocabulary/limit-text.ts";
import type { ParsedHeading, PositionWord } from "../vocabulary/parse-heading.ts";
import { readingInText } from "../vocabulary/reading-text.ts";
import { isLengthUnit, unitOf } from "../vocabulary/units.ts";
import type { CellAddress } from "../workbook/address.ts";
import { type LabelledNumber, labelledNumbers } from "./heading-fields.ts";
import { locate } from "./locate.ts";
import type { MappedRange, Mapping, Role } from "./mapping.ts";
import { partsOfLine } from "./parts-of-line.ts";

/** What a reading or limit is of; `""` where nothing says. */
export interface MappedSubject {
  engine: string;
  cylinder: string;
  characteristic: string;
  places: PositionWord[];
}

type Beside = Exclude<Role, "value" | "unit">;

/** Limits, uncertainty and near as they stand in cells. */
export interface LimitCells {
  given: Partial<Record<Beside, Cell>>;
  beside: Partial<Record<Beside, CellAddress>>;
  unit?: string | undefined;
  /** Two limits of one side stand here, and the last of them is given. */
  isDouble?: boolean;
}

export interface MappedReading extends MappedSubject {
  cell: CellAddress;
  value: Cell;
  unit?: string | undefined;
  /** The size from which it was counted, where it stands in its cell as a deviation. */
  nominal?: number;
  /** What stands in line with it. */
  own?: LimitCells | undefined;
}

export type MappedLimit = MappedSubject & LimitCells;

export interface Mapped {
  readings: MappedReading[];
  limits: MappedLimit[];
  /** Ranges that are no longer where they were, each with why and its first cell. */
  lost: { cell: CellAddress; why: string }[];
}

/** Everything that a layout knows of a workbook. A cell that two ranges hold counts with the first. */
export function readLayout(book: WorkbookCells, mapping: Mapping): Mapped {
  const mapped: Mapped = { readings: [], limits: [], lost: [] };
  const taken = new Set<string>();
  for (const saved of mapping.ranges) {
    const range = locate(book, saved);
    if ("lost" in range) mapped.lost.push({ cell: { sheet: saved.sheet, row: saved.row, column: saved.column }, why: range.lost });
    else gather(book, range, taken, mapped);
  }
  return mapped;
}

function gather(book: WorkbookCells, range: MappedRange, taken: Set<string>, { readings, limits }: Mapped): void {
  const lines = new Map<string, LabelledNumber[]>();
  for (const fact of labelledNumbers(book, range)) {
    const place = `${fact.cell.row},${fact.cell.column},${fact.cell.sheet}`;
    if (taken.has(place)) continue;
    taken.add(place);
    // Cells that belong to no line are told apart by what they are of, so that a lower limit finds its upper one.
    const key = range.records === "cell" ? (fact.role === "value" ? place : subjectKey(fact.says)) : fact.line.key;
    const line = lines.get(key);
    if (line) line.push(fact);
    else lines.set(key, [fact]);
  }
  for (const facts of lines.values()) {
    const parts = partsOfLine(facts);
    for (const part of parts) {
      const beside = limitCellsOf(part);
      const values = part.filter(({ role }) => role === "value");
      for (const { cell, value, says } of values) {
        const unit = unitIn(beside, says);
        readings.push({ ...subjectOf(says), cell, ...sizeIn(value, unit, says.isDeviation === true, beside?.given.nominal), unit, own: beside });
      }
      if (values.length > 0 || !beside) continue;
      // A nominal by itself limits nothing, and neither does a blank in a line of readings: what stands elsewhere counts then.
      const isBesideReadings = facts.some(({ role }) => role === "value");
      const isLimited = Object.keys(beside.beside).some((role) => role !== "nominal");
      const hasLimit = !isBlank(beside.given.lower) || !isBlank(beside.given.upper);
      const says = isBesideReadings ? ofItself(part[0]!) : part[0]!.says;
      if (isBesideReadings ? hasLimit : isLimited) limits.push({ ...subjectOf(says), ...beside, unit: unitIn(beside, says) });
    }
  }
}

/** What is said of a limit in a line of readings of other things: at which height those were taken is not said of it, but of which ring. */
function ofItself({ says, named }: LabelledNumber): ParsedHeading {
  const parts = CHARACTERISTICS[says.characteristic ?? ""]?.parts ?? [];
  return { ...says, places: says.places.filter((place) => named.places.includes(place) || parts.includes(place.word)) };
}

/**
 * The size that a cell stands for. A fraction is one of an inch, so it is read where the headings or its own sign say inches;
 * a deviation where its nominal stands in line. What cannot be read stays as it is, to be refused by its name.
 */
function sizeIn(value: Cell, unit: string | undefined, isDeviation: boolean, given: Cell | undefined): Pick<MappedReading, "value" | "nominal"> {
  const size = (cell: Cell): Cell => {
    const read = typeof cell === "string" ? readingInText(cell) : undefined;
    return read && "fraction" in read && (read.isInch || unit === "in") ? read.fraction : cell;
  };
  const nominal = size(given ?? null);
  const read = typeof value === "string" ? readingInText(value) : undefined;
  const deviation = read && "deviation" in read ? read.deviation : isDeviation && typeof value === "number" ? value : undefined;
  if (deviation === undefined || typeof nominal !== "number" || !isOf(nominal, deviation)) return { value: size(value) };
  return { value: decimal(nominal + deviation), nominal };
}

/** Sizes further apart than a fifth are none of one part: a slip, or no deviation. */
const FARTHEST = 0.2;
const isOf = (nominal: number, deviation: number): boolean => Math.abs(deviation) < FARTHEST * nominal;

/** Limits as sizes: beside a reading that is a deviation they may stand as deviations as well. */
export function limitsAsSizes(nominal: number | undefined, limits: LimitCells): LimitCells {
  if (nominal === undefined) return limits;
  const whole = (["lower", "upper"] as const).flatMap((side) => {
    const limit = limits.given[side];
    return typeof limit === "number" && isOf(nominal, limit) ? [[side, decimal(nominal + limit)]] : [];
  });
  return { ...limits, given: { ...limits.given, ...Object.fromEntries(whole) } };
}

/** The unit of what stands here. A length's unit that stands over a whole table is not that of the pressures in it. */
function unitIn(beside: LimitCells | undefined, { unit, characteristic = "" }: ParsedHeading): string | undefined {
  if (beside?.unit !== undefined) return beside.unit;
  const said = unit === undefined ? undefined : (unitOf(unit) ?? unit);
  const kind = CHARACTERISTICS[characteristic]?.kind;
  return said !== undefined && kind !== undefined && isLengthUnit(said) !== (kind === "length") ? undefined : said;
}

const subjectKey = ({ engine = "", cylinder = "", characteristic = "", places }: ParsedHeading): string =>
  JSON.stringify([engine, cylinder, characteristic, places.map(({ word }) => word)]);

function limitCellsOf(facts: readonly LabelledNumber[]): LimitCells | undefined {
  const cells: LimitCells = { given: {}, beside: {} };
  let found = false;
  const give = (role: Beside, value: Cell, cell: CellAddress): void => {
    const known = cells.given[role] ?? null;
    // A blank beside a limit takes nothing away.
    if (isBlank(value) && !isBlank(known)) return;
    if ((role === "lower" || role === "upper") && !isBlank(known)) cells.isDouble = true;
    cells.given[role] = value;
    cells.beside[role] = cell;
  };
  for (const { role, value, cell } of facts) {
    if (role === "value") continue;
    found = true;
    const inWords = (role === "lower" || role === "upper") && typeof value === "string" ? limitsInText(value) : undefined;
    if (role === "unit") cells.unit = typeof value === "string" ? unitOf(value) : undefined;
    else if (inWords) {
      for (const side of ["lower", "upper"] as const) if (inWords[side] !== undefined) give(side, inWords[side], cell);
      cells.unit ??= inWords.unit;
    } else give(role, value, cell);
  }
  return found ? cells : undefined;
}

function subjectOf({ engine = "", cylinder = "", characteristic = "", places }: ParsedHeading): MappedSubject {
  return { engine, cylinder, characteristic, places };
}

/** The limits of a subject: those that say most of what they are for, and nothing that the subject is not. */
export function limitFor(subject: MappedSubject, limits: readonly MappedLimit[]): MappedLimit | undefined {
  let best: MappedLimit | undefined;
  let most = -1;
  for (const limit of limits) {
    const score = fitOf(subject, limit);
    if (score > most) {
      best = limit;
      most = score;
    }
  }
  return best;
}

/** How much of a subject a limit speaks of; −1 when it is for another one. */
function fitOf(subject: MappedSubject, limit: MappedSubject): number {
  if (limit.characteristic !== subject.characteristic) return -1;
  let score = 0;
  for (const name of ["engine", "cylinder"] as const) {
    if (limit[name] === "") continue;
    if (foldedHeading(limit[name]) !== foldedHeading(subject[name])) return -1;
    score += name === "cylinder" ? 200 : 100;
  }
  const words = new Set(subject.places.map(({ word }) => word));
  return limit.places.every(({ word }) => words.has(word)) ? score + limit.places.length : -1;
}

/** What a range holds. */
export interface RangeSummary {
  what: string;
  readings: number;
  limits: number;
  isComplete: boolean;
  /** Some have two limits of one side. */
  isDouble: boolean;
}

/** Counts what a range holds, and says it in words. */
export function summaryOf(book: WorkbookCells, range: MappedRange): RangeSummary {
  const { readings, limits } = readLayout(book, { version: 1, ranges: [range] });
  const own = ownLimits(readings);
  const parts = [
    ...counted(readings).map(([name, count]) => `${count} ${count === 1 ? "reading" : "readings"} of ${name}`),
    ...(limits.length
      ? [
          `limits of ${counted(limits)
            .map(([name]) => name)
            .join(", ")}`,
        ]
      : []),
  ];
  const of = [named("engine", readings), named("cylinder", readings)].filter(Boolean).join(", ");
  const what = `${parts.join(", ")}${own ? ", with their limits" : ""}${of ? `; ${of}` : ""}`;
  const isComplete = [...readings, ...limits].every(({ characteristic }) => characteristic !== "");
  const isDouble = [...readings.map((reading) => reading.own), ...limits].some((beside) => beside?.isDouble);
  return { what, readings: readings.length, limits: limitCount(readings, limits), isComplete, isDouble };
}

const ownLimits = (readings: readonly MappedReading[]): number =>
  readings.filter(({ own: beside }) => beside && (beside.beside.lower || beside.beside.upper)).length;

/** Limits for themselves, and those that stand in line with a reading. */
export const limitCount = (readings: readonly MappedReading[], limits: readonly MappedLimit[]): number => limits.length + ownLimits(readings);

function counted(subjects: readonly MappedSubject[]): [string, number][] {
  const counts = new Map<string, number>();
  for (const { characteristic } of subjects) counts.set(characteristic || "something", (counts.get(characteristic || "something") ?? 0) + 1);
  return [...counts];
}

/** `engines A, B` or `cylinder 1`. */
function named(word: "engine" | "cylinder", subjects: readonly MappedSubject[]): string {
  const names = [...new Set(subjects.map((subject) => subject[word]))].filter(Boolean);
  return names.length === 0 ? "" : `${word}${names.length === 1 ? "" : "s"} ${names.join(", ")}`;
}
