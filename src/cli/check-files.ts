import { createReadStream } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import { basename, extname } from "node:path";
import { checkCsv, type DecimalSign } from "../buildsheet/csv.ts";
import type { CheckResult } from "../buildsheet/finding.ts";
import { EngineThread } from "./engine-thread.ts";
import { Progress } from "./progress.ts";

/** What came of one input. `unread` says why it, or its rest, could not be read. */
export interface Checked {
  file: string;
  result: CheckResult;
  notes: readonly string[];
  unread?: string;
}

export const STANDARD_INPUT = "-";

/** What one workbook may take to be calculated. */
const MEGABYTES = 4096;

const NOTHING: CheckResult = { findings: [], rowsIn: 0, checked: 0, refused: 0, inputs: 0 };
const NOTHING_TO_CHECK = "holds nothing to check: no formula that judges or measures, and no table headed value with lower or upper";

const unread = (file: string, why: string): Checked => ({ file, result: NOTHING, notes: [], unread: why });

/** Checks the inputs one after the other; one that cannot be read keeps none of the others from being checked. */
export async function* checkFiles(files: readonly string[], decimal: DecimalSign): AsyncGenerator<Checked> {
  const sizes = await Promise.all(files.map(sizeOf));
  const progress = new Progress(sizes.reduce<number>((sum, size) => sum + (typeof size === "number" ? size : 0), 0));
  const engine = new EngineThread(MEGABYTES);
  try {
    for (const [i, file] of files.entries()) {
      const size = sizes[i]!;
      const checked = typeof size === "string" ? unread(file, size) : await checkFile(file, decimal, engine, progress);
      const { findings, rowsIn, inputs } = checked.result;
      progress.hide();
      yield !checked.unread && findings.length + rowsIn + inputs === 0 ? { ...checked, unread: NOTHING_TO_CHECK } : checked;
    }
  } finally {
    progress.hide();
    await engine.close();
  }
}

/** How many bytes there are to read, or why there is nothing to read. */
async function sizeOf(file: string): Promise<number | string> {
  if (file === STANDARD_INPUT) return 0;
  try {
    const found = await stat(file);
    return found.isDirectory() ? "is a folder: name the files in it" : found.size;
  } catch (error) {
    return reasonOf(error);
  }
}

async function checkFile(file: string, decimal: DecimalSign, engine: EngineThread, progress: Progress): Promise<Checked> {
  const kind = file === STANDARD_INPUT ? ".csv" : extname(file).toLowerCase();
  try {
    if (kind === ".csv") return await checkReadings(file, decimal, progress);
    if (kind === ".xlsx") return await checkBook(file, engine, progress);
  } catch (error) {
    return unread(file, reasonOf(error));
  }
  return unread(file, unknownKind(kind));
}

/** What to say of a file with an ending that is not read. */
export const unknownKind = (kind: string): string =>
  `is neither .xlsx nor .csv${kind === ".xls" || kind === ".xlsm" || kind === ".xlsb" || kind === ".ods" ? ": save it as .xlsx" : ""}`;

async function checkReadings(file: string, decimal: DecimalSign, progress: Progress): Promise<Checked> {
  const input = file === STANDARD_INPUT ? process.stdin : createReadStream(file, { highWaterMark: 1 << 18 });
  let before = 0;
  const told = (bytes: number): void => {
    progress.add(bytes - before);
    before = bytes;
  };
  const { unread: why, ...result } = await checkCsv(input, { name: basename(file), decimal, progress: told });
  return { file, result, notes: [], ...(why ? { unread: why } : {}) };
}

async function checkBook(file: string, engine: EngineThread, progress: Progress): Promise<Checked> {
  const bytes = await readFile(file);
  const answer = await engine.ask({ kind: "workbook", name: basename(file), bytes });
  progress.add(bytes.length);
  return "fault" in answer ? unread(file, answer.fault) : { file, ...answer };
}

/** Why the system would not hand the file over. */
export function reasonOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case "ENOENT":
      return "is not there";
    case "EACCES":
    case "EPERM":
      return "may not be read: its permissions forbid it";
    case "ERR_FS_FILE_TOO_LARGE":
      return "is too large to be read";
    default:
      if (code) return `cannot be read (${code})`;
      throw new Error(message, { cause: error });
  }
}
