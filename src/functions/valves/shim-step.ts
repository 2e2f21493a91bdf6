import { fromSteps, toSteps } from "../../core/decimal.ts";

/**
 * The shim that can be bought: of the multiples of `step`, the one whose clearance comes nearest to
 * the middle of the limits, the thinner of two that are as near, because a valve's clearance closes
 * up in service. `undefined` when no multiple lands in the limits. Reckoned in whole steps of the
 * decimal grid, doubled so that the middle is whole too, and therefore exact.
 */
export function nearestStep(installed: number, clearance: number, least: number, most: number, step: number): { size: number; clearance: number } | undefined {
  const sum = toSteps(installed) + toSteps(clearance);
  const pace = toSteps(step);
  const ideal = 2 * sum - toSteps(least) - toSteps(most);
  const size = Math.ceil(ideal / (2 * pace) - 0.5) * pace;
  const left = sum - size;
  return size > 0 && left >= toSteps(least) && left <= toSteps(most) ? { size: fromSteps(size), clearance: fromSteps(left) } : undefined;
}

/** What stands in the cell when no shim of this step lands in the limits. */
export const noStep = (step: number): string => `none: no multiple of ${fromSteps(toSteps(step))} lands in the limits`;
