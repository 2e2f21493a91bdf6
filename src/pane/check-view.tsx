import type { ComponentChildren } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { CheckResult, Finding } from "../buildsheet/finding.ts";
import { wordOf } from "../buildsheet/marks.ts";
import { type CheckState, isStale, type Work } from "./check-state.ts";
import { counted, countsText, tally } from "./finding-words.ts";
import { FindingsList } from "./findings-list.tsx";
import type { CheckActions } from "./use-check.ts";

interface Props {
  state: CheckState;
  actions: CheckActions;
  /** For somebody without a build sheet. */
  first: ComponentChildren;
}

export function CheckView({ state, actions, first }: Props) {
  const { work, result, refusal, notice, announcement } = state;
  const hasFindings = (result?.findings.length ?? 0) > 0;
  return (
    <>
      <div class="tools">
        <button type="button" class="primary" aria-disabled={work !== null} onClick={actions.check}>
          Check
        </button>
        <button type="button" aria-disabled={work !== null || !hasFindings} onClick={() => hasFindings && actions.mark()}>
          Mark cells
        </button>
        <button type="button" aria-disabled={work !== null} onClick={actions.unmark}>
          Take marks off
        </button>
      </div>
      <Progress work={work} />
      <p class="refusal" role="alert">
        {refusal}
      </p>
      <div class={result ? "notice held" : "notice"}>
        <p class={announcement ? "heard-only" : undefined} role="status">
          {work ? DOING[work] : announcement || notice}
        </p>
      </div>
      {isStale(state) && !work && (
        <div class="stale">
          <p>The sheet changed since this check.</p>
          <button type="button" onClick={actions.check}>
            Check again
          </button>
        </div>
      )}
      {result ? <Findings result={result} onSelect={actions.select} /> : !work && <FirstRun first={first} />}
    </>
  );
}

const DOING: Readonly<Record<Work, string>> = {
  reading: "Reading the workbook …",
  checking: "Checking every reading against its limits …",
  marking: "Marking the cells …",
  unmarking: "Taking the marks off …",
};

/** How far it is nobody knows, so it says only that work goes on; what work, the status line says. */
function Progress({ work }: { work: Work | null }) {
  return <div class="progress">{work && <div role="progressbar" aria-label={DOING[work]} />}</div>;
}

function Findings({ result, onSelect }: { result: CheckResult; onSelect(finding: Finding): void }) {
  const [word, setWord] = useState("");
  const counts = useMemo(() => tally(result.findings), [result]);
  // A word that the new result no longer has would hide everything.
  const chosen = counts.has(word) ? word : "";
  const shown = useMemo(() => (chosen ? result.findings.filter((finding) => wordOf(finding) === chosen) : result.findings), [result, chosen]);
  return (
    <section aria-label="Result of the check">
      <div class="summary">
        <h2>{result.findings.length === 0 ? "No findings" : counted(result.findings.length, "finding")}</h2>
        {counts.size > 1 && (
          <select aria-label="Show" value={chosen} onChange={(event) => setWord(event.currentTarget.value)}>
            <option value="">show all</option>
            {[...counts].map(([name, count]) => (
              <option key={name} value={name}>
                {name} ({count})
              </option>
            ))}
          </select>
        )}
      </div>
      <p class="counts">{countsText(result)}</p>
      {result.findings.length === 0 && <NoFindings result={result} />}
      {shown.length > 0 && <FindingsList key={shown} findings={shown} onSelect={onSelect} />}
    </section>
  );
}

function NoFindings({ result: { rowsIn, inputs } }: { result: CheckResult }) {
  if (rowsIn > 0) return <p class="advice">Every judged reading is within its limits, none near one.</p>;
  return (
    <div class="advice">
      <p>Nothing in this workbook is judged against a limit yet{inputs > 0 && `; the ${counted(inputs, "cell")} that functions read show no slip`}.</p>
      <HowTo />
    </div>
  );
}

function FirstRun({ first }: Pick<Props, "first">) {
  return (
    <>
      <div class="advice">
        <h2>Check a build sheet</h2>
        <p>Check compares every reading that has a limit with that limit, and lists what needs a look, worst first. It changes nothing in the workbook.</p>
        <HowTo />
      </div>
      {first}
    </>
  );
}

function HowTo() {
  return (
    <ol>
      <li>Type the readings, and the limits from the maker's service manual, into cells.</li>
      <li>
        Judge each one in a cell beside it: <code>=HATCH.VERDICT(value, lower, upper)</code>
      </li>
      <li>Press Check. Choose a finding to go to its cell.</li>
    </ol>
  );
}
