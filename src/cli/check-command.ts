import type { CheckResult, Finding } from "../buildsheet/finding.ts";
import { placeName } from "../sheet/address.ts";
import { type Checked, checkFiles, STANDARD_INPUT } from "./check-files.ts";
import { ALL_WELL, FINDINGS, UNREADABLE } from "./exit-codes.ts";
import { decimalSignOf } from "./locale.ts";
import { complain, print } from "./output.ts";
import { aligned, counted, jsonLine, plain } from "./text.ts";

export interface CheckOptions {
  json?: boolean;
  locale?: string;
}

/** `crosshatch check FILE…`: what was found, worst first, file by file, and the counts. */
export async function check(files: readonly string[], { json = false, locale = "en" }: CheckOptions): Promise<number> {
  const decimal = decimalSignOf(locale);
  const total: Total = { files: 0, unread: [], notes: [], rowsIn: 0, checked: 0, refused: 0, findings: 0 };
  for await (const checked of checkFiles(files, decimal)) {
    count(total, checked);
    const name = nameOf(checked.file);
    if (json) for (const finding of checked.result.findings) await print(jsonLine(record(name, finding)));
    else await printPage(name, checked);
    if (checked.unread) complain(`${plain(name)} ${plain(checked.unread)}`);
  }
  if (json) await print(jsonLine(total));
  else if (files.length > 1)
    await print(
      `${counted(total.files, "file")}: ${sums(total)}, ${counted(total.findings, "finding")}${total.unread.length ? `, ${total.unread.length} unreadable` : ""}`,
    );
  if (total.unread.length > 0) return UNREADABLE;
  return total.findings > 0 ? FINDINGS : ALL_WELL;
}

interface Total {
  files: number;
  rowsIn: number;
  checked: number;
  refused: number;
  findings: number;
  unread: { file: string; reason: string }[];
  notes: { file: string; note: string }[];
}

function count(total: Total, { file, result, notes, unread }: Checked): void {
  total.files++;
  total.rowsIn += result.rowsIn;
  total.checked += result.checked;
  total.refused += result.refused;
  total.findings += result.findings.length;
  if (unread) total.unread.push({ file: nameOf(file), reason: unread });
  total.notes.push(...notes.map((note) => ({ file: nameOf(file), note })));
}

const nameOf = (file: string): string => (file === STANDARD_INPUT ? "standard input" : file);

const sums = ({ rowsIn, checked, refused }: Pick<CheckResult, "rowsIn" | "checked" | "refused">): string =>
  `${counted(rowsIn, "row")} in = ${checked.toLocaleString("en")} checked + ${refused.toLocaleString("en")} refused`;

/** A finding as a line of JSON: the cell by its name, or the line of the file. */
function record(file: string, { kind, cell, label, line, value, lower, upper, margin, verdict, sentence }: Finding): object {
  const place = line === undefined ? { cell: placeName(cell) } : { line };
  return { file, kind, ...place, label, value, lower, upper, margin, verdict, sentence };
}

async function printPage(name: string, { result, notes, unread }: Checked): Promise<void> {
  if (unread && result.rowsIn + result.findings.length === 0) return;
  await print(plain(name));
  const rows = result.findings.map((finding) => [wordOf(finding), placeOf(finding), finding.label, finding.sentence].map(plain));
  for (const row of aligned(rows)) await print(`  ${row}`);
  for (const note of notes) await print(`  note: ${plain(note)}`);
  await print(`  ${sums(result)}, ${result.findings.length === 0 ? "no findings" : counted(result.findings.length, "finding")}`);
  await print("");
}

const wordOf = ({ kind, verdict }: Finding): string => (kind === "outside limit" && verdict ? verdict : kind);
const placeOf = ({ line, cell }: Finding): string => (line === undefined ? placeName(cell) : `line ${line}`);
