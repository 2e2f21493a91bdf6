import type { FindingKind, FindingSubject } from "../finding.ts";
import type { LikelySlip } from "../likely-slip.ts";
import { ENOUGH, GroupOutliers, isOrdinary, type PendingRow, type ReadingGroup, type WatchedReading } from "../outliers.ts";
import type { Named } from "./row-names.ts";
import { decoded, type Scanner } from "./scanner.ts";

/** What a row is about, from its line alone, for whoever wants to know. */
export type SubjectOf = (line: number, text: string) => () => FindingSubject;

/** Sees readings beside their like as they pass, in the order of the file. */
export class OutlierPass {
  readonly #watch: GroupOutliers<PendingRows>;
  #named: Named | undefined;
  #group: ReadingGroup<PendingRows> | undefined;

  constructor(
    report: (suspicion: LikelySlip, subject: FindingSubject) => void,
    readonly subjectOf: SubjectOf,
  ) {
    this.#watch = new GroupOutliers(
      (watched, suspicion) => report(suspicion, watched.subject()),
      () => new PendingRows(subjectOf),
    );
  }

  /** `told`: what its limits have told of it already. */
  add(record: Scanner, value: number, named: Named, told?: FindingKind): void {
    // Most rows are named as the row before, whose group cannot have been closed since.
    if (named !== this.#named) this.#group = this.#watch.group(named.group);
    this.#named = named;
    const group = this.#group!;
    const { unit } = named;
    if (group.waiting) {
      group.waiting.add(record, value, unit, told);
      this.#watch.added(group);
    } else if (!isOrdinary(group, value, unit)) this.#watch.look(group, { value, unit, told, subject: this.subjectOf(record.line, record.raw()) });
  }

  /** Looks at everything that is still held back. */
  finish(): void {
    this.#watch.finish();
  }
}

/** Room for a group's lines to begin with; longer ones get more. */
const BYTES = 1024;
/** Up to so many are copied fastest one by one. */
const FEW_BYTES = 128;

/**
 * Readings that wait for their like, kept as the bytes of their lines: thousands of groups stand open
 * at a time, and each of them is filled and emptied again and again.
 */
class PendingRows implements PendingRow {
  length = 0;
  readonly #values = new Float64Array(ENOUGH);
  readonly #lines = new Float64Array(ENOUGH);
  /** Where the text of each ends in the bytes, which is where that of the next begins. */
  readonly #ends = new Int32Array(ENOUGH);
  readonly #units: (string | undefined)[] = new Array(ENOUGH).fill(undefined);
  readonly #told: (FindingKind | undefined)[] = new Array(ENOUGH).fill(undefined);
  #bytes = new Uint8Array(BYTES);
  #size = 0;

  constructor(readonly subjectOf: SubjectOf) {}

  add({ line, bytes, from, to }: Scanner, value: number, unit: string | undefined, told: FindingKind | undefined): void {
    const at = this.length++;
    this.#values[at] = value;
    this.#lines[at] = line;
    this.#copy(bytes, from, to);
    this.#ends[at] = this.#size;
    this.#units[at] = unit;
    this.#told[at] = told;
  }

  valueAt(i: number): number {
    return this.#values[i]!;
  }

  unitAt(i: number): string | undefined {
    return this.#units[i];
  }

  /** A file tells what is measured by its unit alone. */
  measuresAt(): undefined {}

  at(i: number): WatchedReading {
    const text = () => decoded(this.#bytes, i === 0 ? 0 : this.#ends[i - 1]!, this.#ends[i]!);
    return { value: this.valueAt(i), unit: this.#units[i], told: this.#told[i], subject: () => this.subjectOf(this.#lines[i]!, text())() };
  }

  clear(): void {
    this.length = 0;
    this.#size = 0;
    // A group of long lines must not keep its room for ever.
    if (this.#bytes.length > 16 * BYTES) this.#bytes = new Uint8Array(BYTES);
  }

  /** Puts bytes behind those that are there. */
  #copy(bytes: Uint8Array, from: number, to: number): void {
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
  }
}
