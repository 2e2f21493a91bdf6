import { createReadStream } from "node:fs";
import { basename } from "node:path";
import type { DecimalSign } from "../check/csv/fields.ts";
import { type CompareOptions, type Comparison, compareReadings, compareTrial, linesOf, type RefusedRow } from "../compare/compare.ts";
import { mattersOfCsv } from "../compare/from-csv.ts";
import type { ComparisonVerdict } from "../compare/judgement.ts";
import type { ReadingSet } from "../compare/readings.ts";
import { TypedFault, type TypedSizes, typedSizes } from "../compare/typed-sizes.ts";
import { changesText, sizesText, wearLines } from "../compare/words.ts";
import { placesText, readingText } from "../core/number-text.ts";
import { hashOf } from "./check-readings.ts";
import { jsonLines } from "./compare-lines.ts";
import { readSets } from "./compare-sides.ts";
import { ALL_WELL, FINDINGS, Refusal, UNDECIDED, UNREADABLE } from "./exit-codes.ts";
import { decimalSignOf, encodingFrom, filesOf, refuseAsInput } from "./inputs.ts";
import { aligned, complain, jsonLine, print, printable } from "./output.ts";
import { whyUnread } from "./read-file.ts";
import { put, refusedTarget } from "./safe-file.ts";
import { limitsFrom, type WorkbookLimits } from "./workbook-limits.ts";

export interface CompareFlags extends WorkbookLimits {
  json?: boolean;
  locale?: string;
  encoding?: string;
  hours?: string;
  runIn?: string;
  engines?: string;
  uncertainty?: string[];
  matters?: string[];
  table?: string;
  report?: string;
  paper?: string;
  force?: boolean;
}

const NOTHING = "nothing could be compared: no reading of the one is a reading of the other that can be judged";

/** `crosshatch compare BEFORE AFTER`, or one file that holds both sides: what differs, what is the same within what matters, and what nobody can tell. */
export const compare = (before: string, after: string | undefined, flags: CompareFlags): Promise<number> =>
  judge("compare", after === undefined ? [before] : [before, after], ([first, second], options) => compareReadings(first!, second, options), flags);

/** `crosshatch trial FILE…`: the same of engines that were treated in different ways, group against group. */
export const trial = async (patterns: readonly string[], flags: CompareFlags): Promise<number> =>
  judge("trial", await distinct(await filesOf(patterns)), compareTrial, flags);

/** Files that hold the same are one: read twice, their readings would pass for repeats and make U smaller than it is. */
async function distinct(files: readonly string[]): Promise<string[]> {
  const firsts = new Map<string, string>();
  for (const file of files) {
    // What cannot be read is named when it is read.
    const content = await hashOf(file).catch(() => file);
    const first = firsts.get(content);
    if (first === undefined) firsts.set(content, file);
    else complain(`${file} holds the same as ${first}: its readings count once`);
  }
  return [...firsts.values()];
}

async function judge(
  command: string,
  files: readonly string[],
  judged: (sets: readonly ReadingSet[], options: CompareOptions) => Comparison,
  flags: CompareFlags,
): Promise<number> {
  const { json = false, locale = "en", force = false } = flags;
  const decimal = decimalSignOf(locale);
  const options: CompareOptions = {
    ...{ hours: positive("hours", flags.hours), runIn: positive("run-in", flags.runIn) },
    ...{ engines: enginesIn(flags.engines), matters: await mattersIn(flags.matters, decimal) },
  };
  refuseAsInput(flags.table, files, "the table");
  refuseAsInput(flags.report, files, "the report");
  if (flags.table !== undefined) refusedTarget(flags.table, force);
  const report = flags.report === undefined ? undefined : (await import("./report.ts")).openPage(flags.report, files, flags);
  const read = await readSets(files, {
    decimal,
    encoding: encodingFrom(flags.encoding),
    uncertainty: sizesIn("uncertainty", flags.uncertainty),
    ...limitsFrom(flags),
  });
  if ("unread" in read) {
    for (const { file, reason } of read.unread) complain(`${file} ${reason}`);
    if (json) await print(jsonLine({ kind: "summary", rows: 0, compared: 0, refused: 0, unread: read.unread }));
    return UNREADABLE;
  }
  const comparison = judged(read.sets, options);
  if (json) for (const line of jsonLines(comparison)) await print(jsonLine(line));
  else await printComparison(comparison);
  if (flags.table !== undefined) put(flags.table, (await import("./compare-table.ts")).tableOf(comparison), force);
  const written = await report?.(async (date) => {
    const { renderComparison } = await import("../report/comparison.ts");
    return renderComparison(comparison, { date, command: commandOf(command, files, flags), files: await hashesOf(files) });
  });
  if (written !== undefined && !json) await print(`report: ${printable(written)}`);
  if (comparison.places.length === 0) {
    complain(NOTHING);
    return UNREADABLE;
  }
  return exitOf(linesOf(comparison).map(({ verdict }) => verdict));
}

/** The command that works it out again, with files named without their folders, which are nobody's business. */
function commandOf(command: string, files: readonly string[], flags: CompareFlags): string {
  const quoted = (text: string): string => (/^[\w.,=/:%+-]+$/.test(text) ? text : `"${text.replace(/(["\\$`])/g, "\\$1")}"`);
  const given: [name: string, values: readonly (string | undefined)[]][] = [
    ["engines", [flags.engines]],
    ["hours", [flags.hours]],
    ["run-in", [flags.runIn]],
    ["uncertainty", flags.uncertainty ?? []],
    ["matters", flags.matters ?? []],
    ["locale", [flags.locale === "en" ? undefined : flags.locale]],
    ["encoding", [flags.encoding]],
  ];
  const options = given.flatMap(([name, values]) => values.flatMap((value) => (value === undefined ? [] : [`--${name} ${quoted(value)}`])));
  return ["crosshatch", command, ...files.map((file) => quoted(basename(file))), ...options].join(" ");
}

const hashesOf = (files: readonly string[]): Promise<{ name: string; sha256: string }[]> =>
  Promise.all(files.map(async (file) => ({ name: basename(file), sha256: await hashOf(file) })));

/** 0 where all is the same within what matters, 1 where something differs, 3 where nothing does and something cannot be told. */
const exitOf = (verdicts: readonly ComparisonVerdict[]): number =>
  verdicts.includes("differs") ? FINDINGS : verdicts.includes("cannot tell") ? UNDECIDED : ALL_WELL;

/** A number above 0 as it was typed after an option. */
function positive(name: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() === "" || !Number.isFinite(value) || value <= 0) throw new Refusal(`--${name} ${text} is no number above 0`);
  return value;
}

/** Sizes typed after an option: one for all lengths, or by characteristic. */
function sizesIn(name: string, typed: readonly string[] = []): TypedSizes | undefined {
  try {
    return typedSizes(typed);
  } catch (error) {
    if (error instanceof TypedFault) throw new Refusal(`--${name} ${error.message}`);
    throw error;
  }
}

/** The same, or the name of a file with a column of characteristics and one of what matters. */
async function mattersIn(typed: readonly string[] = [], decimal: DecimalSign): Promise<TypedSizes | undefined> {
  const [only] = typed;
  if (typed.length !== 1 || !/\.csv$/i.test(only!)) return sizesIn("matters", typed);
  try {
    const read = await mattersOfCsv(createReadStream(only!), decimal);
    if ("unread" in read) throw new Refusal(`--matters ${only} ${read.unread}`);
    return read;
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`--matters ${only} ${whyUnread(error)}`);
  }
}

function enginesIn(text: string | undefined): { before: string; after: string } | undefined {
  if (text === undefined) return undefined;
  const [before = "", after = "", ...more] = text.split(",").map((name) => name.trim());
  if (before === "" || after === "" || more.length > 0) throw new Refusal(`--engines ${text} does not name two engines: it must be A,B`);
  return { before, after };
}

/** Labels of four parts stand in one column. */
const WIDEST = 56;

/** The titles of the three lists, by what their lines came to. */
const LISTS: readonly (readonly [verdict: ComparisonVerdict, title: string])[] = [
  ["differs", "differs"],
  ["cannot tell", "cannot be told"],
  ["same within", "the same within what matters"],
];

/** The comparison as a person reads it: the sentence first, then what differs, what nobody can tell and what is the same. */
async function printComparison(comparison: Comparison): Promise<void> {
  const { between, headline, verdicts, refused, notes, wear, places, rows } = comparison;
  await print(printable(between));
  await print(`  ${headline}`);
  const lines = linesOf(comparison);
  for (const [verdict, title] of LISTS)
    await printTable(
      title,
      lines.filter((line) => line.verdict === verdict).map((line) => lineRow(line, comparison)),
    );
  await printTable("wear", wearLines(wear));
  await printTable("not compared", refused.map(refusedRow));
  for (const note of notes) await print(`  note: ${printable(note)}`);
  await print(`  ${placesText(rows, places.length, (count) => count.toLocaleString("en"))}; ${verdicts}`);
}

async function printTable(title: string, rows: readonly (readonly string[])[]): Promise<void> {
  if (rows.length === 0) return;
  await print(`  ${title}`);
  for (const line of aligned(
    rows.map((row) => row.map(printable)),
    WIDEST,
  ))
    await print(`    ${line}`);
}

type Line = ReturnType<typeof linesOf>[number];

function lineRow(line: Line, comparison: Comparison): string[] {
  if ("changes" in line) return [line.label, changesText(line), line.says];
  return [line.label, "places" in line ? "" : sizesText(line, comparison), line.says];
}

const refusedRow = ({ label, before, after, why }: RefusedRow): string[] => [
  label,
  [before, after].map((side) => side.map(({ value }) => (typeof value === "number" ? readingText(value) : "?")).join(", ") || "none").join(" → "),
  why,
];
