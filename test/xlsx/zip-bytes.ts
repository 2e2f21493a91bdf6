import { deflateSync, strToU8 } from "fflate";
import { crc32 } from "../../src/xlsx/zip.ts";

/** A part of an archive, and the lies that a crafted one tells about it. */
export interface Part {
  name: string;
  content: string | Uint8Array;
  stored?: boolean;
  /** Puts sizes and place into the extra field for large archives. */
  large?: boolean;
  localName?: string;
  size?: number;
  crc?: number;
  flags?: number;
  method?: number;
  /** Points to the packed bytes of the part at this index instead of to its own. */
  sharesWith?: number;
}

const bytes = (length: number, fill: (view: DataView) => void): Uint8Array => {
  const out = new Uint8Array(length);
  fill(new DataView(out.buffer));
  return out;
};

const joined = (pieces: readonly Uint8Array[]): Uint8Array => {
  const out = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    out.set(piece, at);
    at += piece.length;
  }
  return out;
};

interface Packed {
  part: Part;
  packed: Uint8Array;
  size: number;
  crc: number;
  method: number;
}

function pack(part: Part): Packed {
  const content = typeof part.content === "string" ? strToU8(part.content) : part.content;
  return {
    part,
    packed: part.stored ? content : deflateSync(content),
    size: part.size ?? content.length,
    crc: part.crc ?? crc32(content),
    method: part.method ?? (part.stored ? 0 : 8),
  };
}

function local({ part, packed, size, crc, method }: Packed): Uint8Array {
  const name = strToU8(part.localName ?? part.name);
  const head = bytes(30, (view) => {
    view.setUint32(0, 0x04034b50, true);
    view.setUint16(6, part.flags ?? 0, true);
    view.setUint16(8, method, true);
    view.setUint32(14, crc, true);
    view.setUint32(18, packed.length, true);
    view.setUint32(22, size, true);
    view.setUint16(26, name.length, true);
  });
  return joined([head, name, packed]);
}

function central({ part, packed, size, crc, method }: Packed, offset: number): Uint8Array {
  const name = strToU8(part.name);
  const extra = part.large
    ? bytes(28, (view) => {
        view.setUint16(0, 1, true);
        view.setUint16(2, 24, true);
        view.setBigUint64(4, BigInt(size), true);
        view.setBigUint64(12, BigInt(packed.length), true);
        view.setBigUint64(20, BigInt(offset), true);
      })
    : new Uint8Array();
  const head = bytes(46, (view) => {
    view.setUint32(0, 0x02014b50, true);
    view.setUint16(8, part.flags ?? 0, true);
    view.setUint16(10, method, true);
    view.setUint32(16, crc, true);
    view.setUint32(20, part.large ? 0xffffffff : packed.length, true);
    view.setUint32(24, part.large ? 0xffffffff : size, true);
    view.setUint16(28, name.length, true);
    view.setUint16(30, extra.length, true);
    view.setUint32(42, part.large ? 0xffffffff : offset, true);
  });
  return joined([head, name, extra]);
}

/** An archive (PKWARE APPNOTE 4.3), as honest as its parts. */
export function zipBytes(parts: readonly Part[], comment = ""): Uint8Array {
  const packed = parts.map(pack);
  const locals = packed.map(local);
  const offsets: number[] = [];
  let at = 0;
  for (const piece of locals) {
    offsets.push(at);
    at += piece.length;
  }
  const directory = joined(packed.map((one, i) => central(one, offsets[one.part.sharesWith ?? i]!)));
  const end = bytes(22, (view) => {
    view.setUint32(0, 0x06054b50, true);
    view.setUint16(8, parts.length, true);
    view.setUint16(10, parts.length, true);
    view.setUint32(12, directory.length, true);
    view.setUint32(16, at, true);
    view.setUint16(20, comment.length, true);
  });
  return joined([...locals, directory, end, strToU8(comment)]);
}

/** The parts of a workbook, for an archive in which one of them is not honest. */
export const partsOf = (contents: Readonly<Record<string, string>>): Part[] => Object.entries(contents).map(([name, content]) => ({ name, content }));
