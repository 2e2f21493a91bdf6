import { encodingOf } from "./encoding.ts";

interface Edit {
  from: number;
  to: number;
  text: string;
}

/** A part with pieces of it replaced at exact places; every byte between them stays. */
export class Patch {
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
