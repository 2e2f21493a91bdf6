import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import { CheckFindings } from "./check-findings.tsx";
import { CheckProgress, DOING } from "./check-progress.tsx";
import { type CheckState, canStop, isCheap, isStale } from "./check-state.ts";
import { HowTo } from "./how-to.tsx";
import type { CheckActions } from "./use-check.ts";
import { useKey } from "./use-key.ts";

interface Props {
  state: CheckState;
  actions: CheckActions;
  /** For somebody without a build sheet. */
  first: ComponentChildren;
}

export function CheckView({ state, actions, first }: Props) {
  const { work, result, refusal, notice, announcement } = state;
  const hasFindings = (result?.findings.length ?? 0) > 0;
  const checkButton = useRef<HTMLButtonElement>(null);
  useKey("Escape", checkButton, canStop(work) ? actions.stop : undefined);
  return (
    <>
      <div class="tools">
        <button ref={checkButton} type="button" class="primary" aria-disabled={work !== null} onClick={actions.check}>
          Check
        </button>
        <button type="button" aria-disabled={work !== null || !hasFindings} onClick={() => hasFindings && actions.mark()}>
          Mark cells
        </button>
        <button type="button" aria-disabled={work !== null} onClick={actions.unmark}>
          Take marks off
        </button>
      </div>
      <CheckProgress work={work} share={state.share} stop={actions.stop} afterwards={checkButton} />
      <p class="refusal" role="alert">
        {refusal}
      </p>
      <div class={result ? "notice held" : "notice"}>
        <p class={announcement ? "heard-only" : undefined} role="status">
          {work ? DOING[work] : announcement || notice}
        </p>
      </div>
      {isStale(state) && !isCheap(state) && !work && (
        <div class="stale">
          <p>The sheet changed since this check.</p>
          <button type="button" onClick={actions.check}>
            Check again
          </button>
        </div>
      )}
      {result ? <CheckFindings result={result} sheets={state.sheets} onSelect={actions.select} /> : !work && <FirstRun first={first} />}
    </>
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
