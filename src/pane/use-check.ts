import { useEffect, useMemo, useReducer, useRef } from "preact/hooks";
import type { CheckResult, Finding } from "../buildsheet/finding.ts";
import type { Mapping } from "../buildsheet/layout/mapping.ts";
import { marksOf } from "../buildsheet/marks.ts";
import type { SheetHost, WorkbookSnapshot } from "../sheet/sheet-host.ts";
import { type CheckEvent, type CheckState, FIRST_RUN, next, type Work } from "./check-state.ts";
import { counted, countsText } from "./finding-words.ts";
import { recallLayout } from "./recall-layout.ts";
import { sentenceOf } from "./sentence-of.ts";

/** Checks a workbook, by its own layout where it keeps one. */
export type Checker = (snapshot: WorkbookSnapshot, mapping?: Mapping) => CheckResult | Promise<CheckResult>;

export interface CheckActions {
  check(): void;
  mark(): void;
  unmark(): void;
  select(finding: Finding): void;
}

/** Everything that the Check view can do to the sheet, one thing at a time, and what came of it. */
export function useCheck(host: SheetHost, checker: () => Promise<Checker>): [CheckState, CheckActions] {
  const [state, send] = useReducer(next, FIRST_RUN);
  // Actions outlive a render: they look at the state of now.
  const now = useRef(state);
  now.current = state;
  useEffect(() => watching(host, send), [host]);
  const actions = useMemo(() => {
    const act = (work: Work, run: () => Promise<CheckEvent>) => {
      if (now.current.work) return;
      send({ type: "started", work });
      run().then(send, (error) => send({ type: "refused", sentence: sentenceOf(error) }));
    };
    return {
      check: () => act("reading", () => checked(host, checker, send)),
      mark: () => act("marking", () => marked(host, now.current.result)),
      unmark: () => act("unmarking", () => unmarked(host)),
      select: ({ cell }: Finding) => {
        const selected = (refusal: string) => send({ type: "aside", refusal });
        host.select(cell).then(
          () => selected(""),
          (error) => selected(sentenceOf(error)),
        );
      },
    };
  }, [host, checker]);
  return [state, actions];
}

type Send = (event: CheckEvent) => void;

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

async function checked(host: SheetHost, checker: () => Promise<Checker>, send: Send): Promise<CheckEvent> {
  const [snapshot, check, { mapping, notes }] = await Promise.all([host.read(), checker(), recallLayout(host)]);
  send({ type: "read" });
  await painted();
  const result = await check(snapshot, mapping);
  if (notes.length > 0) send({ type: "aside", refusal: `Checked without the layout of your own: ${notes.join("; ")}.` });
  const found = result.findings.length === 0 ? "No findings" : counted(result.findings.length, "finding");
  return { type: "checked", result, announcement: `Checked. ${found}. ${countsText(result)}.` };
}

async function marked(host: SheetHost, result: CheckResult | null): Promise<CheckEvent> {
  const marks = marksOf(result?.findings ?? []);
  await host.mark(marks);
  return { type: "done", notice: `${counted(marks.length, "cell")} marked.` };
}

async function unmarked(host: SheetHost): Promise<CheckEvent> {
  const count = await host.unmark();
  return { type: "done", notice: count === 0 ? "There were no marks to take off." : `Marks taken off ${counted(count, "cell")}.` };
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
