import { basename, extname } from "node:path";
import { counted } from "../core/number-text.ts";
import { writeOds } from "../ods/write.ts";
import { buildSheetSpec } from "../setup/build-sheet.ts";
import { readChoices } from "../setup/choices.ts";
import { withLimits } from "../setup/limits-book.ts";
import type { BuildSheet } from "../setup/model.ts";
import { LARGEST_SEED, MOST_ENGINES, USE_UNITS, type UseUnit } from "../setup/trial/choices.ts";
import { writeXlsx } from "../xlsx/write/workbook.ts";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { limitsModel } from "./limits-model.ts";
import { complain, print, printable } from "./output.ts";
import { put } from "./safe-file.ts";

/** As typed: counts are still text. */
export interface NewOptions {
  cylinders?: string;
  heights?: string;
  axes?: string;
  valves?: string;
  unit?: string;
  secondReadings?: boolean;
  without?: string;
  trial?: boolean;
  engines?: string;
  seed?: string;
  use?: string;
  limits?: string;
  model?: string;
  force?: boolean;
}

const WRITERS: Readonly<Record<string, (book: BuildSheet) => Uint8Array>> = { ".xlsx": (book) => writeXlsx(book), ".ods": writeOds };

/** `crosshatch new OUT.xlsx`, or `OUT.ods`: an empty build sheet for one engine. Nothing is overwritten without `--force`. */
export async function newBuildSheet(out: string, { force = false, trial = false, engines, seed, use, limits, model, ...given }: NewOptions): Promise<number> {
  if (!trial && [engines, seed, use].some((one) => one !== undefined)) throw new Refusal("--engines, --seed and --use are for --trial");
  if (limits !== undefined && trial) throw new Refusal("--limits is for a build sheet: type the limits of a trial into its workbook");
  if (model !== undefined && limits === undefined) throw new Refusal("--model names a sheet of the limits book: give it with --limits");
  const read = readChoices(given);
  if ("sentences" in read) throw new Refusal(read.sentences.join("; "));
  const write = WRITERS[extname(out).toLowerCase()];
  if (!write) throw new Refusal(`${out} ends neither with .xlsx nor with .ods, which are what is written`);
  if (trial) {
    const { trialWorkbookSpec } = await import("../setup/trial/trial-workbook.ts");
    const counts = { engines: whole("engines", engines, 1, MOST_ENGINES), seed: whole("seed", seed, 1, LARGEST_SEED) };
    const book = trialWorkbookSpec({ ...read.choices, ...counts, use: useIn(use) });
    put(out, write(book), force);
    await print(
      `${printable(out)}: an empty workbook for a trial, ${book.sheets.map(({ name }) => name).join(", ")}. Type limits and what matters first; crosshatch trial reads it.`,
    );
    return ALL_WELL;
  }
  const empty = buildSheetSpec(read.choices);
  const filled = limits === undefined ? undefined : withLimits(empty, await limitsModel(limits, model), basename(limits));
  const { sheets } = empty;
  put(out, write(filled?.book ?? empty), force);
  await print(`${printable(out)}: an empty build sheet, ${sheets.map(({ name }) => name).join(", ")}. ${limitsSentence(filled?.copied)}`);
  for (const note of filled?.notes ?? []) complain(`${basename(limits!)}: ${note}`);
  return ALL_WELL;
}

const limitsSentence = (copied: number | undefined): string =>
  copied === undefined
    ? "Type the limits first, from the maker's service manual."
    : `${counted(copied, "limit was", "limits were")} copied from the limits book: look them over against the maker's service manual, and type the others.`;

function useIn(text = "hours"): UseUnit {
  const use = USE_UNITS.find((unit) => unit === text.trim().toLowerCase());
  if (use === undefined) throw new Refusal(`--use ${text} is not known: it must be ${USE_UNITS.join(", ")}`);
  return use;
}

function whole(name: string, text: string | undefined, least: number, most: number): number {
  if (text === undefined) return least;
  const value = Number(text);
  if (!/^\d+$/.test(text.trim()) || value < least || value > most) throw new Refusal(`--${name} ${text} is no whole number from ${least} to ${most}`);
  return value;
}
