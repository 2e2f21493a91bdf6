import { decimal } from "../core/decimal.ts";
import { slipOf } from "../functions/measurement/slip.ts";
import { kindOfUnit, type QuantityKind } from "../vocabulary/units.ts";
import { type DetailsOf, type FindingSubject, specOf } from "./finding.ts";

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
/** Of fewer readings none can be called the odd one; of fewer than most slips need, only one that is far beyond all that is honest. */
const FEWEST = 4;
const FEWEST_FOR_GROSS = 3;
/** The middle absolute deviation of normally spread readings is this part of their standard deviation. */
const DEVIATION_SHARE = 0.6745;
const MM_PER_INCH = 25.4;
/** 2.54³: NIST SP 811, appendix B. */
const CM3_PER_CUBIC_INCH = 16.387064;
/** Chambers of one engine agree to this share, and no slip of the decimal point comes as near to the factor between the units. */
const CHAMBER_SHARE = 0.2;
/** Gaps, clearances and wear may honestly be ten times and more of their like, but not as a number of thousandths of their unit is. */
const THOUSAND = 1000;
const HONEST_TIMES = 5;
/** No part in service is as far over its limit. */
const TIMES_OVER = 50;

/** Of two kinds of slip the one that a reading looks like, and by which numbers. */
export type LikelySlip = { kind: "likely slip"; details: DetailsOf<"likely slip"> } | { kind: "mixed units"; details: DetailsOf<"mixed units"> };

/** The same in a sentence. */
export const likelySlipText = ({ kind, details }: LikelySlip, value: number): string => specOf(kind).sentence({ ...NOWHERE, value }, details);

const NOWHERE: FindingSubject = { cell: { sheet: "", row: 0, column: 0 }, label: "", value: null, lower: null, upper: null, margin: null, verdict: null };

/** What readings that should be alike have in common. */
export interface RobustStatistics {
  middle: number;
  spread: number;
  /** One of the last decimal that was typed. */
  step: number;
  /** What they are. */
  source: DetailsOf<"likely slip">["beside"];
  /** So few that only a gross slip can be told. */
  isFew?: boolean;
  /** The two largest of them. */
  largest?: readonly [number, number];
}

/** What readings measure; undefined where that is not known, "other" for a unit that is not, "any length" where lengths of all parts come together. */
export type MeasuredKind = QuantityKind | "other" | "any length" | undefined;

export const measuredKindOf = (unit: string | undefined): MeasuredKind => (unit === undefined ? undefined : (kindOfUnit(unit) ?? "other"));

/** Nothing is looked at that is no further than this from the middle. */
export const farFrom = ({ middle, spread, step }: RobustStatistics): number => Math.max(FAR_SPREADS * spread, FAR_STEPS * step, WEAR_SHARE * middle);

/** True when readings between these two are nowhere far from their middle, wherever that is; a little is kept back for rounding. */
export const areNear = (least: number, most: number): boolean => least > 0 && most - least <= 0.99 * WEAR_SHARE * least;

/** Middle and spread of readings, neither of them moved by a few slips; `undefined` for too few. */
export function robustStatistics(values: readonly number[]): RobustStatistics | undefined {
  if (values.length < FEWEST_FOR_GROSS) return undefined;
  const sorted = sortedOf(values);
  const middle = medianOf(sorted);
  const spread = middleDeviation(sorted, middle) / DEVIATION_SHARE;
  return { middle, spread, step: stepOf(values), source: "similar readings", isFew: values.length < FEWEST, largest: [sorted.at(-1)!, sorted.at(-2)!] };
}

/** Two-sided limits say as well where a reading belongs. */
export class RobustStatisticsBetween implements RobustStatistics {
  readonly middle: number;
  readonly spread: number;

  constructor(
    readonly lower: number,
    readonly upper: number,
  ) {
    this.middle = (lower + upper) / 2;
    this.spread = (upper - lower) / 2;
  }

  /** Worked out where it is asked for, which is seldom. */
  get step(): number {
    return stepOf([this.lower, this.upper]);
  }

  get source(): RobustStatistics["source"] {
    return "its limits";
  }
}

/**
 * What a reading beside its like, or between its limits, looks like: a slip of readings that agree, or
 * a gross one of any that are of one thing.
 */
export function suspicionOn(value: number, alike: RobustStatistics, kind: MeasuredKind, areOfOneThing = true): LikelySlip | undefined {
  const isLength = kind === "length" || kind === "any length";
  const slip = alike.isFew ? undefined : likelySlip(value, alike, kind === undefined ? undefined : isLength);
  return slip ?? volumeUnit(value, alike, kind) ?? (areOfOneThing && kind !== "any length" ? thousandfold(value, alike) : undefined);
}

/** A number of thousandths of the unit, 15 for 0.015: of readings however far apart, if it is the only one of its size. */
function thousandfold(value: number, { middle, source, largest }: RobustStatistics): LikelySlip | undefined {
  const meant = value / THOUSAND;
  if (!(middle > 0) || meant * HONEST_TIMES < middle || meant > HONEST_TIMES * middle) return undefined;
  const next = largest === undefined ? 0 : value > largest[0] ? largest[0] : largest[1];
  return value >= TIMES_OVER * next ? decimalPoint(middle, source) : undefined;
}

/** The same beside an upper limit alone. */
export const thousandfoldOver = (value: number, upper: number): LikelySlip | undefined =>
  upper > 0 && value >= TIMES_OVER * upper && value <= THOUSAND * upper ? decimalPoint(upper, "its upper limit") : undefined;

const decimalPoint = (expected: number, beside: RobustStatistics["source"]): LikelySlip => ({
  kind: "likely slip",
  details: { slip: "decimal point", expected: decimal(expected), beside, causes: [] },
});

/** Cubic centimetres of the burette among cubic inches, or the other way round. */
function volumeUnit(value: number, { middle, spread, source }: RobustStatistics, kind: MeasuredKind): LikelySlip | undefined {
  if (kind !== "volume" || !(middle > 0) || spread > LOOSEST * middle) return undefined;
  const isNear = (converted: number) => Math.abs(converted - middle) <= CHAMBER_SHARE * middle;
  const told = (unit: string, likeUnit: string, converted: number): LikelySlip => ({
    kind: "mixed units",
    details: { expected: decimal(middle), beside: source, causes: [], unit, likeUnit, converted: decimal(converted) },
  });
  if (isNear(value / CM3_PER_CUBIC_INCH)) return told("cm³", "in³", value / CM3_PER_CUBIC_INCH);
  return isNear(value * CM3_PER_CUBIC_INCH) ? told("in³", "cm³", value * CM3_PER_CUBIC_INCH) : undefined;
}

/**
 * What a reading far from its like most likely is, if one slip explains it. Only lengths can be in
 * inches; where the unit is not known, only readings that agree closely are taken to be lengths.
 */
export function likelySlip(value: number, alike: RobustStatistics, areLengths: boolean | undefined): LikelySlip | undefined {
  const { middle, spread, source } = alike;
  // Most readings are no further from the middle than this, and then it need not be known what was typed.
  if (Math.abs(value - middle) <= FAR_SPREADS * spread) return undefined;
  if (!(middle > 0) || !(value > 0) || areLengths === false) return undefined;
  const looseness = spread / middle;
  if (looseness > (areLengths ? LOOSEST : TIGHT)) return undefined;
  if (Math.abs(value - middle) <= farFrom(alike)) return undefined;
  const slip = slipOf(value, middle, Math.max(NEAR_SPREADS * spread, WEAR_SHARE * middle));
  if (slip === "" || (looseness > TIGHT && (slip === "two digits swapped" || slip === "one digit wrong"))) return undefined;
  const far = { expected: decimal(middle), beside: source, causes: [] };
  if (slip === "inch for mm") return { kind: "mixed units", details: { ...far, unit: "in", likeUnit: "mm", converted: decimal(value * MM_PER_INCH) } };
  if (slip === "mm for inch") return { kind: "mixed units", details: { ...far, unit: "mm", likeUnit: "in", converted: decimal(value / MM_PER_INCH) } };
  return { kind: "likely slip", details: { ...far, slip } };
}

/** One of the last decimal that was typed in any of the values. */
function stepOf(values: readonly number[]): number {
  let step = Number.POSITIVE_INFINITY;
  let steps = 0;
  for (const value of values) {
    // Most values have no more decimals than those before them, which is seen without writing them out.
    if (Math.abs(value) < 1e6 && Math.round(value * steps) / steps === value) continue;
    step = Math.min(step, 10 ** -decimalsOf(decimal(value)));
    steps = Math.round(1 / step);
  }
  return step;
}

/** Decimals that a number is written with. */
function decimalsOf(value: number): number {
  const size = Math.abs(value);
  // Where numbers are written without an exponent, the first grid that the number stands on tells as much as its text.
  if (size >= 1e-6 && size < 1e6)
    for (let decimals = 0; decimals <= 9; decimals++) if (Math.round(value * 10 ** decimals) / 10 ** decimals === value) return decimals;
  return String(value).split(".")[1]?.length ?? 0;
}

/** So few are sorted fastest by putting each in its place. */
const FEW = 64;
const ROOM = new Float64Array(FEW);

/** In order, to be used before the next call. */
function sortedOf(values: readonly number[]): Float64Array {
  const { length } = values;
  if (length > FEW) return new Float64Array(values).sort();
  for (let i = 0; i < length; i++) {
    const value = values[i]!;
    let place = i;
    for (; place > 0 && ROOM[place - 1]! > value; place--) ROOM[place] = ROOM[place - 1]!;
    ROOM[place] = value;
  }
  return ROOM.subarray(0, length);
}

function medianOf(sorted: Float64Array): number {
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** The median of the distances from the middle: they grow to both sides of it, so that no second sorting is needed. */
function middleDeviation(sorted: Float64Array, middle: number): number {
  const { length } = sorted;
  let right = 0;
  while (right < length && sorted[right]! < middle) right++;
  let left = right - 1;
  let last = 0;
  let before = 0;
  for (let taken = 0; taken <= length >> 1; taken++) {
    before = last;
    const isLeft = left >= 0 && (right >= length || middle - sorted[left]! <= sorted[right]! - middle);
    last = isLeft ? middle - sorted[left--]! : sorted[right++]! - middle;
  }
  return length % 2 ? last : (before + last) / 2;
}
