import { fieldsLike } from "../parts/stored-choices.ts";
import { type Form, firstForm, PLAN_NAMES, type PlanName } from "./fields.ts";

/** The plan that was chosen last, and what each plan was made from. */
export interface Forms {
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
