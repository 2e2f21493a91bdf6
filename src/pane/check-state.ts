import type { CheckResult } from "../buildsheet/finding.ts";

/** What the Check view is doing: nothing, or one piece of work at a time. */
export type Work = "reading" | "checking" | "marking" | "unmarking";

export interface CheckState {
  work: Work | null;
  result: CheckResult | null;
  /** What the last piece of work came to, for the status line. */
  notice: string;
  /** What the last check came to: seen in the result itself, so only read out. */
  announcement: string;
  /** Why the last piece of work was not done, as a sentence. */
  refusal: string;
  /** Changes of the sheet seen so far, and how many there were when the shown result was read. */
  changes: number;
  readAt: number;
  /** The same for the check that is under way; it counts only once it has a result. */
  readingAt: number;
}

export type CheckEvent =
  | { type: "started"; work: Work }
  | { type: "read" }
  | { type: "checked"; result: CheckResult; announcement: string }
  | { type: "done"; notice: string }
  | { type: "refused"; sentence: string }
  | { type: "aside"; refusal: string }
  | { type: "changed" };

export const FIRST_RUN: CheckState = { work: null, result: null, notice: "", announcement: "", refusal: "", changes: 0, readAt: 0, readingAt: 0 };

export function next(state: CheckState, event: CheckEvent): CheckState {
  switch (event.type) {
    case "started":
      return { ...state, work: event.work, notice: "", announcement: "", refusal: "", readingAt: event.work === "reading" ? state.changes : state.readingAt };
    case "read":
      return { ...state, work: "checking" };
    case "checked":
      return { ...state, work: null, result: event.result, announcement: event.announcement, readAt: state.readingAt };
    case "done":
      return { ...state, work: null, notice: event.notice };
    case "refused":
      return { ...state, work: null, refusal: event.sentence };
    case "aside":
      // Selecting and watching go on beside other work and do not end it.
      return { ...state, refusal: event.refusal };
    case "changed":
      return { ...state, changes: state.changes + 1 };
  }
}

/** The findings shown are of an earlier sheet. */
export const isStale = ({ result, changes, readAt }: CheckState): boolean => result !== null && changes !== readAt;
