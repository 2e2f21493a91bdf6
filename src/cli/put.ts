import { randomUUID } from "node:crypto";
import { open, rename, stat, unlink } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { Refusal } from "./exit-codes.ts";

/** What is overwritten is replaced whole, once the new file is complete; what is not to be overwritten is never opened. */
export async function put(out: string, content: Uint8Array | string, force: boolean): Promise<void> {
  await refuseTarget(out, force);
  const path = force ? join(dirname(out), `.${basename(out)}.${randomUUID()}`) : out;
  try {
    const file = await open(path, "wx");
    try {
      await file.writeFile(content);
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

/** Says before any work is done why a file could not be written in the end. */
export async function refuseTarget(out: string, force: boolean): Promise<void> {
  const there = await stat(out).catch(() => undefined);
  if (there?.isDirectory()) throw new Refusal(`${out} is a folder: name the file to be written in it`);
  if (there && !force) throw new Refusal(thereAlready(out));
  if (!there && !(await stat(dirname(out)).catch(() => undefined))?.isDirectory()) throw new Refusal(noFolder(out));
}

const thereAlready = (out: string): string => `${out} is already there and is left as it is: give another name, or --force to overwrite it`;

const noFolder = (out: string): string => `${out} cannot be written: there is no folder ${dirname(out)}`;

/** Why the system would not have the file written. */
export function refusalOf(out: string, error: NodeJS.ErrnoException): Error {
  switch (error.code) {
    case "EEXIST":
      return new Refusal(thereAlready(out));
    case "ENOENT":
    case "ENOTDIR":
      return new Refusal(noFolder(out));
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
