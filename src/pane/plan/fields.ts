import type { Spec } from "../../core/define.ts";
import { massMatch } from "../../functions/balance/mass-match.ts";
import { pistonMatch } from "../../functions/cylinder/piston-match.ts";
import { reborePlan } from "../../functions/cylinder/rebore-plan.ts";
import { ringGapFile } from "../../functions/rings/ring-gap-file.ts";
import { ringGapTarget } from "../../functions/rings/ring-gap-target.ts";
import { regrindPlan } from "../../functions/shafts/regrind-plan.ts";
import { shimPlan } from "../../functions/valves/shim-plan.ts";
import { fieldsLike } from "../parts/stored-choices.ts";

/** The plan that was chosen last, and what each plan was made from. */
interface Forms {
  last: PlanName;
  forms: Partial<Record<PlanName, Form>>;
}

export const NO_FORMS: Forms = { last: "rebore", forms: {} };

/** What a workbook keeps may have been written by another version, or by anybody: only texts for known fields are taken. */
export function formsFrom(given: unknown): Forms | undefined {
  if (typeof given !== "object" || given === null) return undefined;
  const { last, forms } = given as Record<string, unknown>;
  const known = PLAN_NAMES.flatMap((name) => {
    const form = fieldsLike(firstForm(name), (forms as Record<string, unknown> | undefined)?.[name]);
    return form ? [[name, form] as const] : [];
  });
  return { last: PLAN_NAMES.find((name) => name === last) ?? NO_FORMS.last, forms: Object.fromEntries(known) };
}

/** A field of a plan's form: what is asked, and how it is answered. */
export interface FormField {
  key: string;
  label: string;
  /** `ranges` takes several, one a line; `amount` a number or a cell. */
  kind: "range" | "ranges" | "amount" | "choice" | "tick";
  hint?: string;
  options?: readonly (readonly [value: string, words: string])[];
  /** What stands in it at first. */
  first?: string;
  isNeeded?: boolean;
  /** Asked for seldom, so it stands behind a fold. */
  isRare?: boolean;
  /** Only asked when another field says so. */
  when?: { key: string; is: readonly string[] };
}

export type Form = Readonly<Record<string, string>>;

export const PLAN_NAMES = ["rebore", "regrind", "rings", "shims", "pistons", "masses"] as const;

export type PlanName = (typeof PLAN_NAMES)[number];

/** What the function takes for an input that is not given. */
const leftOut = ({ params }: Spec, name: string): string => `${params[name]!.fallback} if left out`;

const NAMES: FormField = {
  key: "names",
  label: "Names",
  kind: "range",
  hint: "Cells that name them, in the same order. Blank: as their rows say",
  isRare: true,
};

const FOR_ALL = { isNeeded: true, when: { key: "limits", is: ["all"] } } as const;
const BY_SIDE = { isNeeded: true, when: { key: "limits", is: ["sides"] } } as const;

const BORES: FormField = { key: "bores", label: "Bore readings", kind: "ranges", isNeeded: true };

export const FIELDS: Readonly<Record<PlanName, readonly FormField[]>> = {
  rebore: [
    {
      key: "layout",
      label: "How the readings are laid out",
      kind: "choice",
      first: "rows",
      options: [
        ["rows", "one bore a row, height by height"],
        ["blocks", "one block a bore: heights down, axes across"],
      ],
    },
    { ...BORES, hint: "One range; or a block for each bore, one a line" },
    { key: "axes", label: "Axes at each height", kind: "amount", first: "2", isNeeded: true, when: { key: "layout", is: ["rows"] } },
    { key: "standard", label: "Standard bore", kind: "amount", isNeeded: true },
    { key: "oversizes", label: "Oversizes available", kind: "range", hint: "A range, or numbers such as 0.25 0.5 1", isNeeded: true },
    { key: "allowance", label: "Stock to leave for honing", kind: "amount", hint: leftOut(reborePlan, "allowance") },
    {
      key: "centring",
      label: "Centre of the new bore",
      kind: "choice",
      first: "worn",
      options: [
        ["worn", "follow the worn bore"],
        ["true", "keep the original centre"],
      ],
    },
    { key: "common", label: "One oversize for the whole block", kind: "tick", first: "yes" },
    { key: "pistons", label: "Skirt of the piston of each oversize", kind: "range", isRare: true, hint: "As many as there are oversizes" },
    { key: "pistonClearance", label: "Piston clearance wanted", kind: "amount", isRare: true },
    NAMES,
  ],
  regrind: [
    {
      key: "layout",
      label: "How the readings are laid out",
      kind: "choice",
      first: "rows",
      options: [
        ["rows", "one journal a row, place by place"],
        ["blocks", "one block a journal: places down, axes across"],
      ],
    },
    {
      key: "journals",
      label: "Journal readings",
      kind: "ranges",
      isNeeded: true,
      hint: "Mains and crankpins are two plans. One range; or a block each, one a line",
    },
    { key: "axes", label: "Axes at each place", kind: "amount", first: "2", isNeeded: true, when: { key: "layout", is: ["rows"] } },
    { key: "standard", label: "Standard journal", kind: "amount", isNeeded: true },
    { key: "undersizes", label: "Undersizes available", kind: "range", hint: "A range, or numbers such as 0.25 0.5", isNeeded: true },
    { key: "allowance", label: "Stock to leave for grinding", kind: "amount", hint: leftOut(regrindPlan, "allowance") },
    {
      key: "centring",
      label: "Centre of the journal",
      kind: "choice",
      first: "true",
      options: [
        ["true", "keep the original centre"],
        ["worn", "follow the worn journal"],
      ],
    },
    { key: "common", label: "One undersize for all of them", kind: "tick", first: "yes" },
    { key: "shells", label: "Wall of the shell of each undersize", kind: "range", isRare: true, hint: "Measured, as many as there are undersizes" },
    { key: "housing", label: "Bore of the housing of those shells", kind: "amount", isRare: true },
    { key: "clearance", label: "Oil clearance wanted", kind: "amount", isRare: true },
    NAMES,
  ],
  rings: [
    { key: "measured", label: "End gaps as measured", kind: "range", isNeeded: true },
    {
      key: "by",
      label: "Where the gap wanted comes from",
      kind: "choice",
      first: "bore",
      options: [
        ["bore", "the bore"],
        ["target", "a number or cells"],
        ["limits", "its limits: their middle"],
      ],
    },
    {
      key: "bore",
      label: "Bores",
      kind: "range",
      hint: "One cell, one for each ring, or a row of readings for each",
      isNeeded: true,
      when: { key: "by", is: ["bore"] },
    },
    { key: "perBore", label: "Gap for each unit of bore", kind: "amount", hint: leftOut(ringGapTarget, "perBore"), when: { key: "by", is: ["bore"] } },
    { key: "target", label: "Gap wanted", kind: "range", hint: "One for all, or one for each ring", isNeeded: true, when: { key: "by", is: ["target"] } },
    { key: "least", label: "Least gap", kind: "range", hint: "One for all, or one for each ring. Both blank: the limits by which the sheet judges the gaps" },
    { key: "most", label: "Largest gap", kind: "range", hint: "One for all, or one for each ring. A gap inside its limits stays" },
    NAMES,
  ],
  shims: [
    { key: "installed", label: "Shims as fitted", kind: "range", isNeeded: true },
    { key: "clearance", label: "Clearances as measured", kind: "range", isNeeded: true },
    {
      key: "limits",
      label: "Limits",
      kind: "choice",
      first: "all",
      options: [
        ["all", "the same for all valves, or cells for each"],
        ["sides", "inlet and exhaust apart"],
        ["sheet", "those by which the sheet judges the clearances"],
      ],
    },
    { key: "least", label: "Least clearance", kind: "range", hint: "A number, or cells: one for each valve", ...FOR_ALL },
    { key: "most", label: "Largest clearance", kind: "range", hint: "A number, or cells: one for each valve", ...FOR_ALL },
    { key: "leastInlet", label: "Least clearance, inlet", kind: "amount", hint: "Which valve is which the words beside it say", ...BY_SIDE },
    { key: "mostInlet", label: "Largest clearance, inlet", kind: "amount", ...BY_SIDE },
    { key: "leastExhaust", label: "Least clearance, exhaust", kind: "amount", ...BY_SIDE },
    { key: "mostExhaust", label: "Largest clearance, exhaust", kind: "amount", ...BY_SIDE },
    { key: "spares", label: "Spare shims", kind: "range", hint: "A range, or numbers such as 2.35 2.5" },
    { key: "step", label: "Step between shims", kind: "amount", hint: leftOut(shimPlan, "step"), isRare: true },
    NAMES,
  ],
  pistons: [
    {
      key: "layout",
      label: "How the bores are laid out",
      kind: "choice",
      first: "sizes",
      options: [
        ["sizes", "one size for each bore"],
        ["rows", "one bore a row, all its readings"],
        ["blocks", "one block a bore"],
      ],
    },
    { ...BORES, label: "Bores", hint: "One range; or a block for each bore, one a line" },
    { key: "pistons", label: "Piston skirts", kind: "range", isNeeded: true },
    { key: "target", label: "Clearance wanted", kind: "amount", isNeeded: true },
    { ...NAMES, label: "Names of the bores" },
    { ...NAMES, key: "pistonNames", label: "Names of the pistons" },
  ],
  masses: [
    { key: "masses", label: "Masses", kind: "ranges", isNeeded: true, hint: "One set: pistons, or big ends. Several sets: one a line, each matched by itself" },
    { key: "tolerance", label: "How much heavier a part may stay", kind: "amount", hint: leftOut(massMatch, "tolerance") },
    NAMES,
  ],
};

/** The function whose inputs the sheets of Set up hold for a plan, and what is chosen with them. */
export const FILLED_BY: Readonly<Record<PlanName, { spec: Spec; chosen: Form }>> = {
  rebore: { spec: reborePlan, chosen: { layout: "rows" } },
  regrind: { spec: regrindPlan, chosen: { layout: "rows" } },
  rings: { spec: ringGapFile, chosen: { by: "limits", least: "", most: "" } },
  shims: { spec: shimPlan, chosen: { limits: "sheet" } },
  pistons: { spec: pistonMatch, chosen: { layout: "rows" } },
  masses: { spec: massMatch, chosen: {} },
};

export const isAsked = ({ when }: FormField, form: Form): boolean => when === undefined || when.is.includes(form[when.key] ?? "");

export const firstForm = (name: PlanName): Form => Object.fromEntries(FIELDS[name].map(({ key, first = "" }) => [key, first]));
