import { createReadStream } from "node:fs";
import { basename } from "node:path";
import type { DecimalSign } from "../check/csv/fields.ts";
import { type Comparison, compareReadings, linesOf, type RefusedRow } from "../compare/compare.ts";
import { type CsvReadingOptions, mattersOfCsv, readingsOfCsv } from "../compare/from-csv.ts";
import type { ComparisonVerdict } from "../compare/judgement.ts";
import type { ReadingSet } from "../compare/readings.ts";
import { TypedFault, type TypedSizes, typedSizes } from "../compare/typed-sizes.ts";
import { changesText, sizesText, wearLines } from "../compare/words.ts";
import { rowsText } from "../core/number-text.ts";
import { nameOf, STANDARD_INPUT } from "./checked.ts";
import { jsonLines, tableOf } from "./compare-lines.ts";
import { ALL_WELL, FINDINGS, Refusal, UNDECIDED, UNREADABLE } from "./exit-codes.ts";
import { GridThread } from "./grid-thread.ts";
import { decimalSignOf, encodingFrom, kindOf } from "./inputs.ts";
import { aligned, complain, jsonLine, plain, print } from "./output.ts";
import { reasonOf, unknownKind, workbookBytes } from "./read-file.ts";
import { put, refusedTarget } from "./safe-file.ts";
import { streams } from "./streams.ts";

export interface CompareFlags {
  json?: boolean;
  locale?: string;
  encoding?: string;
  hours?: string;
  runIn?: string;
  engines?: string;
  uncertainty?: string[];
  matters?: string[];
  table?: string;
  force?: boolean;
}

const NOTHING = "nothing could be compared: no reading of the one is a reading of the other that can be judged";

/** `crosshatch compare BEFORE AFTER`, or one file that holds both sides: what differs, what is the same within what matters, and what nobody can tell. */
export async function compare(
  before: string,
  after: string | undefined,
  { json = false, locale = "en", force = false, ...flags }: CompareFlags,
): Promise<number> {
  const decimal = decimalSignOf(locale);
  const options = {
    hours: positive("hours", flags.hours),
    runIn: positive("run-in", flags.runIn),
    engines: enginesIn(flags.engines),
    matters: await mattersIn(flags.matters, decimal),
  };
  if (flags.table !== undefined) refusedTarget(flags.table, force);
  const sides = await readSides(
    after === undefined ? [before] : [before, after],
    decimal,
    sizesIn("uncertainty", flags.uncertainty),
    encodingFrom(flags.encoding),
  );
  if ("unread" in sides) {
    for (const { file, reason } of sides.unread) complain(`${file} ${reason}`);
    if (json) await print(jsonLine({ kind: "summary", rows: 0, compared: 0, refused: 0, unread: sides.unread }));
    return UNREADABLE;
  }
  const comparison = compareReadings(sides.before, sides.after, options);
  if (json) for (const line of jsonLines(comparison)) await print(jsonLine(line));
  else await printComparison(comparison);
  if (flags.table !== undefined) put(flags.table, tableOf(comparison), force);
  if (comparison.places.length === 0) {
    complain(NOTHING);
    return UNREADABLE;
  }
  return exitOf(linesOf(comparison).map(({ verdict }) => verdict));
}

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
    throw new Refusal(`--matters ${only} ${reasonOf(error)}`);
  }
}

function enginesIn(text: string | undefined): { before: string; after: string } | undefined {
  if (text === undefined) return undefined;
  const [before = "", after = "", ...more] = text.split(",").map((name) => name.trim());
  if (before === "" || after === "" || more.length > 0) throw new Refusal(`--engines ${text} does not name two engines: wanted is A,B`);
  return { before, after };
}

/** What one workbook may take to be calculated. */
const MEGABYTES = 4096;

export interface Unread {
  file: string;
  reason: string;
}

/** Both sides, or why one of them, or both, could not be read. Half a file is not compared: what is missing would look taken out. */
export async function readSides(
  files: readonly string[],
  decimal: DecimalSign,
  uncertainty: TypedSizes | undefined,
  encoding?: string,
): Promise<{ before: ReadingSet; after: ReadingSet | undefined } | { unread: Unread[] }> {
  if (files.length > 1 && files.every((file) => file === STANDARD_INPUT)) throw new Refusal("only one of the two can come from standard input");
  const engine = new GridThread(MEGABYTES);
  try {
    const sides: (ReadingSet | Unread)[] = [];
    for (const file of files) sides.push(await readSide(file, { decimal, encoding, uncertainty }, engine));
    const unread = sides.filter((side): side is Unread => "reason" in side);
    if (unread.length > 0) return { unread };
    const [before, after] = sides as ReadingSet[];
    return { before: before!, after };
  } finally {
    await engine.close();
  }
}

async function readSide(path: string, options: CsvReadingOptions, engine: GridThread): Promise<ReadingSet | Unread> {
  const file = nameOf(path);
  const kind = kindOf(path);
  try {
    if (kind === ".csv") {
      const input = path === STANDARD_INPUT ? streams().stdin : createReadStream(path);
      const { unread, ...set } = await readingsOfCsv(input, { name: path === STANDARD_INPUT ? file : basename(path), ...options });
      return unread === undefined ? set : { file, reason: unread };
    }
    if (kind !== ".xlsx") return { file, reason: unknownKind(kind) };
    const answer = await engine.ask({ kind: "readings", name: basename(path), bytes: await workbookBytes(path), uncertainty: options.uncertainty });
    return "fault" in answer ? { file, reason: answer.fault } : answer.set;
  } catch (error) {
    return { file, reason: reasonOf(error) };
  }
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
  await print(plain(between));
  await print(`  ${headline}`);
  const lines = linesOf(comparison);
  for (const [verdict, title] of LISTS)
    await printTable(
      title,
      lines.filter((line) => line.verdict === verdict).map((line) => lineRow(line, comparison)),
    );
  await printTable("wear", wearLines(wear));
  await printTable("not compared", refused.map(refusedRow));
  for (const note of notes) await print(`  note: ${plain(note)}`);
  await print(`  ${rowsText(rows, places.length, "compared", (count) => count.toLocaleString("en"))}; ${verdicts}`);
}

async function printTable(title: string, rows: readonly (readonly string[])[]): Promise<void> {
  if (rows.length === 0) return;
  await print(`  ${title}`);
  for (const line of aligned(
    rows.map((row) => row.map(plain)),
    WIDEST,
  ))
    await print(`    ${line}`);
}

type Line = ReturnType<typeof linesOf>[number];

function lineRow(line: Line, comparison: Comparison): string[] {
  if ("engines" in line) return [line.label, changesText(line), line.says];
  return [line.label, "places" in line ? "" : sizesText(line, comparison), line.says];
}

const refusedRow = ({ label, before, after, why }: RefusedRow): string[] => [
  label,
  [before, after].map((side) => side.map(({ value }) => value ?? "?").join(", ") || "none").join(" → "),
  why,
];
