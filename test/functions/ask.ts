import { broadcast } from "../../src/core/broadcast.ts";
import type { Argument, Result } from "../../src/core/cell.ts";
import type { Spec } from "../../src/core/define.ts";
import { Fault } from "../../src/core/fault.ts";
import { sentence } from "../../src/core/sentences.ts";

export interface Refusal {
  code: string;
  sentence: string;
}

/** What a function answers as a person meets it: a value, a block, or the code and sentence of a fault. */
export function ask(spec: Spec, ...args: Argument[]): Result | Result[][] | Refusal {
  const outcome = broadcast(spec, args);
  return outcome instanceof Fault ? { code: outcome.code, sentence: sentence(outcome) } : outcome;
}

/** For properties: the answer where only a number can be right. */
export function number(spec: Spec, ...args: Argument[]): number {
  const answer = ask(spec, ...args);
  if (typeof answer !== "number") throw new Error(`${spec.name} answered ${JSON.stringify(answer)} where a number is wanted`);
  return answer;
}

/** Every way in which hosts say that a cell holds nothing. */
export const BLANKS: readonly Argument[] = [null, undefined, "", "  "];
/** And that of Excel on the desktop, for inputs that cannot be zero. */
export const BLANKS_AND_ZERO: readonly Argument[] = [...BLANKS, 0];
