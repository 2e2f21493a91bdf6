import type { Cell } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { firstBlankCell, firstFaultyCell, type SpillSources } from "../formula/precedents.ts";
import { judgingParams } from "../functions/verdict/limit-params.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import type { Candidate } from "./candidates.ts";
import type { CoarseGauges } from "./coarse-gauges.ts";
import type { FindingCollector } from "./collect.ts";
import { type CellJudgement, plainValue, readVerdict, type VerdictInputs } from "./judge.ts";
import { compareReading, type Outliers } from "./outliers.ts";
import type { Rechecks } from "./rechecks.ts";
import type { ZeroLimits } from "./zero-limits.ts";

/** The judged things of a workbook, each once, however many formulas and tables judge it. */
export class RowJudge {
  readonly #candidates = new Map<string, Candidate>();
  readonly #blankResults: CellAddress[] = [];
  readonly #from = new Map<string, readonly CellAddress[]>();
  /** Cells that a refused row already points to. */
  readonly covered = new Set<string>();

  constructor(
    readonly origins: SpillSources,
    readonly labels: SheetLabels,
    readonly report: FindingCollector,
    readonly watch: Outliers,
    readonly coarse: CoarseGauges,
    readonly rechecks: Rechecks,
    readonly zeroLimits: ZeroLimits,
  ) {}

  add(candidate: Candidate): void {
    if (candidate.from?.length) this.#from.set(`${placeName(candidate.cell)}|${candidate.label}`, candidate.from);
    const known = this.#candidates.get(candidate.key);
    this.#candidates.set(candidate.key, known ? merged(known, candidate) : candidate);
  }

  /** The readings that something is worked out from without a formula. */
  derivedFrom = (cell: CellAddress, label: string): readonly CellAddress[] | undefined => this.#from.get(`${placeName(cell)}|${label}`);

  get count(): number {
    return this.#candidates.size;
  }

  /** One after the other, for whoever wants to do something in between. */
  *judgeAll(): Generator<void> {
    for (const candidate of this.#candidates.values()) {
      this.#judge(candidate);
      yield;
    }
  }

  /** Results that are still blank, after the blank readings themselves have been told. */
  reportBlanks(): void {
    for (const cell of this.#blankResults) {
      const source = firstBlankCell(this.origins, cell);
      this.report.row({ as: "missing reading", limits: {} }, () => ({ cell: source, label: this.labels.of(source) }));
    }
  }

  #judge(candidate: Candidate): void {
    const { whole, given, cell } = candidate;
    if (whole && "fault" in whole) this.#refuse(cell, whole.fault, given.value, candidate.label);
    else if (whole) this.#takeSaid(candidate, whole.unknown, whole.said);
    else {
      const judged = this.zeroLimits.judge(candidate);
      if (judged.as === "refused") this.#refuse(this.#faultyCell(candidate), judged.why, given.value, candidate.label);
      else if (judged.as === "missing reading" && this.rechecks.isAhead(cell)) return;
      else if (judged.as === "missing reading" && !candidate.isTyped) this.#blankResults.push(cell);
      else this.#compare(candidate, judged);
    }
  }

  /** The cell to mend: where the reading's fault came in, or else the limit that is no good. The row speaks for them all. */
  #faultyCell({ given, beside, cell, isTyped }: Candidate): CellAddress {
    const faulty: CellAddress[] = [];
    for (const name of Object.keys(judgingParams) as (keyof VerdictInputs)[]) {
      if (!(judgingParams[name].take(given[name], name) instanceof Fault)) continue;
      const at = name === "value" ? cell : (beside[name] ?? cell);
      faulty.push(isTyped && name === "value" ? at : firstFaultyCell(this.origins, at));
    }
    for (const one of faulty) this.covered.add(placeName(one));
    return faulty[0] ?? cell;
  }

  #refuse(cell: CellAddress, why: string, value: Cell, label = this.labels.of(cell)): void {
    this.covered.add(placeName(cell));
    this.report.row({ as: "refused", why }, () => ({ cell, label }), plainValue(value));
  }

  #compare(candidate: Candidate, judged: CellJudgement): void {
    const { cell, given, isTyped, group, unit, label } = candidate;
    const about = this.report.row(judged, () => ({ cell, label: label ?? this.labels.of(cell) }), plainValue(given.value));
    this.coarse.look(candidate, judged, about);
    if (isTyped) compareReading(this.report, this.watch, judged, about, unit, group);
  }

  /** The formula uses what cannot be looked into: its cell's word is taken, and the sentence says so. */
  #takeSaid({ cell, given }: Candidate, why: string, at: CellAddress): void {
    const cellSays = this.origins.book.value(at);
    const said = readVerdict(cellSays);
    const label = this.labels.of(cell);
    if (said === "blank") this.#blankResults.push(at);
    else if (said === "unclear") this.#refuse(at, `the formula cannot be looked into (${why}), and its cell shows no verdict`, cellSays);
    else if ("refused" in said) this.#refuse(firstFaultyCell(this.origins, at), said.refused, given.value);
    else {
      const { verdict, margin } = said;
      this.report.said({ cell, label, value: plainValue(given.value), lower: null, upper: null, margin, verdict }, why);
    }
  }
}

/** One reading judged twice by the same limits: by whichever allows for more doubt. */
function merged(known: Candidate, other: Candidate): Candidate {
  const given = { ...known.given };
  for (const name of ["uncertainty", "near"] as const) {
    const [a, b] = [known.given[name], other.given[name]];
    given[name] = typeof a === "number" && typeof b === "number" ? Math.max(a, b) : (a ?? b);
  }
  // All of U is the stricter rule, and the default one.
  if (other.given.rule !== given.rule) given.rule = null;
  return { ...other, ...known, beside: { ...other.beside, ...known.beside }, given };
}
