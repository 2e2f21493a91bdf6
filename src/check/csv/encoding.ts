export const NOTHING: Uint8Array = new Uint8Array(0);

export function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

const BOM_8 = Uint8Array.of(0xef, 0xbb, 0xbf);
const BOM_16 = { "utf-16le": Uint8Array.of(0xff, 0xfe), "utf-16be": Uint8Array.of(0xfe, 0xff) };
const LONGEST_MARK = BOM_8.length;

/** What programs of western Europe and America write where they do not write UTF-8. */
const CODE_PAGE = "windows-1252";

export interface EncodingOptions {
  /** How the file is written, as the Encoding standard (encoding.spec.whatwg.org) names it; without it that is found out. */
  encoding?: string | undefined;
  /** Told in a sentence where the file is not what it should be. */
  noted?: ((sentence: string) => void) | undefined;
}

/** Whether text in this encoding can be read here. */
export function isEncoding(name: string): boolean {
  try {
    return new TextDecoder(name) !== undefined;
  } catch {
    return false;
  }
}

/**
 * Bytes as UTF-8. Without an encoding they are that, unless a byte order mark says UTF-16 or the first
 * letter beyond ASCII is none in UTF-8: then they are read as Windows-1252, which is said. A mark is dropped.
 */
export async function* utf8(input: AsyncIterable<Uint8Array>, { encoding, noted }: EncodingOptions = {}): AsyncGenerator<Uint8Array> {
  const reader = new Utf8(encoding, noted);
  let mark: Uint8Array | undefined = NOTHING;
  for await (const chunk of input) {
    let bytes = chunk;
    if (mark) {
      // A mark may come in pieces.
      bytes = mark = joined(mark, bytes);
      if (bytes.length < LONGEST_MARK && !hasMark(bytes, BOM_16["utf-16le"]) && !hasMark(bytes, BOM_16["utf-16be"])) continue;
      bytes = reader.begin(bytes);
      mark = undefined;
    }
    yield reader.take(bytes);
  }
  yield mark ? reader.take(mark) : NOTHING;
  yield reader.end();
}

class Utf8 {
  #decoder: TextDecoder | undefined;
  /** The beginning of a letter whose other bytes have yet to come. */
  #held = NOTHING;
  #hasLetters = false;
  #isNoted = false;

  constructor(
    encoding: string | undefined,
    readonly noted: ((sentence: string) => void) | undefined,
  ) {
    if (encoding !== undefined && !/^utf-?8$/i.test(encoding)) this.#decoder = new TextDecoder(encoding);
  }

  begin(bytes: Uint8Array): Uint8Array {
    for (const [encoding, sign] of Object.entries(BOM_16)) if (hasMark(bytes, sign)) this.#decoder = new TextDecoder(encoding);
    return hasMark(bytes, BOM_8) ? bytes.subarray(BOM_8.length) : bytes;
  }

  take(chunk: Uint8Array): Uint8Array {
    if (this.#decoder) return encoder.encode(this.#decoder.decode(chunk, { stream: true }));
    if (this.#held.length === 0 && isAscii(chunk)) return chunk;
    const bytes = this.#held.length === 0 ? chunk : joined(this.#held, chunk);
    const end = wholeLetters(bytes);
    const whole = bytes.subarray(0, end);
    this.#held = NOTHING;
    if (!this.#hasLetters && !isAscii(whole)) {
      // The first letter decides, so that it is the same however the bytes come in pieces.
      if (!isUtf8(firstLetter(whole))) return this.#byCodePage(bytes);
      this.#hasLetters = true;
    }
    if (!isUtf8(whole)) this.#note(DAMAGED);
    this.#held = bytes.slice(end);
    return whole;
  }

  end(): Uint8Array {
    const held = this.#held;
    if (this.#decoder) return encoder.encode(this.#decoder.decode());
    if (held.length === 0) return NOTHING;
    if (!this.#hasLetters) return this.#byCodePage(held);
    this.#note(DAMAGED);
    return held;
  }

  #byCodePage(bytes: Uint8Array): Uint8Array {
    this.#decoder = new TextDecoder(CODE_PAGE);
    this.#note(`it is not UTF-8, so it is read as ${CODE_PAGE}: where letters look wrong, --encoding names the right one`);
    return encoder.encode(this.#decoder.decode(bytes, { stream: true }));
  }

  #note(sentence: string): void {
    if (!this.#isNoted) this.noted?.(sentence);
    this.#isNoted = true;
  }
}

const DAMAGED = "some of its letters are no UTF-8, although others are: they are read as �";

const encoder = new TextEncoder();
const strict = new TextDecoder("utf-8", { fatal: true });

function isUtf8(bytes: Uint8Array): boolean {
  try {
    strict.decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/** Four bytes at a time: nearly all of most files are looked at here alone. */
function isAscii(bytes: Uint8Array): boolean {
  let at = 0;
  for (; at < bytes.length && (bytes.byteOffset + at) % 4 !== 0; at++) if (bytes[at]! > 0x7f) return false;
  if (at === bytes.length) return true;
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset + at, (bytes.length - at) >> 2);
  for (let i = 0; i < words.length; i++) if (words[i]! & 0x80808080) return false;
  for (at += 4 * words.length; at < bytes.length; at++) if (bytes[at]! > 0x7f) return false;
  return true;
}

/** How many bytes a letter has, by its first one (RFC 3629, 3). */
const lengthOf = (lead: number): number => (lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : lead >= 0xc0 ? 2 : 1);

/** The bytes of the first letter beyond ASCII, as far as its first byte says. */
function firstLetter(bytes: Uint8Array): Uint8Array {
  const at = bytes.findIndex((byte) => byte > 0x7f);
  return bytes.subarray(at, at + lengthOf(bytes[at]!));
}

/** How many of the bytes are before a letter that is not all there (RFC 3629, 3). */
function wholeLetters(bytes: Uint8Array): number {
  for (let back = 1; back <= Math.min(3, bytes.length); back++) {
    const byte = bytes[bytes.length - back]!;
    if (byte < 0x80) break;
    if (byte >= 0xc0) return back < lengthOf(byte) ? bytes.length - back : bytes.length;
  }
  return bytes.length;
}

const hasMark = (bytes: Uint8Array, sign: Uint8Array): boolean => sign.every((byte, at) => bytes[at] === byte);
