import { planTrial, type TrialPlan } from "./trial-plan.ts";

/** How the smallest difference that is seen falls as one number of the plan grows, the others as they are planned. */
export interface PlannedCurve {
  of: "repeats" | "places" | "engines";
  /** What it is the smallest difference of. */
  level: "mean" | "group";
  /** As it is planned. */
  now: number;
  points: readonly { n: number; eighty: number; ninety: number }[];
}

const MOST = 12;

/** Curves by repeats and places, of one engine's mean, and by engines, of two groups; without a spread from engine to engine nothing is known of groups. */
export function plannedCurves(plan: TrialPlan): PlannedCurve[] {
  return [curve(plan, "repeats", "mean", 1), curve(plan, "places", "mean", 1), ...(plan.spread === undefined ? [] : [curve(plan, "engines", "group", 2)])];
}

function curve(plan: TrialPlan, of: PlannedCurve["of"], level: PlannedCurve["level"], least: number): PlannedCurve {
  const most = Math.max(MOST, plan[of]);
  // Means rest on nothing of the groups, which take far longer to work out; neither curve rests on what matters.
  const line = { ...plan, matters: undefined, ...(level === "mean" && { spread: undefined }) };
  // As many as lie between the planned and the least or most would only crowd the line.
  const counts = Array.from({ length: MOST }, (_, i) => Math.round(least + (i * (most - least)) / (MOST - 1)));
  const points = [...new Set([...counts, plan[of]])]
    .filter((n) => n >= least)
    .sort((a, b) => a - b)
    .flatMap((n) => {
      const seen = planTrial({ ...line, [of]: n }).lines.find((one) => one.level === level)?.seen;
      return seen?.every(Number.isFinite) ? [{ n, eighty: seen[0], ninety: seen[1] }] : [];
    });
  return { of, level, now: plan[of], points };
}
