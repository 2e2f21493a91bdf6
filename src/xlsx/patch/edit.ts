import { escapedXml } from "../xml.ts";

interface Edit {
  from: number;
  to: number;
  text: string;
}

/** A part with pieces of it replaced at exact places; every byte between them stays. */
export class BytesPatch {
  /** What places count in. */
  readonly bytes: Uint8Array;
  readonly #back: (utf8: Uint8Array) => Uint8Array;
  readonly #edits: Edit[] = [];

  constructor(readonly part: Uint8Array) {
    const { utf8, back } = encodingOf(part);
    this.bytes = utf8;
    this.#back = back;
  }

  text(from: number, to: number): string {
    return new TextDecoder().decode(this.bytes.subarray(from, to));
  }

  replace(from: number, to: number, text: string): void {
    this.#edits.push({ from, to, text });
  }

  /** Several at one place stand in the order in which they were put there. */
  insert(at: number, text: string): void {
    this.replace(at, at, text);
  }

  /** The new part; the very same where nothing was changed. */
  result(): Uint8Array {
    if (this.#edits.length === 0) return this.part;
    // What is put before a piece goes before what takes its place.
    this.#edits.sort((a, b) => a.from - b.from || a.to - b.to);
    const room = this.#edits.reduce((sum, { text }) => sum + 3 * text.length, this.bytes.length);
    const out = new Uint8Array(room);
    const encoder = new TextEncoder();
    let filled = 0;
    let at = 0;
    for (const { from, to, text } of this.#edits) {
      out.set(this.bytes.subarray(at, from), filled);
      filled += from - at;
      filled += encoder.encodeInto(text, out.subarray(filled)).written;
      at = to;
    }
    out.set(this.bytes.subarray(at), filled);
    filled += this.bytes.length - at;
    return this.#back(out.subarray(0, filled));
  }
}

const ATTRIBUTE = /\s+([^\s=/>]+)\s*=\s*(?:"[^"]*"|'[^']*')/g;

/** A start tag, well-formed as read, with attributes replaced, added or, with `null`, taken away; all else stays as it is written. */
export function withAttributes(tag: string, wanted: Readonly<Record<string, string | number | null>>): string {
  const left = new Map(Object.entries(wanted));
  const changed = tag.replace(ATTRIBUTE, (whole, name: string) => {
    const value = left.get(name);
    if (value === undefined) return whole;
    left.delete(name);
    return value === null ? "" : ` ${name}="${escapedXml(String(value))}"`;
  });
  const added = [...left].flatMap(([name, value]) => (value === null ? [] : ` ${name}="${escapedXml(String(value))}"`)).join("");
  return added === "" ? changed : changed.replace(/\s*\/?>$/, (end) => added + end.trimStart());
}

/** A tag that closes itself, as one that is open for content. */
export const opened = (tag: string): string => tag.replace(/\s*\/>$/, ">");

/** Half of a character that takes two: no encoding has it. */
const HALF = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
/** What XML cannot hold, the line end that readers turn into another, and text that would be read as standing for one of these. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that XML forbids
const UNFIT = /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)/g;

/** Text as a cell holds it: `_x0007_` for what XML cannot hold (ECMA-376 part 1, 22.9.2.19). */
export const cellXmlText = (text: string): string =>
  escapedXml(text.replace(HALF, "\ufffd").replace(UNFIT, (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`));

/**
 * Parts are UTF-8 or, with a mark before them, UTF-16. They are worked on as UTF-8, in which a byte of
 * ASCII is never part of another character.
 */
interface Encoded {
  utf8: Uint8Array;
  /** Back to how the part was written. */
  back(utf8: Uint8Array): Uint8Array;
}

export function encodingOf(bytes: Uint8Array): Encoded {
  const little = bytes[0] === 0xff && bytes[1] === 0xfe;
  if (!little && !(bytes[0] === 0xfe && bytes[1] === 0xff)) return { utf8: bytes, back: (utf8) => utf8 };
  const text = new TextDecoder(little ? "utf-16le" : "utf-16be").decode(bytes);
  return { utf8: new TextEncoder().encode(text), back: (utf8) => utf16(new TextDecoder().decode(utf8), little) };
}

function utf16(text: string, little: boolean): Uint8Array {
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, little);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i + 2, text.charCodeAt(i), little);
  return bytes;
}
