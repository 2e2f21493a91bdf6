import { Fault } from "../core/fault.ts";
import { choicesOf, cleansUp, NO_OVERSIZE } from "../functions/cylinder/oversize.ts";
import { reborePlan } from "../functions/cylinder/rebore-plan.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { type Cut, type CutInputs, planCut } from "./cut.ts";
import type { PlanInput } from "./inputs.ts";
import type { PlanTarget } from "./placement.ts";

const REBORE: Cut = {
  spec: reborePlan,
  part: "bore",
  size: "oversize",
  work: "honing",
  verb: "finish",
  before: "bore",
  grows: true,
  none: NO_OVERSIZE,
  instead: "sleeve",
  cleansUp,
  choices: (standard, sizes, [pistons, pistonClearance]) => {
    const found = choicesOf(standard, sizes, pistons, pistonClearance?.values[0] ?? undefined);
    return found instanceof Fault ? found : found.map(({ oversize: size, finish }) => ({ size, finish }));
  },
};

/** Inputs as REBOREPLAN takes them; `sizes` are its oversizes. */
export interface ReboreInputs extends CutInputs {
  pistons?: PlanInput;
  pistonClearance?: PlanInput;
}

/** To what each bore of a block is taken, why, and how that is written into the sheet. */
export const planRebore = (snapshot: WorkbookSnapshot, { pistons = null, pistonClearance = null, ...inputs }: ReboreInputs, place?: PlanTarget) =>
  planCut(snapshot, REBORE, inputs, [pistons, pistonClearance], place);
