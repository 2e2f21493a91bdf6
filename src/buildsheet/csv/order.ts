import { type Finding, type FindingSubject, findingOf } from "../../check/finding.ts";
import type { Suspicion } from "../../check/likely-slip.ts";

export const suspected = ({ kind, details }: Suspicion, subject: FindingSubject): Finding => findingOf(kind, subject, details);

interface Known {
  finding: Finding;
  /** How many readings of the batch there were before it was known. */
  at: number;
}

/**
 * Rows are judged and seen beside their like one batch after the other; findings of both are told in
 * the order in which they would be known reading by reading, so that it does not depend on the batches.
 */
export class InOrder {
  #ofRows: Known[] = [];
  #ofLike: Known[] = [];

  constructor(readonly found: (finding: Finding) => void) {}

  ofRow(finding: Finding, at: number): void {
    this.#ofRows.push({ finding, at });
  }

  ofLike(finding: Finding, at: number): void {
    this.#ofLike.push({ finding, at });
  }

  /** Findings that are not told yet. */
  get waiting(): number {
    return this.#ofRows.length + this.#ofLike.length;
  }

  /** All that is known of a batch that has been gone through. */
  tell(): void {
    let row = 0;
    for (const { finding, at } of this.#ofLike) {
      for (; row < this.#ofRows.length && this.#ofRows[row]!.at <= at; row++) this.found(this.#ofRows[row]!.finding);
      this.found(finding);
    }
    for (; row < this.#ofRows.length; row++) this.found(this.#ofRows[row]!.finding);
    this.#ofRows = [];
    this.#ofLike = [];
  }
}
