import { isAbove } from "../../core/decimal.ts";
import { type Fault, swapped } from "../../core/fault.ts";
import { choice, number } from "../../core/inputs.ts";
import { DECISION_RULES, type Limits } from "../../core/verdict.ts";

/** The params that every judging function shares, in their order. */
export const limitParams = {
  value: number("the reading or result to judge").as("value"),
  lower: number("lower limit; blank for none").optional().as("lower"),
  upper: number("upper limit; blank for none").optional().as("upper"),
};

export const judgingParams = {
  ...limitParams,
  uncertainty: number("expanded uncertainty U of the value, in its unit").atLeast(0).default(0).as("uncertainty"),
  near: number("distance from a limit inside which a value is near it").atLeast(0).default(0).as("near"),
  rule: choice("full U: proven only inside the limits drawn in by U; 95 %: proven at a probability of 95 %, U taken as 2 u", DECISION_RULES)
    .default("full U")
    .as("rule"),
};

/**
 * The limits that a person meant, or a fault when they are the wrong way round. Some hosts hand a
 * blank cell over as 0: an upper limit of 0 where the lower one is not negative leaves no room for
 * any value, so it stands for a blank; so do two limits of 0.
 */
export function limitsOf(lower: number | undefined, upper: number | undefined): Limits | Fault {
  if (lower === undefined || upper === undefined) return { lower, upper };
  if (upper === 0 && lower >= 0) return { lower: lower || undefined };
  return isAbove(lower, upper) ? swapped("lower", lower, "upper", upper) : { lower, upper };
}

/** For the help of functions that judge: by which rule. */
export const DECISION_RULE_NOTE =
  'With an uncertainty the rule of ISO 14253-1:1998 holds unless another is asked for: all of U on either side of a limit proves nothing. Its 2017 edition is content with a probability of 95 % (rule "95 %", about 0.82 U on either side). Agree on the rule before you measure, and keep to it.';

/** For the help of functions that judge: what a host's 0 for an empty cell does to them. */
export const EMPTY_CELL_NOTE =
  'Excel on the desktop hands an empty cell over as 0, and 0 can be a true reading here. Judge a cell that is typed, not calculated, as =IF(C4="","",HATCH.VERDICT(C4, …)); the check looks at the cells themselves.';

/** For the help of functions that judge: they cannot know what is judged. */
export const ZERO_LIMIT_NOTE =
  "A lower limit of 0 counts as typed, and the best of parts, taper 0.000, then stands on a limit: with an uncertainty it is not proven. Leave the limit blank for what cannot be below 0, as the check does by itself.";
