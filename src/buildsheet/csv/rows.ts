import { compareReading } from "../check/compare.ts";
import { type Given, type Judged, judgeGiven, NOT_GIVEN } from "../check/given.ts";
import { Report } from "../check/report.ts";
import { unitOf } from "../check/units.ts";
import { Watch } from "../check/watch.ts";
import type { CheckResult } from "../finding.ts";
import { FIELDS, type Field, groupFrom, labelFrom } from "../headers.ts";
import type { Head } from "./head.ts";
import { cellOf, type DecimalSign, wrongSign } from "./numbers.ts";

const JUDGED_FIELDS = Object.keys(NOT_GIVEN) as (keyof Given)[];

/** Rows of readings in long form, judged one after the other. */
export class CsvRows {
  readonly #report = new Report();
  readonly #watch = new Watch((watched, { kind, sentence }) => this.#report.find(kind, watched.subject(), sentence));

  constructor(
    readonly name: string,
    readonly head: Omit<Head, "rest">,
    readonly decimal: DecimalSign,
  ) {}

  add(record: readonly string[], line: number): void {
    // Lines of delimiters alone are what a spreadsheet writes for empty rows.
    if (record.every((field) => field.trim() === "")) return;
    const { at, unit } = this.head;
    const fields = (): Partial<Record<Field, string>> =>
      Object.fromEntries(FIELDS.flatMap((field) => (at[field] === undefined ? [] : [[field, record[at[field]] ?? ""]])));
    const place = () => ({ cell: { sheet: this.name, row: line - 1, column: at.value! }, label: labelFrom(fields()), line });
    const judged = this.#judge(record);
    const about = this.#report.row(judged, place, record[at.value!]?.trim() || null);
    const written = at.unit === undefined ? undefined : unitOf(record[at.unit]!);
    const engine = at.engine === undefined ? "" : record[at.engine]!;
    const characteristic = at.characteristic === undefined ? "" : record[at.characteristic]!;
    compareReading(this.#report, this.#watch, judged, about, written ?? unit, groupFrom({ engine, characteristic }));
  }

  result(): CheckResult {
    this.#watch.finish();
    return this.#report.result();
  }

  #judge(record: readonly string[]): Judged {
    const { at, width, delimiter } = this.head;
    if (record.length < width || record.slice(width).some((field) => field.trim() !== "")) {
      const hint = record.length > width && delimiter === "," ? ": is there a decimal comma outside quotes?" : "";
      return { as: "refused", why: `the line has ${record.length} fields where there are ${width} headings${hint}` };
    }
    const given: Given = { ...NOT_GIVEN };
    for (const name of JUDGED_FIELDS) {
      const column = at[name];
      if (column === undefined) continue;
      given[name] = cellOf(record[column]!, this.decimal);
      const why = wrongSign(name, given[name], this.decimal);
      if (why) return { as: "refused", why };
    }
    return judgeGiven(given);
  }
}
