import type { Subject } from "../check/report.ts";
import type { Finding } from "../finding.ts";
import { Batch } from "./batch.ts";
import { BesideLike } from "./beside.ts";
import type { Head } from "./head.ts";
import type { DecimalSign } from "./numbers.ts";
import { suspected } from "./order.ts";
import { type Counts, CsvRows, MOST_COARSE } from "./rows.ts";
import { brokenOff } from "./scanner.ts";
import type { Segment } from "./segment.ts";

/** Segments of one file put together in their order: what is to be seen beside its like does not know that they were ever apart. */
export class GatheredSegments {
  readonly #beside: BesideLike;
  readonly #counts: Counts = { rowsIn: 0, checked: 0, refused: 0, inputs: 0 };
  readonly #once = new Set<string>();
  #lineBefore: number;
  #unread: string | undefined;

  constructor(
    name: string,
    head: Head,
    decimal: DecimalSign,
    readonly found: (finding: Finding) => void,
  ) {
    const { subjectOf } = new CsvRows(name, head, decimal, new Batch(), { found });
    this.#beside = new BesideLike((suspicion, subject: Subject) => found(suspected(suspicion, subject)), subjectOf);
    this.#lineBefore = head.nextLine - 1;
  }

  /** Gives the line before the first of the segment's. */
  take({ batch, bytes, counts, lines, once, broken }: Omit<Segment, "start" | "end">): number {
    const before = this.#lineBefore;
    this.#beside.take(batch, bytes, before);
    for (const { key, finding } of once) {
      if (this.#once.has(key) || this.#once.size >= MOST_COARSE) continue;
      this.#once.add(key);
      const line = before + finding.line!;
      this.found({ ...finding, line, cell: { ...finding.cell, row: line - 1 } });
    }
    for (const name of ["rowsIn", "checked", "refused", "inputs"] as const) this.#counts[name] += counts[name];
    this.#lineBefore += lines;
    if (broken !== undefined) this.#unread = brokenOff({ ...broken, line: before + broken.line });
    return before;
  }

  result(): Counts & { unread?: string } {
    this.#beside.finish();
    return this.#unread === undefined ? this.#counts : { ...this.#counts, unread: this.#unread };
  }
}
