import { type Answer, bare, givenCount, same } from "./answer.ts";
import type { Input } from "./inputs.ts";

/** Where a host answers otherwise than the bare call, in words that lead to it. */
export function difference(input: Input, host: Answer, wanted = bare(input)): string | undefined {
  if (same(wanted, host)) return undefined;
  const given = JSON.stringify(input.given.map((one) => one?.rows.map((row) => row.map(({ value, typed }) => typed ?? value))));
  return `${input.spec.name} of ${given} is ${JSON.stringify(wanted)}, but here ${JSON.stringify(host)}`;
}

/**
 * In sheets, where the engine itself refuses a call with more than the function takes and says so in its
 * own words, as Excel does while the formula is typed.
 */
export function differenceInSheet(input: Input, host: Answer): string | undefined {
  const { name, inputs } = input.spec;
  if (givenCount(input.given) <= inputs.length) return difference(input, host);
  const refusal = `Invalid number of arguments for the HATCH.${name} function. Expected ${inputs.length} maximum, but got ${input.given.length} instead.`;
  return "fault" in host && host.fault === refusal ? undefined : difference(input, host);
}
