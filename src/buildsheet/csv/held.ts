import { ENOUGH, type Waiting, type Watched } from "../check/watch.ts";
import type { FindingKind } from "../finding.ts";
import type { Scanner } from "./scanner.ts";

/** Room for a group's lines to begin with; longer ones get more. */
const BYTES = 1024;

/** A line that was held back, on its way to somebody who wants to know what it is about. */
export type Retold = (line: number, text: string) => Watched["subject"];

/**
 * Readings that wait for their like, kept as the bytes of their lines: thousands of groups stand open
 * at a time, and each of them is filled and emptied again and again.
 */
export class HeldLines implements Waiting {
  length = 0;
  readonly #values = new Float64Array(ENOUGH);
  readonly #lines = new Float64Array(ENOUGH);
  readonly #ends = new Int32Array(ENOUGH);
  readonly #units: (string | undefined)[] = new Array(ENOUGH).fill(undefined);
  readonly #told: (FindingKind | undefined)[] = new Array(ENOUGH).fill(undefined);
  #bytes = new Uint8Array(BYTES);

  constructor(readonly retold: Retold) {}

  add(record: Scanner, value: number, unit: string | undefined, told: FindingKind | undefined): void {
    const { length } = this;
    const start = length === 0 ? 0 : this.#ends[length - 1]!;
    this.#ends[length] = start + this.#copy(record, start);
    this.#values[length] = value;
    this.#lines[length] = record.line;
    this.#units[length] = unit;
    this.#told[length] = told;
    this.length++;
  }

  valueAt(i: number): number {
    return this.#values[i]!;
  }

  unitAt(i: number): string | undefined {
    return this.#units[i];
  }

  /** A file tells lengths by their unit alone. */
  isLengthAt(): undefined {}

  at(i: number): Watched {
    return { value: this.#values[i]!, unit: this.#units[i], told: this.#told[i], subject: () => this.retold(this.#lines[i]!, this.#text(i))() };
  }

  clear(): void {
    this.length = 0;
    // A group of long lines must not keep its room for ever.
    if (this.#bytes.length > 16 * BYTES) this.#bytes = new Uint8Array(BYTES);
  }

  #text(i: number): string {
    return Buffer.from(this.#bytes.buffer, i === 0 ? 0 : this.#ends[i - 1]!, this.#ends[i]! - (i === 0 ? 0 : this.#ends[i - 1]!)).toString();
  }

  /** Byte by byte: for so few it is the fastest way. */
  #copy({ bytes, from, to }: Scanner, start: number): number {
    const size = to - from;
    if (start + size > this.#bytes.length) {
      const grown = new Uint8Array(2 * (start + size));
      grown.set(this.#bytes);
      this.#bytes = grown;
    }
    const target = this.#bytes;
    for (let i = 0; i < size; i++) target[start + i] = bytes[from + i]!;
    return size;
  }
}
