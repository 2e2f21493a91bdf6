import type { FindingKind } from "../../check/finding.ts";
import { ENOUGH, type Waiting, type Watched } from "../../check/outliers.ts";
import { type Batch, kindTold } from "./batch.ts";
import { textOf } from "./scanner.ts";

/** Room for a group's lines to begin with; longer ones get more. */
const BYTES = 1024;
/** Up to so many are copied fastest one by one. */
const FEW_BYTES = 128;

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
  /** Where the text of each begins and ends in the bytes. */
  readonly #froms = new Int32Array(ENOUGH);
  readonly #tos = new Int32Array(ENOUGH);
  readonly #units: (string | undefined)[] = new Array(ENOUGH).fill(undefined);
  readonly #told: (FindingKind | undefined)[] = new Array(ENOUGH).fill(undefined);
  #bytes = new Uint8Array(BYTES);
  #size = 0;

  constructor(readonly retold: Retold) {}

  /** Readings of one run that follow one another, as far as there is room for them; gives the one after the last. */
  add(batch: Batch, first: number, end: number, unit: string | undefined, bytes: Uint8Array): number {
    const after = Math.min(end, first + ENOUGH - this.length);
    const moved = this.#copy(bytes, batch.froms[first]!, batch.tos[after - 1]!);
    for (let i = first; i < after; i++) {
      const at = this.length++;
      this.#values[at] = batch.values[i]!;
      this.#lines[at] = batch.lines[i]!;
      this.#froms[at] = batch.froms[i]! + moved;
      this.#tos[at] = batch.tos[i]! + moved;
      this.#units[at] = unit;
      this.#told[at] = kindTold(batch, i);
    }
    return after;
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
    const text = () => textOf(this.#bytes, this.#froms[i]!, this.#tos[i]!);
    return { value: this.valueAt(i), unit: this.#units[i], told: this.#told[i], subject: () => this.retold(this.#lines[i]!, text())() };
  }

  clear(): void {
    this.length = 0;
    this.#size = 0;
    // A group of long lines must not keep its room for ever.
    if (this.#bytes.length > 16 * BYTES) this.#bytes = new Uint8Array(BYTES);
  }

  /** Puts bytes behind those that are there; says how far they have moved. */
  #copy(bytes: Uint8Array, from: number, to: number): number {
    const start = this.#size;
    const size = to - from;
    this.#size += size;
    if (this.#size > this.#bytes.length) {
      const grown = new Uint8Array(this.#size + (this.#size >> 1));
      grown.set(this.#bytes);
      this.#bytes = grown;
    }
    const target = this.#bytes;
    if (size > FEW_BYTES) target.set(bytes.subarray(from, to), start);
    else for (let i = 0; i < size; i++) target[start + i] = bytes[from + i]!;
    return start - from;
  }
}
