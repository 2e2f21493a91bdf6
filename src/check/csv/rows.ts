import type { Limits } from "../../core/verdict.ts";
import { READING_FIELDS, type ReadingField } from "../../vocabulary/heading-words.ts";
import { labelFrom, unitMisfit } from "../../vocabulary/headings.ts";
import { isNeverNegative } from "../../vocabulary/subjects.ts";
import { unitOf } from "../../vocabulary/units.ts";
import { isCoarse, reportCoarse, TOLERANCE_SHARES } from "../coarse-gauges.ts";
import { FindingCollector, type FindingPlace, subjectOf } from "../collect.ts";
import type { CheckResult, Finding, FindingSubject, JudgedRow } from "../finding.ts";
import { type CellJudgement, JUDGED_COLUMNS, judgeCells, judgeReading, NO_INPUTS, toleranceIn, type VerdictInputs, withoutZeroLimit } from "../judge.ts";
import { compareReading, tellSuspicion, type WatchedReading } from "../outliers.ts";
import { cellOf, type DecimalSign, wrongSign } from "./fields.ts";
import { type HeaderColumns, misfitOf } from "./header.ts";
import { OutlierPass, type SubjectOf } from "./pending-rows.ts";
import { Names } from "./row-names.ts";
import { EMPTY, Scanner } from "./scanner.ts";

/** So many are remembered; a file with more of them has been told often enough. */
const MOST_COARSE = 20_000;

/** A row that could not be judged, as it stands in the file. */
export interface RefusedRecord {
  line: number;
  why: string;
  text: string;
}

/** Rows in = checked + refused. */
export type Counts = Omit<CheckResult, "findings">;

/** What is told of rows as they pass. */
export interface Listeners {
  found?: ((finding: Finding) => void) | undefined;
  refused?: ((row: RefusedRecord) => void) | undefined;
  /** Every verdict, also one of which there is nothing to say; each row is then made into text, which takes its time. */
  judged?: ((row: JudgedRow) => void) | undefined;
}

/** A record apart from where it was read. */
interface Row {
  line: number;
  fields: readonly string[];
}

/** Rows of readings in long form, judged one after the other. */
export class CsvRows {
  readonly #report: FindingCollector;
  readonly #names: Names;
  readonly #outliers: OutlierPass;
  readonly #tellRefused: Listeners["refused"];
  /** The headings give limits or uncertainties in a unit of their own, which may not be that of the readings. */
  readonly #mayMisfit: boolean;
  /** Readings, limits and uncertainties of which has been told that they do not go together. */
  readonly #coarseTold = new Set<string>();

  constructor(
    readonly name: string,
    readonly head: HeaderColumns,
    readonly decimal: DecimalSign,
    { found, refused, judged }: Listeners & { found: (finding: Finding) => void },
  ) {
    this.#report = new FindingCollector(found, judged);
    this.#names = new Names(head);
    this.#outliers = new OutlierPass((suspicion, subject) => tellSuspicion(this.#report, subject, suspicion), this.#subjectOf);
    this.#tellRefused = refused;
    this.#mayMisfit = head.at.unit === undefined ? unitMisfit(head, head.unit) !== undefined : head.besideUnits.length > 0;
  }

  /** The record that the scanner stands at. */
  add(record: Scanner): void {
    if (!this.#passes(record)) this.#addSlowly(record);
  }

  /** There are no more rows. */
  finish(): void {
    this.#outliers.finish();
  }

  /** How many rows there were so far, and what came of them. */
  counts(): Counts {
    const { findings: _, ...counts } = this.#report.result();
    return counts;
  }

  /**
   * Most rows are plain numbers between plain limits, and most of them within: such a row is counted
   * here, and nothing of it is made into text or into anything else that has to be cleared up. False
   * where there is more to look at.
   */
  #passes(record: Scanner): boolean {
    if (record.fields !== this.head.width || this.#mayMisfit) return false;
    const { at } = this.head;
    const value = numberIn(record, at.value);
    const lower = numberIn(record, at.lower);
    const upper = numberIn(record, at.upper);
    const uncertainty = orNothing(numberIn(record, at.uncertainty));
    const near = orNothing(numberIn(record, at.near));
    if (!(value < EMPTY && uncertainty >= 0 && near >= 0) || Number.isNaN(lower) || Number.isNaN(upper)) return false;
    if (!this.#report.judged && isClearlyWithin(value, lower === EMPTY ? -EMPTY : lower, upper, uncertainty, near)) {
      this.#report.within();
      this.#outliers.add(record, value, this.#names.of(record));
      return true;
    }
    const limits = { lower: given(lower), upper: given(upper) };
    if (!arePlain(limits) || (lower === 0 && this.#names.of(record).isNeverNegative)) return false;
    this.#compare(record, judgeReading(value, limits, uncertainty, near), () => this.#placeOf(record), null);
    return true;
  }

  #addSlowly(record: Scanner): void {
    const row = { line: record.line, fields: record.texts() };
    // Lines of delimiters alone are what a spreadsheet writes for empty rows.
    if (row.fields.every((field) => field.trim() === "")) return;
    const judged = this.#judge(row.fields);
    if (judged.as === "refused") this.#tellRefused?.({ line: row.line, why: judged.why, text: record.raw() });
    this.#compare(record, judged, () => this.#place(row), this.#raw(row));
  }

  #compare(record: Scanner, judged: CellJudgement, place: () => FindingPlace, raw: Finding["value"]): void {
    const about = this.#report.row(judged, place, raw);
    const named = this.#names.of(record);
    const watch = { add: (_: string, { value, told }: WatchedReading) => this.#outliers.add(record, value, named, told) };
    compareReading(this.#report, watch, judged, about, named.unit, named.group);
    if (judged.as !== "judged") return;
    const { uncertainty } = judged;
    const { lower, upper } = toleranceIn(judged);
    if (isCoarse(uncertainty, lower, upper)) this.#coarse(record, uncertainty, { lower, upper }, () => ({ ...about(), lower: lower! }));
  }

  /** Once for the readings of a characteristic that have the same limits and uncertainty. */
  #coarse(record: Scanner, uncertainty: number, { lower, upper }: Limits, about: () => FindingSubject): void {
    const key = `${this.#names.of(record).group}|${[uncertainty, lower, upper]}`;
    if (this.#coarseTold.has(key) || this.#coarseTold.size >= MOST_COARSE) return;
    this.#coarseTold.add(key);
    reportCoarse(this.#report, about(), uncertainty, null);
  }

  /** What a row is about, from its line alone. */
  readonly #subjectOf: SubjectOf = (line, text) => {
    return () => {
      const record = new Scanner(this.head.delimiter, line);
      record.feed(new TextEncoder().encode(text));
      record.end();
      record.advance();
      const row = { line, fields: record.texts() };
      return subjectOf(this.#judge(row.fields), this.#place(row), this.#raw(row));
    };
  };

  #place({ line, fields }: Row): FindingPlace {
    const { at } = this.head;
    const named: Partial<Record<ReadingField, string>> = {};
    for (const field of READING_FIELDS) if (at[field] !== undefined) named[field] = fields[at[field]] ?? "";
    return this.#placed(line, named);
  }

  /** The same for a row that has all its fields, of which only those of its name are made into text. */
  #placeOf(record: Scanner): FindingPlace {
    const { engine, cylinder, characteristic, position, height, axis } = this.head.at;
    const text = (column: number | undefined): string => (column === undefined ? "" : record.text(column));
    return this.#placed(record.line, {
      engine: text(engine),
      cylinder: text(cylinder),
      characteristic: text(characteristic),
      position: text(position),
      height: text(height),
      axis: text(axis),
    });
  }

  #placed(line: number, named: Partial<Record<ReadingField, string>>): FindingPlace {
    return { cell: { sheet: this.name, row: line - 1, column: this.head.at.value! }, label: labelFrom(named), line };
  }

  #raw = ({ fields }: Row): string | null => fields[this.head.at.value!]?.trim() || null;

  #judge(fields: readonly string[]): CellJudgement {
    const { at } = this.head;
    const misfit = misfitOf(fields, this.head) ?? this.#unitMisfit(fields);
    if (misfit) return { as: "refused", why: misfit };
    const given: VerdictInputs = { ...NO_INPUTS };
    for (const name of JUDGED_COLUMNS) {
      const column = at[name];
      if (column === undefined) continue;
      given[name] = cellOf(fields[column]!, this.decimal);
      const why = wrongSign(name, given[name], this.decimal);
      if (why) return { as: "refused", why };
    }
    const judged = judgeCells(given);
    return at.characteristic !== undefined && isNeverNegative(fields[at.characteristic]!) ? withoutZeroLimit(judged) : judged;
  }

  #unitMisfit(fields: readonly string[]): string | undefined {
    const { at, unit } = this.head;
    return this.#mayMisfit ? unitMisfit(this.head, (at.unit === undefined ? undefined : unitOf(fields[at.unit]!)) ?? unit) : undefined;
  }
}

const numberIn = (record: Scanner, column: number | undefined): number => (column === undefined ? EMPTY : record.numbers[column]!);
const orNothing = (number: number): number => (number === EMPTY ? 0 : number);
const given = (number: number): number | undefined => (number === EMPTY ? undefined : number);

/** The columns whose numbers are judged. */
export const numberColumnsOf = ({ at }: HeaderColumns): number[] => JUDGED_COLUMNS.map((name) => at[name]).filter((column) => column !== undefined);

/** Limits that say what they mean: a 0 may stand for a blank. */
const arePlain = ({ lower, upper }: Limits): boolean => lower === undefined || upper === undefined || (lower <= upper && (upper !== 0 || lower < 0));

/**
 * True where limits, uncertainty and all leave no question: then the verdict is "within" and the gauge
 * fine enough. Of most readings it is true, and it costs a few comparisons; false says nothing. A limit
 * that is not given is infinitely far away.
 */
export function isClearlyWithin(value: number, lower: number, upper: number, uncertainty: number, near: number): boolean {
  return (
    value >= lower + uncertainty &&
    value <= upper - uncertainty &&
    TOLERANCE_SHARES * uncertainty <= upper - lower &&
    uncertainty >= 0 &&
    near === 0 &&
    // A limit of 0 may stand for a blank.
    (upper !== 0 || lower < 0) &&
    (lower > Number.NEGATIVE_INFINITY || upper < Number.POSITIVE_INFINITY)
  );
}
