import { isCellError } from "../core/cell.ts";
import { CHECK_PREFIX } from "../core/sentences.ts";
import type { OwnCall } from "../formula/own-calls.ts";
import { firstFaultyCell, RestsOn, type SpillSources } from "../formula/precedents.ts";
import { recalculationSteps } from "../formula/recalculate.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import type { SheetLabels } from "../layout/labels.ts";
import type { Mapping } from "../layout/mapping.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../workbook/port.ts";
import { Analysis } from "./analysis.ts";
import { candidatesOf, judges } from "./candidates.ts";
import type { Resting } from "./causes.ts";
import { CoarseGauges } from "./coarse-gauges.ts";
import { FindingCollector } from "./collect.ts";
import { ruledPressures } from "./compression-tests.ts";
import type { CheckResult, JudgedRow } from "./finding.ts";
import { Gauges } from "./gauges.ts";
import { errorReason, plainValue } from "./judge.ts";
import { RowJudge } from "./judged-rows.ts";
import { tableRows } from "./long-tables.ts";
import { type AppliedMapping, judgingSteps } from "./mapped-rows.ts";
import { Outliers, tellSuspicion } from "./outliers.ts";
import { OverwrittenFormulas } from "./overwritten-formulas.ts";
import { Rechecks } from "./rechecks.ts";
import { type BadInput, RefusedInputs } from "./refused-inputs.ts";
import { reportShown } from "./shown-results.ts";
import { TypedLimits } from "./typed-limits.ts";
import { ZeroLimits } from "./zero-limits.ts";

/** How far a check has come, between 0 and 1. */
type Share = number;

/**
 * Looks through a workbook for what somebody should see before the engine goes together: every
 * reading that a function of ours judges and every row of a table in long form, the inputs of
 * all our functions, the gauges, and formulas that somebody typed over. With a layout of the shop's
 * own, what it maps is judged as well. `judged` is told every verdict, also those of which there is
 * nothing to say.
 */
export const checkWorkbook = (snapshot: WorkbookSnapshot, mapping?: Mapping, judged?: (row: JudgedRow) => void): CheckResult =>
  checkAnalysed(new Analysis(snapshot, mapping !== undefined), mapping, judged);

/** The same for a workbook that somebody else looks through as well. */
export function checkAnalysed(analysis: Analysis, mapping?: Mapping, judged?: (row: JudgedRow) => void): CheckResult {
  const check = new Check(analysis, judged);
  for (const { steps } of check.parts(mapping)) for (const _ of steps);
  return check.finish();
}

/** What a check came to, with the look through the workbook that it rests on, for whoever asks more of it. */
export interface AnalysedCheck {
  result: CheckResult;
  analysis: Analysis;
}

/** The same check in small steps: whoever takes them can do something in between, show how far it is, or leave off. */
export function* checkSteps(snapshot: WorkbookSnapshot, mapping?: Mapping): Generator<Share, AnalysedCheck> {
  const rows = Math.max(
    1,
    snapshot.sheets.reduce((sum, { values }) => sum + values.length, 0),
  );
  const recalculation = yield* shares(recalculationSteps(snapshot), RECALCULATED, rows);
  const analysis = new Analysis(snapshot, mapping !== undefined, recalculation);
  const check = new Check(analysis);
  let from = RECALCULATED;
  for (const { to, count, steps } of check.parts(mapping)) {
    let done = 0;
    const until = RECALCULATED + to * (1 - RECALCULATED);
    for (const _ of steps) yield from + ((until - from) * Math.min(++done, count)) / count;
    from = until;
  }
  return { result: check.finish(), analysis };
}

/** The share of a check that goes into working out our formulas once more. */
const RECALCULATED = 0.2;

function* shares<T>(steps: Generator<void, T>, to: Share, count: number): Generator<Share, T> {
  for (let done = 0; ; ) {
    const step = steps.next();
    if (step.done) return step.value;
    yield (to * Math.min(++done, count)) / count;
  }
}

/** A part of a check, and which share of its time has passed when it ends, as measured on build sheets of ten thousand rows. */
interface Part {
  to: Share;
  /** How many steps there are to be expected. */
  count: number;
  steps: Iterable<unknown>;
}

class Check {
  readonly book: WorkbookCells;
  readonly origins: SpillSources;
  readonly rows: RowJudge;
  readonly #report: FindingCollector;
  readonly #watch: Outliers;
  readonly #labels: SheetLabels;
  readonly #gauges: Gauges;
  readonly #coarse: CoarseGauges;
  readonly #typedLimits: TypedLimits;
  readonly #zeroLimits: ZeroLimits;
  readonly #inputs: RefusedInputs;
  /** Where something is worked out instead of judged. */
  readonly #others: CellAddress[] = [];
  #laid: AppliedMapping | undefined;

  constructor(
    readonly analysis: Analysis,
    judged?: (row: JudgedRow) => void,
  ) {
    const { book, origins, labels } = analysis;
    this.book = book;
    this.origins = origins;
    this.#report = new FindingCollector(undefined, judged);
    this.#watch = new Outliers((watched, suspicion) => tellSuspicion(this.#report, watched.subject(), suspicion));
    this.#labels = labels;
    this.#gauges = new Gauges(this.book);
    this.#coarse = new CoarseGauges(this.#report, this.#gauges);
    this.#typedLimits = new TypedLimits(this.#report, this.#labels);
    this.#zeroLimits = new ZeroLimits(this.#report, this.#labels);
    const rechecks = new Rechecks(book, labels);
    this.#inputs = new RefusedInputs(this.origins, this.#labels, this.#report, this.#watch, rechecks);
    this.rows = new RowJudge(this.origins, this.#labels, this.#report, this.#watch, this.#coarse, rechecks, this.#zeroLimits);
  }

  /** Each rests on what those before it have found. */
  *parts(mapping: Mapping | undefined): Generator<Part> {
    const count = this.book.sheets.reduce((rows, { values }) => rows + values.length, 0);
    yield { to: 0.02, count, steps: this.origins.prepare() };
    yield { to: 0.75, count, steps: this.#formulas() };
    yield { to: 0.85, count, steps: this.#tables(mapping) };
    yield { to: 0.95, count: this.rows.count, steps: this.rows.judgeAll() };
    yield { to: 0.98, count, steps: this.#typedOver() };
    yield { to: 1, count, steps: this.#faultyResults() };
  }

  /** What formulas judge, and what they work with. */
  *#formulas(): Generator<void> {
    for (const calls of this.analysis.readCalls()) {
      for (const call of calls) this.#look(call);
      yield;
    }
  }

  #look(call: OwnCall): void {
    this.#typedLimits.look(call);
    if (judges(call)) for (const candidate of candidatesOf(call, this.origins)) this.rows.add(candidate);
    else {
      for (const candidate of ruledPressures(call, this.#labels)) this.rows.add(candidate);
      this.#others.push(call.at);
      this.#inputs.look(call);
    }
  }

  /** What tables and a layout of the shop's own give to be judged. */
  *#tables(mapping: Mapping | undefined): Generator<void> {
    if (mapping) this.#laid = yield* judgingSteps(this.analysis, mapping);
    for (const candidate of tableRows(this.origins)) {
      if (!this.#laid?.covers.has(placeName(candidate.cell))) this.rows.add(candidate);
      yield;
    }
    for (const candidate of this.#laid?.candidates ?? []) this.rows.add(candidate);
  }

  *#typedOver(): Generator<void> {
    const overwritten = new OverwrittenFormulas(this.book, this.#labels, this.#report);
    for (const [sheet, r] of rowsOf(this.book)) {
      overwritten.look(sheet, r);
      yield;
    }
  }

  /** Formulas that call our functions and show a fault, faults that have spilled from them, and inputs that none of them can take. */
  *#faultyResults(): Generator<void> {
    this.#inputs.reportBlanks();
    this.rows.reportBlanks();
    for (const { cell, why } of this.#inputs.bad.values()) this.#refuse({ cell, why });
    for (const at of this.#others) {
      const value = this.book.value(at);
      if (isCellError(value)) this.#refuse({ cell: at, why: errorReason(value) });
    }
    for (const [sheet, r] of rowsOf(this.book)) {
      const line = sheet.values[r]!;
      for (let c = 0; c < line.length; c++) {
        const value = line[c];
        if (typeof value !== "string" || !value.startsWith(CHECK_PREFIX)) continue;
        this.#refuse({ cell: { sheet: sheet.name, row: sheet.row + r, column: sheet.column + c }, why: value.slice(CHECK_PREFIX.length) });
      }
      yield;
    }
  }

  #refuse({ cell, why }: BadInput): void {
    const source = firstFaultyCell(this.origins, cell);
    if (this.rows.covered.has(placeName(source))) return;
    this.rows.covered.add(placeName(source));
    this.#report.row({ as: "refused", why }, () => ({ cell: source, label: this.#labels.of(source) }), plainValue(this.book.value(source)));
  }

  finish(): CheckResult {
    for (const { group, watched } of this.#laid?.watched ?? []) this.#watch.add(group, watched);
    this.#report.inputs += this.#laid?.inputs ?? 0;
    for (const { kind, about, details } of this.#laid?.findings ?? []) this.#report.find(kind, about, details);
    this.#watch.finish();
    this.#coarse.finish();
    this.#typedLimits.finish();
    this.#zeroLimits.finish();
    this.#gauges.reportUnits(this.#report);
    this.#gauges.reportOverdue(this.#report, this.#labels);
    reportShown(this.analysis, this.#report);
    const resting: Resting = (causes) => {
      const restsOn = new RestsOn(this.origins, causes);
      return ({ cell, label }) => {
        const from = this.rows.derivedFrom(cell, label) ?? [cell];
        return new Set(from.flatMap((one) => [...restsOn.of(one)]));
      };
    };
    return this.#report.result(
      this.book.sheets.map(({ name }) => name),
      resting,
    );
  }
}

function* rowsOf({ sheets }: WorkbookCells): Generator<[sheet: SheetSnapshot, row: number]> {
  for (const sheet of sheets) for (let r = 0; r < sheet.values.length; r++) yield [sheet, r];
}
