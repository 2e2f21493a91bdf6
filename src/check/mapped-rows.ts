import { type Cell, isBlank } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { groupedBy } from "../core/grouped.ts";
import { show } from "../core/sentences.ts";
import { unitWords } from "../core/words.ts";
import { argumentArea, type SpillSources } from "../formula/precedents.ts";
import { judgingParams } from "../functions/verdict/limit-params.ts";
import { type DerivedReading, deriveReadings, INGREDIENTS, resultsFrom } from "../layout/derived.ts";
import { type LimitCells, limitFor, limitsAsSizes, type MappedLimit, type MappedReading, type MappedSubject } from "../layout/mapped-readings.ts";
import type { Mapping } from "../layout/mapping.ts";
import { CHARACTERISTICS } from "../vocabulary/characteristics.ts";
import { groupFrom, labelFrom } from "../vocabulary/headings.ts";
import { positionText } from "../vocabulary/parse-heading.ts";
import { readingInText } from "../vocabulary/reading-text.ts";
import { type CellAddress, type CellArea, placeName } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { Analysis } from "./analysis.ts";
import { type Candidate, limitKey } from "./candidates.ts";
import { unjudged } from "./collect.ts";
import type { DetailsOf, FindingSubject } from "./finding.ts";
import { NO_INPUTS, plainValue, type VerdictInputs } from "./judge.ts";
import type { WatchedReading } from "./outliers.ts";

/** Something found without judging. */
type MappedFinding = { [K in "missing reading" | "missing limit"]: { kind: K; about: FindingSubject; details: DetailsOf<K> } }[
  | "missing reading"
  | "missing limit"];

/** What a check takes in from a layout of the shop's own. */
export interface AppliedMapping {
  /** To be judged. */
  candidates: Candidate[];
  /** Typed readings, to be compared with their like. */
  watched: { group: string; watched: WatchedReading }[];
  /** Readings that are not judged themselves. */
  inputs: number;
  /** What is found without judging. */
  findings: MappedFinding[];
  /** Places of cells that the layout speaks for, by name. */
  covers: ReadonlySet<string>;
}

/** What a layout makes of a workbook. */
export const applyMapping = (snapshot: Pick<WorkbookSnapshot, "sheets">, mapping: Mapping): AppliedMapping => judgedRows(new Analysis(snapshot), mapping);

/** The same for a workbook that is already being looked at. */
export function judgedRows(analysis: Analysis, mapping: Mapping): AppliedMapping {
  const steps = judgingSteps(analysis, mapping);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps, for whoever wants to do something in between. */
export function* judgingSteps(analysis: Analysis, mapping: Mapping): Generator<void, AppliedMapping> {
  const { readings, limits, lost } = analysis.mapped(mapping);
  yield;
  const rows = new Rows(analysis, limits);
  yield;
  for (const { cell, why } of lost) rows.refuse(cell, "", why);
  const results = deriveReadings(readings).filter((result) => !rows.isWorkedOutBySheet(result));
  for (const reading of readings) yield rows.reading(reading);
  for (const result of results) yield rows.result(result);
  rows.unlimited(results);
  return rows.applied;
}

const labelOf = ({ engine, cylinder, characteristic, places }: MappedSubject): string =>
  labelFrom({ engine, cylinder, characteristic, position: positionText(places) });

const groupOf = ({ engine, characteristic }: MappedSubject): string => groupFrom({ engine, characteristic });

const isBad = (value: Cell): boolean => judgingParams.value.take(value, "value") instanceof Fault;

class Rows {
  readonly applied: Omit<AppliedMapping, "covers"> & { covers: Set<string> } = { candidates: [], watched: [], inputs: 0, findings: [], covers: new Set() };
  /** Readings that nothing judges. */
  readonly #unlimited: MappedReading[] = [];
  /** Characteristics, each of its engine, with a limit beside a reading of their own. */
  readonly #limited = new Set<string>();
  readonly #ownCalls = new Map<string, CellArea[]>();

  readonly origins: SpillSources;

  constructor(
    { origins, calls }: Analysis,
    readonly limits: readonly MappedLimit[],
  ) {
    this.origins = origins;
    for (const { spec, args, context } of calls) {
      for (const [i] of spec.inputs.entries()) {
        const area = argumentArea(args[i], context);
        if (!area) continue;
        const areas = this.#ownCalls.get(spec.name);
        if (areas) areas.push(area);
        else this.#ownCalls.set(spec.name, [area]);
      }
    }
  }

  /** True where a formula of the sheet does the same with the same readings: then it speaks for itself. */
  isWorkedOutBySheet({ spec, from }: DerivedReading): boolean {
    const areas = this.#ownCalls.get(spec.name) ?? [];
    return areas.some((area) => from.some(({ cell }) => isInside(cell, area)));
  }

  reading(reading: MappedReading): void {
    const { cell, value, own } = reading;
    this.applied.covers.add(placeName(cell));
    const found = own && hasLimit(own) ? own : limitFor(reading, this.limits);
    const limited = found && limitsAsSizes(reading.nominal, found);
    const isLimited = limited !== undefined && hasLimit(limited);
    const taken = judgingParams.value.take(value, "value");
    const stray = deviationAlone(reading);
    if (isLimited) this.#limited.add(groupOf(reading));
    if (stray !== undefined) {
      this.refuse(cell, labelOf(reading), stray);
      return;
    }
    if (isLimited || taken instanceof Fault) this.#judge(reading, givenOf(value, own, limited), limited);
    if (typeof taken !== "number") return;
    this.#watch(reading, taken);
    if (isLimited) return;
    this.#unlimited.push(reading);
    this.applied.inputs++;
  }

  /** Only what was typed can be mistyped. */
  #watch(reading: MappedReading, value: number): void {
    if (this.origins.of(reading.cell) !== undefined) return;
    const kind = CHARACTERISTICS[reading.characteristic]?.kind;
    const measures = kind === undefined ? {} : { measures: kind };
    this.applied.watched.push({
      group: `layout|${groupOf(reading)}`,
      watched: { value, unit: reading.unit, ...measures, subject: () => this.#about(reading) },
    });
  }

  /** Taper and the like, where there is a limit for it. */
  result(result: DerivedReading): void {
    const limit = limitFor(result, this.limits);
    if (!limit || !hasLimit(limit) || result.from.some(({ value }) => isBad(value))) return;
    if (result.missing.length > 0) this.#missing(result);
    else if (result.fault !== undefined) this.refuse(result.cell, labelOf(result), result.fault, result.from);
    else {
      const given = givenOf(result.value, undefined, limit);
      const uncertainty = isBlank(given.uncertainty) ? (result.uncertainty() ?? null) : given.uncertainty;
      this.#judge({ ...result, unit: result.from[0]!.unit }, { ...given, uncertainty }, limit, result.from);
    }
  }

  refuse(cell: CellAddress, label: string, fault: string, from: DerivedReading["from"] = []): void {
    const rests = from.map((reading) => reading.cell);
    const candidate = { key: `${placeName(cell)}|layout|${label}`, cell, given: NO_INPUTS, isTyped: false, beside: {}, from: rests, whole: { fault } };
    this.applied.candidates.push(label ? { ...candidate, label } : candidate);
  }

  #judge(
    subject: MappedSubject & { cell: CellAddress; unit?: string | undefined },
    given: VerdictInputs,
    limit: LimitCells | undefined,
    from?: DerivedReading["from"],
  ): void {
    const { cell, unit } = subject;
    const isReading = from === undefined;
    const label = labelOf(subject);
    if (limit?.unit !== undefined && unit !== undefined && limit.unit !== unit) {
      this.refuse(cell, label, `the reading is in ${unitWords(unit)} and its limit in ${unitWords(limit.unit)}: give both in one unit`);
      return;
    }
    const isTyped = isReading && this.origins.of(cell) === undefined;
    const key = `${placeName(cell)}|${isReading ? "" : `${subject.characteristic}|`}${limitKey(given)}`;
    this.applied.candidates.push({
      key,
      cell,
      given,
      isTyped,
      beside: limit?.beside ?? {},
      unit,
      ...(subject.characteristic ? { characteristic: subject.characteristic } : {}),
      ...(label ? { label } : {}),
      ...(from ? { from: from.map((reading) => reading.cell) } : {}),
    });
  }

  /** A bore not yet begun is named once, an unfinished one at each reading that is missing. */
  #missing({ missing, from }: DerivedReading): void {
    const begun = from.some(({ value }) => !isBlank(value));
    const readings = from.filter(({ cell }) => missing.includes(cell));
    for (const reading of begun ? readings : readings.slice(0, 1)) {
      const details = { blank: begun ? "one of a range" : "a whole range", range: null } as const;
      this.applied.findings.push({ kind: "missing reading", about: this.#about(reading), details });
    }
  }

  /** Readings that are judged neither themselves nor through what they come to: said once for each characteristic of an engine. */
  unlimited(results: readonly DerivedReading[]): void {
    const used = new Set<MappedReading>();
    for (const result of results) {
      const limit = limitFor(result, this.limits);
      if (limit && hasLimit(limit)) for (const reading of result.from) used.add(reading);
    }
    for (const readings of groupedBy(this.#unlimited, groupOf).values()) {
      const [first] = readings;
      const { characteristic } = first!;
      if (CHARACTERISTICS[characteristic]?.isSetting || readings.some((reading) => used.has(reading) || this.#isUsedBySheet(reading))) continue;
      const worked = INGREDIENTS.has(characteristic) ? resultsFrom(characteristic) : [];
      const results = worked.filter((result) => !this.#limited.has(groupOf({ ...first!, characteristic: result })));
      const details = { readings: readings.length, characteristic: characteristic || null, results };
      this.applied.findings.push({ kind: "missing limit", about: this.#about(first!), details });
    }
  }

  #isUsedBySheet({ cell }: MappedReading): boolean {
    return [...this.#ownCalls.values()].some((areas) => areas.some((area) => isInside(cell, area)));
  }

  #about(reading: MappedReading): FindingSubject {
    return unjudged({ cell: reading.cell, label: labelOf(reading) }, plainValue(reading.value));
  }
}

/** What is wrong with a text such as `+0.02` whose nominal stands nowhere in line with it. */
function deviationAlone({ value, own }: MappedReading): string | undefined {
  const nominal = own?.given.nominal;
  const read = typeof value === "string" ? readingInText(value) : undefined;
  if (read === undefined || !("deviation" in read) || !isBlank(nominal)) return undefined;
  return `${show(value)} reads as a deviation, and its nominal is missing: type the nominal in line with it, in a column headed Nominal, or the whole size as a number`;
}

const hasLimit = ({ given }: LimitCells): boolean => !isBlank(given.lower) || !isBlank(given.upper);

/** What stands in line with a reading goes before what stands with its limit. */
function givenOf(value: Cell, own: LimitCells | undefined, limit: LimitCells | undefined): VerdictInputs {
  const of = (name: "uncertainty" | "near"): Cell => (isBlank(own?.given[name]) ? (limit?.given[name] ?? null) : own!.given[name]);
  return { value, lower: limit?.given.lower ?? null, upper: limit?.given.upper ?? null, uncertainty: of("uncertainty"), near: of("near"), rule: null };
}

const isInside = ({ sheet, row, column }: CellAddress, area: CellArea): boolean =>
  sheet === area.sheet && row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;
