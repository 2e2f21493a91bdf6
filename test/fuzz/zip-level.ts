import { zipSync } from "fflate";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { openAndCheck } from "./open-and-check.ts";
import { expectSame, orRefused } from "./oracles.ts";
import type { FuzzOutcome, Level } from "./outcome.ts";
import type { FuzzRandom } from "./random.ts";
import { BOOKS, type BookSample } from "./samples.ts";

const SIGNATURES = [0x04034b50, 0x02014b50, 0x06054b50];
const EDGES = [0, 1, 2, 7, 8, 9, 20, 255, 65_535, 65_536, 0x7fffffff, 0xffffffff];

/** Bytes of the archive itself, damaged: a file is refused, or read to what it held before. */
export const bytesLevel: Level = {
  name: "archive bytes",
  weight: 28,
  run(random) {
    const sample = random.pick(BOOKS);
    const bytes = damaged(sample.bytes, random);
    return orRefused(() => {
      expectSame("damaged bytes were read as something else", plain(readXlsx(bytes)), plain(sample.book));
      return "result";
    });
  },
};

/** The book with its maps as lists, for comparing. */
const plain = (book: BookSample["book"]): unknown => ({ ...book, kept: [...book.storedTexts] });

function damaged(whole: Uint8Array, random: FuzzRandom): Uint8Array {
  let bytes: Uint8Array = whole.slice();
  for (let n = 1 + random.below(3); n > 0; n--) bytes = random.pick(DAMAGES)(bytes, random);
  return bytes;
}

type Damage = (bytes: Uint8Array, random: FuzzRandom) => Uint8Array;

const joined = (...pieces: Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(pieces));

const flip: Damage = (bytes, random) => {
  if (bytes.length > 0) bytes[random.below(bytes.length)]! ^= 1 + random.below(255);
  return bytes;
};
const cut: Damage = (bytes, random) => bytes.subarray(0, random.below(bytes.length + 1));
const takeOut: Damage = (bytes, random) => {
  const at = random.below(bytes.length + 1);
  return joined(bytes.subarray(0, at), bytes.subarray(at + random.below(100)));
};
const putIn: Damage = (bytes, random) => {
  const at = random.below(bytes.length + 1);
  const from = random.below(bytes.length + 1);
  return joined(bytes.subarray(0, at), bytes.subarray(from, from + random.below(300)), bytes.subarray(at));
};

/** A number in one of the archive's own records. */
const renumber: Damage = (bytes, random) => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const places: number[] = [];
  for (let at = 0; at + 4 <= bytes.length; at++) if (SIGNATURES.includes(view.getUint32(at, true))) places.push(at);
  if (places.length === 0) return bytes;
  const at = random.pick(places) + 4 + random.below(42);
  const value = random.pick(EDGES);
  if (random.chance(0.5) && at + 4 <= bytes.length) view.setUint32(at, value >>> 0, true);
  else if (at + 2 <= bytes.length) view.setUint16(at, value & 0xffff, true);
  return bytes;
};

const DAMAGES: readonly Damage[] = [flip, flip, cut, takeOut, putIn, renumber, renumber, renumber];

/** Parts that say nothing about cells: changing them changes nothing. */
const BESIDE_THE_POINT = /^(?:docProps\/|xl\/(?:theme|styles|metadata|calcChain)|\[Content_Types\])/;

/** Parts taken out, renamed, exchanged, added, packed in another way. */
export const partsLevel: Level = {
  name: "archive parts",
  weight: 6,
  run(random) {
    const sample = random.pick(BOOKS);
    const parts = new Map(Object.entries(sample.parts));
    const matters = rearrange(parts, random);
    const bytes = zipSync(Object.fromEntries(parts), { level: random.chance(0.5) ? 0 : 6 });
    if (matters) return openAndCheck(bytes);
    return orRefused((): FuzzOutcome => {
      expectSame("parts beside the point mattered", plain(readXlsx(bytes)), plain(sample.book));
      return "result";
    });
  },
};

/** True when what was done can change what the book says. */
function rearrange(parts: Map<string, Uint8Array>, random: FuzzRandom): boolean {
  const names = [...parts.keys()];
  const [one, other] = [random.pick(names), random.pick(names)];
  switch (random.below(5)) {
    case 0:
      parts.delete(one);
      return !BESIDE_THE_POINT.test(one);
    case 1: {
      const content = parts.get(one)!;
      parts.set(one, parts.get(other)!);
      parts.set(other, content);
      return !(BESIDE_THE_POINT.test(one) && BESIDE_THE_POINT.test(other));
    }
    case 2:
      parts.set(`xl/${random.below(1e6)}.bin`, parts.get(one)!);
      return false;
    case 3: {
      const backwards = [...parts].reverse();
      parts.clear();
      for (const [name, content] of backwards) parts.set(name, content);
      return false;
    }
    default:
      parts.set(one, parts.get(one)!.subarray(0, random.below(parts.get(one)!.length)));
      return !BESIDE_THE_POINT.test(one);
  }
}
