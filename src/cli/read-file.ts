import { readFile, stat } from "node:fs/promises";
import { mustFit, UnreadableFile } from "../xlsx/file-limits.ts";

/** What to say of a file with an ending that is not read. */
export const unknownKind = (kind: string): string => `is neither .xlsx, .ods nor .csv${kind === ".xls" || kind === ".xlsb" ? ": save it as .xlsx" : ""}`;

/** The bytes of a workbook. One that is too large, or that is none because it never ends, is refused before it fills the memory. */
export async function workbookBytes(path: string): Promise<Buffer> {
  const there = await stat(path);
  if (!there.isFile()) throw new UnreadableFile("is no ordinary file");
  mustFit(there.size);
  return readFile(path);
}

/** Why the file could not be read. */
export function whyUnread(error: unknown): string {
  if (error instanceof UnreadableFile) return error.reason;
  const { code } = error as NodeJS.ErrnoException;
  switch (code) {
    case "ENOENT":
      return "is not there";
    case "EACCES":
    case "EPERM":
      return "may not be read: its permissions forbid it";
    default:
      if (code) return `cannot be read (${code})`;
      throw error;
  }
}
