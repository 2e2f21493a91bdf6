import type { Checked } from "./check-files.ts";
import { nameOf } from "./check-page.ts";

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

export function count(total: Total, { file, result, notes, unread, skipped, copy }: Checked): void {
  total.files++;
  total.rowsIn += result.rowsIn;
  total.checked += result.checked;
  total.refused += result.refused;
  total.findings += result.findings.length;
  if (skipped) {
    total.skipped!.files++;
    total.skipped!.findings += skipped.findings;
  }
  if (unread) total.unread.push({ file: nameOf(file), reason: unread });
  if (copy && "fault" in copy) total.unmarked?.push({ file, reason: copy.fault });
  else if (copy) total.marked?.push({ file, copy: copy.to, ...(copy.signed ? { signed: true } : {}) });
  for (const note of notes) total.notes.push({ file: nameOf(file), note });
}
