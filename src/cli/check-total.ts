import { type CheckedFile, nameOf, type Total } from "./checked.ts";

export function count(total: Total, { file, result, notes, unread, skipped, copy }: CheckedFile): void {
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
