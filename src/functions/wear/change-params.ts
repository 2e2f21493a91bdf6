import { isAbove, isBelow } from "../../core/decimal.ts";
import { Fault } from "../../core/fault.ts";
import { length, number } from "../../core/inputs.ts";

/** The params that every comparison of one size before and after shares, in their order. */
export const changeParams = {
  before: number("the size before"),
  after: number("the size after, in the same unit"),
  uBefore: length("expanded uncertainty U of the size before, at 95 %"),
};

/** How these params and `uAfter` are drawn. */
export const drawnAsChange = { kind: "change", before: "before", after: "after", uBefore: "uBefore", uAfter: "uAfter" } as const;

/** Expanded uncertainty of a difference whose two sides were measured independently. */
export const uncertaintyOfChange = (uBefore: number, uAfter: number): number => Math.hypot(uBefore, uAfter);

/** Gaps and wear may well change fivefold, sizes measured so finely do not. */
const FIVEFOLD = 5;
const FINELY = 100;

/** A fault where one size is at least 5 times the other and both are more than 100 U: then a decimal point or a unit is wrong. */
export function slipFault(before: number, after: number, uncertainty: number): Fault | undefined {
  const [smaller, larger] = [Math.abs(before), Math.abs(after)].sort((a, b) => a - b) as [number, number];
  if (before * after <= 0 || !isAbove(smaller, FINELY * uncertainty) || isBelow(larger, FIVEFOLD * smaller)) return undefined;
  return new Fault("units", "after", after, { other: "before", bound: before });
}

/** 1 or −1 for a change that is larger than its uncertainty, to the larger or the smaller; 0 for one that the gauge alone explains. JCGM 100:2008, 5.1.2. */
export function directionBeyond(before: number, after: number, uncertainty: number): 1 | 0 | -1 {
  if (!isAbove(Math.abs(after - before), uncertainty)) return 0;
  return after > before ? 1 : -1;
}

/** A change in words; what may hide behind one that cannot be told is for who has room for it. */
export const DIRECTION_WORDS = { 1: "larger, beyond its gauge", 0: "cannot tell", [-1]: "smaller, beyond its gauge" } as const;

/** U with k = 2 holds the standard uncertainty twice. */
export const COVERAGE_FACTOR = 2;
