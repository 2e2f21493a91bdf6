import { isAbove } from "./decimal.ts";
import { decimalsTogether, fixed, readingText, uncertaintyText } from "./number-text.ts";
import { type Judgement, judge, type Limits } from "./verdict.ts";

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
export function explain(value: number, limits: Limits, uncertainty = 0, near = 0): string {
  const judgement = judge(value, limits, uncertainty, near);
  if (!judgement) return "";
  const { verdict } = judgement;
  const told = toldOf(value, limits, judgement);
  const proof = uncertainty > 0 ? ` with an uncertainty of ${uncertaintyText(uncertainty)}` : "";
  if (verdict === "not proven") return `${told.value} is ${beside(judgement, told)}, not proven either way${proof}${tooClose(limits, uncertainty)}`;
  const proven = proof && `, proven${proof}`;
  if (verdict === "over" || verdict === "under") return `${told.value} is ${beyond(judgement, told)}${proven}`;
  const closeness = verdict === "near limit" ? `, near limit as it is no further than ${readingText(near)}` : "";
  return `${told.value} is ${inside(judgement, limits, told)}${proven}${closeness}`;
}

function toldOf(value: number, { lower, upper }: Limits, { margin, side }: Judgement): Told {
  const numbers = { value, lower: lower ?? value, upper: upper ?? value };
  const [ofValue, ofLower, ofUpper] = decimalsTogether(Object.values(numbers)) as [number, number, number];
  return {
    value: fixed(value, ofValue),
    lower: fixed(numbers.lower, ofLower),
    upper: fixed(numbers.upper, ofUpper),
    distance: fixed(Math.abs(margin), Math.max(ofValue, side === "lower" ? ofLower : ofUpper)),
  };
}

const named = ({ side }: Judgement, told: Told): string => `the ${side} limit ${told[side]}`;

function inside(judgement: Judgement, { lower, upper }: Limits, told: Told): string {
  const { margin, side } = judgement;
  const onLimit = margin === 0;
  if (lower === undefined || upper === undefined) return `within ${named(judgement, told)}${onLimit ? ", exactly on it" : ` by ${told.distance}`}`;
  return `within ${told.lower} to ${told.upper}, ${onLimit ? "exactly on" : `${told.distance} from`} the ${side} limit`;
}

function beyond(judgement: Judgement, told: Told): string {
  return `${judgement.side === "upper" ? "over" : "under"} ${named(judgement, told)} by ${told.distance}`;
}

/** Where a value stands whose uncertainty reaches across the limit, from whichever side. */
function beside(judgement: Judgement, told: Told): string {
  const { margin } = judgement;
  if (margin < 0) return beyond(judgement, told);
  return margin > 0 ? `inside ${named(judgement, told)} by ${told.distance}` : `on ${named(judgement, told)}`;
}

/** Between limits less than 2 U apart there is nothing that could be proven. */
function tooClose({ lower, upper }: Limits, uncertainty: number): string {
  if (lower === undefined || upper === undefined || !isAbove(2 * uncertainty, upper - lower)) return "";
  return ", which is too much for limits so close together";
}
