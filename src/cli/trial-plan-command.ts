import { neededText, plannedRow, planTrial, TRIAL_CAUTION, type TrialPlan } from "../compare/trial-plan.ts";
import { type PlanField, readPlan } from "../compare/trial-plan-fields.ts";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { aligned, jsonLine, print } from "./output.ts";

export interface TrialPlanFlags extends Partial<Record<PlanField, string>> {
  json?: boolean;
}

/** `crosshatch trial plan`: what a trial will see, and how many engines it takes. */
export async function trialPlan({ json = false, ...flags }: TrialPlanFlags): Promise<number> {
  const plan = planFrom(flags);
  const planned = planTrial(plan);
  if (json) {
    for (const { level, rows, n, seen, by } of planned.lines)
      await print(jsonLine({ kind: "seen", level, rows, n, by, power80: seen?.[0] ?? null, power90: seen?.[1] ?? null }));
    await print(
      jsonLine({
        kind: "plan",
        ...plan,
        spread: plan.spread ?? null,
        matters: plan.matters ?? null,
        engineSpread: planned.engineSpread,
        needed80: planned.needed?.[0] ?? null,
        needed90: planned.needed?.[1] ?? null,
      }),
    );
    return ALL_WELL;
  }
  const rows = [["smallest true difference seen", "8 times in 10", "9 times in 10", ""], ...planned.lines.map(plannedRow)];
  for (const line of aligned(rows, WIDEST)) await print(line);
  if (planned.needed !== null) await print(neededText(plan.matters!, planned.needed));
  if (plan.spread === undefined)
    await print("with --spread, what engines that are treated alike differ by, it also says what the groups will show, and how many engines they need");
  await print(TRIAL_CAUTION);
  return ALL_WELL;
}

const WIDEST = 56;

function planFrom(flags: TrialPlanFlags): TrialPlan {
  const read = readPlan(flags);
  if ("plan" in read) return read.plan;
  throw new Refusal(read.faults.map(({ field, given, why }) => `--${field} ${given === undefined ? "" : `${given} `}${why}`).join("; "));
}
