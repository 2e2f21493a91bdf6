import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import { checkWorkbook } from "../../buildsheet/check.ts";
import type { CheckResult } from "../../buildsheet/finding.ts";
import { keptLayout } from "../../buildsheet/layout/mapping.ts";
import { openWorkbook, UnreadableFile } from "../../sheet/file.ts";
import { type Copied, type CopyTask, writeCopy } from "../marked-copy.ts";
import { reasonOf } from "../unread.ts";

export interface BookTask {
  path: string;
  /** What its content came to when it was checked before; it is not checked again while that is so. */
  known?: string | undefined;
  /** A marked copy to be written. */
  copy?: CopyTask | undefined;
}

export type BookAnswer = { unchanged: true } | { result: CheckResult; notes: string[]; hash: string; copy?: Copied } | { fault: string };

// The engine's remarks on its own running must not get between our lines.
for (const way of ["log", "info", "warn", "error", "debug"] as const) console[way] = () => {};

/** One workbook from its file to its findings, in a thread of the pool. */
export default async function checkBook({ path, known, copy }: BookTask): Promise<BookAnswer> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path);
  } catch (error) {
    return { fault: reasonOf(error) };
  }
  const hash = createHash("sha256").update(bytes).digest("hex");
  if (hash === known) return { unchanged: true };
  try {
    const host = await openWorkbook(bytes, basename(path));
    const { mapping, notes } = await keptLayout(host);
    const checked = { result: checkWorkbook(await host.read(), mapping), notes: [...host.notes(), ...notes] };
    return { ...checked, hash, ...(copy ? { copy: writeCopy(bytes, host.contents(), checked, copy) } : {}) };
  } catch (error) {
    if (error instanceof UnreadableFile) return { fault: error.reason };
    // Whatever the input made of the engine must not end the run.
    return { fault: `led to a fault in Crosshatch: ${error instanceof Error ? error.message : error}` };
  }
}
