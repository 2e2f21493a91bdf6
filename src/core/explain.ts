import { decimal, isAbove } from "./decimal.ts";
import { type Judgement, judge, type Limits } from "./verdict.ts";

const show = (x: number): string => String(decimal(x));

/**
 * The verdict on a value as one plain sentence with its numbers, without a full stop, so that it
 * can stand in a cell, a list or a report; `""` when there is no limit to judge by.
 */
export function explain(value: number, limits: Limits, uncertainty = 0, near = 0): string {
  const judgement = judge(value, limits, uncertainty, near);
  if (!judgement) return "";
  const { verdict } = judgement;
  const proof = uncertainty > 0 ? ` with an uncertainty of ${show(uncertainty)}` : "";
  if (verdict === "not proven") return `${show(value)} is ${beside(judgement)}, not proven either way${proof}${tooClose(limits, uncertainty)}`;
  const proven = proof && `, proven${proof}`;
  if (verdict === "over" || verdict === "under") return `${show(value)} is ${beyond(judgement)}${proven}`;
  const closeness = verdict === "near limit" ? `, near limit as it is no further than ${show(near)}` : "";
  return `${show(value)} is ${inside(judgement, limits)}${proven}${closeness}`;
}

const named = ({ side, limit }: Judgement): string => `the ${side} limit ${show(limit)}`;

function inside(judgement: Judgement, { lower, upper }: Limits): string {
  const { margin, side } = judgement;
  const onLimit = margin === 0;
  if (lower === undefined || upper === undefined) return `within ${named(judgement)}${onLimit ? ", exactly on it" : ` by ${show(margin)}`}`;
  return `within ${show(lower)} to ${show(upper)}, ${onLimit ? "exactly on" : `${show(margin)} from`} the ${side} limit`;
}

function beyond(judgement: Judgement): string {
  return `${judgement.side === "upper" ? "over" : "under"} ${named(judgement)} by ${show(-judgement.margin)}`;
}

/** Where a value stands whose uncertainty reaches across the limit, from whichever side. */
function beside(judgement: Judgement): string {
  const { margin } = judgement;
  if (margin < 0) return beyond(judgement);
  return margin > 0 ? `inside ${named(judgement)} by ${show(margin)}` : `on ${named(judgement)}`;
}

/** Between limits less than 2 U apart there is nothing that could be proven. */
function tooClose({ lower, upper }: Limits, uncertainty: number): string {
  if (lower === undefined || upper === undefined || !isAbove(2 * uncertainty, upper - lower)) return "";
  return ", which is too much for limits so close together";
}
