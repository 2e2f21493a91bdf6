import type { FindingSubject } from "../../check/finding.ts";
import type { Suspicion } from "../../check/likely-slip.ts";
import { GroupWatch, isOrdinary, type Watched } from "../../check/outliers.ts";
import { type Batch, kindTold } from "./batch.ts";
import { HeldLines, type Retold } from "./held.ts";
import { textOf } from "./scanner.ts";

/** Somebody who is told what a reading is suspected of, and after which reading of its batch that was known. */
export type Suspected = (suspicion: Suspicion, subject: FindingSubject, at: number) => void;

/** Sees readings beside their like, batch by batch, in the order of the file. */
export class BesideLike {
  readonly #watch: GroupWatch<HeldLines>;
  #at = 0;

  constructor(
    suspected: Suspected,
    readonly retold: Retold,
  ) {
    const report = (watched: Watched, suspicion: Suspicion): void => suspected(suspicion, watched.subject(), this.#at);
    this.#watch = new GroupWatch(report, () => new HeldLines(retold));
  }

  take(batch: Batch, bytes: Uint8Array): void {
    let i = 0;
    for (let run = 0; run < batch.runs; run++) {
      const { group: name, unit } = batch.names[batch.nameOfRun[run]!]!;
      const end = batch.endOfRun[run]!;
      this.#at = i;
      const group = this.#watch.group(name);
      if (group.waiting) {
        i = group.waiting.add(batch, i, end, unit, bytes);
        this.#at = i - 1;
        this.#watch.added(group);
      }
      for (; i < end; i++) {
        if (isOrdinary(group, batch.values[i]!, unit)) continue;
        this.#at = i;
        const subject = this.retold(batch.lines[i]!, textOf(bytes, batch.froms[i]!, batch.tos[i]!));
        this.#watch.look(group, { value: batch.values[i]!, unit, told: kindTold(batch, i), subject });
      }
    }
  }

  /** Looks at everything that is still held back. */
  finish(): void {
    this.#at = Number.POSITIVE_INFINITY;
    this.#watch.finish();
  }
}
