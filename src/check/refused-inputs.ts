import { isBlank } from "../core/cell.ts";
import type { Spec } from "../core/define.ts";
import { Fault } from "../core/fault.ts";
import { BLANK, type Param } from "../core/param.ts";
import type { OwnCall } from "../formula/own-calls.ts";
import { argumentArea, type SpillSources } from "../formula/precedents.ts";
import { CellSet, cellsOf, showArea } from "../formula/workbook-cells.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { characteristicNamed } from "../vocabulary/subjects.ts";
import { areaText, type CellAddress, type CellArea, placeName } from "../workbook/address.ts";
import { type FindingCollector, unjudged } from "./collect.ts";
import type { DetailsOf, FindingSubject } from "./finding.ts";
import { refusalReason } from "./judge.ts";
import type { MeasuredKind } from "./likely-slip.ts";
import type { Outliers } from "./outliers.ts";
import type { Rechecks } from "./rechecks.ts";

/** A cell that a function cannot work with, and why. */
export interface BadInput {
  cell: CellAddress;
  why: string;
}

/** An input of a function, and what it has been given so far. */
interface Use {
  name: string;
  param: Param<unknown>;
  /** The function and the input: `CLEARANCE.bore`. */
  of: string;
  /** What it measures; functions that assist take sizes of all parts. */
  measures: MeasuredKind;
  /** Cells that were given alone, and larger areas. */
  cells: CellSet;
  areas: Set<string>;
}

/** Takes note of an area; false when it has been given before. */
function isFirst({ cells, areas }: Use, area: CellArea): boolean {
  if (area.rows === 1 && area.columns === 1) return cells.add(area);
  const before = areas.size;
  return areas.add(areaText(area)).size > before;
}

/** `=IF(OR(B4="",C4=""),"",…`: a formula that stays blank by itself while nobody has begun. */
const WAITS = /^=\s*IF\(/i;

/** The cells that functions take their inputs from: which are blank, which are no good, which look mistyped. */
export class RefusedInputs {
  readonly bad = new Map<string, BadInput>();
  readonly #blanks: { cell: CellAddress; details: DetailsOf<"missing reading"> }[] = [];
  /** By the function, what its inputs have been looked at for. */
  readonly #uses = new Map<Spec, readonly Use[]>();
  readonly #counted = new CellSet();

  constructor(
    readonly origins: SpillSources,
    readonly labels: SheetLabels,
    readonly report: FindingCollector,
    readonly watch: Outliers,
    readonly rechecks: Rechecks,
  ) {}

  look(call: OwnCall): void {
    const { spec, args, context } = call;
    const areas = spec.inputs.map((_, i) => argumentArea(args[i], context));
    const uses = this.#usesOf(spec);
    for (let i = 0; i < uses.length; i++) {
      const area = areas[i];
      // The many formulas that share a range look at it once for each use of it.
      if (!area || !isFirst(uses[i]!, area)) continue;
      const blanks = this.#lookAt(area, uses[i]!);
      if (blanks.length === 0) continue;
      if (uses[i]!.param.broadcastKind === "bore") this.#blankReadings(call, area, blanks);
      else this.#blankPartners(call, i, areas, blanks);
    }
  }

  #usesOf(spec: Spec): readonly Use[] {
    let uses = this.#uses.get(spec);
    if (!uses) {
      uses = spec.inputs.map(({ name, param }) => ({
        name,
        param,
        of: `${spec.name}.${name}`,
        measures: measuredBy(spec, param),
        cells: new CellSet(),
        areas: new Set(),
      }));
      this.#uses.set(spec, uses);
    }
    return uses;
  }

  /** Gives the cells that are blank. */
  #lookAt(area: CellArea, { name, param, of, measures }: Use): CellAddress[] {
    const blanks: CellAddress[] = [];
    for (const cell of cellsOf(area)) {
      const value = this.origins.book.value(cell);
      const taken = param.take(value, name);
      if (taken === BLANK) {
        blanks.push(cell);
        continue;
      }
      if (taken instanceof Fault) this.#refuse(cell, refusalReason(value, taken));
      else if (measures !== undefined) this.#watch(of, area, cell, taken as number, measures);
      if (this.#counted.add(cell)) this.report.inputs++;
    }
    return blanks;
  }

  /** A fault that came out of a function of ours is told where it went in. */
  #refuse(cell: CellAddress, why: string): void {
    const place = placeName(cell);
    if (!this.bad.has(place)) this.bad.set(place, { cell, why });
  }

  /** Compared with what the function takes everywhere of parts of one name, as main and big end bearings are not alike, and with its own range where that is long enough. */
  #watch(use: string, area: CellArea, cell: CellAddress, value: number, measures: MeasuredKind): void {
    if (this.origins.isResult(cell)) return;
    const watched = { value, measures, subject: () => this.#subject(cell, value) };
    const heading = this.labels.headingOf(cell);
    this.watch.add(`${use} ${heading === undefined ? "" : (characteristicNamed(heading) ?? "")}`, watched);
    this.watch.add(`${use} ${placeName(area)}`, watched);
  }

  #subject(cell: CellAddress, value: FindingSubject["value"]): FindingSubject {
    return unjudged({ cell, label: this.labels.of(cell) }, value);
  }

  /** An unfinished bore leaves its results blank: each missing reading is named, a bore not yet begun only once, and not at all where the formula itself waits for it. */
  #blankReadings({ formula, isWhole }: OwnCall, area: CellArea, blanks: readonly CellAddress[]): void {
    const typed = blanks.filter((cell) => !this.origins.isResult(cell));
    if (blanks.length === area.rows * area.columns) {
      if (!isWhole && WAITS.test(formula)) return;
      const isOne = blanks.length === 1;
      if (typed[0]) this.#missing(typed[0], isOne ? "one reading" : "a whole range", isOne ? null : showArea(area));
    } else for (const cell of typed) this.#missing(cell, "one of a range");
  }

  /** A blank beside a filled partner is missing; a row that is blank throughout, beside a size that the shop has chosen for all, is only not begun. */
  #blankPartners(call: OwnCall, index: number, areas: readonly (CellArea | undefined)[], blanks: readonly CellAddress[]): void {
    const { param } = call.spec.inputs[index]!;
    if (param.isOptional || param.broadcastKind !== "element") return;
    const partners = areas.filter((area, i) => {
      const partner = call.spec.inputs[i]!.param;
      return area && i !== index && !partner.isOptional && partner.role !== "chosen";
    }) as CellArea[];
    const own = areas[index]!;
    for (const cell of blanks) {
      if (this.origins.isResult(cell)) continue;
      const filled = partners.some((area) => !isBlank(this.origins.book.value(beside(area, cell.row - own.row, cell.column - own.column))));
      if (filled) this.#missing(cell, "one of a row");
    }
  }

  #missing(cell: CellAddress, blank: DetailsOf<"missing reading">["blank"], range: string | null = null): void {
    this.#blanks.push({ cell, details: { blank, range } });
  }

  reportBlanks(): void {
    for (const { cell, details } of this.#blanks) if (!this.rechecks.isAhead(cell)) this.report.find("missing reading", this.#subject(cell, null), details);
  }
}

function measuredBy({ role }: Spec, { quantity }: Param<unknown>): MeasuredKind {
  if (quantity === "length") return role === "assists" ? "any length" : "length";
  return quantity === "volume" ? "volume" : undefined;
}

/** The cell of another range that goes with the one at this place; one row or one column goes with all. */
const beside = ({ sheet, row, column, rows, columns }: CellArea, r: number, c: number): CellAddress => ({
  sheet,
  row: row + (rows === 1 ? 0 : r),
  column: column + (columns === 1 ? 0 : c),
});
