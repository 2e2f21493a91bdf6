import { type Cell, type CellError, isBlank, isCellError, isErrorCode } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { BLANK } from "../core/param.ts";
import { CHECK_PREFIX, faultBody } from "../core/sentences.ts";
import { type DecisionRule, type Judgement, judge, type Limits, type Verdict } from "../core/verdict.ts";
import { noResultOf } from "../formula/shown-results.ts";
import { specByName } from "../functions/index.ts";
import { judgingParams, limitsOf } from "../functions/verdict/limit-params.ts";
import type { FindingKind } from "./finding.ts";

export const judgeGiven = (given: VerdictInputs): CellJudgement => judgeCells(given, refusalReason);

const OUR_SENTENCE = /^([A-Z]{3,}): /;

/** Why a cell cannot be taken. An error that a function of ours left there speaks for itself. */
export function refusalReason(cell: Cell, fault: Fault): string {
  const said = isCellError(cell) ? (cell.message ?? "") : "";
  return specByName.has(OUR_SENTENCE.exec(said)?.[1] ?? "") ? said : faultBody(fault);
}

/** What the cell of a verdict, an explanation or a margin says, for formulas that cannot be looked into. */
export type VerdictCell = { verdict: Verdict; margin: number | null } | { refused: string } | "blank" | "unclear";

// Words of VERDICT and of EXPLAIN's sentences; the doubtful ones first, as their sentences name a limit too.
const WORDS: readonly (readonly [RegExp, Verdict])[] = [
  [/\bnot proven\b/, "not proven"],
  [/\bnear limit\b/, "near limit"],
  [/\bover\b/, "over"],
  [/\bunder\b/, "under"],
  [/\bwithin\b/, "within"],
];

/** Why a formula gives an error, as far as its host says. */
export function errorReason(error: CellError): string {
  if (error.message) return error.message;
  return noResultOf(error) === "still calculating" ? "it is still being calculated" : `the formula gives ${error.error}`;
}

export function readVerdict(cell: Cell): VerdictCell {
  if (isBlank(cell)) return "blank";
  if (typeof cell === "number") return { verdict: cell < 0 ? "over" : "within", margin: cell };
  if (isCellError(cell)) return { refused: errorReason(cell) };
  if (typeof cell !== "string") return "unclear";
  if (isErrorCode(cell)) return { refused: errorReason({ error: cell }) };
  if (cell.startsWith(CHECK_PREFIX)) return { refused: cell.slice(CHECK_PREFIX.length) };
  const found = WORDS.find(([word]) => word.test(cell));
  return found ? { verdict: found[1], margin: null } : "unclear";
}

/** The kind of finding that a verdict is; `within` is none. */
export const KIND_OF_VERDICT = {
  over: "outside limit",
  under: "outside limit",
  "not proven": "not proven",
  "near limit": "near limit",
  within: undefined,
} as const satisfies Record<Verdict, FindingKind | undefined>;

/** What one judged thing is judged from, cell by cell as it stands in the sheet or file. */
export type VerdictInputs = Record<keyof typeof judgingParams, Cell>;

/** What became of it. `nothing`: neither a reading nor a limit is there. */
export type CellJudgement =
  | { as: "nothing" }
  | { as: "refused"; why: string }
  | { as: "missing reading"; limits: Limits }
  | { as: "missing limit"; value: number }
  | { as: "judged"; value: number; limits: Limits; uncertainty: number; near: number; rule: DecisionRule; judgement: Judgement; isZeroLeftOut?: boolean };

const NAMES = Object.keys(judgingParams) as (keyof VerdictInputs)[];

/** Why a cell cannot be taken. */
type Reason = (cell: Cell, fault: Fault) => string;

/** Judges as the sheet's own VERDICT would, and keeps what it was judged by. Where no cell holds an error, the fault says all that there is to say. */
export function judgeCells(given: VerdictInputs, reasonOf: Reason = (_, fault) => faultBody(fault)): CellJudgement {
  const taken: Partial<Record<keyof VerdictInputs, number>> & { rule?: DecisionRule } = {};
  for (const name of NAMES) {
    const cell = given[name];
    const got = judgingParams[name].take(cell, name);
    if (got instanceof Fault) return { as: "refused", why: reasonOf(cell, got) };
    if (got !== BLANK) Object.assign(taken, { [name]: got });
  }
  const { value, uncertainty = 0, near = 0, rule } = taken;
  const limits = limitsOf(taken.lower, taken.upper);
  if (limits instanceof Fault) return { as: "refused", why: faultBody(limits) };
  const limited = limits.lower !== undefined || limits.upper !== undefined;
  if (value === undefined) return limited ? { as: "missing reading", limits } : { as: "nothing" };
  return judgeReading(value, limits, uncertainty, near, rule);
}

/** The verdict on a reading, and what it rests on. */
export function judgeReading(value: number, limits: Limits, uncertainty: number, near: number, rule: DecisionRule = "full U"): CellJudgement {
  const judgement = judge(value, limits, uncertainty, near, rule);
  if (!judgement) return { as: "missing limit", value };
  return { as: "judged", value, limits, uncertainty, near, rule, judgement };
}

/**
 * A lower limit of 0 excludes nothing of what cannot be below 0: it is left out, so that the best of
 * parts is not called not proven or near a limit. Alone it needs no proof. A reading below 0 keeps it.
 */
export function withoutZeroLimit(judged: CellJudgement): CellJudgement {
  if (judged.as !== "judged" || judged.limits.lower !== 0 || judged.value < 0) return judged;
  const { value, limits, uncertainty, near, rule } = judged;
  if (limits.upper === undefined) return judgeReading(value, limits, 0, 0, rule);
  return { ...judgeReading(value, { upper: limits.upper }, uncertainty, near, rule), isZeroLeftOut: true } as CellJudgement;
}

/** The room that a gauge is to be fine enough for: from 0, also where that is left out as a limit. */
export const toleranceIn = ({ limits, isZeroLeftOut }: CellJudgement & { as: "judged" }): Limits => (isZeroLeftOut ? { ...limits, lower: 0 } : limits);

/** The inputs that tables and files have columns for; their rule is the default one. */
export const JUDGED_COLUMNS = ["value", "lower", "upper", "uncertainty", "near"] as const satisfies readonly (keyof VerdictInputs)[];

export const NO_INPUTS: VerdictInputs = { value: null, lower: null, upper: null, uncertainty: null, near: null, rule: null };

/** A cell as a finding shows it: an error by its code. */
export function plainValue(cell: Cell): number | string | null {
  if (typeof cell === "number") return cell;
  if (isBlank(cell)) return null;
  return isCellError(cell) ? cell.error : String(cell);
}
