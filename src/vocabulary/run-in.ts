import { FIELD_WORDS } from "./heading-words.ts";
import { foldedHeading } from "./headings.ts";

/** A reading that is taken again after some hours, or the job of doing so: `Re-checked`, `Re-check of valve clearance`. */
export const isRecheck = (text: string): boolean => /\bre-?\s?check/i.test(text);

/** Columns and entries of a run-in log. */
const RUN_IN_WORDS = {
  /** How long the engine has run by now. */
  now: ["hours run now", "hours now", "hours so far", "hours", ...FIELD_WORDS.hours],
  /** At how many hours a job falls due. */
  due: ["due at hours", "due at", "due hours", "due after hours", "due"],
  /** At how many hours it was done. */
  done: ["done at hours", "done at", "done hours"],
} as const;
export type RunInField = keyof typeof RUN_IN_WORDS;

const BY_WORD = new Map(Object.entries(RUN_IN_WORDS).flatMap(([field, words]) => words.map((word) => [foldedHeading(word), field as RunInField] as const)));

/** What a heading or an entry of a run-in log names. */
export const runInFieldOf = (heading: string): RunInField | undefined => BY_WORD.get(foldedHeading(heading));

const LENGTH_WORDS = new Set(["length of run in", "length of the run in", "run in length"]);

/** The name of an entry that says how long the run-in is. */
export const isRunInLength = (text: string): boolean => LENGTH_WORDS.has(foldedHeading(text));
