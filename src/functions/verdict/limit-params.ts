import { isAbove } from "../../core/decimal.ts";
import { type Fault, swapped } from "../../core/fault.ts";
import { number } from "../../core/param.ts";
import type { Limits } from "../../core/verdict.ts";

/** The params that every judging function shares, in their order. */
export const limitParams = {
  value: number("the reading or result to judge"),
  lower: number("lower limit; blank for none").optional(),
  upper: number("upper limit; blank for none").optional(),
};

export const judgingParams = {
  ...limitParams,
  uncertainty: number("expanded uncertainty U of the value, in its unit").atLeast(0).default(0),
  near: number("distance from a limit inside which a value is near it").atLeast(0).default(0),
};

/** No value lies between limits that are the wrong way round. */
export function limitsFault({ lower, upper }: Limits): Fault | undefined {
  return lower !== undefined && upper !== undefined && isAbove(lower, upper) ? swapped("lower", lower, "upper", upper) : undefined;
}
