import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { Comparison } from "../../compare/compare.ts";
import { part, recallShopLayout, type ViewProps } from "../parts/loading.ts";
import { fieldsLike, useStored } from "../parts/stored-choices.ts";
import { Answer, TaskLines, useTask } from "../parts/use-task.tsx";
import { ComparisonTables } from "./comparison-tables.tsx";
import { type CompareForm, compareSides, type Side } from "./sides.ts";

export const FIRST: CompareForm = {
  before: { from: "file", file: null },
  after: { from: "workbook" },
  uncertainty: "",
  matters: "",
  hours: "",
  runIn: "",
  engineBefore: "",
  engineAfter: "",
};

/** What a workbook keeps of a comparison. A file cannot be kept, so it is chosen again. */
export function choicesFrom(given: unknown): CompareForm | undefined {
  const choices = fieldsLike(FIRST, given);
  return choices && { ...choices, before: sideFrom(choices.before), after: sideFrom(choices.after) };
}

function sideFrom({ from, sheet }: { from?: unknown; sheet?: unknown }): Side {
  if (from === "sheet" && typeof sheet === "string") return { from, sheet };
  return from === "workbook" ? { from } : { from: "file", file: null };
}

interface Props {
  id: string;
  label: string;
  side: Side;
  /** Sheets of the open workbook. */
  sheets: readonly string[];
  onSide(side: Side): void;
}

const SHEET = "sheet:";

/** One side of a comparison, chosen among the open workbook, its sheets and a file. */
function SideField({ id, label, side, sheets, onSide }: Props) {
  const value = side.from === "sheet" ? SHEET + side.sheet : side.from;
  // A sheet that is kept as chosen is offered also before the sheets are known, or when it is gone.
  const offered = side.from === "sheet" && !sheets.includes(side.sheet) ? [...sheets, side.sheet] : sheets;
  const choose = (chosen: string) => {
    if (chosen.startsWith(SHEET)) onSide({ from: "sheet", sheet: chosen.slice(SHEET.length) });
    else onSide(chosen === "file" ? { from: "file", file: null } : { from: "workbook" });
  };
  return (
    <div class="field">
      <label for={`side-${id}`}>{label}</label>
      <select id={`side-${id}`} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="file">a file: another workbook, or readings as CSV</option>
        <option value="workbook">this workbook</option>
        {offered.map((sheet) => (
          <option key={sheet} value={SHEET + sheet}>
            the sheet {sheet}
          </option>
        ))}
      </select>
      {side.from === "file" && (
        <>
          <input
            type="file"
            accept=".xlsx,.csv"
            aria-label={`File with the readings ${label.toLowerCase()}`}
            aria-describedby={`side-${id}-hint`}
            onChange={(event) => onSide({ from: "file", file: event.currentTarget.files?.[0] ?? null })}
          />
          <p id={`side-${id}-hint`} class="hint">
            An .xlsx, with its results as they were saved, or a .csv with one reading a line. Read here, sent nowhere.
          </p>
        </>
      )}
    </div>
  );
}

const MORE: readonly (readonly [key: "uncertainty" | "matters" | "hours" | "runIn" | "engineBefore" | "engineAfter", label: string, hint: string])[] = [
  ["uncertainty", "Uncertainty of one reading", "U at 95 %, where the sheet gives none: 0.005 for every length, or ring end gap = 0.02"],
  ["matters", "Smallest difference that matters", "Where no sheet says it: 0.01, or ring end gap = 0.05"],
  ["hours", "Hours run between", "From the one measuring to the other, where no sheet says it"],
  ["runIn", "Length of run-in", "In hours, or what use is counted in, where no sheet says it: its wear is kept apart, and no life is predicted from it"],
  ["engineBefore", "Engine before", "Only to compare two engines: its name, as the sheet has it"],
  ["engineAfter", "Engine after", "The name of the other engine"],
];

/** A build against its strip-down, or engine against engine: which differences are real, and which are the gauge. */
export function CompareView({ host, changes }: ViewProps) {
  const [choices, setChoices] = useStored("compare", FIRST, choicesFrom);
  const [sheets, setSheets] = useState<readonly string[]>([]);
  const [made, setMade] = useState<{ comparison: Comparison; changes: number; inBook: "before" | "after" | null } | null>(null);
  const work = useTask();
  useEffect(() => {
    // The names are only offered; what is wrong with the workbook is said when it is compared.
    host.read().then(
      (snapshot) => setSheets(snapshot.sheets.map(({ name }) => name)),
      () => {},
    );
  }, [host]);
  const choose = (choice: Partial<CompareForm>) => setChoices((before) => ({ ...before, ...choice }));
  const compare = () =>
    work.act("Comparing …", async () => {
      setMade(null);
      const snapshot = await host.read();
      setSheets(snapshot.sheets.map(({ name }) => name));
      const { mapping, notes } = await recallShopLayout(host);
      const comparison = await compareSides(snapshot, mapping, choices);
      comparison.notes.push(...notes);
      setMade({ comparison, changes, inBook: choices.after.from !== "file" ? "after" : choices.before.from !== "file" ? "before" : null });
      return "Compared; what came of it stands below.";
    });
  return (
    <>
      <h2 class="heard-only">Compare</h2>
      <div class="fields">
        <SideField id="before" label="Before" side={choices.before} sheets={sheets} onSide={(before) => choose({ before })} />
        <SideField id="after" label="After" side={choices.after} sheets={sheets} onSide={(after) => choose({ after })} />
        <details>
          <summary>Uncertainty, hours, two engines</summary>
          <div class="fields">
            {MORE.map(([key, label, hint]) => (
              <div key={key} class="field">
                <label for={`compare-${key}`}>{label}</label>
                <input
                  id={`compare-${key}`}
                  type="text"
                  autocomplete="off"
                  aria-describedby={`compare-${key}-hint`}
                  value={choices[key]}
                  onInput={(event) => choose({ [key]: event.currentTarget.value })}
                />
                <p id={`compare-${key}-hint`} class="hint">
                  {hint}
                </p>
              </div>
            ))}
          </div>
        </details>
      </div>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work.doing !== ""} onClick={compare}>
          Compare
        </button>
      </div>
      <TaskLines {...work} />
      {made && (
        <Answer label="Result of the comparison" made={made}>
          {made.changes !== changes && <p class="stale">The sheet changed since this was compared.</p>}
          <ComparisonTables comparison={made.comparison} inBook={made.inBook} onSelect={(cell) => work.act("", () => host.select(cell).then(() => ""))} />
        </Answer>
      )}
      <TrialPlan host={host} />
    </>
  );
}

/** Folded, and loaded when it is first opened. */
function TrialPlan({ host }: Pick<ViewProps, "host">) {
  const [view, setView] = useState<{ View: ComponentType<Pick<ViewProps, "host">> } | null>(null);
  const [trouble, setTrouble] = useState("");
  const open = () => {
    if (view === null)
      part(import("./trial-plan-view.tsx")).then(
        ({ TrialPlanView }) => setView({ View: TrialPlanView }),
        (error: Error) => setTrouble(error.message),
      );
  };
  return (
    <details class="trial-plan" onToggle={open}>
      <summary>Plan a trial</summary>
      {trouble && (
        <p class="refusal" role="alert">
          {trouble}
        </p>
      )}
      {view && <view.View host={host} />}
    </details>
  );
}
