import type { ComponentChildren } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Finding } from "../../check/finding.ts";
import { useKey } from "../parts/use-key.ts";
import { type CheckState, type CheckTask, canStop, isCheap, isStale } from "./check-state.ts";
import type { CheckActions } from "./use-check.ts";

/** How a sheet comes to be checked. */
export function HowTo() {
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

const DOING: Readonly<Record<CheckTask, string>> = {
  reading: "Reading the workbook …",
  checking: "Checking every reading against its limits …",
  marking: "Marking the cells …",
  unmarking: "Taking the marks off …",
  repairing: "Entering the formulas again …",
};

/** Work that takes longer than this shows how far it is and can be stopped by a button, in milliseconds. */
const LONG = 1000;

interface ProgressProps {
  work: CheckTask | null;
  share: number | null;
  stop(): void;
  /** Gets the focus that the button had when it goes. */
  afterwards: { readonly current: HTMLElement | null };
}

/** At once a line that says that work goes on; what work, the status line says. */
function CheckProgress({ work, share, stop, afterwards }: ProgressProps) {
  const isLong = useLong(work !== null);
  if (work === null || !isLong) return <div class="progress">{work && <div role="progressbar" aria-label={DOING[work]} />}</div>;
  return (
    <div class="long">
      {share === null ? (
        <progress aria-label={DOING[work]} />
      ) : (
        <>
          <progress aria-label={DOING[work]} max={1} value={share} />
          <span class="figure">{Math.round(share * 100)} %</span>
        </>
      )}
      {canStop(work) && <StopButton stop={stop} afterwards={afterwards} />}
    </div>
  );
}

function StopButton({ stop, afterwards }: Pick<ProgressProps, "stop" | "afterwards">) {
  const button = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    const own = button.current;
    return () => {
      if (document.activeElement === own) afterwards.current?.focus();
    };
  }, [afterwards]);
  return (
    <button ref={button} type="button" aria-keyshortcuts="Escape" onClick={stop}>
      Stop
    </button>
  );
}

function useLong(isGoing: boolean): boolean {
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    if (!isGoing) return;
    const wait = setTimeout(() => setLong(true), LONG);
    return () => {
      clearTimeout(wait);
      setLong(false);
    };
  }, [isGoing]);
  return isGoing && isLong;
}

interface Props {
  state: CheckState;
  actions: CheckActions;
  /** For somebody without a build sheet. */
  first: ComponentChildren;
  /** Goes where a layout is proposed. */
  onPropose(): void;
}

const isUnknown = ({ kind, details }: Finding): boolean => kind === "no result" && details.why === "functions not known";

export function CheckView({ state, actions, first, onPropose }: Props) {
  const { work, result, findings, unmapped, loose, refusal, notice, announcement } = state;
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
      {state.marksAreOld && !work && <p class="stale">The marks in the sheet are of an earlier check. Check brings them up to date.</p>}
      {result?.findings.some(isUnknown) && !work && (
        <div class="stale">
          <p>Excel does not know our functions in some cells (#NAME?).</p>
          <button type="button" onClick={actions.repair}>
            Repair formulas
          </button>
        </div>
      )}
      {(unmapped || loose) && (
        <div class="advice">
          <p>{unmapped || loose}</p>
          <div class="tools">
            <button type="button" onClick={onPropose}>
              Propose a layout
            </button>
          </div>
        </div>
      )}
      {result && findings ? <findings.CheckFindings result={result} sheets={state.sheets} onSelect={actions.select} /> : !work && <FirstRun first={first} />}
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
