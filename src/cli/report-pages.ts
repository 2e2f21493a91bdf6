import { basename } from "node:path";
import type { DecimalSign } from "../check/csv/check-csv.ts";
import { type Finding, JudgedRows } from "../check/finding.ts";

import { tally } from "../check/finding-words.ts";
import { NO_SHEET_CONTENT, type ReportInput } from "../report/content.ts";
import { leftOutPart, Overview, overviewPart } from "../report/overview.ts";
import { renderReport, sectionOf } from "../report/report.ts";
import { MOST_PRINTED } from "../report/sections.ts";
import { checkFiles } from "./check-files.ts";
import { type CheckedFile, nameOf } from "./checked.ts";
import { WorstFirst } from "./worst-first.ts";

/** Inputs that get a section of their own: those with the worst findings. */
const MOST_SECTIONS = 20;
/** Inputs that could not be read and have no section, which are named. */
const MOST_NAMED = 50;

interface Candidate {
  /** The how manyth of the inputs it is. */
  index: number;
  file: string;
  outside: number;
  findings: number;
  /** None of one that was not checked again. */
  input: ReportInput | undefined;
}

/** What a report shows, gathered input by input: sums of all, and the sections of the worst. */
export class Gathered {
  readonly #overview = new Overview();
  #candidates: Candidate[] = [];
  readonly #unread: { name: string; why: string }[] = [];
  #index = 0;

  constructor(readonly files: number) {}

  take(checked: CheckedFile): void {
    const { file, result, facts, unread, skipped } = checked;
    const counts = skipped ?? { rowsIn: result.rowsIn, checked: result.checked, refused: result.refused, findings: result.findings.length };
    this.#overview.add({ ...counts, name: nameOf(file), facts, unread, isUnchanged: skipped !== undefined });
    if (unread !== undefined && this.#unread.length <= MOST_NAMED) this.#unread.push({ name: nameOf(file), why: unread });
    const outside = facts?.tallies.reduce((sum, { kind, count }) => sum + (kind === "outside limit" ? count : 0), 0) ?? 0;
    const index = this.#index++;
    const candidate = { index, file, outside, findings: counts.findings };
    if (this.#candidates.length === MOST_SECTIONS && byWorst(this.#candidates.at(-1)!, { ...candidate, input: undefined }) <= 0) return;
    this.#candidates.push({ ...candidate, input: skipped ? undefined : inputOf(checked, this.#nameOf(file)) });
    this.#candidates = this.#candidates.sort(byWorst).slice(0, MOST_SECTIONS);
  }

  async page(date: string, decimal: DecimalSign): Promise<string> {
    const shown = this.#candidates.sort((a, b) => a.index - b.index);
    await this.#readUnchanged(shown, decimal);
    const inputs = shown.map(({ input }) => input!);
    if (this.files === 1) return renderReport(inputs, { date });
    const places = new Map(shown.map(({ file }, i) => [nameOf(file), sectionOf(i)]));
    const summary = overviewPart(this.#overview, (name) => places.get(name));
    const unread = this.#unread.filter(({ name }) => !places.has(name)).slice(0, MOST_NAMED);
    const leftOut = leftOutPart(this.#overview.sums.inputs - inputs.length, unread);
    return renderReport(inputs, { date, whole: { summary, sums: this.#overview.sums, leftOut } });
  }

  /** An only input is named without its folders, which are nobody's business; among many they tell inputs apart. */
  #nameOf = (file: string): string => (this.files === 1 ? basename(file) : nameOf(file));

  /** What was passed over as unchanged and belongs among the sections is read for them. */
  async #readUnchanged(candidates: readonly Candidate[], decimal: DecimalSign): Promise<void> {
    const without = candidates.filter(({ input }) => input === undefined);
    let i = 0;
    for await (const checked of checkFiles(
      without.map(({ file }) => file),
      { decimal, forReport: true },
    )) {
      const candidate = without[i++]!;
      candidate.input = inputOf(checked, this.#nameOf(candidate.file));
    }
  }
}

/** Worst first; among equals the earlier one. */
const byWorst = (a: Candidate, b: Candidate): number => b.outside - a.outside || b.findings - a.findings || a.index - b.index;

function inputOf({ result, notes, page, unread, hash }: CheckedFile, name: string): ReportInput {
  const first: Finding[] = [];
  for (const finding of result.findings) if (first.push(finding) === MOST_PRINTED) break;
  const words = result.findings instanceof WorstFirst ? result.findings.words() : tally(result.findings);
  return {
    name,
    notes,
    unread,
    result: { ...result, findings: first },
    all: { count: result.findings.length, words },
    judged: page?.judged ?? new JudgedRows(),
    content: page?.content ?? NO_SHEET_CONTENT,
    fingerprint: hash === undefined ? undefined : { sha256: hash, of: "file" },
  };
}
