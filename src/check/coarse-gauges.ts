import { decimal, isAbove } from "../core/decimal.ts";
import { placeName } from "../workbook/address.ts";
import type { Candidate } from "./candidates.ts";
import type { FindingCollector } from "./collect.ts";
import type { FindingSubject } from "./finding.ts";
import type { Gauges } from "./gauges.ts";
import { type CellJudgement, toleranceIn } from "./judge.ts";

/**
 * A gauge is wanted whose uncertainty is at most this part of the tolerance, or too much of the
 * tolerance is lost to doubt. Common practice; shops ask for anything from a tenth to a third.
 */
export const TOLERANCE_SHARES = 3;

/** True where three times the uncertainty is more than the tolerance, as decimals. */
export const isCoarse = (uncertainty: number, lower: number | undefined, upper: number | undefined): boolean =>
  uncertainty > 0 && lower !== undefined && upper !== undefined && isAbove(TOLERANCE_SHARES * uncertainty, upper - lower);

/** Told about the first reading of those that one gauge and the same limits judge; `readings` is how many those are, where that is known. */
export function reportCoarse(report: FindingCollector, about: FindingSubject, uncertainty: number, readings: number | null): void {
  const tolerance = decimal(about.upper! - about.lower!);
  report.find("coarse gauge", about, { uncertainty, tolerance, largestUncertainty: roundedDown(tolerance / TOLERANCE_SHARES), readings });
}

interface Coarse {
  uncertainty: number;
  /** The first reading that was judged so. */
  about: () => FindingSubject;
  readings: number;
}

/** Gauges whose uncertainty eats more than a third of a tolerance: told once for all readings that one limit and one gauge judge. */
export class CoarseGauges {
  readonly #found = new Map<string, Coarse>();

  constructor(
    readonly report: FindingCollector,
    readonly gauges: Gauges,
  ) {}

  look({ beside, cell, gauge, unit }: Candidate, judged: CellJudgement, about: () => FindingSubject): void {
    if (judged.as !== "judged") return;
    const { lower, upper } = toleranceIn(judged);
    // Where the judgement takes no uncertainty, that of the gauge that the row names still counts here.
    const uncertainty = judged.uncertainty || (gauge && this.gauges.uncertaintyOf(gauge, unit)) || 0;
    if (!isCoarse(uncertainty, lower, upper)) return;
    const place = beside.uncertainty ? placeName(beside.uncertainty) : cell.sheet;
    const key = `${place}|${uncertainty}|${lower}|${upper}`;
    const known = this.#found.get(key);
    if (known) known.readings++;
    else this.#found.set(key, { uncertainty, about: () => ({ ...about(), lower: lower! }), readings: 1 });
  }

  finish(): void {
    for (const { uncertainty, about, readings } of this.#found.values()) reportCoarse(this.report, about(), uncertainty, readings);
  }
}

/** To four figures, and never more than it is. */
function roundedDown(value: number): number {
  if (!(value > 0)) return 0;
  const unit = 10 ** (Math.floor(Math.log10(value)) - 3);
  return decimal(Math.floor(value / unit + 1e-6) * unit);
}
