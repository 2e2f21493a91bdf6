import { fromSteps, isAbove, isBelow, toSteps } from "../../core/decimal.ts";
import { Fault, swapped } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/** The sizes in which shims are made. */
export interface ShimSizes {
  step: number;
  smallest?: number | undefined;
  largest?: number | undefined;
}

const step = length("step in which shims are made; blank for 0.05 mm, in inches it has to be typed");

/** The params that say which shims can be bought, the last of a function. */
export const sizeParams = {
  step: step.optional().chosen(),
  smallest: length("smallest shim that is made; blank for any").optional().chosen(),
  largest: length("largest shim that is made; blank for any").optional().chosen(),
};

const STEP_IN_MM = 0.05;
/** No shim in millimetres is as thin, none in inches as thick. */
const THINNEST_IN_MM = 0.5;

/** The sizes as they were typed. A step left out is that of millimetres, so shims in inches want theirs. */
export function sizesOf(
  { step: typed, smallest, largest }: { [K in keyof ShimSizes]: ShimSizes[K] | undefined },
  installed: readonly number[],
): ShimSizes | Fault {
  const thinnest = installed.reduce((a, b) => Math.min(a, b), THINNEST_IN_MM);
  if (typed === undefined && isBelow(thinnest, THINNEST_IN_MM))
    return new Fault("missing", "step", undefined, `${step.want}, as a shim of ${fromSteps(toSteps(thinnest))} is in inches and the usual 0.05 in mm`);
  if (smallest !== undefined && largest !== undefined && isAbove(smallest, largest)) return swapped("smallest", smallest, "largest", largest);
  return { step: typed ?? STEP_IN_MM, smallest, largest };
}

/**
 * The shim that can be bought: of the sizes made, the one whose clearance comes nearest to
 * the middle of the limits, the thinner of two that are as near, because a valve's clearance closes
 * up in service. `undefined` when none lands in the limits. Reckoned in whole steps of the
 * decimal grid, doubled so that the middle is whole too, and therefore exact.
 */
export function nearestStep(
  installed: number,
  clearance: number,
  least: number,
  most: number,
  sizes: ShimSizes,
): { size: number; clearance: number } | undefined {
  const sum = toSteps(installed) + toSteps(clearance);
  const pace = toSteps(sizes.step);
  const ideal = 2 * sum - toSteps(least) - toSteps(most);
  const thinnest = sizes.smallest === undefined ? pace : Math.ceil(toSteps(sizes.smallest) / pace) * pace;
  const thickest = sizes.largest === undefined ? Number.POSITIVE_INFINITY : Math.floor(toSteps(sizes.largest) / pace) * pace;
  const size = Math.min(Math.max(Math.ceil(ideal / (2 * pace) - 0.5) * pace, thinnest), thickest);
  const left = sum - size;
  return size > 0 && left >= toSteps(least) && left <= toSteps(most) ? { size: fromSteps(size), clearance: fromSteps(left) } : undefined;
}

/** What stands in the cell when no shim that is made lands in the limits. */
export function noStep({ step: pace, smallest, largest }: ShimSizes): string {
  const from = smallest === undefined ? "" : ` from ${fromSteps(toSteps(smallest))}`;
  const to = largest === undefined ? "" : ` up to ${fromSteps(toSteps(largest))}`;
  return `none: no multiple of ${fromSteps(toSteps(pace))}${from}${to} lands in the limits`;
}
