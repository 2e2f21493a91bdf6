import { decimal } from "../../core/decimal.ts";
import { slipOf } from "../../functions/measurement/slip.ts";
import type { FindingKind } from "../finding.ts";

/**
 * Readings of one kind lie close together, so one that lies far off tells of the keys, not of wear.
 * Honest wear must never be taken for a slip: nothing is looked at that is within eight spreads of the
 * middle, within 0.3 % of it (0.22 mm on a 73 mm bore, more than an engine in service wears) or within
 * twenty steps of the last decimal typed, and a single exchanged digit counts only where the readings
 * agree to 0.2 %. Limits of this test are
 * common practice; the names of the slips are those of SLIP.
 */
const FAR_SPREADS = 8;
const NEAR_SPREADS = 3;
const WEAR_SHARE = 0.003;
const LOOSEST = 0.15;
const TIGHT = 0.002;
/** Steps of the last decimal typed; readings a few steps apart agree as well as they can. */
const FAR_STEPS = 20;
/** Of fewer readings none can be called the odd one. */
const FEWEST = 4;
/** The middle absolute deviation of normally spread readings is this part of their standard deviation. */
const DEVIATION_SHARE = 0.6745;
const MM_PER_INCH = 25.4;

export interface Suspicion {
  kind: FindingKind & ("mixed units" | "likely slip");
  sentence: string;
}

/** What readings that should be alike have in common. */
export interface Alike {
  middle: number;
  spread: number;
  /** One of the last decimal that was typed. */
  step: number;
  /** In words: "the middle of the like readings". */
  source: string;
}

/** Nothing is looked at that is no further than this from the middle. */
export const farFrom = ({ middle, spread, step }: Alike): number => Math.max(FAR_SPREADS * spread, FAR_STEPS * step, WEAR_SHARE * middle);

/** Middle and spread of readings, neither of them moved by a few slips; `undefined` for too few. */
export function alikeOf(values: readonly number[]): Alike | undefined {
  if (values.length < FEWEST) return undefined;
  const middle = median(values);
  const spread = median(values.map((value) => Math.abs(value - middle))) / DEVIATION_SHARE;
  return { middle, spread, step: stepOf(values), source: "the middle of the like readings" };
}

/** Two-sided limits say as well where a reading belongs. */
export function alikeBetween(lower: number, upper: number): Alike {
  return { middle: (lower + upper) / 2, spread: (upper - lower) / 2, step: stepOf([lower, upper]), source: "the middle of its limits" };
}

/**
 * What a reading far from its like most likely is, if one slip explains it. Only lengths can be in
 * inches; where the unit is not known, only readings that agree closely are taken to be lengths.
 */
export function suspect(value: number, alike: Alike, areLengths: boolean | undefined): Suspicion | undefined {
  const { middle, spread, source } = alike;
  if (!(middle > 0) || !(value > 0) || areLengths === false) return undefined;
  const looseness = spread / middle;
  if (looseness > (areLengths ? LOOSEST : TIGHT)) return undefined;
  if (Math.abs(value - middle) <= farFrom(alike)) return undefined;
  const slip = slipOf(value, middle, Math.max(NEAR_SPREADS * spread, WEAR_SHARE * middle));
  if (slip === "" || (looseness > TIGHT && (slip === "two digits swapped" || slip === "one digit wrong"))) return undefined;
  const beside = `${decimal(value)} is far from ${rounded(middle)}, ${source}`;
  if (slip === "inch for mm")
    return { kind: "mixed units", sentence: `${beside}: inches among millimetres? ${decimal(value)} in is ${rounded(value * MM_PER_INCH)} mm` };
  if (slip === "mm for inch")
    return { kind: "mixed units", sentence: `${beside}: millimetres among inches? ${decimal(value)} mm is ${rounded(value / MM_PER_INCH)} in` };
  return { kind: "likely slip", sentence: `${beside}: ${QUESTIONS[slip]}` };
}

const QUESTIONS = {
  "decimal point": "is the decimal point in its place?",
  "two digits swapped": "were two digits swapped?",
  "one digit wrong": "is one digit wrong?",
};

/** To five figures, which is what a gauge shows. */
const rounded = (value: number): number => Number(value.toPrecision(5));

/** One of the last decimal that was typed in any of the values. */
function stepOf(values: readonly number[]): number {
  let step = Number.POSITIVE_INFINITY;
  let steps = 0;
  for (const value of values) {
    // Most values have no more decimals than those before them, which is seen without writing them out.
    if (Math.abs(value) < 1e6 && Math.round(value * steps) / steps === value) continue;
    step = Math.min(step, 10 ** -(String(decimal(value)).split(".")[1]?.length ?? 0));
    steps = Math.round(1 / step);
  }
  return step;
}

function median(values: readonly number[]): number {
  const sorted = new Float64Array(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
