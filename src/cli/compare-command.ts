import { createReadStream } from "node:fs";
import { basename } from "node:path";
import type { DecimalSign } from "../check/csv/fields.ts";
import { type CharacteristicChange, type Comparison, compareReadings, type GroupChange, isReal, type RefusedRow } from "../compare/compare.ts";
import { readingsOfCsv } from "../compare/from-csv.ts";
import type { Reading, ReadingSet } from "../compare/readings.ts";
import { rowsText } from "../core/number-text.ts";
import { placeName } from "../workbook/address.ts";
import { nameOf, STANDARD_INPUT } from "./checked.ts";
import { ALL_WELL, FINDINGS, Refusal, UNREADABLE } from "./exit-codes.ts";
import { GridThread } from "./grid-thread.ts";
import { decimalSignOf, kindOf } from "./inputs.ts";
import { aligned, complain, counted, jsonLine, plain, print } from "./output.ts";
import { reasonOf, unknownKind, workbookBytes } from "./read-file.ts";
import { streams } from "./streams.ts";

export interface CompareFlags {
  json?: boolean;
  locale?: string;
  hours?: string;
  engines?: string;
  uncertainty?: string;
}

const NOTHING = "nothing could be compared: no reading of the one is a reading of the other that can be judged";

/** `crosshatch compare BEFORE AFTER`: every change with what the gauge explains of it, the real ones first. */
export async function compare(before: string, after: string, { json = false, locale = "en", ...flags }: CompareFlags): Promise<number> {
  const options = { hours: positive("hours", flags.hours), engines: enginesIn(flags.engines) };
  const sides = await readSides([before, after], decimalSignOf(locale), positive("uncertainty", flags.uncertainty));
  if ("unread" in sides) {
    for (const { file, reason } of sides.unread) complain(`${file} ${reason}`);
    if (json) await print(jsonLine({ ...counts(), unread: sides.unread }));
    return UNREADABLE;
  }
  const comparison = compareReadings(sides.before, sides.after, options);
  if (json) await printLines(comparison);
  else await printComparison(comparison);
  if (comparison.changes.length === 0) {
    complain(NOTHING);
    return UNREADABLE;
  }
  return comparison.real > 0 ? FINDINGS : ALL_WELL;
}

/** A number above 0 as it was typed after an option. */
function positive(name: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() === "" || !Number.isFinite(value) || value <= 0) throw new Refusal(`--${name} ${text} is no number above 0`);
  return value;
}

function enginesIn(text: string | undefined): { before: string; after: string } | undefined {
  if (text === undefined) return undefined;
  const [before = "", after = "", ...more] = text.split(",").map((name) => name.trim());
  if (before === "" || after === "" || more.length > 0) throw new Refusal(`--engines ${text} does not name two engines: wanted is A,B`);
  return { before, after };
}

async function printLines(comparison: Comparison): Promise<void> {
  for (const change of comparison.changes) await print(jsonLine(changeLine(change)));
  for (const { label, before, after, why } of comparison.refused) {
    await print(jsonLine({ kind: "refused", label, before: before.map(placed), after: after.map(placed), why }));
  }
  for (const group of comparison.groups) await print(jsonLine({ kind: "group", ...group }));
  await print(jsonLine({ ...counts(comparison), unread: [] }));
}

function changeLine({ before, after, ...change }: CharacteristicChange): object {
  const { label, verdict, engine, cylinder, characteristic, position, unit = null, ...rest } = change;
  const readings = { before: before.value, after: after.value };
  return {
    kind: "change",
    verdict,
    label,
    engine,
    cylinder,
    characteristic,
    position,
    unit,
    ...readings,
    ...rest,
    at: { before: whereOf(before), after: whereOf(after) },
  };
}

const placed = (reading: Reading): object => ({ value: reading.value, at: whereOf(reading) });
const whereOf = ({ line, cell }: Reading): string => (line === undefined ? placeName(cell) : `line ${line}`);

/** The closing line; of files that could not be read there is nothing to count. */
function counts(comparison?: Comparison): object {
  const { between = "", rowsIn = 0, rowsCompared = 0, rowsRefused = 0, changes = [], real = 0, groups = [], notes = [] } = comparison ?? {};
  return { between, rowsIn, compared: rowsCompared, refused: rowsRefused, changes: changes.length, real, groups: groups.length, notes };
}

/** What one workbook may take to be calculated. */
const MEGABYTES = 4096;

export interface Unread {
  file: string;
  reason: string;
}

/** Both sides, or why one of them, or both, could not be read. Half a file is not compared: what is missing would look taken out. */
export async function readSides(
  files: readonly [string, string],
  decimal: DecimalSign,
  uncertainty: number | undefined,
): Promise<{ before: ReadingSet; after: ReadingSet } | { unread: Unread[] }> {
  if (files.every((file) => file === STANDARD_INPUT)) throw new Refusal("only one of the two can come from standard input");
  const engine = new GridThread(MEGABYTES);
  try {
    const sides: (ReadingSet | Unread)[] = [];
    for (const file of files) sides.push(await readSide(file, decimal, uncertainty, engine));
    const unread = sides.filter((side): side is Unread => "reason" in side);
    if (unread.length > 0) return { unread };
    const [before, after] = sides as [ReadingSet, ReadingSet];
    return { before, after };
  } finally {
    await engine.close();
  }
}

async function readSide(path: string, decimal: DecimalSign, uncertainty: number | undefined, engine: GridThread): Promise<ReadingSet | Unread> {
  const file = nameOf(path);
  const kind = kindOf(path);
  try {
    if (kind === ".csv") {
      const input = path === STANDARD_INPUT ? streams().stdin : createReadStream(path);
      const { unread, ...set } = await readingsOfCsv(input, { name: path === STANDARD_INPUT ? file : basename(path), decimal, uncertainty });
      return unread === undefined ? set : { file, reason: unread };
    }
    if (kind !== ".xlsx") return { file, reason: unknownKind(kind) };
    const answer = await engine.ask({ kind: "readings", name: basename(path), bytes: await workbookBytes(path), uncertainty });
    return "fault" in answer ? { file, reason: answer.fault } : answer.set;
  } catch (error) {
    return { file, reason: reasonOf(error) };
  }
}

/** Labels of four parts stand in one column. */
const WIDEST = 56;

/** The comparison as a person reads it: verdicts in words first, the real changes before the others. */
export async function printComparison(comparison: Comparison): Promise<void> {
  const { between, changes, refused, groups, notes } = comparison;
  await print(plain(between));
  await printTable("really changed", changes.filter(isReal).map(changeRow));
  await printTable("what the gauge may explain", changes.filter((change) => !isReal(change)).map(changeRow));
  await printTable("not compared", refused.map(refusedRow));
  await printTable("wear", wearRows(changes));
  await printTable("cylinders taken together", groups.map(groupRow));
  for (const note of notes) await print(`  note: ${plain(note)}`);
  await print(`  ${sums(comparison)}`);
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

const changeRow = ({ verdict, label, before, after, unit, says }: CharacteristicChange): string[] => [
  verdict,
  label,
  `${before.value} → ${after.value}${unit ? ` ${unit}` : ""}`,
  says,
];

/** What comes to its limit soonest goes first. */
function wearRows(changes: readonly CharacteristicChange[]): string[][] {
  const worn = changes.flatMap(({ label, wear }) => (wear?.isReal ? [{ label, wear, soonest: wear.life?.earliest ?? Number.POSITIVE_INFINITY }] : []));
  return worn.sort((a, b) => (a.soonest === b.soonest ? 0 : a.soonest - b.soonest)).map(({ label, wear }) => [label, wear.says]);
}

const groupRow = ({ differs, engine, characteristic, says }: GroupChange): string[] => [
  differs ? "differ" : "not shown to differ",
  [engine, characteristic].filter(Boolean).join(", "),
  says,
];

const refusedRow = ({ label, before, after, why }: RefusedRow): string[] => [
  "refused",
  label,
  [before, after].map((side) => side.map(({ value }) => value ?? "?").join(", ") || "none").join(" → "),
  why,
];

function sums({ rowsIn, rowsCompared, changes, real }: Comparison): string {
  const rows = rowsText(rowsIn, rowsCompared, "compared", (count) => count.toLocaleString("en"));
  return `${rows}, ${counted(changes.length, "characteristic")}, ${real.toLocaleString("en")} really changed`;
}
