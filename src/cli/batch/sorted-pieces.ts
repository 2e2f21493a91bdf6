import { randomUUID } from "node:crypto";
import { openSync, readSync, rmSync, unlinkSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Packed, Rank } from "./packed.ts";

/** Of each finding in a piece: kind, how far outside, line, length of its body; then the body. */
const HEAD = 1 + 8 + 8 + 4;
const PIECE = 1 << 16;
/** Bytes that are read at a time at the least. */
const LEAST_READ = 4096;

/** Findings in their order, one after the other; it stands at one of them at a time. */
export interface Source extends Rank {
  readonly body: string;
  /** Goes to the next one, if there is one. */
  next(): boolean;
}

/** Writes findings worst first from a place in the file on; gives where they end. */
export function putAway(packed: Packed, file: number, from: number): number {
  let room = Buffer.allocUnsafe(2 * PIECE);
  let used = 0;
  let at = from;
  for (const i of packed.sorted()) {
    const start = packed.from(i);
    const size = packed.ends[i]! - start;
    if (used + HEAD + size > room.length) {
      at += writeAll(file, room.subarray(0, used), at);
      used = 0;
      if (HEAD + size > room.length) room = Buffer.allocUnsafe(HEAD + size);
    }
    room.writeUInt8(packed.kinds[i]!, used);
    room.writeDoubleLE(packed.severities[i]!, used + 1);
    room.writeDoubleLE(packed.lines[i]!, used + 9);
    room.writeUInt32LE(size, used + 17);
    packed.bytes.copy(room, used + HEAD, start, start + size);
    used += HEAD + size;
  }
  return at + writeAll(file, room.subarray(0, used), at);
}

/** A piece of the file. */
export class FromFile implements Source {
  kind = 0;
  severity = 0;
  line = 0;
  #bytes: Buffer;
  #from = 0;
  #to = 0;
  #body = { from: 0, to: 0 };

  constructor(
    readonly file: number,
    private at: number,
    readonly end: number,
    room: number,
  ) {
    this.#bytes = Buffer.allocUnsafeSlow(Math.max(LEAST_READ, Math.min(PIECE, room)));
  }

  get body(): string {
    return this.#bytes.toString("utf8", this.#body.from, this.#body.to);
  }

  next(): boolean {
    if (!this.#has(HEAD)) return false;
    const bytes = this.#bytes;
    this.kind = bytes.readUInt8(this.#from);
    this.severity = bytes.readDoubleLE(this.#from + 1);
    this.line = bytes.readDoubleLE(this.#from + 9);
    const size = HEAD + bytes.readUInt32LE(this.#from + 17);
    this.#has(size);
    this.#body.from = this.#from + HEAD;
    this.#body.to = this.#from += size;
    return true;
  }

  /** Reads on until so many bytes are there; false at the end of the piece. */
  #has(size: number): boolean {
    if (this.#to - this.#from >= size) return true;
    if (this.at >= this.end) return false;
    const old = this.#bytes;
    if (size > old.length) this.#bytes = Buffer.allocUnsafeSlow(2 * size);
    this.#to = old.copy(this.#bytes, 0, this.#from, this.#to);
    this.#from = 0;
    while (this.#to < size) {
      const count = readSync(this.file, this.#bytes, this.#to, Math.min(this.#bytes.length - this.#to, this.end - this.at), this.at);
      if (count === 0) throw new Error("the temporary file of findings has been cut");
      this.#to += count;
      this.at += count;
    }
    return true;
  }
}

/** Those that are still in memory. */
export class FromMemory implements Source {
  readonly #places: Uint32Array;
  #next = 0;
  kind = 0;
  severity = 0;
  line = 0;
  #place = 0;

  constructor(readonly packed: Packed) {
    this.#places = packed.sorted();
  }

  get body(): string {
    return this.packed.bytes.toString("utf8", this.packed.from(this.#place), this.packed.ends[this.#place]);
  }

  next(): boolean {
    if (this.#next >= this.#places.length) return false;
    this.#place = this.#places[this.#next++]!;
    this.kind = this.packed.kinds[this.#place]!;
    this.severity = this.packed.severities[this.#place]!;
    this.line = this.packed.lines[this.#place]!;
    return true;
  }
}

/** All of it, from `at` on; how many bytes that were. */
function writeAll(file: number, bytes: Buffer, at: number): number {
  for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done, bytes.length - done, at + done);
  return bytes.length;
}

export function namelessFile(): number {
  const path = join(tmpdir(), `crosshatch-${randomUUID()}`);
  const file = openSync(path, "wx+", 0o600);
  try {
    unlinkSync(path);
  } catch {
    // Where a file in use cannot lose its name it goes with the program.
    process.once("exit", () => rmSync(path, { force: true }));
  }
  return file;
}
