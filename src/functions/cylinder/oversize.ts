import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { Fault, refuse, unlike } from "../../core/fault.ts";
import type { NumberGrid } from "../../core/param.ts";

/** Where the new bore is centred: on the worn hole, or kept on the original centre line. */
export const CENTRINGS = ["worn", "true"] as const;
export type Centring = (typeof CENTRINGS)[number];

/** What stands in the cell when no listed oversize cleans up. */
export const NO_OVERSIZE = "none: sleeve";

/** For the help of both functions that choose an oversize. */
export const NO_ALLOWANCE_NOTE =
  "Without an allowance any cut at all counts as cleaning up: the new size is larger than the needed one, by however little. Type what your hone needs.";

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

/**
 * True when a bore finished to `finish` cleans up. With an allowance in the needed size that size itself
 * does; without one it would leave nothing to cut, so the finish must be larger.
 */
export const cleansUp = (finish: number, needed: number, allowance: number): boolean =>
  isAbove(allowance, 0) ? !isBelow(finish, needed) : isAbove(finish, needed);

/**
 * The smallest oversize whose finish bore cleans up, whatever their order in the list; `undefined`
 * when none does.
 */
export function smallestOversize(needed: number, standard: number, oversizes: readonly number[], allowance: number): number | undefined {
  let best: number | undefined;
  for (const oversize of oversizes) {
    if ((best === undefined || oversize < best) && cleansUp(standard + oversize, needed, allowance)) best = oversize;
  }
  return best;
}

/** No oversize adds as much to its bore; millimetres beside inches do. */
const LARGEST_SHARE = 0.05;
/** A list that ends below this holds grades of pistons, or inches beside millimetres. */
const SMALLEST_SHARE = 0.001;

/** An oversize is what is added to the standard bore, in its unit; a finished size in the list would clean up anything. */
export function oversizeFault(oversizes: readonly number[], standard: number): Fault | undefined {
  const finished = oversizes.find((oversize) => !isBelow(oversize, standard));
  if (finished !== undefined) return refuse("oversizes", finished, `type what is added to the standard bore ${standard}, not the finished size`);
  const large = oversizes.find((oversize) => isAbove(oversize, LARGEST_SHARE * standard));
  return large === undefined
    ? undefined
    : refuse("oversizes", large, `no oversize is more than a twentieth of the standard bore, ${standard}: are both in one unit?`);
}

/** What is said where none cleans up: a block is not condemned by a list that may be in another unit. */
export function noneCleansUp(oversizes: readonly number[], standard: number): string | Fault {
  const largest = oversizes.reduce((a, b) => Math.max(a, b), 0);
  if (!isBelow(largest, SMALLEST_SHARE * standard)) return NO_OVERSIZE;
  return refuse(
    "oversizes",
    largest,
    `even the largest cleans nothing up, and is less than a thousandth of the standard bore, ${standard}: are both in one unit?`,
  );
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
export function choicesOf(standard: number, oversizes: NumberGrid, pistons: NumberGrid | undefined, pistonClearance: number | undefined): Choice[] | Fault {
  const shape = ({ rows, columns }: NumberGrid) => `${rows}×${columns}`;
  if (pistons && shape(pistons) !== shape(oversizes)) return new Fault("shape", "pistons", shape(pistons), `oversizes of ${shape(oversizes)}`);
  if (pistons && pistonClearance === undefined) return new Fault("missing", "pistonClearance", undefined, "the clearance to add to the pistons");
  const odd = pistons?.values.map((piston) => piston && unlike("pistons", piston, "standard", standard)).find((fault) => fault instanceof Fault);
  if (odd) return odd;
  const listed = oversizes.values.flatMap((oversize, at): Choice[] => {
    const piston = pistons?.values[at];
    return oversize === null ? [] : [{ oversize, finish: decimal(piston ? piston + pistonClearance! : standard + oversize) }];
  });
  const sizes = listed.map(({ oversize }) => oversize);
  return oversizeFault(sizes, standard) ?? listed.sort((a, b) => a.oversize - b.oversize);
}
