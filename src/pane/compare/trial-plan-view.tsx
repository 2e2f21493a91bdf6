import { useCallback, useState } from "preact/hooks";
import { neededText, plannedRow, planTrial, TRIAL_CAUTION, type TrialPlan } from "../../compare/trial-plan.ts";
import { type PlannedCurve, plannedCurves } from "../../compare/trial-plan-curves.ts";
import { PLAN_FIELDS, type PlanFault, type PlanField, readPlan } from "../../compare/trial-plan-fields.ts";
import { capitalised } from "../../core/words.ts";
import { drawTrialPlan } from "../../drawings/trial-plan-plot.ts";
import type { SheetHost } from "../../workbook/port.ts";
import { Picture } from "../parts/picture.tsx";
import { fieldsLike, useStored } from "../parts/stored-choices.ts";
import { Answer, TaskLines, useTask } from "../parts/use-task.tsx";
import { WriteTrial } from "./write-trial.tsx";

type Typed = Record<PlanField, string>;

const FIRST: Typed = {
  ...{ uncertainty: "", common: "", masters: "", repeats: "1", places: "6", cylinders: "3", characteristics: "5", engines: "2", spread: "", matters: "" },
};

const typedFrom = (given: unknown): Typed | undefined => fieldsLike(FIRST, given);

/** In the order of the form; what few need stands folded behind. */
const ASKED = ["uncertainty", "repeats", "places", "cylinders", "characteristics", "engines", "spread", "matters"] as const;
const MORE = ["common", "masters"] as const;

const CURVES: Readonly<Record<PlannedCurve["of"], string>> = {
  repeats: "readings of each place, mean of one engine",
  places: "places on each cylinder, mean of one engine",
  engines: "engines in each of two groups",
};

interface Made {
  plan: TrialPlan;
  /** The entries that it was made from. */
  typed: Typed;
  rows: ReturnType<typeof plannedRow>[];
  needed: string;
  curves: PlannedCurve[];
}

function make(plan: TrialPlan, typed: Typed): Made {
  const planned = planTrial(plan);
  return {
    ...{ plan, typed, rows: planned.lines.map(plannedRow), curves: plannedCurves(plan) },
    needed: planned.needed === null ? "" : `A ${neededText(plan.matters!, planned.needed).replace(/^a /, "")}.`,
  };
}

/** What a trial will see before anybody measures, how many engines it takes, and the workbook for it. */
export function TrialPlanView({ host }: { host: SheetHost }) {
  const [typed, setTyped] = useStored("trial", FIRST, typedFrom);
  const [faults, setFaults] = useState<readonly PlanFault[]>([]);
  const [made, setMade] = useState<Made | null>(null);
  const work = useTask();
  const put = (field: PlanField, text: string) => setTyped((before) => ({ ...before, [field]: text }));
  const workOut = () =>
    work.act("Working it out …", async () => {
      const read = readPlan(typed);
      setFaults("faults" in read ? read.faults : []);
      setMade("plan" in read ? make(read.plan, typed) : null);
      return "plan" in read ? "Worked out; it stands below." : "Not worked out: see the fields above.";
    });
  const field = (name: PlanField) => (
    <PlanEntry key={name} name={name} text={typed[name]} fault={faults.find((one) => one.field === name)} onText={(text) => put(name, text)} />
  );
  return (
    <>
      <p class="advice">{TRIAL_CAUTION}</p>
      <div class="fields">
        {ASKED.map(field)}
        <details>
          <summary>Common part and master</summary>
          <div class="fields">{MORE.map(field)}</div>
        </details>
      </div>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work.doing !== ""} onClick={workOut}>
          Work out
        </button>
      </div>
      <TaskLines {...work} />
      {made && made.typed !== typed && <p class="stale">An entry has changed since this was worked out.</p>}
      {made && <Planned made={made} />}
      <WriteTrial host={host} cylinders={typed.cylinders} engines={typed.engines} />
    </>
  );
}

interface EntryProps {
  name: PlanField;
  text: string;
  fault: PlanFault | undefined;
  onText(text: string): void;
}

function PlanEntry({ name, text, fault, onText }: EntryProps) {
  const { words, ...more } = PLAN_FIELDS[name];
  const id = `plan-${name}`;
  const hint = "hint" in more ? more.hint : "";
  return (
    <div class="field">
      <label for={id}>{capitalised(words)}</label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        aria-invalid={fault ? true : undefined}
        aria-describedby={`${id}-says`}
        value={text}
        onInput={(event) => onText(event.currentTarget.value)}
      />
      <p id={`${id}-says`} class={fault ? "trouble" : "hint"}>
        {fault ? `${fault.given === undefined ? "This" : fault.given} ${fault.why}` : hint}
      </p>
    </div>
  );
}

function Planned({ made }: { made: Made }) {
  const { plan, rows, needed, curves } = made;
  const draw = useCallback(
    (width: number) =>
      drawTrialPlan(
        curves.map(({ of, now, points, level }) => ({ name: CURVES[of], now, points, matters: level === "group" ? plan.matters : undefined })),
        { width },
      ),
    [curves],
  );
  return (
    <Answer label="What the trial will see" made={made}>
      <table class="planned">
        <caption>Smallest true difference seen</caption>
        <thead>
          <tr>
            <th scope="col">Of</th>
            <th scope="col">8 times in 10</th>
            <th scope="col">9 times in 10</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([what, eighty, ninety, note]) => (
            <tr key={what}>
              <th scope="row">
                {what}
                {note && <span class="hint"> ({note})</span>}
              </th>
              <td>{eighty}</td>
              <td>{ninety}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {needed && <p>{needed}</p>}
      {plan.spread === undefined && (
        <p class="hint">With the standard deviation between engines it also says what the groups will show, and how many engines they need.</p>
      )}
      <Picture draw={draw} />
    </Answer>
  );
}
