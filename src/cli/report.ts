import { basename, extname } from "node:path";
import type { Browser } from "playwright-core";
import type { DecimalSign } from "../check/csv/check-csv.ts";
import { type Finding, JudgedRows } from "../check/finding.ts";
import { tally } from "../check/finding-words.ts";
import { NO_SHEET_CONTENT, type ReportInput } from "../report/content.ts";
import { Overview } from "../report/overview.ts";
import { leftOutPart, overviewPart } from "../report/overview-part.ts";
import { renderReport, sectionOf } from "../report/report.ts";
import { MOST_PRINTED } from "../report/sections.ts";
import { launchOneOf, PRESENT_WAYS } from "./browser.ts";
import { checkFiles } from "./check-files.ts";
import { type CheckedFile, nameOf, STANDARD_INPUT } from "./checked.ts";
import { Refusal } from "./exit-codes.ts";
import { complain } from "./output.ts";
import { put, refusedTarget } from "./safe-file.ts";
import { WorstFirst } from "./worst-first.ts";

export interface ReportFlags {
  force?: boolean;
  paper?: string;
  /** Of one workbook: findings and method too. */
  details?: boolean;
}

/** A report that is gathered while the inputs are checked. */
export interface ReportRun {
  take(checked: CheckedFile): void;
  /** Writes it; answers with the file in which it stands. */
  write(decimal: DecimalSign): Promise<string>;
}

/** Says before anything is checked what would keep the report from being written. */
export async function openReport(out: string, files: readonly string[], flags: ReportFlags): Promise<ReportRun> {
  const write = openPage(out, files, flags);
  const gathered = new Gathered(files.length, flags.details);
  return { take: (checked) => gathered.take(checked), write: (decimal) => write((date) => gathered.page(date, decimal)) };
}

/** The same for any page: what is given back makes the page of a day, writes it, and answers with the file in which it stands. */
export function openPage(
  out: string,
  files: readonly string[],
  { force = false, paper = "A4" }: ReportFlags,
): (page: (date: string) => Promise<string>) => Promise<string> {
  const kind = extname(out).toLowerCase();
  if (kind !== ".html" && kind !== ".pdf") throw new Refusal(`${out} ends with neither .html nor .pdf, which is what is written`);
  const size = PAPERS.find((one) => one.toLowerCase() === paper.toLowerCase());
  if (!size) throw new Refusal(`--paper ${paper} is not known: it must be A4 or letter`);
  if (files.includes(STANDARD_INPUT)) throw new Refusal("--report needs files: what comes from standard input is gone once it has been checked");
  refusedTarget(out, force);
  return async (page) => {
    const made = await page(today());
    return kind === ".pdf" ? putPdf(out, made, size, force) : putPage(out, made, force);
  };
}

async function putPage(out: string, page: string, force: boolean): Promise<string> {
  put(out, page, force);
  return out;
}

/** Without a browser the page itself is written beside, and it is said what to do with it. */
async function putPdf(out: string, page: string, paper: Paper, force: boolean): Promise<string> {
  const pdf = await pdfOf(page, paper);
  if (!("why" in pdf)) {
    put(out, pdf.bytes, force);
    return out;
  }
  const instead = `${out.slice(0, -extname(out).length)}.html`;
  put(instead, page, force);
  complain(`no PDF could be made: ${pdf.why}. The report stands in ${instead}: open it in a browser and print it from there`);
  return instead;
}

/** The day where this machine stands. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

const PAPERS = ["A4", "Letter"] as const;
export type Paper = (typeof PAPERS)[number];

/** The page as a tagged PDF, by a browser that is on this machine, or why not. The page's own scripts, had it any, would not run. */
export async function pdfOf(page: string, format: Paper): Promise<{ bytes: Uint8Array } | { why: string }> {
  let browser: Browser | undefined;
  try {
    browser = await launchOneOf(PRESENT_WAYS);
    const sheet = await browser.newPage({ javaScriptEnabled: false, offline: true });
    await sheet.setContent(page, { waitUntil: "load" });
    return { bytes: await sheet.pdf({ format, printBackground: true, tagged: true, outline: true }) };
  } catch (error) {
    return { why: whyNoPaper(error) };
  } finally {
    await browser?.close();
  }
}

function whyNoPaper(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  if (code === "ERR_MODULE_NOT_FOUND" || code === "MODULE_NOT_FOUND") return "the package playwright-core, which steers a browser, is not installed";
  return message.split("\n", 1)[0]!.replace(/\.$/, "");
}

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

  constructor(
    readonly files: number,
    readonly withDetails = false,
  ) {}

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
    if (this.files === 1) return renderReport(inputs, { date, withDetails: this.withDetails });
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
