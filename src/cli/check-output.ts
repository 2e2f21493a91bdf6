import { type CheckResult, type Finding, fieldsOf } from "../check/finding.ts";
import { wordOf } from "../check/finding-words.ts";
import { rowsText } from "../core/number-text.ts";
import { placeName } from "../workbook/address.ts";
import { type CheckedFile, type Copied, nameOf, type Total } from "./checked.ts";
import { alignedRow, countText, jsonLine, print, printAll, printable, widthsOf } from "./output.ts";
import type { Found } from "./worst-first.ts";

/** A finding as a line of JSON: the cell by its name, or the line of the file. */
export function findingLine(file: string, finding: Finding): string {
  const { kind, cell, line } = finding;
  const fields = fieldsOf(finding);
  return jsonLine(line === undefined ? { file, kind, cell: placeName(cell), ...fields } : { file, kind, line, ...fields });
}

/** What was found in one file. Of many files those are passed over that were not checked again. */
export async function printPage({ file, result, notes, unread, skipped, copy }: CheckedFile, files: number): Promise<void> {
  if (unread && result.rowsIn + result.findings.length === 0) return;
  if (skipped) {
    if (files === 1) await print(`${printable(nameOf(file))}\n  unchanged since it was last checked: ${found(skipped.findings)} then\n`);
    return;
  }
  await print(printable(nameOf(file)));
  await printAll(findingRows(result.findings));
  for (const note of notes) await print(`  note: ${printable(note)}`);
  await print(`  ${sums(result)}, ${found(result.findings.length)}`);
  if (copy && "marked" in copy) await print(`  ${copyText(copy)}`);
  await print("");
}

/** Columns are as wide as all that stands in them, so the findings are gone through twice. */
function* findingRows(findings: Found): Generator<string> {
  const cells = (finding: Finding): string[] => [wordOf(finding), placeOf(finding), finding.label, finding.sentence].map(printable);
  const widths: number[] = [];
  for (const finding of findings) widthsOf(cells(finding), widths);
  let left = findings.length;
  for (const finding of findings) {
    left--;
    yield `  ${alignedRow(cells(finding), widths)}`;
  }
  if (left > 0) yield `  ${countText(left, "more finding is", "more findings are")} not printed here, none of them worse; crosshatch check --json lists all`;
}

/** One line over several files. */
export async function printTotal({ files, unread, findings, skipped, leftOut, ...rows }: Total, named: number): Promise<void> {
  if (named <= 1 && !leftOut) return;
  const parts = [sums(rows), countText(findings, "finding")];
  if (skipped) parts.push(`${countText(skipped.files, "unchanged file")} skipped with ${countText(skipped.findings, "earlier finding")}`);
  if (leftOut !== undefined) parts.push(`${countText(leftOut, "file")} left out, not changed since the date given`);
  if (unread.length > 0) parts.push(`${unread.length.toLocaleString("en")} unreadable`);
  await print(`${countText(files, "file")}: ${parts.join(", ")}`);
}

export const sums = (rows: Pick<CheckResult, "rowsIn" | "checked">): string => rowsText(rows, (count) => count.toLocaleString("en"));

export const found = (count: number): string => (count === 0 ? "no findings" : countText(count, "finding"));
const placeOf = ({ line, cell }: Finding): string => (line === undefined ? placeName(cell) : `line ${line}`);

/** `marked copy: out/a.xlsx, 3 cells marked, 41 values written`. */
function copyText({ to, marked, written, signed }: Exclude<Copied, { fault: string }>): string {
  const counts = `marked copy: ${printable(to)}, ${countText(marked, "cell")} marked, ${countText(written, "value")} written`;
  return signed ? `${counts}; the digital signature counts for the original alone` : counts;
}

export function addToTotal(total: Total, { file, result, notes, unread, skipped, copy }: CheckedFile): void {
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
