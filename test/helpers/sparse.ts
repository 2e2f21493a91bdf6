import { closeSync, ftruncateSync, mkdtempSync, openSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A file of so many bytes in a folder of its own. Nothing is written, so it takes no room on the disk. */
export function sparseFile(name: string, bytes: number, folder = mkdtempSync(join(tmpdir(), "sparse-"))): string {
  const path = join(folder, name);
  const file = openSync(path, "w");
  ftruncateSync(file, bytes);
  closeSync(file);
  return path;
}
