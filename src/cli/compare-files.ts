import { createReadStream } from "node:fs";
import { basename } from "node:path";
import type { DecimalSign } from "../check/csv/fields.ts";
import { readingsOfCsv } from "../compare/from-csv.ts";
import type { ReadingSet } from "../compare/readings.ts";
import { nameOf, STANDARD_INPUT } from "./checked.ts";
import { EngineThread } from "./engine-thread.ts";
import { Refusal } from "./exit-codes.ts";
import { kindOf } from "./kind.ts";
import { streams } from "./streams.ts";
import { reasonOf, unknownKind, workbookBytes } from "./unread.ts";

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
  const engine = new EngineThread(MEGABYTES);
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

async function readSide(path: string, decimal: DecimalSign, uncertainty: number | undefined, engine: EngineThread): Promise<ReadingSet | Unread> {
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
