import { many } from "./file-limits.ts";
import { UnreadableFile } from "./unreadable.ts";

/**
 * The table of contents at the end of a zip archive. Read here rather than by a library, because
 * what decides between a sound file and a crafted or damaged one stands only there: checksums,
 * flags, and whether parts overlap. Source: PKWARE APPNOTE 6.3.10, sections 4.3 to 4.5.
 */
export interface Entry {
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

export function directoryOf(bytes: Uint8Array, most: number): Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return entriesOf(bytes, view, most);
  } catch (reason) {
    // A length or an offset that points out of the file.
    if (reason instanceof RangeError) throw cutShort();
    throw reason;
  }
}

function entriesOf(bytes: Uint8Array, view: DataView, most: number): Entry[] {
  const { count, offset } = endOf(view);
  if (count > most) throw new UnreadableFile(`holds ${many(count)} parts, and at most ${many(most)} are read: it is refused as a possible zip bomb`);
  const entries: Entry[] = [];
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

function entryAt(bytes: Uint8Array, view: DataView, at: number, name: string, extraLength: number): Entry {
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

function nameAt(bytes: Uint8Array, at: number, length: number): string {
  if (at + length > bytes.length) throw cutShort();
  return TEXT.decode(bytes.subarray(at, at + length));
}

/** Names that lead out of the archive, or that two programs could read differently. */
function refuseName(name: string): void {
  const steps = name.split("/");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for.
  if (name === "" || /[\\:\u0000-\u001f]/.test(name) || steps.some((step) => step === "" || step === "." || step === "..")) {
    throw new UnreadableFile(`holds a part with the name ${JSON.stringify(name)}, which no workbook has`);
  }
}

/** Parts that share their bytes are how a small archive is made to unpack to a huge one. */
function refuseOverlap(entries: readonly Entry[]): void {
  const inOrder = [...entries].sort((a, b) => a.start - b.start);
  for (let i = 1; i < inOrder.length; i++) {
    const before = inOrder[i - 1]!;
    if (before.start + before.packed > inOrder[i]!.start)
      throw new UnreadableFile(`holds parts that share their bytes (${before.name} and ${inOrder[i]!.name}): it is refused as a possible zip bomb`);
  }
}
