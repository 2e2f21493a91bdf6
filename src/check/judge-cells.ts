import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { BLANK } from "../core/param.ts";
import { faultBody } from "../core/sentences.ts";
import { type Judgement, judge, type Limits } from "../core/verdict.ts";
import { judgingParams, limitsOf } from "../functions/verdict/limit-params.ts";

/** What one judged thing is judged from, cell by cell as it stands in the sheet or file. */
export type Given = Record<keyof typeof judgingParams, Cell>;

/** What became of it. `nothing`: neither a reading nor a limit is there. */
export type Judged =
  | { as: "nothing" }
  | { as: "refused"; why: string }
  | { as: "missing reading"; limits: Limits }
  | { as: "missing limit"; value: number }
  | { as: "judged"; value: number; limits: Limits; uncertainty: number; near: number; judgement: Judgement };

const NAMES = Object.keys(judgingParams) as (keyof Given)[];

/** Why a cell cannot be taken. */
type Reason = (cell: Cell, fault: Fault) => string;

/** Judges as the sheet's own VERDICT would, and keeps what it was judged by. Where no cell holds an error, the fault says all that there is to say. */
export function judgeCells(given: Given, reasonOf: Reason = (_, fault) => faultBody(fault)): Judged {
  const taken: Partial<Record<keyof Given, number>> = {};
  for (const name of NAMES) {
    const cell = given[name];
    const got = judgingParams[name].take(cell, name);
    if (got instanceof Fault) return { as: "refused", why: reasonOf(cell, got) };
    if (got !== BLANK) taken[name] = got as number;
  }
  const { value, uncertainty = 0, near = 0 } = taken;
  const limits = limitsOf(taken.lower, taken.upper);
  if (limits instanceof Fault) return { as: "refused", why: faultBody(limits) };
  const limited = limits.lower !== undefined || limits.upper !== undefined;
  if (value === undefined) return limited ? { as: "missing reading", limits } : { as: "nothing" };
  const judgement = judge(value, limits, uncertainty, near);
  if (!judgement) return { as: "missing limit", value };
  return { as: "judged", value, limits, uncertainty, near, judgement };
}

export const NOT_GIVEN: Given = { value: null, lower: null, upper: null, uncertainty: null, near: null };

/** A cell as a finding shows it: an error by its code. */
export function plainValue(cell: Cell): number | string | null {
  if (typeof cell === "number") return cell;
  if (isBlank(cell)) return null;
  return isCellError(cell) ? cell.error : String(cell);
}
