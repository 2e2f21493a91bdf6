import { Inflate } from "fflate";
import { crc32 } from "./crc32.ts";
import { directoryOf, type Entry } from "./directory.ts";
import { type Limits, many, megabytes, mustFit } from "./file-limits.ts";
import { UnreadableFile } from "./unreadable.ts";

/** Packed bytes handed to the inflater at a time: what comes out is counted before more goes in. */
const CHUNK = 16_384;

const damaged = (name: string): UnreadableFile => new UnreadableFile(`is damaged: its part ${name} does not unpack to what the archive says`);

/** Unpacks what was deflated. It throws as soon as more than `size` bytes come out, or where the bytes make no sense. */
export type Unpack = (packed: Uint8Array, size: number) => Uint8Array;

/** The parts of an archive, unpacked one at a time as they are asked for, within limits. */
export class Zip {
  readonly #bytes: Uint8Array;
  readonly #limits: Limits;
  readonly #entries = new Map<string, Entry>();
  #inflated = 0;

  /** Hosts that have something quicker bring their own `unpack`. */
  constructor(
    bytes: Uint8Array,
    limits: Limits,
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
  entries(): Entry[] {
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

  #unpacked(packed: Uint8Array, { name, size }: Entry): Uint8Array {
    try {
      return this.unpack(packed, size);
    } catch {
      throw damaged(name);
    }
  }

  #admit(entry: Entry): void {
    const { name, size, packed } = entry;
    const { part, ratio, ratioFrom } = this.#limits;
    if (size > part || (size > ratioFrom && size > packed * ratio)) {
      throw new UnreadableFile(`holds a part ${name} that unpacks from ${many(packed)} to ${many(size)} bytes: it is refused as a possible zip bomb`);
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
