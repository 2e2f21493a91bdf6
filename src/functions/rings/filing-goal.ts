import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { type Fault, refuse, swapped } from "../../core/fault.ts";
import { show } from "../../core/sentences.ts";

/** What a ring's gap is to be, as far as it is typed. */
export interface GapWanted {
  target: number | undefined;
  least: number | undefined;
  most: number | undefined;
}

/** The gap to which a ring is filed that is too close; `undefined` while nothing says so. */
export function filingGoal({ target, least, most }: GapWanted): number | Fault | undefined {
  if (least !== undefined && most !== undefined && isAbove(least, most)) return swapped("least", least, "most", most);
  if (least === undefined) {
    if (target !== undefined && most !== undefined && isAbove(target, most)) return refuse("target", target, `it is wider than most ${show(most)} allows`);
    return target;
  }
  const isInside = target !== undefined && !isBelow(target, least) && !(most !== undefined && isAbove(target, most));
  if (isInside) return target;
  return most === undefined ? least : decimal((least + most) / 2);
}
