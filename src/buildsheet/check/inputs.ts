import { isBlank } from "../../core/cell.ts";
import { Fault } from "../../core/fault.ts";
import { BLANK, type Param } from "../../core/param.ts";
import { type CellAddress, placeName } from "../../sheet/address.ts";
import { type Area, cellsOf, showArea } from "../formula/book.ts";
import type { OwnCall } from "./calls.ts";
import { reasonOf } from "./given.ts";
import type { Labels } from "./labels.ts";
import type { Origins } from "./origins.ts";
import type { Report, Subject } from "./report.ts";
import { areaIn } from "./trace.ts";
import type { Watch } from "./watch.ts";

/** A cell that a function cannot work with, and why. */
export interface BadInput {
  cell: CellAddress;
  why: string;
}

/** The cells that functions take their inputs from: which are blank, which are no good, which look mistyped. */
export class Inputs {
  readonly bad = new Map<string, BadInput>();
  readonly #blanks: BadInput[] = [];
  readonly #looked = new Set<string>();
  readonly #counted = new Set<string>();

  constructor(
    readonly origins: Origins,
    readonly labels: Labels,
    readonly report: Report,
    readonly watch: Watch,
  ) {}

  look(call: OwnCall): void {
    const areas = call.spec.inputs.map((_, i) => areaIn(call.args[i], call.context));
    for (const [i, { name, param }] of call.spec.inputs.entries()) {
      const area = areas[i];
      if (!area) continue;
      if (param.lifting === "bore") this.#lookOnce(call, name, param, area, (blanks) => this.#blankReadings(area, blanks));
      else this.#lookOnce(call, name, param, area, (blanks) => this.#blankPartners(call, i, areas as (Area | undefined)[], blanks));
    }
  }

  /** The many formulas that share a range look at it once for each use of it. */
  #lookOnce(call: OwnCall, name: string, param: Param<unknown>, area: Area, blank: (blanks: CellAddress[]) => void): void {
    const use = `${call.spec.name}.${name}`;
    const looked = `${use}|${placeName(area)}|${area.rows}|${area.columns}`;
    const first = !this.#looked.has(looked);
    this.#looked.add(looked);
    const blanks: CellAddress[] = [];
    for (const cell of first ? cellsOf(area) : []) {
      const value = this.origins.book.value(cell);
      const taken = param.take(value, name);
      if (taken === BLANK) blanks.push(cell);
      else if (taken instanceof Fault) this.#refuse(cell, reasonOf(value, taken));
      else if (param.quantity === "length") this.#watch(use, area, cell, taken as number);
      if (taken !== BLANK) this.#count(cell);
    }
    if (blanks.length > 0) blank(blanks);
  }

  #isResult(cell: CellAddress): boolean {
    return this.origins.of(cell) !== undefined;
  }

  #count(cell: CellAddress): void {
    const place = placeName(cell);
    if (this.#counted.has(place)) return;
    this.#counted.add(place);
    this.report.inputs++;
  }

  /** A fault that came out of a function of ours is told where it went in. */
  #refuse(cell: CellAddress, why: string): void {
    const place = placeName(cell);
    if (!this.bad.has(place)) this.bad.set(place, { cell, why });
  }

  /** Compared with what the function takes everywhere, and with its own range where that is long enough. */
  #watch(use: string, area: Area, cell: CellAddress, value: number): void {
    if (this.#isResult(cell)) return;
    const watched = { value, isLength: true, subject: () => this.#subject(cell, value) };
    this.watch.add(use, watched);
    this.watch.add(`${use} ${placeName(area)}`, watched);
  }

  #subject(cell: CellAddress, value: Subject["value"]): Subject {
    return { cell, label: this.labels.of(cell), value, lower: null, upper: null, margin: null, verdict: null };
  }

  /** An unfinished bore leaves its results blank: each missing reading is named, a bore not yet begun only once. */
  #blankReadings(area: Area, blanks: readonly CellAddress[]): void {
    const typed = blanks.filter((cell) => !this.#isResult(cell));
    if (blanks.length === area.rows * area.columns) {
      if (typed[0]) this.#missing(typed[0], blanks.length === 1 ? "the reading is still blank" : `no readings yet in ${showArea(area)}`);
    } else for (const cell of typed) this.#missing(cell, "the reading is still blank, so nothing is worked out from its range");
  }

  /** A blank beside a filled partner is missing; a row that is blank throughout is only not begun. */
  #blankPartners(call: OwnCall, index: number, areas: readonly (Area | undefined)[], blanks: readonly CellAddress[]): void {
    const { param } = call.spec.inputs[index]!;
    if (param.isOptional || param.lifting !== "element") return;
    const partners = areas.filter((area, i) => area && i !== index && !call.spec.inputs[i]!.param.isOptional) as Area[];
    const own = areas[index]!;
    for (const cell of blanks) {
      if (this.#isResult(cell)) continue;
      const filled = partners.some((area) => !isBlank(this.origins.book.value(beside(area, cell.row - own.row, cell.column - own.column))));
      if (filled) this.#missing(cell, "the reading is still blank, while others that go with it are there");
    }
  }

  #missing(cell: CellAddress, sentence: string): void {
    this.#blanks.push({ cell, why: sentence });
  }

  reportBlanks(): void {
    for (const { cell, why } of this.#blanks) this.report.find("missing reading", this.#subject(cell, null), why);
  }
}

/** The cell of another range that goes with the one at this place; one row or one column goes with all. */
const beside = ({ sheet, row, column, rows, columns }: Area, r: number, c: number): CellAddress => ({
  sheet,
  row: row + (rows === 1 ? 0 : r),
  column: column + (columns === 1 ? 0 : c),
});
