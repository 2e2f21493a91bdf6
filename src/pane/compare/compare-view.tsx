import { useEffect, useState } from "preact/hooks";
import type { Comparison } from "../../buildsheet/compare/compare.ts";
import type { ViewProps } from "../parts/parts.ts";
import { recallLayout } from "../parts/recall-layout.ts";
import { useKept } from "../parts/stored-choices.ts";
import { useWork, WorkLines } from "../parts/use-work.tsx";
import { ComparisonTables } from "./comparison-tables.tsx";
import { choicesFrom, FIRST } from "./kept-choices.ts";
import { SideField } from "./side-field.tsx";
import { type Choices, compareSides } from "./sides.ts";

const MORE: readonly (readonly [key: "uncertainty" | "hours" | "engineBefore" | "engineAfter", label: string, hint: string])[] = [
  ["uncertainty", "Uncertainty of one reading", "For lengths whose sheet gives none: U at 95 %"],
  ["hours", "Hours in service between", "Where no sheet says"],
  ["engineBefore", "Engine before", "For engine against engine, as the sheet names it"],
  ["engineAfter", "Engine after", "The other one"],
];

/** A build against its strip-down, or engine against engine: which differences are real, and which are the gauge. */
export function CompareView({ host, changes }: ViewProps) {
  const [choices, setChoices] = useKept("compare", FIRST, choicesFrom);
  const [sheets, setSheets] = useState<readonly string[]>([]);
  const [made, setMade] = useState<{ comparison: Comparison; changes: number; inBook: "before" | "after" | null } | null>(null);
  const work = useWork();
  useEffect(() => {
    // The names are only offered; what is wrong with the workbook is said when it is compared.
    host.read().then(
      (snapshot) => setSheets(snapshot.sheets.map(({ name }) => name)),
      () => {},
    );
  }, [host]);
  const choose = (choice: Partial<Choices>) => setChoices((before) => ({ ...before, ...choice }));
  const compare = () =>
    work.act("Comparing …", async () => {
      setMade(null);
      const snapshot = await host.read();
      setSheets(snapshot.sheets.map(({ name }) => name));
      const { mapping, notes } = await recallLayout(host);
      const comparison = await compareSides(snapshot, mapping, choices);
      comparison.notes.push(...notes);
      setMade({ comparison, changes, inBook: choices.after.from !== "file" ? "after" : choices.before.from !== "file" ? "before" : null });
      return "Compared; the changes stand below.";
    });
  return (
    <>
      <h2 class="heard-only">Compare</h2>
      <div class="fields">
        <SideField id="before" label="Before" side={choices.before} sheets={sheets} onSide={(before) => choose({ before })} />
        <SideField id="after" label="After" side={choices.after} sheets={sheets} onSide={(after) => choose({ after })} />
        <details>
          <summary>More</summary>
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
      <WorkLines {...work} />
      {made && made.changes !== changes && <p class="stale">The sheet changed since this was compared.</p>}
      {made && <ComparisonTables comparison={made.comparison} inBook={made.inBook} onSelect={(cell) => work.act("", () => host.select(cell).then(() => ""))} />}
    </>
  );
}
