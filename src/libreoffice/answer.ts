import { broadcast } from "../core/broadcast.ts";
import type { Argument, Result } from "../core/cell.ts";
import { Fault } from "../core/fault.ts";
import { CHECK_PREFIX, checkText } from "../core/sentences.ts";
import { specByName } from "../functions/index.ts";
import type { Request } from "./frames.ts";

/**
 * The rows that a call leaves in its cells. The office program has no errors that carry a sentence, so that
 * a fault is text there, alone in its cell as in a block.
 */
export function answerTo({ name, args }: Request): readonly (readonly Result[])[] {
  const spec = specByName.get(name);
  if (!spec) return [[`${CHECK_PREFIX}there is no function ${name} in this version`]];
  const outcome = broadcast(spec, givenOf(args));
  if (outcome instanceof Fault) return [[checkText(outcome)]];
  return Array.isArray(outcome) ? outcome : [[outcome]];
}

/** Left out at the end is "not given"; left out in between, as in F(5;;6), is a blank. One cell is no range, but a blank one stays a block. */
function givenOf(args: readonly Argument[]): Argument[] {
  const given = args.slice(0, args.findLastIndex((one) => one !== undefined) + 1);
  return given.map((one) => (Array.isArray(one) && one.length === 1 && one[0]!.length === 1 && one[0]![0] !== "" ? one[0]![0] : one));
}
