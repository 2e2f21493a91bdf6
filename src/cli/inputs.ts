import { existsSync, statSync } from "node:fs";
import { stat } from "node:fs/promises";
import { extname } from "node:path";
import { glob, isDynamicPattern } from "tinyglobby";
import type { DecimalSign } from "../check/csv/check-csv.ts";
import { isEncoding } from "../check/csv/encoding.ts";
import { STANDARD_INPUT } from "./checked.ts";
import { Refusal } from "./exit-codes.ts";

/**
 * File names and patterns as typed, as file names: in the order of the arguments, each pattern's files
 * in the order of their paths, each file once. A pattern is one only where no file has its very name.
 */
export async function filesOf(patterns: readonly string[]): Promise<string[]> {
  const files = new Set<string>();
  for (const pattern of patterns) {
    if (pattern === STANDARD_INPUT || existsSync(pattern) || !isDynamicPattern(pattern)) {
      files.add(pattern);
      continue;
    }
    const found = await glob(slashed(pattern), { onlyFiles: true, expandDirectories: false, dot: false, ignore: ["**/~$*"] });
    if (found.length === 0) throw new Refusal(`${pattern} fits no file`);
    for (const file of found.sort(byCode)) files.add(file);
  }
  return [...files];
}

/** What file a path leads to, by whatever names and links and however they are spelt; nothing where none is. */
export function fileIdentity(path: string): string | undefined {
  try {
    const { dev, ino } = statSync(path, { bigint: true });
    return `${dev}:${ino}`;
  } catch {
    return undefined;
  }
}

/** What is checked is never written to. `use` says what the file was named for. */
export function refuseAsInput(out: string | undefined, inputs: readonly string[], use: string): void {
  if (out === undefined) return;
  const own = fileIdentity(out);
  const input = own && inputs.find((file) => file !== STANDARD_INPUT && fileIdentity(file) === own);
  if (input) throw new Refusal(`${out} is one of the files to be checked${input === out ? "" : ` (${input})`}: give another name for ${use}`);
}

/** On Windows `\` stands between folders, in a pattern it would take the meaning from the next sign. */
const slashed = (pattern: string): string => (process.platform === "win32" ? pattern.replaceAll("\\", "/") : pattern);

/** The same on every machine, whatever its language. */
const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const DATE = /^\d{4}-\d{2}-\d{2}(?:T\d{2}:\d{2}(?::\d{2})?(?:Z|[+-]\d{2}:\d{2})?)?$/;

/** A date as typed: a day begins at midnight here. */
export function timeOf(text: string): number {
  const time = DATE.test(text) ? new Date(text.includes("T") ? text : `${text}T00:00`).getTime() : Number.NaN;
  if (Number.isNaN(time)) throw new Refusal(`${text} is no date: it must be one such as 2026-01-31 or 2026-01-31T18:00`);
  return time;
}

/** Files that were changed at that time or later, by what the file system says. What cannot be asked stays, to be told of. */
export async function changedSince(files: readonly string[], time: number): Promise<string[]> {
  const keep = await Promise.all(files.map(async (file) => file === STANDARD_INPUT || ((await stat(file).catch(() => undefined))?.mtimeMs ?? time) >= time));
  return files.filter((_, i) => keep[i]);
}

/**
 * How a file is read, by its ending. A workbook with macros (.xlsm) is one like any other: they are never
 * run, and its marked copy keeps them byte for byte. One of LibreOffice (.ods) is told by its content.
 */
export function kindOf(file: string): string {
  if (file === STANDARD_INPUT) return ".csv";
  const ending = extname(file).toLowerCase();
  return ending === ".xlsm" || ending === ".ods" ? ".xlsx" : ending;
}

/** The decimal sign of a locale such as `de` or `en-GB`. */
export function decimalSignOf(locale: string): DecimalSign {
  let sign: string | undefined;
  try {
    sign = new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === "decimal")?.value;
  } catch {
    throw new Refusal(`${locale} is not a locale: it must be a language tag such as de or en-GB`);
  }
  if (sign !== "." && sign !== ",") throw new Refusal(`the locale ${locale} writes a decimal sign that is neither a point nor a comma`);
  return sign;
}

/** A way of writing letters, as it was typed. */
export function encodingFrom(name: string | undefined): string | undefined {
  if (name !== undefined && !isEncoding(name))
    throw new Refusal(`--encoding ${name} is not known: it must be a name such as windows-1250, iso-8859-2 or utf-16le`);
  return name;
}
