import { createHash, randomBytes } from "node:crypto";
import * as system from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { Refusal } from "./exit-codes.ts";

/** What writing asks of the file system; given from outside so that it can fail, or end the process, at any step. */
export type Files = Pick<
  typeof system,
  "openSync" | "writeSync" | "fsyncSync" | "closeSync" | "linkSync" | "renameSync" | "unlinkSync" | "chmodSync" | "statSync" | "realpathSync" | "readdirSync"
>;

/** Times that a file in use is asked for again: what looks through new files for viruses holds them for a moment. */
const TRIES = 4;
const PAUSE = 100;

/** Folders in which this thread has looked for what earlier runs left behind. */
const swept = new Set<string>();

/**
 * A file as it is being written. It comes into being under a name that tells that it is unfinished, in
 * the same folder, and gets its own once all of it is on the disk: whatever ends the program, under
 * that name stands what was there before, or the new file whole. What is not to be overwritten is not.
 */
export class SafeFile {
  readonly #out: string;
  readonly #force: boolean;
  readonly #files: Files;
  /** The file itself where `out` is a link to it. */
  readonly #target: string;
  readonly #unfinished: string;
  readonly #file: number;

  constructor(out: string, force: boolean, files: Files = system) {
    this.#out = out;
    this.#force = force;
    this.#files = files;
    const there = refusedTarget(out, force, files);
    this.#target = there ? files.realpathSync(out) : out;
    const folder = dirname(this.#target);
    sweep(folder, files);
    this.#unfinished = join(folder, unfinishedName(randomBytes(6).toString("hex")));
    this.#file = this.#attempt(() => files.openSync(this.#unfinished, "wx"));
    if (there) this.#try(() => files.chmodSync(this.#unfinished, there.mode & 0o777));
  }

  write(content: Uint8Array | string): void {
    const bytes = typeof content === "string" ? Buffer.from(content) : content;
    this.#try(() => {
      for (let done = 0; done < bytes.length; ) done += this.#files.writeSync(this.#file, bytes, done);
    });
  }

  /** Puts the file in its place. */
  close(): void {
    this.#try(() => {
      this.#files.fsyncSync(this.#file);
      this.#files.closeSync(this.#file);
    });
    try {
      this.#attempt(() => (this.#force ? patiently(() => this.#files.renameSync(this.#unfinished, this.#target)) : this.#putBeside()));
    } catch (error) {
      this.#remove();
      throw error;
    }
    keepName(dirname(this.#target), this.#files);
  }

  /** The run came to nothing: what was there before stays. */
  abandon(): void {
    try {
      this.#files.closeSync(this.#file);
    } catch {
      // Closed already, or the disk that failed fails once more.
    }
    this.#remove();
  }

  /** A second name is given only where none is, which renaming would not ask about; some disks know no second names. */
  #putBeside(): void {
    try {
      this.#files.linkSync(this.#unfinished, this.#target);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === "EEXIST" || this.#files.statSync(this.#target, { throwIfNoEntry: false })) throw refusedAsThere(this.#out);
      patiently(() => this.#files.renameSync(this.#unfinished, this.#target));
      return;
    }
    this.#remove();
  }

  #remove(): void {
    try {
      this.#files.unlinkSync(this.#unfinished);
    } catch {
      // The next run removes it.
    }
  }

  /** Nothing is left behind where it fails. */
  #try(step: () => void): void {
    try {
      this.#attempt(step);
    } catch (error) {
      this.abandon();
      throw error;
    }
  }

  #attempt<T>(step: () => T): T {
    try {
      return step();
    } catch (error) {
      throw refusalOf(this.#out, error as NodeJS.ErrnoException);
    }
  }
}

/** Writes a whole file, or leaves what is there as it is and says why. */
export function put(out: string, content: Uint8Array | string, force: boolean): void {
  const file = new SafeFile(out, force);
  file.write(content);
  file.close();
}

/** What stands there already, unless it, or what is missing, keeps the file from being written. */
export function refusedTarget(out: string, force: boolean, files: Files = system): system.Stats | undefined {
  const there = look(out, files);
  if (there?.isDirectory()) throw new Refusal(`${out} is a folder: name the file to be written in it`);
  if (there && !there.isFile()) throw new Refusal(`${out} is no ordinary file: give another name`);
  if (there && !force) throw refusedAsThere(out);
  if (there && (there.mode & 0o222) === 0) throw new Refusal(`${out} is read-only and is left as it is: give another name, or make it writable`);
  if (!there && !look(dirname(out), files)?.isDirectory()) throw refusalOf(out, { code: "ENOENT" } as NodeJS.ErrnoException);
  return there;
}

function look(path: string, files: Files): system.Stats | undefined {
  try {
    return files.statSync(path);
  } catch {
    return undefined;
  }
}

const refusedAsThere = (out: string): Refusal => new Refusal(`${out} is already there and is left as it is: give another name, or --force to overwrite it`);

/** Why the system would not have the file written, and what to do about it. */
export function refusalOf(out: string, error: NodeJS.ErrnoException): Error {
  const { code, syscall } = error;
  // What Node itself objects to is a fault of ours.
  if (error instanceof Refusal || !code || code.startsWith("ERR_")) return error;
  if (code === "EBUSY" || code === "ETXTBSY" || (syscall === "rename" && (code === "EPERM" || code === "EACCES")))
    return new Refusal(`${out} cannot be replaced: another program has it open or it is protected from changes: close it there, or give another name`);
  const cannot = `${out} cannot be written`;
  switch (code) {
    case "EEXIST":
      return refusedAsThere(out);
    case "ENOENT":
    case "ENOTDIR":
      return new Refusal(`${cannot}: there is no folder ${dirname(out)}`);
    case "EACCES":
    case "EPERM":
      return new Refusal(`${out} may not be written: its permissions, or those of its folder, forbid it: give another folder, or have them changed`);
    case "EROFS":
      return new Refusal(`${cannot}: the disk may only be read: give a folder on another one`);
    case "ENOSPC":
    case "EDQUOT":
      return new Refusal(`${cannot}: the disk is full: make room on it, or give a folder on another one`);
    case "EFBIG":
      return new Refusal(`${cannot}: it is larger than this disk takes: give a folder on another one`);
    case "ENAMETOOLONG":
      return new Refusal(`${cannot}: the name ${basename(out)} is too long`);
    default:
      return new Refusal(`${cannot} (${code})`);
  }
}

function patiently(step: () => void): void {
  for (let left = TRIES; ; left--) {
    try {
      step();
      return;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      const passes = code === "EBUSY" || (process.platform === "win32" && (code === "EPERM" || code === "EACCES"));
      if (!passes || left === 0) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
    }
  }
}

/** The new name is on the disk as well. Where a folder cannot be asked for that, the system sees to it. */
function keepName(folder: string, files: Files): void {
  try {
    const handle = files.openSync(folder, "r");
    try {
      files.fsyncSync(handle);
    } finally {
      files.closeSync(handle);
    }
  } catch {
    // Not on Windows.
  }
}

/** Removes what runs that were killed have left in a folder. */
function sweep(folder: string, files: Files): void {
  if (swept.has(folder)) return;
  swept.add(folder);
  try {
    for (const name of files.readdirSync(folder)) {
      const path = join(folder, name);
      if (leftOver(name, () => files.statSync(path).mtimeMs)) files.unlinkSync(path);
    }
  } catch {
    // A folder that may not be listed is not tidied; writing says what is wrong with it.
  }
}

/**
 * The names of files that are being written: by which machine and process, so that a run can tell
 * what an earlier one left behind when it was killed from what another is writing at this moment.
 */
const NAME = /^\.crosshatch-([0-9a-f]{6})-(\d+)-[0-9a-f]+\.tmp$/;

/** On a shared disk other machines' processes cannot be asked about; none writes for as long as this. */
const DAY = 86_400_000;

const machine = createHash("sha256").update(hostname()).digest("hex").slice(0, 6);

export const unfinishedName = (random: string): string => `.crosshatch-${machine}-${process.pid}-${random}.tmp`;

/** Whether a file of that name is of no more use to anyone. `changed`: when it was last written to. */
export function leftOver(name: string, changed: () => number): boolean {
  const [, where, writer] = NAME.exec(name) ?? [];
  if (where === undefined) return false;
  return where === machine ? !isRunning(Number(writer)) : Date.now() - changed() > DAY;
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    // Another user's process may not be signalled, but is there.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
