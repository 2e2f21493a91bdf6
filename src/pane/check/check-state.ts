import type { CheckResult } from "../../check/finding.ts";

/** What the Check view is doing: nothing, or one piece of work at a time. */
export type CheckTask = "reading" | "checking" | "marking" | "unmarking" | "repairing";

export interface CheckState {
  work: CheckTask | null;
  /** How far a check is, from 0 to 1; `null` where nobody knows. */
  share: number | null;
  result: CheckResult | null;
  /** What lists and marks the findings, loaded with the first check. */
  findings: typeof import("./findings.ts") | null;
  /** Sheets of the workbook that was checked, in its order. */
  sheets: readonly string[];
  /** What a workbook looks as if it held where nothing in it is judged: a sentence, or blank. */
  unmapped: string;
  /** Which sheets are mostly judged by nothing while others are: a sentence, or blank. It comes behind the findings. */
  loose: string;
  /** The marks in the sheet are those of an earlier check. */
  marksAreOld: boolean;
  /** How long the last check took, in milliseconds. */
  took: number;
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

/** What a check came to. */
export type CheckOutcome = Pick<CheckState, "findings" | "sheets" | "unmapped" | "marksAreOld" | "took"> & { result: CheckResult };

export type CheckEvent =
  | { type: "started"; work: CheckTask }
  | { type: "read" }
  | { type: "came"; share: number }
  | { type: "checked"; checked: CheckOutcome; announcement: string }
  | { type: "stopped" }
  | { type: "rereading" }
  | { type: "not reread" }
  | { type: "done"; notice: string }
  | { type: "refused"; sentence: string }
  | { type: "aside"; refusal: string }
  | { type: "loose"; loose: string }
  | { type: "changed" };

export const FIRST_RUN: CheckState = {
  work: null,
  share: null,
  result: null,
  findings: null,
  sheets: [],
  unmapped: "",
  loose: "",
  marksAreOld: false,
  took: Number.POSITIVE_INFINITY,
  notice: "",
  announcement: "",
  refusal: "",
  changes: 0,
  readAt: 0,
  readingAt: 0,
};

export function stateAfter(state: CheckState, event: CheckEvent): CheckState {
  switch (event.type) {
    case "started":
      return {
        ...state,
        work: event.work,
        share: null,
        notice: "",
        announcement: "",
        refusal: "",
        readingAt: event.work === "reading" ? state.changes : state.readingAt,
      };
    case "read":
      return { ...state, work: "checking" };
    case "came":
      return { ...state, share: event.share };
    case "checked":
      return { ...state, ...event.checked, work: null, announcement: event.announcement, readAt: state.readingAt };
    case "stopped":
      return { ...state, work: null, notice: state.result ? "Stopped. These are the findings of the check before." : "Stopped. Nothing was checked." };
    case "rereading":
      // Nobody asked for it, so nothing is seen of it until it has a result.
      return { ...state, readingAt: state.changes };
    case "not reread":
      return { ...state, took: Number.POSITIVE_INFINITY };
    case "done":
      // Marks are put on as the findings shown have them, or are all taken off.
      return { ...state, work: null, notice: event.notice, marksAreOld: false };
    case "refused":
      return { ...state, work: null, refusal: event.sentence };
    case "aside":
      // Selecting and watching go on beside other work and do not end it.
      return { ...state, refusal: event.refusal };
    case "loose":
      return { ...state, loose: event.loose };
    case "changed":
      return { ...state, changes: state.changes + 1 };
  }
}

/** The findings shown are of an earlier sheet. */
export const isStale = ({ result, changes, readAt }: CheckState): boolean => result !== null && changes !== readAt;

/** A check that took no longer than this is made again by itself after a change, in milliseconds. */
const CHEAP = 500;
export const isCheap = ({ took }: CheckState): boolean => took <= CHEAP;

/** Work that can be left off. Marks are one step of the host's, which is done or not. */
export const canStop = (work: CheckTask | null): boolean => work === "reading" || work === "checking";
