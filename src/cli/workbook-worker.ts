import { createHash } from "node:crypto";
import type { WorkbookAnswer, WorkbookTask } from "./checked.ts";
import { whyUnread, workbookBytes } from "./read-file.ts";

// The engine's remarks on its own running must not get between our lines.
for (const way of ["log", "info", "warn", "error", "debug"] as const) console[way] = () => {};

/** One workbook from its file to its findings, in a thread of the pool. */
export default async function checkBook(task: WorkbookTask): Promise<WorkbookAnswer> {
  let bytes: Uint8Array;
  try {
    bytes = await workbookBytes(task.path);
  } catch (error) {
    return { fault: whyUnread(error) };
  }
  const hash = createHash("sha256").update(bytes).digest("hex");
  if (hash === task.known) return { unchanged: true };
  // The engine takes longer to load than a workbook to be checked: where all of them are unchanged it is not wanted.
  const { checkBytes } = await import("./check-bytes.ts");
  return checkBytes(bytes, hash, task);
}
