import type { SheetHost } from "../../sheet/sheet-host.ts";
import { FIELDS, type Form, firstForm, PLAN_NAMES, type PlanName } from "./fields.ts";

/** The key under which a workbook keeps what its plans were made from. */
const KEY = "plans";

interface Kept {
  last: PlanName;
  forms: Partial<Record<PlanName, Form>>;
}

export const keptForms = (last: PlanName, forms: Kept["forms"]): [key: string, text: string] => [KEY, JSON.stringify({ last, forms } satisfies Kept)];

/** What a workbook keeps may have been written by another version, or by anybody: only texts for known fields are taken. */
export async function recalledForms(host: SheetHost): Promise<Kept> {
  const { last, forms } = objectIn(await host.recall(KEY));
  const known = PLAN_NAMES.flatMap((name) => {
    const given = (forms as Record<string, unknown> | undefined)?.[name];
    return typeof given === "object" && given !== null ? [[name, formFrom(name, given as Record<string, unknown>)] as const] : [];
  });
  return { last: PLAN_NAMES.find((name) => name === last) ?? "rebore", forms: Object.fromEntries(known) };
}

const formFrom = (name: PlanName, given: Record<string, unknown>): Form => ({
  ...firstForm(name),
  ...Object.fromEntries(FIELDS[name].flatMap(({ key }) => (typeof given[key] === "string" ? [[key, given[key]]] : []))),
});

function objectIn(text: string | null): Record<string, unknown> {
  try {
    const read: unknown = JSON.parse(text ?? "{}");
    return typeof read === "object" && read !== null ? (read as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
