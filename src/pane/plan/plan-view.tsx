import { useEffect, useRef, useState } from "preact/hooks";
import type { SheetHost, WorkbookSnapshot } from "../../workbook/port.ts";
import { part, type ViewProps } from "../parts/loading.ts";
import { RangeField } from "../parts/range-field.tsx";
import { useStored } from "../parts/stored-choices.ts";
import { Answer, TaskLines, useTask } from "../parts/use-task.tsx";
import { FIELDS, type Form, type FormField, firstForm, formsFrom, isAsked, NO_FORMS, PLAN_NAMES, type PlanName } from "./fields.ts";
import { PlanTables } from "./plan-tables.tsx";
import { planFor, type ShownPlan } from "./plans.ts";
import { WritePlan } from "./write-plan.tsx";

interface Props {
  name: PlanName;
  form: Form;
  troubles: Readonly<Record<string, string>>;
  host: SheetHost;
  onAnswer(key: string, text: string): void;
}

/** The form of a plan; what is asked for seldom stands behind a fold. */
function PlanFields({ name, form, troubles, host, onAnswer }: Props) {
  const asked = FIELDS[name].filter((field) => isAsked(field, form));
  const rare = asked.filter(({ isRare }) => isRare);
  // A field that has an answer or a trouble is not hidden.
  const [isOpen, setOpen] = useState(false);
  const isShown = isOpen || rare.some(({ key }) => form[key] || troubles[key]);
  const show = (field: FormField) => (
    <OneField key={field.key} field={field} text={form[field.key] ?? ""} trouble={troubles[field.key]} host={host} onAnswer={onAnswer} />
  );
  return (
    <div class="fields">
      {asked.filter(({ isRare }) => !isRare).map(show)}
      <details open={isShown} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>More</summary>
        <div class="fields">{rare.map(show)}</div>
      </details>
    </div>
  );
}

interface OneProps extends Pick<Props, "host" | "onAnswer"> {
  field: FormField;
  text: string;
  trouble: string | undefined;
}

function OneField({ field, text, trouble, host, onAnswer }: OneProps) {
  const { key, label, kind, options = [], hint } = field;
  if (kind === "choice")
    return (
      <label class="field">
        <span>{label}</span>
        <select value={text} onChange={(event) => onAnswer(key, event.currentTarget.value)}>
          {options.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </label>
    );
  if (kind === "tick")
    return (
      <label class="tick">
        <input type="checkbox" checked={text === "yes"} onChange={(event) => onAnswer(key, event.currentTarget.checked ? "yes" : "no")} />
        <span>{label}</span>
      </label>
    );
  return (
    <RangeField
      id={`plan-${key}`}
      label={label}
      hint={hint}
      text={text}
      trouble={trouble}
      takesSeveral={kind === "ranges"}
      host={host}
      onText={(typed) => onAnswer(key, typed)}
    />
  );
}

const TITLES: Readonly<Record<PlanName, string>> = {
  rebore: "Rebore",
  regrind: "Crankshaft regrind",
  rings: "Ring filing",
  shims: "Shims",
  pistons: "Piston matching",
  masses: "Masses",
};

const ABOUT: Readonly<Record<PlanName, string>> = {
  rebore: "Which oversize cleans up each bore, what it is finished to, and how much comes off.",
  regrind: "Which undersize cleans up each journal, what it is ground to, and how much comes off.",
  rings: "How much to file off each ring end to open its gap to the one wanted.",
  shims: "Which shim goes where with the fewest bought: its own, another valve's, a spare.",
  pistons: "Which piston goes in which bore, so that the worst clearance is as near the one wanted as it can be.",
  masses: "What to take off each piston, pin or rod end so that all come to the lightest of their set.",
};

interface Made {
  shown: ShownPlan;
  /** The changes of the sheet seen when it was worked out. */
  changes: number;
}

/** What to do with measured parts: worked out from ranges of the workbook, with its reasons, and written where somebody says. */
export function PlanView({ host, changes }: ViewProps) {
  const [{ last: name, forms }, keep] = useStored("plan", NO_FORMS, formsFrom);
  const [made, setMade] = useState<Partial<Record<PlanName, Made>>>({});
  const [troubles, setTroubles] = useState<Record<string, string>>({});
  const work = useTask();
  // Whoever was told of a field that cannot be read goes on there.
  const [asked, setAsked] = useState(0);
  const view = useRef<HTMLDivElement>(null);
  useEffect(() => view.current?.querySelector<HTMLElement>("[aria-invalid]")?.focus(), [asked]);
  const [wanted, setWanted] = useState("");
  useEffect(() => {
    if (wanted === "") return;
    view.current?.querySelector<HTMLElement>(`#${wanted}`)?.focus();
    setWanted("");
  }, [wanted]);
  const form = forms[name] ?? firstForm(name);
  const own = made[name];
  const answer = (key: string, text: string) => {
    keep((before) => ({ ...before, forms: { ...before.forms, [name]: { ...form, ...before.forms[name], [key]: text } } }));
    setTroubles(({ [key]: _, ...rest }) => rest);
  };
  /** Sets of parts that the sheets hold for this plan, behind the one that it was filled with. */
  const [filled, setFilled] = useState<{ name: PlanName; about: readonly string[] } | null>(null);
  const plan = (snapshot: WorkbookSnapshot, given: Form) => {
    const planned = planFor(name, snapshot, given);
    setTroubles("troubles" in planned ? planned.troubles : {});
    setMade((before) => ({ ...before, [name]: "troubles" in planned ? undefined : { shown: planned, changes } }));
    if ("troubles" in planned) {
      setAsked((times) => times + 1);
      return "Not worked out: see what is said beside the fields.";
    }
    return planned.fault === null ? "Worked out; the plan stands below." : "";
  };
  const workOut = () => work.act("Working the plan out …", async () => plan(await host.read(), form));
  const fill = (wanted?: string) =>
    work.act("Looking at the sheets …", async () => {
      const snapshot = await host.read();
      const { formsFromSheets } = await part(import("./from-sheets.ts"));
      const found = formsFromSheets(name, snapshot);
      const chosen = found.find(({ about }) => about === wanted) ?? found[0];
      if (!chosen) return "No sheet of Set up in this workbook holds what this plan is made from, as it was set up: say below where it stands.";
      const given = { ...form, ...chosen.form };
      keep((before) => ({ ...before, forms: { ...before.forms, [name]: given } }));
      setFilled({ name, about: found.map(({ about }) => about).filter((about) => about !== chosen.about) });
      const open = FIELDS[name].filter((field) => field.isNeeded && isAsked(field, given) && !given[field.key]?.trim());
      if (open.length === 0) return plan(snapshot, given);
      setTroubles({});
      setWanted(`plan-${open[0]!.key}`);
      return `Filled with the ${chosen.about}. Still to be typed: ${open.map(({ label }) => label.toLowerCase()).join(", ")}.`;
    });
  const choose = (next: PlanName) => {
    keep((before) => ({ ...before, last: next }));
    setTroubles({});
  };
  return (
    <>
      <h2 class="heard-only">Plan</h2>
      <label class="field">
        <span>Plan</span>
        <select value={name} onChange={(event) => choose(event.currentTarget.value as PlanName)}>
          {PLAN_NAMES.map((one) => (
            <option key={one} value={one}>
              {TITLES[one]}
            </option>
          ))}
        </select>
      </label>
      <p class="notice">{ABOUT[name]}</p>
      <div class="tools">
        <button type="button" aria-disabled={work.doing !== ""} onClick={() => fill()}>
          Fill from the build sheet
        </button>
        {filled?.name === name &&
          filled.about.map((about) => (
            <button key={about} type="button" aria-disabled={work.doing !== ""} onClick={() => fill(about)}>
              With the {about} instead
            </button>
          ))}
      </div>
      <div ref={view}>
        <PlanFields key={name} name={name} form={form} troubles={troubles} host={host} onAnswer={answer} />
      </div>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work.doing !== ""} onClick={workOut}>
          Work it out
        </button>
      </div>
      <TaskLines {...work} />
      {own && (
        <Answer label={`Plan: ${TITLES[name]}`} made={own}>
          {own.changes !== changes && <p class="stale">The sheet changed since this plan was worked out.</p>}
          <PlanTables shown={own.shown} />
          {own.shown.fault === null && own.shown.tables.some(({ rows }) => rows.length > 0) && <WritePlan key={name} name={name} form={form} host={host} />}
        </Answer>
      )}
    </>
  );
}
