import { Inflate } from "fflate";
import { roughCount } from "../core/number-text.ts";
import { type FileLimits, megabytes, mustFit, UnreadableFile } from "./file-limits.ts";

/** CRC-32 as zip archives use it (PKWARE APPNOTE 4.4.7): reflected, polynomial 0xEDB88320. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) sum = TABLE[(sum ^ bytes[i]!) & 255]! ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}

/**
 * The table of contents at the end of a zip archive. Read here rather than by a library, because
 * what decides between a sound file and a crafted or damaged one stands only there: checksums,
 * flags, and whether parts overlap. Source: PKWARE APPNOTE 6.3.10, sections 4.3 to 4.5.
 */
export interface ZipEntry {
  name: string;
  /** 0 stored, 8 deflated. */
  method: number;
  crc: number;
  packed: number;
  size: number;
  /** Where the packed bytes begin in the file. */
  start: number;
  /** Where its line in the table of contents begins. */
  central: number;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;
const LONGEST_COMMENT = 0xffff;
const IN_64 = 0xffffffff;

const cutShort = (): UnreadableFile => new UnreadableFile("is cut short or damaged: the archive's table of contents is missing");

function directoryOf(bytes: Uint8Array, most: number): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return entriesOf(bytes, view, most);
  } catch (reason) {
    // A length or an offset that points out of the file.
    if (reason instanceof RangeError) throw cutShort();
    throw reason;
  }
}

function entriesOf(bytes: Uint8Array, view: DataView, most: number): ZipEntry[] {
  const { count, offset } = endOf(view);
  if (count > most)
    throw new UnreadableFile(`holds ${roughCount(count)} parts, and at most ${roughCount(most)} are read: it is refused as a possible zip bomb`);
  const entries: ZipEntry[] = [];
  let at = offset;
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== CENTRAL) throw cutShort();
    const nameLength = view.getUint16(at + 28, true);
    const extraLength = view.getUint16(at + 30, true);
    const name = nameAt(bytes, at + 46, nameLength);
    if (!name.endsWith("/")) entries.push(entryAt(bytes, view, at, name, extraLength));
    at += 46 + nameLength + extraLength + view.getUint16(at + 32, true);
  }
  refuseOverlap(entries);
  return entries;
}

/** Where the list of parts starts and how many there are. */
function endOf(view: DataView): { count: number; offset: number } {
  const lowest = Math.max(0, view.byteLength - 22 - LONGEST_COMMENT);
  let at = view.byteLength - 22;
  while (at >= lowest && view.getUint32(at, true) !== END) at--;
  if (at < lowest) throw cutShort();
  const count = view.getUint16(at + 10, true);
  const offset = view.getUint32(at + 16, true);
  if ((count !== 0xffff && offset !== IN_64) || at < 20 || view.getUint32(at - 20, true) !== LOCATOR_64) return { count, offset };
  const end = long(view, at - 12);
  if (view.getUint32(end, true) !== END_64) throw cutShort();
  return { count: long(view, end + 32), offset: long(view, end + 48) };
}

function entryAt(bytes: Uint8Array, view: DataView, at: number, name: string, extraLength: number): ZipEntry {
  refuseName(name);
  const flags = view.getUint16(at + 8, true);
  const method = view.getUint16(at + 10, true);
  if (flags & 1) throw new UnreadableFile("is an encrypted archive: unpack it with its password first");
  if (method !== 0 && method !== 8) throw new UnreadableFile(`holds a part ${name} packed by a method that is not read`);
  const { packed, size, local } = sizesAt(view, at, at + 46 + view.getUint16(at + 28, true), extraLength);
  if (view.getUint32(local, true) !== LOCAL) throw cutShort();
  const nameLength = view.getUint16(local + 26, true);
  if (nameAt(bytes, local + 30, nameLength) !== name) throw new UnreadableFile(`names its part ${name} in two ways: which part it is cannot be told`);
  const start = local + 30 + nameLength + view.getUint16(local + 28, true);
  if (start + packed > view.byteLength) throw cutShort();
  return { name, method, crc: view.getUint32(at + 16, true), packed, size, start, central: at };
}

/** Sizes and place; what does not fit into 32 bits stands in an extra field, in this order. */
function sizesAt(view: DataView, at: number, extra: number, extraLength: number): { packed: number; size: number; local: number } {
  const plain = { size: view.getUint32(at + 24, true), packed: view.getUint32(at + 20, true), local: view.getUint32(at + 42, true) };
  if (plain.size !== IN_64 && plain.packed !== IN_64 && plain.local !== IN_64) return plain;
  for (let field = extra; field + 4 <= extra + extraLength; field += 4 + view.getUint16(field + 2, true)) {
    if (view.getUint16(field, true) !== 1) continue;
    let next = field + 4;
    for (const key of ["size", "packed", "local"] as const) {
      if (plain[key] !== IN_64) continue;
      plain[key] = long(view, next);
      next += 8;
    }
    return plain;
  }
  throw cutShort();
}

function long(view: DataView, at: number): number {
  const value = Number(view.getBigUint64(at, true));
  if (!Number.isSafeInteger(value)) throw cutShort();
  return value;
}

const TEXT = new TextDecoder();

/** Steps of names are parted by slashes (4.4.17.1); some programs write the other sign of their system. */
function nameAt(bytes: Uint8Array, at: number, length: number): string {
  if (at + length > bytes.length) throw cutShort();
  return TEXT.decode(bytes.subarray(at, at + length)).replaceAll("\\", "/");
}

/** Names that lead out of the archive, or that two programs could read differently. */
function refuseName(name: string): void {
  const steps = name.split("/");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for.
  if (name === "" || /[:\u0000-\u001f]/.test(name) || steps.some((step) => step === "" || step === "." || step === "..")) {
    throw new UnreadableFile(`holds a part with the name ${JSON.stringify(name)}, which no workbook has`);
  }
}

/** Parts that share their bytes are how a small archive is made to unpack to a huge one. */
function refuseOverlap(entries: readonly ZipEntry[]): void {
  const inOrder = [...entries].sort((a, b) => a.start - b.start);
  for (let i = 1; i < inOrder.length; i++) {
    const before = inOrder[i - 1]!;
    if (before.start + before.packed > inOrder[i]!.start)
      throw new UnreadableFile(`holds parts that share their bytes (${before.name} and ${inOrder[i]!.name}): it is refused as a possible zip bomb`);
  }
}

/** Packed bytes handed to the inflater at a time: what comes out is counted before more goes in. */
const CHUNK = 16_384;

const damaged = (name: string): UnreadableFile => new UnreadableFile(`is damaged: its part ${name} does not unpack to what the archive says`);

/** Unpacks what was deflated. It throws as soon as more than `size` bytes come out, or where the bytes make no sense. */
export type Unpack = (packed: Uint8Array, size: number) => Uint8Array;

/** The parts of an archive, unpacked one at a time as they are asked for, within limits. */
export class Zip {
  readonly #bytes: Uint8Array;
  readonly #limits: FileLimits;
  readonly #entries = new Map<string, ZipEntry>();
  #inflated = 0;

  /** Hosts that have something quicker bring their own `unpack`. */
  constructor(
    bytes: Uint8Array,
    limits: FileLimits,
    private readonly unpack: Unpack = inflate,
  ) {
    this.#bytes = bytes;
    this.#limits = limits;
    mustFit(bytes.length, limits);
    for (const entry of directoryOf(bytes, limits.entries)) this.#admit(entry);
  }

  /** Part names are the same in capitals and small letters (ECMA-376 part 2, 6.2.2.3). */
  has(name: string): boolean {
    return this.#entries.has(name.toLowerCase());
  }

  /** The names of all parts, in small letters. */
  names(): string[] {
    return [...this.#entries.keys()];
  }

  /** All parts, in the order of the table of contents. */
  entries(): ZipEntry[] {
    return [...this.#entries.values()];
  }

  /** The names of all parts as the archive spells them. */
  spelledNames(): string[] {
    return [...this.#entries.values()].map(({ name }) => name);
  }

  /** The content of a part, or `undefined` when there is none of that name. */
  read(name: string): Uint8Array | undefined {
    const entry = this.#entries.get(name.toLowerCase());
    if (!entry) return undefined;
    const packed = this.#bytes.subarray(entry.start, entry.start + entry.packed);
    this.#inflated += entry.size;
    if (this.#inflated > this.#limits.inflated)
      throw new UnreadableFile(`unpacks to more than ${megabytes(this.#limits.inflated)}: it is refused as a possible zip bomb`);
    const content = entry.method === 0 ? packed : this.#unpacked(packed, entry);
    if (content.length !== entry.size || crc32(content) !== entry.crc) throw damaged(entry.name);
    return content;
  }

  #unpacked(packed: Uint8Array, { name, size }: ZipEntry): Uint8Array {
    try {
      return this.unpack(packed, size);
    } catch {
      throw damaged(name);
    }
  }

  #admit(entry: ZipEntry): void {
    const { name, size, packed } = entry;
    const { part, ratio, ratioFrom } = this.#limits;
    if (size > part || (size > ratioFrom && size > packed * ratio)) {
      throw new UnreadableFile(
        `holds a part ${name} that unpacks from ${roughCount(packed)} to ${roughCount(size)} bytes: it is refused as a possible zip bomb`,
      );
    }
    const key = name.toLowerCase();
    if (this.#entries.has(key)) throw new UnreadableFile(`holds two parts of the name ${name}: which of them counts cannot be told`);
    this.#entries.set(key, entry);
  }
}

function inflate(packed: Uint8Array, size: number): Uint8Array {
  const content = new Uint8Array(size);
  let filled = 0;
  // Setting a piece beyond the end throws.
  const inflater = new Inflate((piece) => {
    content.set(piece, filled);
    filled += piece.length;
  });
  for (let at = 0; at < packed.length; at += CHUNK) inflater.push(packed.subarray(at, at + CHUNK), at + CHUNK >= packed.length);
  return content.subarray(0, filled);
}
