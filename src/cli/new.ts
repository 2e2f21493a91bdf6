import { randomUUID } from "node:crypto";
import { open, rename, stat, unlink } from "node:fs/promises";
import { basename, dirname, extname, join } from "node:path";
import { readChoices } from "../buildsheet/setup/choices.ts";
import { describeBuildSheet } from "../buildsheet/setup/describe.ts";
import { writeXlsx } from "../buildsheet/setup/xlsx/write.ts";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { print } from "./output.ts";
import { plain } from "./text.ts";

/** As typed: counts are still text. */
export interface NewOptions {
  cylinders?: string;
  heights?: string;
  axes?: string;
  valves?: string;
  unit?: string;
  secondReadings?: boolean;
  force?: boolean;
}

/** `crosshatch new OUT.xlsx`: an empty build sheet for one engine. Nothing is overwritten without `--force`. */
export async function newBuildSheet(out: string, { force = false, ...given }: NewOptions): Promise<number> {
  const read = readChoices(given);
  if ("sentences" in read) throw new Refusal(read.sentences.join("; "));
  if (extname(out).toLowerCase() !== ".xlsx") throw new Refusal(`${out} does not end with .xlsx, which is what is written`);
  const book = describeBuildSheet(read.choices);
  await put(out, writeXlsx(book), force);
  await print(
    `${plain(out)}: an empty build sheet, ${book.sheets.map(({ name }) => name).join(", ")}. Type the limits first, from the maker's service manual.`,
  );
  return ALL_WELL;
}

/** What is overwritten is replaced whole, once the new file is complete; what is not to be overwritten is never opened. */
async function put(out: string, bytes: Uint8Array, force: boolean): Promise<void> {
  const there = await stat(out).catch(() => undefined);
  if (there?.isDirectory()) throw new Refusal(`${out} is a folder: name the file to be written in it`);
  const path = force ? join(dirname(out), `.${basename(out)}.${randomUUID()}`) : out;
  try {
    const file = await open(path, "wx");
    try {
      await file.writeFile(bytes);
    } catch (error) {
      await unlink(path).catch(() => {});
      throw error;
    } finally {
      await file.close();
    }
    if (force) await rename(path, out);
  } catch (error) {
    throw refusalOf(out, error as NodeJS.ErrnoException);
  }
}

function refusalOf(out: string, error: NodeJS.ErrnoException): Error {
  switch (error.code) {
    case "EEXIST":
      return new Refusal(`${out} is already there and is left as it is: give another name, or --force to overwrite it`);
    case "ENOENT":
    case "ENOTDIR":
      return new Refusal(`${out} cannot be written: there is no folder ${dirname(out)}`);
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return new Refusal(`${out} may not be written: its permissions forbid it`);
    case "ENOSPC":
      return new Refusal(`${out} cannot be written: the disk is full`);
    default:
      return error.code ? new Refusal(`${out} cannot be written (${error.code})`) : error;
  }
}
