import { decimal, isBelow } from "../../core/decimal.ts";
import { Fault, refuse, unlike } from "../../core/fault.ts";
import type { Grid } from "../../core/param.ts";

/** Where the new bore is centred: on the worn hole, or kept on the original centre line. */
export const CENTRINGS = ["worn", "true"] as const;
export type Centring = (typeof CENTRINGS)[number];

/** What stands in the cell when no listed oversize cleans up. */
export const NO_OVERSIZE = "none: sleeve";

/**
 * The size that a bore must be taken to before it cleans up. Centred on the worn hole that is the
 * largest reading; kept on the original centre line all the wear may be on one side, so the radius
 * has to grow by the whole of it and the diameter by twice. A bore that is nowhere above the
 * standard has no wear to chase.
 */
export function neededSize(largest: number, standard: number, allowance: number, centring: Centring): number {
  const oneSided = centring === "true" ? Math.max(largest - standard, 0) : 0;
  return decimal(largest + oneSided + allowance);
}

/** True when a bore finished to `finish` reaches the needed size; exactly the needed size does. */
export const cleansUp = (finish: number, needed: number): boolean => !isBelow(finish, needed);

/**
 * The smallest oversize whose finish bore cleans up, whatever their order in the list; `undefined`
 * when none does. `finishOf` says to what an oversize is bored, by default standard + oversize.
 */
export function smallestOversize(
  needed: number,
  standard: number,
  oversizes: readonly number[],
  finishOf: (oversize: number, index: number) => number = (oversize) => standard + oversize,
): number | undefined {
  let best: number | undefined;
  for (let i = 0; i < oversizes.length; i++) {
    const oversize = oversizes[i]!;
    if ((best === undefined || oversize < best) && cleansUp(finishOf(oversize, i), needed)) best = oversize;
  }
  return best;
}

/** An oversize is what is added to the standard bore; a finished size in the list would clean up anything. */
export function oversizeFault(param: string, oversizes: readonly number[], standard: number): Fault | undefined {
  const finished = oversizes.find((oversize) => !isBelow(oversize, standard));
  return finished === undefined ? undefined : refuse(param, finished, `it wants what is added to the standard bore ${standard}, not the finished size`);
}

/** A listed oversize with the bore that it is finished to. */
export interface Choice {
  oversize: number;
  finish: number;
}

/**
 * Each listed oversize, the smallest first. Where `pistons` holds the measured skirt of its piston the
 * bore is finished to that piston and the clearance, otherwise to standard + oversize.
 */
export function choicesOf(standard: number, oversizes: Grid, pistons: Grid | undefined, pistonClearance: number | undefined): Choice[] | Fault {
  const shape = ({ rows, columns }: Grid) => `${rows}×${columns}`;
  if (pistons && shape(pistons) !== shape(oversizes)) return new Fault("shape", "pistons", shape(pistons), `oversizes of ${shape(oversizes)}`);
  if (pistons && pistonClearance === undefined) return new Fault("missing", "pistonClearance", undefined, "the clearance to add to the pistons");
  const odd = pistons?.values.map((piston) => piston && unlike("pistons", piston, "standard", standard)).find((fault) => fault instanceof Fault);
  if (odd) return odd;
  const listed = oversizes.values.flatMap((oversize, at): Choice[] => {
    const piston = pistons?.values[at];
    return oversize === null ? [] : [{ oversize, finish: decimal(piston ? piston + pistonClearance! : standard + oversize) }];
  });
  const sizes = listed.map(({ oversize }) => oversize);
  return oversizeFault("oversizes", sizes, standard) ?? listed.sort((a, b) => a.oversize - b.oversize);
}
