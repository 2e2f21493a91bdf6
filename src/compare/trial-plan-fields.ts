import type { TrialPlan } from "./trial-plan.ts";

interface Field {
  /** What is wanted, for forms and help. */
  words: string;
  hint?: string;
  kind: "size" | "count";
  /** Of a count. */
  least?: number;
  most?: number;
  /** What is taken where nothing is given; without one nothing is. */
  usual?: number;
}

const MANY = 1000;

/** What a plan of a trial asks for, in its order; one entry drives the form, the command line and the sentences. */
export const PLAN_FIELDS = {
  uncertainty: { words: "expanded uncertainty U of one reading", kind: "size" },
  common: { words: "the part of it that all readings of one session share", hint: "0 for none", kind: "size", usual: 0 },
  masters: { words: "readings of the gauge's master in each campaign", hint: "then what is common cancels", kind: "count", least: 0, most: MANY, usual: 0 },
  repeats: { words: "readings of each place", kind: "count", least: 1, most: MANY, usual: 1 },
  places: { words: "places of a characteristic on each cylinder", kind: "count", least: 1, most: MANY, usual: 1 },
  cylinders: { words: "cylinders of each engine", kind: "count", least: 1, most: 16, usual: 1 },
  characteristics: { words: "characteristics that are looked at together", kind: "count", least: 1, most: MANY, usual: 1 },
  engines: { words: "engines in each of two groups", kind: "count", least: 1, most: MANY, usual: 1 },
  spread: { words: "standard deviation between engines that are treated alike", kind: "size" },
  matters: { words: "smallest difference between the groups that must not be missed", kind: "size" },
} as const satisfies Readonly<Record<keyof TrialPlan, Field>>;

export type PlanField = keyof typeof PLAN_FIELDS;
const PLAN_FIELD_NAMES = Object.keys(PLAN_FIELDS) as PlanField[];

/** Why what was given of a field cannot be: behind the name that the field has there. */
export interface PlanFault {
  field: PlanField;
  /** What was given; nothing where it was left out. */
  given: string | undefined;
  why: string;
}

/** A plan from what was typed; blank is not given. */
export function readPlan(typed: Readonly<Partial<Record<PlanField, string>>>): { plan: TrialPlan } | { faults: PlanFault[] } {
  const faults: PlanFault[] = [];
  const plan = Object.fromEntries(PLAN_FIELD_NAMES.map((field) => [field, numberOf(field, typed[field]?.trim(), faults)])) as unknown as TrialPlan;
  if (plan.uncertainty === undefined && faults.every(({ field }) => field !== "uncertainty"))
    faults.push({ field: "uncertainty", given: undefined, why: "is not given: type U of one reading, such as 0.004" });
  if (faults.length === 0 && plan.common > plan.uncertainty)
    faults.push({ field: "common", given: typed.common, why: `is a part of the uncertainty ${plan.uncertainty}, which it cannot exceed` });
  return faults.length > 0 ? { faults } : { plan };
}

function numberOf(field: PlanField, text: string | undefined, faults: PlanFault[]): number | undefined {
  const { kind, least = 0, most = MANY, usual }: Field = PLAN_FIELDS[field];
  if (text === undefined || text === "") return usual;
  const value = Number(text);
  if (kind === "count") {
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    faults.push({ field, given: text, why: `is no whole number from ${least} to ${most}` });
  } else {
    if (Number.isFinite(value) && (value > 0 || value === usual)) return value;
    faults.push({ field, given: text, why: "is no number above 0" });
  }
  return undefined;
}
