import { placeName } from "../workbook/address.ts";
import { checkFiles } from "./check-files.ts";
import { addToTotal, findingLine, printPage, printTotal } from "./check-output.ts";
import { type CheckedFile, type CheckFilesOptions, nameOf, STANDARD_INPUT, type Total } from "./checked.ts";
import { ALL_WELL, FINDINGS, Refusal, UNREADABLE } from "./exit-codes.ts";
import { changedSince, decimalSignOf, encodingFrom, filesOf, kindOf, refuseAsInput, timeOf } from "./inputs.ts";
import { Ledger } from "./ledger.ts";
import { complain, jsonLine, print, printAll, printable, printSoon, readerIsReady, sendWaiting } from "./output.ts";
import { RefusedFile } from "./refused-file.ts";
import { limitsFrom, type WorkbookLimits } from "./workbook-limits.ts";

export interface CheckOptions extends WorkbookLimits {
  json?: boolean;
  asFound?: boolean;
  locale?: string;
  encoding?: string;
  refused?: string;
  force?: boolean;
  since?: string;
  ledger?: string;
  from?: string;
  report?: string;
  paper?: string;
  details?: boolean;
  marked?: string;
  threads?: string;
}

/** `crosshatch check FILE…`: what was found, worst first, file by file, and the counts. */
export async function check(patterns: readonly string[], options: CheckOptions): Promise<number> {
  const { json = false, asFound = false, locale = "en", since } = options;
  if (asFound && !json) throw new Refusal("--as-found needs --json: on screen the worst comes first");
  if (asFound && options.ledger) throw new Refusal("--as-found and --ledger do not go together: a ledger keeps the findings of a file that was checked whole");
  if (asFound && options.report) throw new Refusal("--as-found and --report do not go together: a report shows the worst first");
  if (patterns.length === 0 && options.from === undefined) throw new Refusal("missing required argument 'file'");
  if (options.from !== undefined && options.report !== undefined)
    throw new Refusal("--report needs files: rows of a query are gone once they have been checked");
  const threads = threadsFrom(options.threads);
  const limits = limitsFrom(options);
  const decimal = decimalSignOf(locale);
  const encoding = encodingFrom(options.encoding);
  const named = await filesOf(patterns);
  const files = since === undefined ? named : await changedSince(named, timeOf(since));
  refuseAsInput(options.ledger, named, "the ledger");
  refuseAsInput(options.report, named, "the report");
  const report = options.report === undefined ? undefined : await (await import("./report.ts")).openReport(options.report, files, options);
  const copies = options.marked === undefined ? undefined : (await import("./marked-copies.ts")).openCopies(options.marked, files, options);
  const ledger = options.ledger === undefined ? undefined : await Ledger.open(options.ledger, locale);
  for (const line of ledger?.damaged ?? []) complain(`${options.ledger} has a damaged line ${line}: what it told of is checked again`);
  const refused = options.refused === undefined ? undefined : new RefusedFile(options.refused, named, options.force);
  const total: Total = { files: 0, unread: [], notes: [], rowsIn: 0, checked: 0, refused: 0, findings: 0 };
  if (ledger) total.skipped = { files: 0, findings: 0 };
  if (copies) Object.assign(total, { marked: [], unmarked: [] });
  if (since !== undefined) total.leftOut = named.length - files.length;
  try {
    for await (const checked of inputs(options.from, files, {
      decimal,
      encoding,
      ledger,
      copies,
      threads,
      ...limits,
      forReport: report !== undefined,
      ...listeners({ json, asFound }, refused),
    })) {
      // What was found stands in the ledger before it is told, so that it is not lost whenever the run ends.
      if (ledger && checked.hash && !checked.unread) ledger.add(checked.file, checked.hash, checked.result, checked.result.findings, checked.facts);
      report?.take(checked);
      addToTotal(total, checked);
      tellRefusedCells(checked, refused);
      if (json) await printAll(findingLines(checked));
      else await printPage(checked, files.length);
      if (checked.unread) complain(`${nameOf(checked.file)} ${checked.unread}`);
      if (checked.copy && "fault" in checked.copy) complain(checked.copy.fault);
    }
    refused?.close();
  } catch (error) {
    refused?.abandon();
    throw error;
  } finally {
    sendWaiting();
    ledger?.close();
  }
  if (json) await print(jsonLine(total));
  else await printTotal(total, named.length + (options.from === undefined ? 0 : 1));
  const written = await report?.write(decimal);
  if (written !== undefined && !json) await print(`report: ${printable(written)}`);
  if (total.unread.length + (total.unmarked?.length ?? 0) > 0) return UNREADABLE;
  return total.findings + (total.skipped?.findings ?? 0) > 0 ? FINDINGS : ALL_WELL;
}

function threadsFrom(text: string | undefined): number | undefined {
  if (text !== undefined && !/^(?:[1-9]|[1-5]\d|6[0-4])$/.test(text)) throw new Refusal(`--threads ${text} is no number of threads: it must be 1 to 64`);
  return text === undefined ? undefined : Number(text);
}

async function* inputs(query: string | undefined, files: readonly string[], options: CheckFilesOptions): AsyncGenerator<CheckedFile> {
  if (!files.some((file) => kindOf(file) === ".xlsx")) (await import("./check-readings.ts")).keepYoungSpace();
  if (query !== undefined) yield await (await import("./check-readings.ts")).checkQuery(query, options);
  yield* checkFiles(files, options);
}

function listeners({ json, asFound }: CheckOptions, refused: RefusedFile | undefined): Partial<CheckFilesOptions> {
  return {
    sorted: asFound ? 0 : undefined,
    passOn: json ? (file, finding) => printSoon(findingLine(nameOf(file), finding)) : undefined,
    refused: refused && ((file, { line, why, text }) => refused.add(nameOf(file), line, why, text)),
    breathe: readerIsReady,
  };
}

function* findingLines({ file, result }: CheckedFile): Generator<string> {
  for (const finding of result.findings) yield findingLine(nameOf(file), finding);
}

/** Refused rows of workbooks; those of readings have been told as their lines passed. */
function tellRefusedCells({ file, result }: CheckedFile, refused: RefusedFile | undefined): void {
  if (!refused || file === STANDARD_INPUT || !Array.isArray(result.findings)) return;
  for (const { kind, cell, sentence, value } of result.findings)
    if (kind === "refused") refused.add(nameOf(file), placeName(cell), sentence, String(value ?? ""));
}
