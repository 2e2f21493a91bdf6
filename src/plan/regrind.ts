import { Fault } from "../core/fault.ts";
import { cleansUp } from "../functions/cylinder/oversize.ts";
import { regrindPlan } from "../functions/shafts/regrind-plan.ts";
import { grindingsOf, NO_UNDERSIZE } from "../functions/shafts/undersize.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { type Cut, type CutInputs, planCut } from "./cut.ts";
import type { PlanInput } from "./inputs.ts";
import type { PlanTarget } from "./placement.ts";

const REGRIND: Cut = {
  spec: regrindPlan,
  part: "journal",
  size: "undersize",
  work: "grinding",
  verb: "grind",
  grows: false,
  none: NO_UNDERSIZE,
  instead: "another shaft, or what its maker's service manual allows",
  cleansUp: (finish, needed, allowance) => cleansUp(needed, finish, allowance),
  choices: (standard, sizes, [housing, shells, clearance]) => {
    const found = grindingsOf(standard, sizes, { housing: housing?.values[0] ?? undefined, shells, clearance: clearance?.values[0] ?? undefined });
    return found instanceof Fault ? found : found.map(({ undersize: size, finish }) => ({ size, finish }));
  },
};

/** Inputs as REGRINDPLAN takes them; `sizes` are its undersizes. */
export interface RegrindInputs extends CutInputs {
  housing?: PlanInput;
  shells?: PlanInput;
  clearance?: PlanInput;
}

/** To what each journal of one kind is ground, why, and how that is written into the sheet. */
export const planRegrind = (snapshot: WorkbookSnapshot, { housing = null, shells = null, clearance = null, ...inputs }: RegrindInputs, place?: PlanTarget) =>
  planCut(snapshot, REGRIND, inputs, [housing, shells, clearance], place);
