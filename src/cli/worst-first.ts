import { type Finding, severityOf } from "../check/finding.ts";
import { tally, wordOf } from "../check/finding-words.ts";
import { MOST_SORTED } from "./checked.ts";

/** Findings of one input, worst first. Of very many only the worst can be asked for: `length` counts all. */
export interface Found extends Iterable<Finding> {
  readonly length: number;
}

interface Ranked {
  kind: number;
  severity: number;
  finding: Finding;
}

const byRank = (a: Ranked, b: Ranked): number => a.kind - b.kind || b.severity - a.severity || a.finding.line! - b.finding.line!;

/**
 * Takes any number of findings of a file of readings and keeps the worst, ties in the order of lines, so
 * that memory stays the same however many there are; the others are passed on while the file is read.
 */
export class WorstFirst implements Found {
  #kept: Ranked[] = [];
  readonly #passed = new Map<string, number>();
  /** The least bad of those that are kept, once there are as many as are. */
  #last: Ranked | undefined;
  length = 0;

  constructor(
    readonly most = MOST_SORTED,
    readonly passOn: (finding: Finding) => void = () => {},
  ) {}

  add(finding: Finding): void {
    this.length++;
    const { kind, severity } = severityOf(finding);
    const ranked: Ranked = { kind, severity, finding };
    // Most are no worse than what is kept: they leave at once, and hold no memory until the next time of putting in order.
    if (this.#last && byRank(ranked, this.#last) > 0) this.#pass(finding);
    // Some more than are kept, so that they are not put in order for each new one.
    else if (this.#kept.push(ranked) > 1.25 * this.most) this.sort();
  }

  #pass(finding: Finding): void {
    const word = wordOf(finding);
    this.#passed.set(word, (this.#passed.get(word) ?? 0) + 1);
    this.passOn(finding);
  }

  /** Puts those that there are in order. To be called when there are no more. */
  sort(): void {
    for (const { finding } of this.#kept.sort(byRank).splice(this.most)) this.#pass(finding);
    this.#last = this.#kept[this.most - 1];
  }

  /** How many findings there are of each word, those that were passed on too. */
  words(): Map<string, number> {
    const words = tally(this);
    for (const [word, count] of this.#passed) words.set(word, (words.get(word) ?? 0) + count);
    return words;
  }

  *[Symbol.iterator](): Generator<Finding> {
    for (const { finding } of this.#kept) yield finding;
  }
}
