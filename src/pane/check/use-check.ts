import { useEffect, useMemo, useReducer, useRef } from "preact/hooks";
import type { CheckResult, Finding } from "../../check/finding.ts";
import { counted, rowsText } from "../../core/number-text.ts";
import type { CellMark, SheetHost } from "../../workbook/port.ts";
import { part } from "../parts/loading.ts";
import { sentenceOf } from "../parts/use-task.tsx";
import { type CheckEvent, type CheckState, type CheckTask, canStop, FIRST_RUN, isCheap, isStale, stateAfter } from "./check-state.ts";
import { type Loaders, lookForLoose, madeCheck, type Send } from "./made-check.ts";

export interface CheckActions {
  check(): void;
  /** Leaves a check off, at once: whatever comes of it still is dropped. */
  stop(): void;
  mark(): void;
  unmark(): void;
  /** Enters formulas again that the host does not know. */
  repair(): void;
  select(finding: Finding): void;
  /** What a check reads beside the cells has changed: the layout that the workbook keeps. */
  changed(): void;
}

/** Rest after the last change before a cheap check is made again, in milliseconds. */
const REST = 400;

/** Everything that the Check view can do to the sheet, one thing at a time, and what came of it. */
export function useCheck(host: SheetHost, load: Loaders, isShown: boolean): [CheckState, CheckActions] {
  const [state, send] = useReducer(stateAfter, FIRST_RUN);
  // Actions outlive a render: they look at the state of now.
  const now = useRef(state);
  now.current = state;
  useEffect(() => watching(host, send), [host]);
  const { actions, recheck } = useMemo(() => actionsOn(host, load, send, now), [host, load]);
  const isDue = isShown && state.work === null && isStale(state) && isCheap(state);
  useEffect(() => {
    if (!isDue) return;
    const rest = setTimeout(recheck, REST);
    return () => clearTimeout(rest);
  }, [isDue, state.changes, recheck]);
  return [state, actions];
}

function actionsOn(host: SheetHost, load: Loaders, send: Send, now: { current: CheckState }) {
  /** What is going on, asked for or not. Only what is still going on is heard. */
  let running: AbortController | undefined;
  const marked: Marked = { last: "" };
  const start = (run: (heard: Send, signal: AbortSignal) => Promise<CheckEvent>, refused: (error: unknown) => CheckEvent) => {
    running?.abort();
    const own = new AbortController();
    running = own;
    const heard: Send = (event) => void (own.signal.aborted || send(event));
    run(heard, own.signal).then(heard, (error) => heard(refused(error)));
  };
  const act = (work: CheckTask, run: (heard: Send, signal: AbortSignal) => Promise<CheckEvent>) => {
    if (now.current.work) return;
    send({ type: "started", work });
    start(run, (error) => ({ type: "refused", sentence: sentenceOf(error) }));
  };
  const actions: CheckActions = {
    check: () => act("reading", (heard, signal) => checked(host, load, marked, heard, signal)),
    stop: () => {
      if (!canStop(now.current.work)) return;
      running?.abort();
      send({ type: "stopped" });
    },
    mark: () => act("marking", () => markedNow(host, now.current, marked)),
    unmark: () => act("unmarking", () => unmarked(host)),
    repair: () => act("repairing", () => repaired(host)),
    changed: () => send({ type: "changed" }),
    select: ({ cell }: Finding) => {
      const selected = (refusal: string) => send({ type: "aside", refusal });
      host.select(cell).then(
        () => {
          selected("");
          host.takeKeys?.();
        },
        (error) => selected(sentenceOf(error)),
      );
    },
  };
  const recheck = () => {
    if (now.current.work) return;
    send({ type: "rereading" });
    // A check that nobody asked for fails without a word: the notice that the sheet has changed stands then.
    start(
      (heard, signal) => rechecked(host, load, now.current, marked, heard, signal),
      () => ({ type: "not reread" }),
    );
  };
  return { actions, recheck };
}

/** Starts watching at once; stops also when the pane goes before the host has answered. */
function watching(host: SheetHost, send: Send): () => void {
  const stopping = host.watch(() => send({ type: "changed" }));
  stopping.catch((error) => send({ type: "aside", refusal: `Changes of the sheet go unnoticed here: check again after them. ${sentenceOf(error)}` }));
  return () =>
    void stopping.then(
      (stop) => stop(),
      () => {},
    );
}

/**
 * Marks follow a check that was asked for. One that is made again by itself leaves them: it would put a step of its own between a
 * person's typing and the undo of it.
 */
async function checked(host: SheetHost, load: Loaders, marked: Marked, heard: Send, signal: AbortSignal): Promise<CheckEvent> {
  const { made, read } = await madeCheck(host, load, heard, signal);
  lookForLoose(read, heard, signal);
  // What the host refuses to mark takes nothing from the check.
  const marksAreOld = await marksMoved(host, made, marked).then(
    () => false,
    (error) => {
      heard({ type: "aside", refusal: sentenceOf(error) });
      return true;
    },
  );
  return { type: "checked", checked: { ...made, marksAreOld }, announcement: `Checked. ${foundText(made.result)}` };
}

/** The marks that were last put on from here, as text; blank where none were. */
interface Marked {
  last: string;
}

type WithFindings = Pick<CheckState, "findings"> & { result: CheckResult | null };

const marksFor = ({ findings, result }: WithFindings): CellMark[] => (result && findings ? findings.marksOf(result.findings) : []);

async function putMarks(host: SheetHost, marks: readonly CellMark[], marked: Marked): Promise<void> {
  await host.mark(marks);
  marked.last = JSON.stringify(marks);
}

async function marksMoved(host: SheetHost, made: WithFindings, marked: Marked): Promise<void> {
  if (await host.hasMarks()) await putMarks(host, marksFor(made), marked);
}

/** Read out only where it comes to something else than before. */
async function rechecked(
  host: SheetHost,
  load: Loaders,
  { result: before, loose }: CheckState,
  marked: Marked,
  heard: Send,
  signal: AbortSignal,
): Promise<CheckEvent> {
  const quiet: Send = (event) => void (event.type === "aside" && heard(event));
  const { made, read } = await madeCheck(host, load, quiet, signal);
  if (loose) lookForLoose(read, heard, signal);
  const marksAreOld = JSON.stringify(marksFor(made)) !== marked.last && (await host.hasMarks());
  const found = foundText(made.result);
  return {
    type: "checked",
    checked: { ...made, marksAreOld },
    announcement: before && foundText(before) === found ? "" : `Checked again after a change. ${found}`,
  };
}

function foundText(result: CheckResult): string {
  const found = result.findings.length === 0 ? "No findings" : counted(result.findings.length, "finding");
  return `${found}. ${rowsText(result)}.`;
}

async function markedNow(host: SheetHost, state: CheckState, marked: Marked): Promise<CheckEvent> {
  const marks = marksFor(state);
  await putMarks(host, marks, marked);
  return { type: "done", notice: `${counted(marks.length, "cell")} marked.` };
}

async function unmarked(host: SheetHost): Promise<CheckEvent> {
  const count = await host.unmark();
  return { type: "done", notice: count === 0 ? "There were no marks to take off." : `Marks taken off ${counted(count, "cell")}.` };
}

async function repaired(host: SheetHost): Promise<CheckEvent> {
  const count = await (await part(import("./repair.ts"))).repairFormulas(host);
  return { type: "done", notice: count === 0 ? "There were no formulas to enter again." : `${counted(count, "formula")} entered again.` };
}
