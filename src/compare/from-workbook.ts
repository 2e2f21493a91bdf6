import { Analysis } from "../check/analysis.ts";
import { type Candidate, candidatesOf, judges } from "../check/candidates.ts";
import { refusalReason } from "../check/judge.ts";
import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import { decimal } from "../core/decimal.ts";
import { isMeasuredInput, isOfEngine } from "../core/define.ts";
import { Fault } from "../core/fault.ts";
import { number } from "../core/inputs.ts";
import { CHECK_PREFIX, faultBody } from "../core/sentences.ts";
import type { OwnCall } from "../formula/own-calls.ts";
import { argumentArea, type SpillSources } from "../formula/precedents.ts";
import { cellsOf } from "../formula/workbook-cells.ts";
import { judgingParams } from "../functions/verdict/limit-params.ts";
import type { NameParts, SheetLabels } from "../layout/labels.ts";
import { limitFor } from "../layout/mapped-readings.ts";
import type { Mapping } from "../layout/mapping.ts";
import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import { USE_UNITS, type UseUnit } from "../vocabulary/heading-words.ts";
import { fieldOf, isNumberWord, saysOwner, useUnitOf } from "../vocabulary/headings.ts";
import { positionText } from "../vocabulary/parse-heading.ts";
import { characteristicNamed, measuredBy, ownerIn } from "../vocabulary/subjects.ts";
import { numbersBesideTexts } from "../vocabulary/table-lines.ts";
import { knownUnit } from "../vocabulary/units.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../workbook/port.ts";
import { campaignsOn, runInOf } from "./campaign-tables.ts";
import { engineIdentity } from "./engines.ts";
import { fillUnits } from "./fill-units.ts";
import { fillFromLimits } from "./limit-tables.ts";
import { MeasuredWith } from "./measured-with.ts";
import { type Reading, type ReadingSet, type ReadingSubject, tableReadings } from "./readings.ts";
import { type Repeats, repeatsIn } from "./repeats.ts";
import { type TypedSizes, typedFor } from "./typed-sizes.ts";
import { Uncertainties } from "./uncertainty.ts";
import { wideReadings } from "./wide-tables.ts";

/** Every reading that a layout knows of, with the limits that are for it. */
export function mappedReadings(analysis: Analysis, mapping: Mapping): Reading[] {
  const { readings, limits } = analysis.mapped(mapping);
  return readings.map(({ engine, cylinder, characteristic, places, value, unit, own, cell }) => {
    const { given = {} } = own ?? {};
    const { given: general = {} } = limitFor({ engine, cylinder, characteristic, places }, limits) ?? {};
    const number = (name: "lower" | "upper" | "uncertainty") => numberIn(isBlank(given[name]) ? general[name] : given[name]);
    const taken = judgingParams.value.take(value, "value");
    return {
      ...{ engine, cylinder, characteristic, position: positionText(places), cell, unit },
      ...(taken instanceof Fault ? { value: null, fault: refusalReason(value, taken) } : { value: typeof taken === "number" ? taken : null }),
      ...{ lower: number("lower"), upper: number("upper"), uncertainty: number("uncertainty") },
    };
  });
}

const numberIn = (cell: Cell): number | undefined => (typeof cell === "number" ? cell : undefined);

export interface WorkbookOptions {
  /** Expanded uncertainties U of readings, where the workbook gives none. */
  uncertainty?: TypedSizes | undefined;
  /** A layout of the shop's own: it speaks for the cells that it maps. */
  mapping?: Mapping | undefined;
  /** Only what stands on this sheet; its limits and gauges may stand on others. */
  sheet?: string | undefined;
}

/**
 * One side of a comparison from a workbook: its tables in long form, and what our formulas measure,
 * work out and judge, named by the labels beside them.
 */
export function readingsOfWorkbook(snapshot: WorkbookSnapshot, { uncertainty, mapping, sheet }: WorkbookOptions = {}): ReadingSet {
  const analysis = new Analysis(snapshot);
  const { book, origins, labels, calls } = analysis;
  const gathered = new Gathered(origins, labels, repeatsIn(book));
  const campaigns = book.sheets.map(campaignsOn);
  const notes = campaigns.flatMap((one) => one.notes);
  for (const [i, page] of book.sheets.entries())
    for (const reading of [...tableReadings(page), ...wideReadings(page), ...campaigns[i]!.masters]) gathered.table(reading);
  for (const call of calls) if (judges(call)) for (const candidate of candidatesOf(call, origins)) gathered.judged(candidate);
  for (const call of calls) if (isOfEngine(call.spec)) gathered.measured(call);
  gathered.results(calls);
  const laid = mapping ? mappedReadings(analysis, mapping).filter(({ value, fault }) => value !== null || fault !== undefined) : [];
  const isLaid = new Set(laid.map(({ cell }) => placeName(cell)));
  const readings = [...gathered.readings().filter(({ cell }) => !isLaid.has(placeName(cell))), ...laid];
  fillUnits(readings, book.sheets);
  notes.push(...giveUncertainties(readings, analysis, uncertainty));
  notes.push(...fillFromLimits(readings, book.sheets));
  const use = useIn(sheet === undefined ? book.sheets : book.sheets.filter(({ name }) => name === sheet)) ?? useIn(book.sheets);
  if (use !== undefined) for (const reading of readings) if (reading.hours === undefined) Object.assign(reading, use);
  const runIn = runInOf(book.sheets);
  if (sheet === undefined) return { name: snapshot.name, readings, notes, identity: engineIdentity(book.sheets), runIn };
  const own = engineIdentity(book.sheets.filter(({ name }) => name === sheet));
  const identity = Object.keys(own).length > 0 ? own : engineIdentity(book.sheets);
  return { name: sheet, readings: readings.filter(({ cell }) => cell.sheet === sheet), notes, identity, runIn };
}

/** A typed reading is as good as its gauge, or as was typed for it; what is worked out takes it from the readings that go into it. Gives what a person should know. */
function giveUncertainties(readings: readonly Reading[], { book, origins, calls }: Analysis, typed: TypedSizes | undefined): string[] {
  const gauges = new MeasuredWith(book);
  for (const reading of readings) {
    if (!origins.isResult(reading.cell)) gauges.fill(reading);
    reading.uncertainty ||= typedFor(reading, typed);
    const { kind, isSetting } = CHARACTERISTICS[measuredBy(reading.characteristic, reading.position).characteristic] ?? {};
    if (!origins.isResult(reading.cell) && kind === "length" && !isSetting) reading.uncertainty ||= typed?.general;
  }
  // What the sheet works out by itself rests on the bare number of such a gauge.
  if (gauges.notes.size > 0) for (const reading of readings) if (origins.isResult(reading.cell)) reading.uncertainty = undefined;
  const doubts = new Uncertainties(origins, calls, readings, typed?.general);
  for (const reading of readings) reading.uncertainty ||= decimal(doubts.of(reading.cell) ?? 0) || undefined;
  return [...gauges.notes];
}

/** What is known of a cell before it is named. */
type Found = Omit<Reading, keyof ReadingSubject> & { known?: ReadingSubject; characteristic?: string | undefined };

/** Readings by the cell that they stand in: each once, whatever refers to it. */
class Gathered {
  readonly #byPlace = new Map<string, Found>();

  constructor(
    readonly origins: SpillSources,
    readonly labels: SheetLabels,
    readonly repeats: Repeats,
  ) {}

  /** Named last: a whole number beside a reading may name it, or be a reading itself. */
  readings(): Reading[] {
    const named = [...this.#byPlace.values()].flatMap((found) => (this.repeats.isAboutReadings(found.cell) ? [] : [this.#named(found)]));
    return [...named, ...this.#repeated(new Map(named.map((reading) => [placeName(reading.cell), reading])))];
  }

  #named({ known, characteristic, ...found }: Found): Reading {
    const { row, heading } = this.labels.partsOf(found.cell);
    const names = row.filter(({ cell }) => !this.#byPlace.has(placeName(cell)));
    // Guides and housings have a taper too: the heading says which hole it is where it is not a bore.
    const named = heading === undefined ? "" : measuredBy(heading, "").characteristic;
    const isOther = Object.hasOwn(CHARACTERISTICS, named) && named !== characteristic;
    return { ...(known ?? subjectOf({ row: names, heading }, isOther ? undefined : characteristic)), ...found };
  }

  /** Second readings of what is known, with the limits of the first. */
  #repeated(known: ReadonlyMap<string, Reading>): Reading[] {
    return [...this.repeats.firstOf.values()].flatMap(({ first, second }) => {
      const [of, value] = [known.get(placeName(first)), this.origins.book.value(second)];
      if (!of || isBlank(value) || known.has(placeName(second))) return [];
      const { engine, cylinder, characteristic, position, unit, lower, upper } = of;
      return [{ ...{ engine, cylinder, characteristic, position, unit, lower, upper }, ...readingIn(value), cell: second, repeats: placeName(first) }];
    });
  }

  table({ engine, cylinder, characteristic, position, ...found }: Reading): void {
    this.#take({ ...found, known: { engine, cylinder, characteristic, position } });
  }

  #take(found: Found): void {
    const place = placeName(found.cell);
    const earlier = this.#byPlace.get(place);
    if (!earlier) this.#byPlace.set(place, found);
    else {
      // A table says what a reading is of, and a function what it measures; a verdict adds limits.
      for (const name of ["uncertainty", "lower", "upper"] as const) earlier[name] ??= found[name];
      earlier.characteristic ??= found.characteristic;
    }
  }

  judged({ cell, given, whole }: Candidate): void {
    if (whole && "unknown" in whole) return;
    const [uncertainty, lower, upper] = [given.uncertainty, given.lower, given.upper].map(numberIn);
    this.#put(cell, given.value, undefined, { uncertainty: uncertainty || undefined, lower, upper });
  }

  /** What a call was given as measured. */
  measured({ spec, args, context }: OwnCall): void {
    for (const [i, { param }] of spec.inputs.entries()) {
      const area = isMeasuredInput(spec, param) ? argumentArea(args[i], context) : undefined;
      for (const cell of area ? cellsOf(area) : []) {
        if (this.origins.of(cell) === undefined) this.#put(cell, this.origins.book.value(cell), param.broadcastKind === "bore" ? "bore" : undefined);
      }
    }
  }

  /** What our formulas come to, spilled cells included: where the outermost of our functions measures. */
  results(calls: readonly OwnCall[]): void {
    const outermost = new Map<string, OwnCall>();
    for (const call of calls) if (!outermost.has(placeName(call.at))) outermost.set(placeName(call.at), call);
    for (const { name, row, column, values } of this.origins.book.sheets) {
      for (const [r, line] of values.entries()) {
        for (const [c, value] of line.entries()) {
          const cell = { sheet: name, row: row + r, column: column + c };
          const origin = isBlank(value) ? undefined : this.origins.of(cell);
          const call = origin && outermost.get(placeName(origin.at));
          if (call?.spec.role === "measures") this.#put(cell, value);
        }
      }
    }
  }

  #put(cell: CellAddress, value: Cell, characteristic?: string, beside: Partial<Reading> = {}): void {
    if (isBlank(value)) return;
    this.#take({ ...readingIn(value), ...beside, cell, characteristic });
  }
}

const VALUE = number("the reading");

function readingIn(cell: Cell): Pick<Reading, "value" | "fault"> {
  if (typeof cell === "string" && cell.startsWith(CHECK_PREFIX)) return { value: null, fault: cell.slice(CHECK_PREFIX.length) };
  if (isCellError(cell)) return { value: null, fault: cell.message ?? `the formula gives ${cell.error}` };
  const taken = VALUE.take(cell, "value");
  return taken instanceof Fault ? { value: null, fault: faultBody(taken) } : { value: taken as number };
}

/** Which engine, cylinder and place the words beside a cell speak of; its heading says what is measured. */
function subjectOf({ row, heading: over }: NameParts, characteristic?: string): ReadingSubject {
  // What stands above an entry `Stroke | 72 | mm` may be the unit of another one.
  const heading = over !== undefined && knownUnit(over) !== undefined ? undefined : over;
  const subject: ReadingSubject = { engine: "", cylinder: "", characteristic: characteristic ?? heading ?? "", position: "" };
  const places: string[] = [];
  for (const { text, heading: above } of row) {
    const field = above === undefined ? undefined : fieldOf(above);
    if (above !== undefined && isNumberOf(above, text)) {
      places.push(`${above} ${text}`);
      continue;
    }
    // `Port` names an engine where no heading says that it is something else.
    const isOwner = field === undefined || field === "engine" || saysOwner("engine", text) || saysOwner("cylinder", text);
    const { engine, cylinder } = isOwner ? ownerIn(text) : {};
    if (subject.cylinder === "" && (cylinder || field === "cylinder")) subject.cylinder = cylinder ?? text;
    else if (subject.engine === "" && (engine || field === "engine")) subject.engine = engine ?? text;
    else places.push(text);
  }
  if (characteristic !== undefined && heading !== undefined) places.push(heading);
  else if (heading !== undefined && isPartOf(places.at(-1), heading))
    subject.characteristic = `${places.pop()} ${heading.charAt(0).toLowerCase()}${heading.slice(1)}`;
  // Without a heading the last words say what is measured.
  if (subject.characteristic === "") subject.characteristic = places.pop() ?? "";
  return { ...subject, position: places.join(" ") };
}

/** `Head` before a flatness, `Guide` before an interference: together they name another thing than either alone. */
function isPartOf(text: string | undefined, heading: string): boolean {
  const named = text === undefined ? undefined : characteristicNamed(`${text} ${heading}`);
  return named !== undefined && named !== characteristicNamed(heading) && named !== characteristicNamed(text!);
}

/** `Main bearing` above a 1: it counts those, and no cylinders. A heading that only says that it counts may count these. */
const isNumberOf = (heading: string, text: string): boolean =>
  /^\d+$/.test(text) && fieldOf(heading) === undefined && /\p{L}/u.test(heading) && !isNumberWord(heading);

/** `Hours run` with a number beside it, or `Miles` or `km`, where all cells of the workbook that say so agree. */
function useIn(sheets: readonly SheetSnapshot[]): Pick<Reading, "hours" | "useUnit"> | undefined {
  const found = new Map<UseUnit, Set<number>>();
  for (const [text, number] of numbersBesideTexts(sheets)) {
    const unit = useUnitOf(text);
    if (unit !== undefined) found.set(unit, (found.get(unit) ?? new Set()).add(number));
  }
  const [[unit, uses] = []] = USE_UNITS.flatMap((one) => (found.get(one)?.size === 1 ? [[one, found.get(one)!] as const] : []));
  if (unit === undefined) return undefined;
  const hours = [...uses!][0]!;
  return unit === "hours" ? { hours } : { hours, useUnit: unit };
}
