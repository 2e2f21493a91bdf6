import { type Area, type Book, cellsOf } from "../../buildsheet/formula/book.ts";
import type { Given } from "../../plan/inputs.ts";
import { cellName } from "../../workbook/address.ts";
import { type Read, readArea, readGiven } from "../parts/range-text.ts";
import { type Field, type Form, isAsked } from "./fields.ts";

/** The answers of a form, read against the workbook. What cannot be read is collected, a sentence for each field. */
export class Answers {
  readonly troubles: Record<string, string> = {};
  readonly #asked: ReadonlySet<string>;

  constructor(
    readonly book: Book,
    readonly form: Form,
    fields: readonly Field[],
  ) {
    const asked = fields.filter((field) => isAsked(field, form));
    this.#asked = new Set(asked.map(({ key }) => key));
    for (const field of asked) if (field.isNeeded && !form[field.key]?.trim()) this.troubles[field.key] = "this is needed for the plan";
  }

  given(key: string): Given {
    return this.#take(key, readGiven(this.#text(key), this.book), null);
  }

  /** The ranges of a field, one a line. */
  areas(key: string): Area[] {
    const lines = this.#text(key)
      .split(/[\n;]/)
      .filter((line) => line.trim() !== "");
    return lines.flatMap((line) => this.#take(key, wrapped(readArea(line, this.book)), []));
  }

  /** One range, where several would not be understood. */
  area(key: string): Area | undefined {
    const areas = this.areas(key);
    if (areas.length > 1) this.troubles[key] ??= "one range is wanted here, and there are several lines";
    return areas[0];
  }

  /** The words in the cells of a range, in their order; `undefined` where the field is left blank. */
  names(key: string): string[] | undefined {
    const area = this.areas(key)[0];
    return area && [...cellsOf(area)].map((cell) => String(this.book.value(cell) ?? "").trim() || cellName(cell));
  }

  refuse(key: string, sentence: string): void {
    this.troubles[key] ??= sentence;
  }

  /** What stands in a field that is not asked counts for nothing. */
  #text(key: string): string {
    return this.#asked.has(key) ? (this.form[key] ?? "") : "";
  }

  #take<T>(key: string, read: Read<T>, otherwise: T): T {
    if ("given" in read) return read.given;
    this.refuse(key, read.sentence);
    return otherwise;
  }
}

const wrapped = (read: Read<Area>): Read<Area[]> => ("given" in read ? { given: [read.given] } : read);

/** Each row of a range as a range of its own. */
export const rowsOf = (area: Area): Area[] => Array.from({ length: area.rows }, (_, r) => ({ ...area, row: area.row + r, rows: 1 }));
