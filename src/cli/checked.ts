import type { DecimalSign, RefusedRecord } from "../check/csv/check-csv.ts";
import type { CheckResult, Finding } from "../check/finding.ts";
import type { ReportInput } from "../report/content.ts";
import type { Facts } from "../report/summary-facts.ts";
import type { MarkedCopy } from "../xlsx/patch/marked-copy.ts";
import type { Ledger, LedgerEntry } from "./ledger.ts";
import type { Found } from "./worst-first.ts";

export const STANDARD_INPUT = "-";

/** An input as a person reads of it. */
export const nameOf = (file: string): string => (file === STANDARD_INPUT ? "standard input" : file);

/** Findings of one file of readings that are kept to be told worst first. */
export const MOST_SORTED = 5_000;

/** Counts of one input, and its findings, of which very many are not kept. */
export type FileResult = Omit<CheckResult, "findings"> & { findings: Found };

/** What came of one input. `unread` says why it, or its rest, could not be read; `skipped` that it is as it was when it was last checked. */
export interface CheckedFile {
  file: string;
  result: FileResult;
  notes: readonly string[];
  /** What a workbook without a layout looks as if it held, where nothing in it is judged. */
  unmapped?: string;
  unread?: string;
  skipped?: LedgerEntry;
  /** Of its content; none for standard input. */
  hash?: string;
  /** Its marked copy, or why there is none. */
  copy?: Copied;
  /** For a summary of many; for a page of its own. */
  facts?: Facts | undefined;
  page?: ReportPage;
}

export interface CheckFilesOptions {
  decimal: DecimalSign;
  /** How .csv files are written, where that is not found out. */
  encoding?: string | undefined;
  ledger?: Ledger | undefined;
  /** Findings of one file of readings that are kept to be told worst first; the others go to `passOn` while it is read. */
  sorted?: number | undefined;
  passOn?: ((file: string, finding: Finding) => void) | undefined;
  refused?: ((file: string, row: RefusedRecord) => void) | undefined;
  /** Waited for now and then, where whoever takes the findings is slower. */
  breathe?: (() => Promise<void> | undefined) | undefined;
  /** Marked copies to be written, by workbook. */
  copies?: ReadonlyMap<string, CopyTask> | undefined;
  /** A report will want to show what else stands in each input. */
  forReport?: boolean;
  /** Workbooks checked at a time: as many as the machine has processors, where nothing is said. */
  threads?: number | undefined;
  /** What the formulas of one workbook may take together, and how many megabytes. */
  work?: number | undefined;
  memory?: number | undefined;
}

const NOTHING: FileResult = { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0 };

export const unread = (file: string, why: string): CheckedFile => ({ file, result: NOTHING, notes: [], unread: why });
export const unchanged = (file: string, entry: LedgerEntry): CheckedFile => ({ file, result: NOTHING, notes: [], skipped: entry, facts: entry.facts });

/** What came of all inputs together, as it is written as a line of JSON. */
export interface Total {
  files: number;
  rowsIn: number;
  checked: number;
  refused: number;
  findings: number;
  unread: { file: string; reason: string }[];
  notes: { file: string; note: string }[];
  /** Files that were not checked again, and what had been found in them. */
  skipped?: { files: number; findings: number };
  /** Files that were left out for their age. */
  leftOut?: number;
  /** Marked copies that were written, and workbooks of which none could be. */
  marked?: { file: string; copy: string; signed?: true }[];
  unmarked?: { file: string; reason: string }[];
}

/** Where a workbook's copy goes, and whether what is there is overwritten. */
export interface CopyTask {
  to: string;
  force: boolean;
}

export type Copied = ({ to: string } & Omit<MarkedCopy, "bytes">) | { fault: string };

/** What a report shows of one input beside its findings. */
export type ReportPage = Pick<ReportInput, "judged" | "content">;

/** What the threads that check workbooks are asked. */
export interface WorkbookTask {
  path: string;
  /** What its content came to when it was checked before; it is not checked again while that is so. */
  known?: string | undefined;
  /** A marked copy to be written. */
  copy?: CopyTask | undefined;
  /** What else is wanted of it: for a summary of many, and for a page of its own. */
  facts?: boolean;
  page?: boolean;
  /** What its formulas may take together. */
  work?: number | undefined;
}

export type WorkbookAnswer =
  | { unchanged: true }
  | { result: CheckResult; notes: string[]; unmapped?: string; hash: string; copy?: Copied; facts?: Facts; page?: ReportPage }
  | { fault: string; hash?: string };
