import { isAbove } from "../../core/decimal.ts";
import { length, number } from "../../core/param.ts";

/** The params that every comparison of one size before and after shares, in their order. */
export const changeParams = {
  before: number("the size before"),
  after: number("the size after, in the same unit"),
  uBefore: length("expanded uncertainty U of the size before, at 95 %"),
};

/** Expanded uncertainty of a difference whose two sides were measured independently. */
export const uncertaintyOfChange = (uBefore: number, uAfter: number): number => Math.hypot(uBefore, uAfter);

/** A change is real when it is more than its uncertainty; JCGM 100, 5.1.2. */
export function changeWords(before: number, after: number, uncertainty: number): "no real change" | "real increase" | "real decrease" {
  if (!isAbove(Math.abs(after - before), uncertainty)) return "no real change";
  return after > before ? "real increase" : "real decrease";
}
