import { createReadStream } from "node:fs";
import { basename } from "node:path";
import { type CsvReadingOptions, readingsOfCsv } from "../compare/from-csv.ts";
import type { ReadingSet } from "../compare/readings.ts";
import { nameOf, STANDARD_INPUT } from "./checked.ts";
import { Refusal } from "./exit-codes.ts";
import { GridThread } from "./grid-thread.ts";
import { kindOf } from "./inputs.ts";
import { unknownKind, whyUnread, workbookBytes } from "./read-file.ts";
import { streams } from "./streams.ts";
import { MEGABYTES } from "./workbook-limits.ts";

export interface SideOptions extends CsvReadingOptions {
  /** What one workbook may take: steps, megabytes. */
  work?: number | undefined;
  memory?: number | undefined;
}

export interface Unread {
  file: string;
  reason: string;
}

/** All files, or why some could not be read. Half a file is not compared: what is missing would look taken out. */
export async function readSets(files: readonly string[], options: SideOptions): Promise<{ sets: ReadingSet[] } | { unread: Unread[] }> {
  if (files.filter((file) => file === STANDARD_INPUT).length > 1) throw new Refusal("only one of the two can come from standard input");
  const engine = new GridThread(options.memory ?? MEGABYTES);
  try {
    const sides: (ReadingSet | Unread)[] = [];
    for (const file of files) sides.push(await readSide(file, options, engine));
    const unread = sides.filter((side): side is Unread => "reason" in side);
    if (unread.length > 0) return { unread };
    return { sets: sides as ReadingSet[] };
  } finally {
    await engine.close();
  }
}

async function readSide(path: string, options: SideOptions, engine: GridThread): Promise<ReadingSet | Unread> {
  const file = nameOf(path);
  const kind = kindOf(path);
  try {
    if (kind === ".csv") {
      const input = path === STANDARD_INPUT ? streams().stdin : createReadStream(path);
      const { unread, ...set } = await readingsOfCsv(input, { name: path === STANDARD_INPUT ? file : basename(path), ...options });
      return unread === undefined ? set : { file, reason: unread };
    }
    if (kind !== ".xlsx") return { file, reason: unknownKind(kind) };
    const { uncertainty, work } = options;
    const answer = await engine.ask({ kind: "readings", name: basename(path), bytes: await workbookBytes(path), uncertainty, work });
    return "fault" in answer ? { file, reason: answer.fault } : answer.set;
  } catch (error) {
    return { file, reason: whyUnread(error) };
  }
}
