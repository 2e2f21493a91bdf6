import type { Analysis } from "../../check/analysis.ts";
import { asSentence } from "../../core/words.ts";
import type { Mapping } from "../../layout/mapping.ts";
import type { SheetHost, WorkbookSnapshot } from "../../workbook/port.ts";
import { part, recallShopLayout } from "../parts/loading.ts";
import type { CheckEvent, CheckOutcome } from "./check-state.ts";
import type { Checker } from "./sliced-check.ts";

/** What comes with the first check. */
export interface Loaders {
  checker(): Promise<Checker>;
  findings(): Promise<typeof import("./findings.ts")>;
}

export type Send = (event: CheckEvent) => void;

/** In milliseconds: the findings are shown by then. */
const AFTERWARDS = 50;

/** Says, once the findings are there, of which sheets most is judged by nothing: what was looked through for them serves for this too. */
export function lookForLoose({ analysis, mapping }: WhatWasRead, heard: Send, signal: AbortSignal): void {
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

interface WhatWasRead {
  analysis: Analysis;
  mapping: Mapping | undefined;
}

export async function madeCheck(
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

/** Lets the browser show what is going on before work that holds it up; a hidden page paints nothing, hence the limit. */
const painted = (): Promise<void> =>
  new Promise((resolve) => {
    const limit = setTimeout(resolve, 100);
    requestAnimationFrame(() => {
      clearTimeout(limit);
      setTimeout(resolve);
    });
  });
