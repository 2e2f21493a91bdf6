import { verdictOf } from "../../core/verdict.ts";
import { compareReading } from "../check/compare.ts";
import { type Given, type Judged, judgeGiven, NOT_GIVEN } from "../check/given.ts";
import { Report, type Subject } from "../check/report.ts";
import { GroupWatch, isOrdinary, type Watched } from "../check/watch.ts";

import type { CheckResult, Finding } from "../finding.ts";
import { FIELDS, type Field, labelFrom } from "../headers.ts";
import type { JudgedRow } from "../judged.ts";
import type { Head } from "./head.ts";
import { HeldLines } from "./held.ts";
import { Names } from "./names.ts";
import { cellOf, type DecimalSign, plainNumber, wrongSign } from "./numbers.ts";
import { misfitOf } from "./records.ts";
import { Scanner } from "./scanner.ts";

const JUDGED_FIELDS = Object.keys(NOT_GIVEN) as (keyof Given)[];

/** A row that could not be judged, as it stands in the file. */
export interface Refused {
  line: number;
  why: string;
  text: string;
}

/** What is told of rows as they pass. */
export interface Listeners {
  found?: ((finding: Finding) => void) | undefined;
  refused?: ((row: Refused) => void) | undefined;
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
  readonly #report: Report;
  readonly #watch: GroupWatch<HeldLines>;
  readonly #names: Names;
  readonly #tellRefused: Listeners["refused"];

  constructor(
    readonly name: string,
    readonly head: Omit<Head, "rest" | "bytes">,
    readonly decimal: DecimalSign,
    { found, refused, judged }: Listeners = {},
  ) {
    this.#report = new Report(found, judged);
    const held = (): HeldLines => new HeldLines((line, text) => this.#subjectOf(line, text));
    this.#watch = new GroupWatch((watched, { kind, sentence }) => this.#report.find(kind, watched.subject(), sentence), held);
    this.#names = new Names(head);
    this.#tellRefused = refused;
  }

  /** The record that the scanner stands at. */
  add(record: Scanner): void {
    if (!this.#passes(record)) this.#addSlowly(record);
  }

  result(): CheckResult {
    this.#watch.finish();
    return this.#report.result();
  }

  /**
   * Most rows are plain numbers within their limits: such a row is counted here, and made into text
   * only as far as its group still needs it. False where there is more to look at.
   */
  #passes(record: Scanner): boolean {
    const { at } = this.head;
    if (this.#report.judged !== undefined || record.fields !== this.head.width) return false;
    const value = this.#number(record, at.value);
    const lower = this.#number(record, at.lower);
    const upper = this.#number(record, at.upper);
    const uncertainty = this.#number(record, at.uncertainty) ?? 0;
    const near = this.#number(record, at.near) ?? 0;
    if (value === undefined || Number.isNaN(value) || !arePlain(lower, upper) || !(uncertainty >= 0 && near >= 0)) return false;
    if (verdictOf(value, lower, upper, uncertainty, near) !== "within") return false;
    this.#report.within();
    // Between two limits nothing is mistyped as far as they tell; its like may tell otherwise.
    const { group: name, unit } = this.#names.of(record);
    const group = this.#watch.group(name);
    if (group.waiting) {
      group.waiting.add(record, value, unit, undefined);
      this.#watch.added(group);
    } else if (!isOrdinary(group, value, unit)) this.#watch.look(group, { value, unit, subject: this.#subjectOf(record.line, record.raw()) });
    return true;
  }

  #number(record: Scanner, column: number | undefined): number | undefined {
    if (column === undefined) return undefined;
    const from = record.starts[column]!;
    const to = record.ends[column]!;
    return from === to ? undefined : plainNumber(record.bytes, from, to, this.decimal);
  }

  #addSlowly(record: Scanner): void {
    const row = { line: record.line, fields: record.texts() };
    // Lines of delimiters alone are what a spreadsheet writes for empty rows.
    if (row.fields.every((field) => field.trim() === "")) return;
    const judged = this.#judge(row.fields);
    if (judged.as === "refused") this.#tellRefused?.({ line: row.line, why: judged.why, text: record.raw() });
    const about = this.#report.row(judged, () => this.#place(row), this.#raw(row));
    const { group, unit } = this.#names.of(record);
    const watch = { add: (name: string, watched: Watched) => this.#watchOne(name, watched, record) };
    compareReading(this.#report, watch, judged, about, unit, group);
  }

  #watchOne(name: string, watched: Watched, record: Scanner): void {
    const group = this.#watch.group(name);
    if (!group.waiting) this.#watch.look(group, watched);
    else {
      group.waiting.add(record, watched.value, watched.unit, watched.told);
      this.#watch.added(group);
    }
  }

  /** What a row is about, from its line alone. */
  #subjectOf(line: number, text: string): () => Subject {
    return () => {
      const record = new Scanner(this.head.delimiter, line);
      record.feed(Buffer.from(text));
      record.end();
      record.next();
      const row = { line, fields: record.texts() };
      return new Report(() => {}).row(this.#judge(row.fields), () => this.#place(row), this.#raw(row))();
    };
  }

  #place({ line, fields }: Row): Pick<Finding, "cell" | "label" | "line"> {
    const { at } = this.head;
    const named: Partial<Record<Field, string>> = {};
    for (const field of FIELDS) if (at[field] !== undefined) named[field] = fields[at[field]] ?? "";
    return { cell: { sheet: this.name, row: line - 1, column: at.value! }, label: labelFrom(named), line };
  }

  #raw = ({ fields }: Row): string | null => fields[this.head.at.value!]?.trim() || null;

  #judge(fields: readonly string[]): Judged {
    const { at } = this.head;
    const misfit = misfitOf(fields, this.head);
    if (misfit) return { as: "refused", why: misfit };
    const given: Given = { ...NOT_GIVEN };
    for (const name of JUDGED_FIELDS) {
      const column = at[name];
      if (column === undefined) continue;
      given[name] = cellOf(fields[column]!, this.decimal);
      const why = wrongSign(name, given[name], this.decimal);
      if (why) return { as: "refused", why };
    }
    return judgeGiven(given);
  }
}

/** Limits that say what they mean: NaN is still to be looked at, and a 0 may stand for a blank. */
function arePlain(lower: number | undefined, upper: number | undefined): boolean {
  if (lower === undefined || upper === undefined) return !Number.isNaN(lower ?? upper);
  return lower <= upper && (upper !== 0 || lower < 0);
}
