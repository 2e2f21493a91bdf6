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
  /** Of each reading its value, its line and where its text ends. */
  readonly #numbers = new Float64Array(3 * ENOUGH);
  readonly #units: (string | undefined)[] = new Array(ENOUGH).fill(undefined);
  readonly #told: (FindingKind | undefined)[] = new Array(ENOUGH).fill(undefined);
  #bytes = new Uint8Array(BYTES);

  constructor(readonly retold: Retold) {}

  add(record: Scanner, value: number, unit: string | undefined, told: FindingKind | undefined): void {
    const { length } = this;
    const start = this.#endOf(length - 1);
    this.#numbers[3 * length] = value;
    this.#numbers[3 * length + 1] = record.line;
    this.#numbers[3 * length + 2] = start + this.#copy(record, start);
    this.#units[length] = unit;
    this.#told[length] = told;
    this.length++;
  }

  valueAt(i: number): number {
    return this.#numbers[3 * i]!;
  }

  unitAt(i: number): string | undefined {
    return this.#units[i];
  }

  /** A file tells lengths by their unit alone. */
  isLengthAt(): undefined {}

  at(i: number): Watched {
    return { value: this.valueAt(i), unit: this.#units[i], told: this.#told[i], subject: () => this.retold(this.#numbers[3 * i + 1]!, this.#text(i))() };
  }

  clear(): void {
    this.length = 0;
    // A group of long lines must not keep its room for ever.
    if (this.#bytes.length > 16 * BYTES) this.#bytes = new Uint8Array(BYTES);
  }

  #endOf(i: number): number {
    return i < 0 ? 0 : this.#numbers[3 * i + 2]!;
  }

  #text(i: number): string {
    return Buffer.from(this.#bytes.subarray(this.#endOf(i - 1), this.#endOf(i))).toString();
  }

  /** Byte by byte: for so few it is the fastest way. */
  #copy({ bytes, from, to }: Scanner, start: number): number {
    const size = to - from;
    if (start + size > this.#bytes.length) {
      const grown = new Uint8Array(start + size + ((start + size) >> 1));
      grown.set(this.#bytes);
      this.#bytes = grown;
    }
    const target = this.#bytes;
    for (let i = 0; i < size; i++) target[start + i] = bytes[from + i]!;
    return size;
  }
}
