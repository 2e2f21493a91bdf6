import { neededText, plannedRow, planTrial, TRIAL_CAUTION, type TrialPlan } from "../compare/trial-plan.ts";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { aligned, jsonLine, print } from "./output.ts";

export interface TrialPlanFlags {
  uncertainty?: string;
  common?: string;
  masters?: string;
  repeats?: string;
  places?: string;
  cylinders?: string;
  characteristics?: string;
  engines?: string;
  spread?: string;
  matters?: string;
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
  const size = (name: string, text: string | undefined): number | undefined => {
    if (text === undefined) return undefined;
    const value = Number(text);
    if (text.trim() === "" || !Number.isFinite(value) || value <= 0) throw new Refusal(`--${name} ${text} is no number above 0`);
    return value;
  };
  const whole = (name: string, text: string | undefined, least: number, most: number, fallback: number): number => {
    if (text === undefined) return fallback;
    const value = Number(text);
    if (!/^\d+$/.test(text.trim()) || value < least || value > most) throw new Refusal(`--${name} ${text} is no whole number from ${least} to ${most}`);
    return value;
  };
  const uncertainty = size("uncertainty", flags.uncertainty);
  if (uncertainty === undefined) throw new Refusal("--uncertainty is not given: wanted is U of one reading, such as 0.004");
  const common = flags.common === undefined || Number(flags.common) === 0 ? 0 : size("common", flags.common)!;
  if (common > uncertainty) throw new Refusal(`--common ${common} is a part of the uncertainty ${uncertainty}, which it cannot exceed`);
  return {
    ...{ uncertainty, common, masters: whole("masters", flags.masters, 0, 1000, 0), repeats: whole("repeats", flags.repeats, 1, 1000, 1) },
    ...{ places: whole("places", flags.places, 1, 1000, 1), cylinders: whole("cylinders", flags.cylinders, 1, 16, 1) },
    ...{ characteristics: whole("characteristics", flags.characteristics, 1, 1000, 1), engines: whole("engines", flags.engines, 1, 1000, 1) },
    ...{ spread: size("spread", flags.spread), matters: size("matters", flags.matters) },
  };
}
