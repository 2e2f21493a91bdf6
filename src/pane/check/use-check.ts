import { useEffect, useMemo, useReducer, useRef } from "preact/hooks";
import type { Analysis } from "../../check/analysis.ts";
import type { CheckResult, Finding } from "../../check/finding.ts";
import { counted, rowsText } from "../../core/number-text.ts";
import { asSentence } from "../../core/words.ts";
import type { Mapping } from "../../layout/mapping.ts";
import type { CellMark, SheetHost, WorkbookSnapshot } from "../../workbook/port.ts";
import { part, recallShopLayout } from "../parts/loading.ts";
import { sentenceOf } from "../parts/use-task.tsx";
import { type CheckEvent, type CheckOutcome, type CheckState, type CheckTask, canStop, FIRST_RUN, isCheap, isStale, stateAfter } from "./check-state.ts";
import type { Checker } from "./sliced-check.ts";

/** What comes with the first check. */
export interface Loaders {
  checker(): Promise<Checker>;
  findings(): Promise<typeof import("./findings.ts")>;
}

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

type Send = (event: CheckEvent) => void;

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

/** In milliseconds: the findings are shown by then. */
const AFTERWARDS = 50;

/** Says, once the findings are there, of which sheets most is judged by nothing: what was looked through for them serves for this too. */
function lookForLoose({ analysis, mapping }: WhatWasRead, heard: Send, signal: AbortSignal): void {
  const look = async () => {
    const { looseText } = await part(import("../../check/layout-overview.ts"));
    // A later check looks for itself.
    if (signal.aborted) return;
    const text = looseText(analysis, mapping) ?? "";
    heard({ type: "loose", loose: text && asSentence(text) });
  };
  // It is only an offer: where it cannot be looked for, none is made.
  setTimeout(() => void look().catch(() => {}), AFTERWARDS);
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

interface WhatWasRead {
  analysis: Analysis;
  mapping: Mapping | undefined;
}

async function madeCheck(
  host: SheetHost,
  load: Loaders,
  heard: Send,
  signal: AbortSignal,
): Promise<{ made: Omit<CheckOutcome, "marksAreOld">; read: WhatWasRead }> {
  const timed = stopwatch();
  const [snapshot, check, { mapping, notes }, findings] = await Promise.all([
    timed(() => host.read()),
    load.checker(),
    recallShopLayout(host),
    load.findings(),
  ]);
  signal.throwIfAborted();
  heard({ type: "read" });
  await painted();
  signal.throwIfAborted();
  const { result, analysis } = await timed(() => check(snapshot, mapping, { signal, came: inHundredths((share) => heard({ type: "came", share })) }));
  const said = notes.join("; ");
  if (said) heard({ type: "aside", refusal: mapping ? asSentence(said) : `Checked without the layout of your own: ${said}.` });
  const unmapped = mapping || result.rowsIn > 0 ? "" : await unmappedIn(snapshot);
  return { made: { result, findings, sheets: snapshot.sheets.map(({ name }) => name), unmapped, took: timed.sum() }, read: { analysis, mapping } };
}

/** A part of its own, which few checks need. */
async function unmappedIn(snapshot: WorkbookSnapshot): Promise<string> {
  const text = (await part(import("../../layout/propose.ts"))).unmappedText(snapshot);
  return text ? `Nothing here is judged, and the workbook keeps no layout; ${text}.` : "";
}

/** Adds up how long work takes, without what is loaded beside them the first time. */
function stopwatch() {
  let sum = 0;
  const timed = async <T>(work: () => T | Promise<T>): Promise<T> => {
    const start = performance.now();
    const came = await work();
    sum += performance.now() - start;
    return came;
  };
  return Object.assign(timed, { sum: () => sum });
}

/** Told no more often than it can be seen. */
function inHundredths(came: (share: number) => void): (share: number) => void {
  let last = -1;
  return (share) => {
    const hundredths = Math.floor(share * 100);
    if (hundredths === last) return;
    last = hundredths;
    came(hundredths / 100);
  };
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

/** Lets the browser show what is going on before work that holds it up; a hidden page paints nothing, hence the limit. */
const painted = (): Promise<void> =>
  new Promise((resolve) => {
    const limit = setTimeout(resolve, 100);
    requestAnimationFrame(() => {
      clearTimeout(limit);
      setTimeout(resolve);
    });
  });
