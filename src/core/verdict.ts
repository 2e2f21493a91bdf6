import { conformanceProbability } from "../math/normal.ts";
import { decimal, isAbove, isBelow } from "./decimal.ts";
import { decimalsTogether, fixed, readingText, uncertaintyText } from "./number-text.ts";

/** The words a judged reading can get. They are words first; colour only repeats them. */
export const VERDICTS = ["within", "near limit", "not proven", "over", "under"] as const;
export type Verdict = (typeof VERDICTS)[number];

/**
 * How an expanded uncertainty U (k = 2) counts. "full U": ISO 14253-1:1998, conformity is proven inside the limits drawn in by U,
 * non-conformity outside the limits let out by U. "95 %": proven with a probability of at least 95 % that the part is inside its
 * limits, or outside them (JCGM 106:2012, 7.4 and 9.2; the default of ISO 14253-1:2017). Editions of ISO 14253-1: from memory.
 */
export const DECISION_RULES = ["full U", "95 %"] as const;
export type DecisionRule = (typeof DECISION_RULES)[number];
const PROVEN = 0.95;

export interface Limits {
  lower?: number | undefined;
  upper?: number | undefined;
}

export interface Judgement {
  verdict: Verdict;
  /** Distance to the nearest limit in the unit of the value, negative outside. */
  margin: number;
  /** The limit that decides: the nearest one, or the one that is passed. */
  side: "lower" | "upper";
  limit: number;
}

const upTo = (value: number, upper: number | undefined): number => (upper === undefined ? Number.POSITIVE_INFINITY : upper - value);
const downTo = (value: number, lower: number | undefined): number => (lower === undefined ? Number.POSITIVE_INFINITY : value - lower);

/** Distance to the nearest limit, negative outside, as a decimal; undefined with no limit. */
export function marginOf(value: number, { lower, upper }: Limits): number | undefined {
  if (lower === undefined && upper === undefined) return undefined;
  return decimal(Math.min(upTo(value, upper), downTo(value, lower)));
}

/** The limit that decides: the one that is passed, otherwise the nearest, to which `marginOf` measures. Halfway counts as the upper one. */
function sideOf(verdict: Verdict, value: number, { lower, upper }: Limits): Judgement["side"] {
  // Whatever is under stands nearest to the lower limit; over it can be farther from the upper one where the limits stand the wrong way round.
  if (verdict === "over") return "upper";
  const isLower = upper === undefined || decimal(downTo(value, lower)) < decimal(upTo(value, upper));
  return isLower ? "lower" : "upper";
}

/**
 * The verdict on a value by limits typed by the shop; a value on a limit is within it. With an
 * expanded uncertainty U something is proven or not, by the decision rule. `near` is a distance from a limit inside which a value that is within is called near.
 *
 * @returns undefined when there is no limit to judge by.
 */
export function verdictOf(
  value: number,
  lower: number | undefined,
  upper: number | undefined,
  uncertainty = 0,
  near = 0,
  rule: DecisionRule = "full U",
): Verdict | undefined {
  if (lower === undefined && upper === undefined) return undefined;
  const decided = uncertainty > 0 && rule === "95 %" ? byProbability(value, lower, upper, uncertainty / 2) : byZones(value, lower, upper, uncertainty);
  if (decided !== "within") return decided;
  if (near <= 0) return "within";
  const close = (upper !== undefined && !isAbove(upper - value, near)) || (lower !== undefined && !isAbove(value - lower, near));
  return close ? "near limit" : "within";
}

type Proof = Exclude<Verdict, "near limit">;

function byZones(value: number, lower: number | undefined, upper: number | undefined, uncertainty: number): Proof {
  if (upper !== undefined && isAbove(value, upper + uncertainty)) return "over";
  if (lower !== undefined && isBelow(value, lower - uncertainty)) return "under";
  if (uncertainty > 0) {
    if (upper !== undefined && isAbove(value, upper - uncertainty)) return "not proven";
    if (lower !== undefined && isBelow(value, lower + uncertainty)) return "not proven";
  }
  return "within";
}

/** Over and under are proven by their own side's probability: between limits closer than the gauge can tell, a part may be outside and nobody knows where. */
function byProbability(value: number, lower: number | undefined, upper: number | undefined, u: number): Proof {
  if (conformanceProbability(value, lower, upper, u) >= PROVEN) return "within";
  if (upper !== undefined && conformanceProbability(value, upper, undefined, u) >= PROVEN) return "over";
  if (lower !== undefined && conformanceProbability(value, undefined, lower, u) >= PROVEN) return "under";
  return "not proven";
}

/** The verdict with the limit that decides it: the one that is passed, otherwise the nearest. */
export function judge(value: number, limits: Limits, uncertainty = 0, near = 0, rule: DecisionRule = "full U"): Judgement | undefined {
  const verdict = verdictOf(value, limits.lower, limits.upper, uncertainty, near, rule);
  if (!verdict) return undefined;
  const side = sideOf(verdict, value, limits);
  const margin = decimal(side === "upper" ? upTo(value, limits.upper) : downTo(value, limits.lower));
  return { verdict, margin, side, limit: limits[side]! };
}

type Decided = Pick<Judgement, "margin" | "side">;

/** The value, its limits and the distance between them as a sentence shows them. */
interface Told {
  value: string;
  lower: string;
  upper: string;
  /** From the value to the limit that decides; never negative. */
  distance: string;
}

/**
 * The verdict on a value as one plain sentence with its numbers, without a full stop, so that it
 * can stand in a cell, a list or a report; `""` when there is no limit to judge by.
 */
export function verdictSentence(value: number, limits: Limits, uncertainty = 0, near = 0, rule: DecisionRule = "full U"): string {
  const judgement = judge(value, limits, uncertainty, near, rule);
  return judgement ? sentenceOn(judgement, value, limits, { uncertainty, near, rule }) : "";
}

/** The same on a value that has been judged so already, by what it was judged by. */
export function sentenceOn(
  { verdict, margin }: Pick<Judgement, "verdict" | "margin">,
  value: number,
  limits: Limits,
  { uncertainty, near, rule }: { uncertainty: number; near: number; rule: DecisionRule },
): string {
  const judgement = { verdict, margin, side: sideOf(verdict, value, limits) };
  const told = toldOf(value, limits, judgement);
  const proof = uncertainty > 0 ? `${rule === "full U" ? "" : ` at ${rule}`} with an uncertainty of ${uncertaintyText(uncertainty)}` : "";
  if (verdict === "not proven") return `${told.value} is ${beside(judgement, told)}, not proven either way${proof}${tooClose(limits, uncertainty)}`;
  const proven = proof && `, proven${proof}`;
  if (verdict === "over" || verdict === "under") return `${told.value} is ${beyond(judgement, told)}${proven}`;
  const closeness = verdict === "near limit" ? `, near limit as it is no further than ${readingText(near)}` : "";
  return `${told.value} is ${inside(judgement, limits, told)}${proven}${closeness}`;
}

function toldOf(value: number, { lower, upper }: Limits, { margin, side }: Decided): Told {
  const numbers = { value, lower: lower ?? value, upper: upper ?? value };
  const [ofValue, ofLower, ofUpper] = decimalsTogether(Object.values(numbers)) as [number, number, number];
  return {
    value: fixed(value, ofValue),
    lower: fixed(numbers.lower, ofLower),
    upper: fixed(numbers.upper, ofUpper),
    distance: fixed(Math.abs(margin), Math.max(ofValue, side === "lower" ? ofLower : ofUpper)),
  };
}

const named = ({ side }: Decided, told: Told): string => `the ${side} limit ${told[side]}`;

function inside(judgement: Decided, { lower, upper }: Limits, told: Told): string {
  const { margin, side } = judgement;
  const onLimit = margin === 0;
  if (lower === undefined || upper === undefined) return `within ${named(judgement, told)}${onLimit ? ", exactly on it" : ` by ${told.distance}`}`;
  return `within ${told.lower} to ${told.upper}, ${onLimit ? "exactly on" : `${told.distance} from`} the ${side} limit`;
}

function beyond(judgement: Decided, told: Told): string {
  return `${judgement.side === "upper" ? "over" : "under"} ${named(judgement, told)} by ${told.distance}`;
}

/** Where a value stands whose uncertainty reaches across the limit, from whichever side. */
function beside(judgement: Decided, told: Told): string {
  const { margin } = judgement;
  if (margin < 0) return beyond(judgement, told);
  return margin > 0 ? `inside ${named(judgement, told)} by ${told.distance}` : `on ${named(judgement, told)}`;
}

/** Between limits less than 2 U apart there is nothing that could be proven. */
function tooClose({ lower, upper }: Limits, uncertainty: number): string {
  if (lower === undefined || upper === undefined || !isAbove(2 * uncertainty, upper - lower)) return "";
  return ", which is too much for limits so close together";
}
