import { type AnalysedCheck, checkSteps } from "../../check/check-workbook.ts";
import type { Mapping } from "../../layout/mapping.ts";
import type { WorkbookSnapshot } from "../../workbook/port.ts";

/** What goes on beside long work: whoever started it may stop it, and sees how far it is. */
export interface SliceControl {
  signal: AbortSignal;
  /** From 0 to 1. */
  came(share: number): void;
}

/** Longest that the page is held up at a time, in milliseconds: less than a frame. */
const SLICE = 12;

/** Takes steps until they come to something, and lets the page do its own work in between. Rejects once it is stopped. */
export async function inSlices<T>(steps: Generator<number, T>, { signal, came }: SliceControl): Promise<T> {
  for (;;) {
    const end = performance.now() + SLICE;
    let share = 0;
    do {
      const step = steps.next();
      if (step.done) return step.value;
      share = step.value;
    } while (performance.now() < end);
    came(share);
    await breath();
    signal.throwIfAborted();
  }
}

/** Unlike a timer, a message is not held back in a page that nobody sees. */
const breath = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

/** Checks a workbook, by its own layout where it keeps one. */
export type Checker = (snapshot: WorkbookSnapshot, mapping: Mapping | undefined, going: SliceControl) => AnalysedCheck | Promise<AnalysedCheck>;

/** The check that the pane brings along: beside the page's own work, and stopped when it is told so. */
export const checkInSlices: Checker = (snapshot, mapping, going) => inSlices(checkSteps(snapshot, mapping), going);
