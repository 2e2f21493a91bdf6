import { existsSync } from "node:fs";
import { stat } from "node:fs/promises";
import { type CheckedFile, type CheckFilesOptions, STANDARD_INPUT, unchanged, unread } from "./checked.ts";
import { kindOf } from "./inputs.ts";
import { WorkbookPool } from "./pool.ts";
import { Progress } from "./progress.ts";
import { unknownKind, whyUnread } from "./read-file.ts";

const KEEP_LAYOUT = "open it on the bench or in Excel, have a layout proposed under Layout and keep it, and they are checked";
const NOTHING_TO_CHECK = "holds nothing to check: no formula that judges or measures, and no table headed value with lower or upper";

/**
 * Checks the inputs and gives what came of each in their order: workbooks on all processors, some ahead
 * of their turn, readings as they stream by. One that cannot be read keeps none of the others from being checked.
 */
export async function* checkFiles(files: readonly string[], options: CheckFilesOptions): AsyncGenerator<CheckedFile> {
  const sizes = await Promise.all(files.map(sizeOf));
  const total = sizes.reduce<number>((sum, size) => sum + (typeof size === "number" ? size : 0), 0);
  const work: Work = {
    ...{ options, progress: new Progress(total, files.length) },
    pool: new WorkbookPool(files.filter((file) => kindOf(file) === ".xlsx").length, options.memory, options.threads),
  };
  // Enough to keep the threads busy, and few enough to be kept until their turn comes.
  const ahead = 4 * work.pool.threads;
  const started = new Map<number, Promise<CheckedFile>>();
  let next = 0;
  try {
    for (const [i, file] of files.entries()) {
      for (; next < Math.min(files.length, i + ahead); next++) {
        const size = sizes[next]!;
        if (typeof size === "number" && kindOf(files[next]!) === ".xlsx") started.set(next, checkBook(files[next]!, size, work));
      }
      const size = sizes[i]!;
      const checked = typeof size === "string" ? unread(file, size) : await (started.get(i) ?? checkOther(file, work));
      started.delete(i);
      work.progress.ended();
      work.progress.hide();
      yield withReason(checked);
    }
  } finally {
    work.progress.hide();
    await work.pool.close();
  }
}

interface Work {
  options: CheckFilesOptions;
  progress: Progress;
  pool: WorkbookPool;
}

function withReason(checked: CheckedFile): CheckedFile {
  const { findings, rowsIn, inputs } = checked.result;
  if (checked.unread || checked.skipped) return checked;
  const offer = checked.unmapped && `${checked.unmapped}: ${KEEP_LAYOUT}`;
  if (findings.length + rowsIn + inputs === 0) return { ...checked, unread: offer ? `${NOTHING_TO_CHECK}; ${offer}` : NOTHING_TO_CHECK };
  return offer ? { ...checked, notes: [...checked.notes, offer] } : checked;
}

/** How many bytes there are to read, or why there is nothing to read. */
async function sizeOf(file: string): Promise<number | string> {
  if (file === STANDARD_INPUT) return 0;
  try {
    const found = await stat(file);
    return found.isDirectory() ? "is a folder: name the files in it" : found.size;
  } catch (error) {
    return whyUnread(error);
  }
}

async function checkBook(file: string, size: number, { options: { ledger, copies, forReport = false, work }, pool, progress }: Work): Promise<CheckedFile> {
  const entry = ledger?.entryOf(file);
  const copy = copies?.get(file);
  // One that lacks its copy is checked again for it.
  const answer = await pool.check({
    path: file,
    known: copy && !existsSync(copy.to) ? undefined : entry?.hash,
    copy,
    work,
    page: forReport,
    facts: forReport || ledger !== undefined,
  });
  progress.add(size);
  if ("unchanged" in answer) return unchanged(file, entry!);
  return "fault" in answer ? { ...unread(file, answer.fault), ...(answer.hash ? { hash: answer.hash } : {}) } : { file, ...answer };
}

async function checkOther(file: string, work: Work): Promise<CheckedFile> {
  if (kindOf(file) !== ".csv") return unread(file, unknownKind(kindOf(file)));
  try {
    // Its reader judges here; workbooks are judged in their threads, and start sooner without it.
    const { checkReadings } = await import("./check-readings.ts");
    return await checkReadings(file, work.options, (bytes) => work.progress.add(bytes));
  } catch (error) {
    return unread(file, whyUnread(error));
  }
}
