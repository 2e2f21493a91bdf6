import { decimal, isAbove } from "../../core/decimal.ts";
import { placeName } from "../../workbook/address.ts";
import type { Candidate } from "./candidates.ts";
import type { Gauges } from "./gauges.ts";
import type { Judged } from "./given.ts";
import type { Report, Subject } from "./report.ts";

/**
 * A gauge is wanted whose uncertainty is at most this part of the tolerance, or too much of the
 * tolerance is lost to doubt. Common practice; shops ask for anything from a tenth to a third.
 */
export const SHARES = 3;

/** True where three times the uncertainty is more than the tolerance, as decimals. */
export const isCoarse = (uncertainty: number, lower: number | undefined, upper: number | undefined): boolean =>
  uncertainty > 0 && lower !== undefined && upper !== undefined && isAbove(SHARES * uncertainty, upper - lower);

/** Told about the first reading of those that one gauge and the same limits judge; `more` says in words which others there are. */
export function reportCoarse(report: Report, about: Subject, [uncertainty, lower, upper]: readonly [number, number, number], more: string): void {
  const tolerance = decimal(upper - lower);
  const most = roundedDown(tolerance / SHARES);
  const advice = most > 0 ? `measure with a gauge whose U is at most ${most}` : "no gauge can prove this";
  report.find(
    "coarse gauge",
    { ...about, value: uncertainty, lower: null, upper: most, margin: decimal(tolerance / SHARES - uncertainty), verdict: null },
    `the uncertainty ${uncertainty} is more than a third of the tolerance ${tolerance} between ${lower} and ${upper}${more}: ${advice}`,
  );
}

interface Coarse {
  numbers: readonly [uncertainty: number, lower: number, upper: number];
  /** The first reading that was judged so. */
  about: () => Subject;
  readings: number;
}

/** Gauges whose uncertainty eats more than a third of a tolerance: told once for all readings that one limit and one gauge judge. */
export class CoarseGauges {
  readonly #found = new Map<string, Coarse>();

  constructor(
    readonly report: Report,
    readonly gauges: Gauges,
  ) {}

  look({ beside, cell, gauge, unit }: Candidate, judged: Judged, about: () => Subject): void {
    if (judged.as !== "judged") return;
    const { lower, upper } = judged.limits;
    // Where the judgement takes no uncertainty, that of the gauge that the row names still counts here.
    const uncertainty = judged.uncertainty || (gauge && this.gauges.uncertaintyOf(gauge, unit)) || 0;
    if (!isCoarse(uncertainty, lower, upper)) return;
    const place = beside.uncertainty ? placeName(beside.uncertainty) : cell.sheet;
    const key = `${place}|${uncertainty}|${lower}|${upper}`;
    const known = this.#found.get(key);
    if (known) known.readings++;
    else this.#found.set(key, { numbers: [uncertainty, lower!, upper!], about, readings: 1 });
  }

  finish(): void {
    for (const { numbers, about, readings } of this.#found.values()) {
      reportCoarse(this.report, about(), numbers, readings > 1 ? `, here and for ${readings - 1} more of the like` : "");
    }
  }
}

/** To four figures, and never more than it is. */
function roundedDown(value: number): number {
  if (!(value > 0)) return 0;
  const unit = 10 ** (Math.floor(Math.log10(value)) - 3);
  return decimal(Math.floor(value / unit + 1e-6) * unit);
}
