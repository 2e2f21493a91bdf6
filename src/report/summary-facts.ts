import type { FindingKind } from "../check/finding.ts";
import type { Facts, Size, Tally } from "./stored-facts.ts";

export type { Facts, Size, Tally };

const MOST_WRITTEN = 150;

/** Few enough to be written down: those that outweigh the others. */
export function fewerFacts(all: Facts): Facts {
  const weight = ({ kind, count }: Tally): number => count + (kind === "outside limit" ? 1e9 : 0);
  // Ties by their names, so that it does not matter who counted what first.
  const nameOf = ({ kind, characteristic, engine = "" }: Tally): string => `${kind}|${characteristic}|${engine}`;
  const tallies = [...all.tallies].sort((a, b) => weight(b) - weight(a) || (nameOf(a) < nameOf(b) ? -1 : 1)).slice(0, MOST_WRITTEN);
  const kept = tallies.reduce((sum, { count }) => sum + count, 0);
  return { ...all, tallies, more: all.more + all.tallies.reduce((sum, { count }) => sum + count, 0) - kept };
}

/** Different findings that are told apart, and characteristics of which a reading is kept. */
const MOST_TALLIES = 5000;
const MOST_SIZES = 100;

/** Counts findings by kind, characteristic and engine, up to so many different ones. */
export class Tallies {
  readonly #found = new Map<string, Tally>();
  more = 0;

  add(kind: FindingKind, { characteristic, engine }: Subject): void {
    const key = `${kind}|${engine ?? ""}|${characteristic}`;
    const tally = this.#found.get(key);
    if (tally) tally.count++;
    else if (this.#found.size < MOST_TALLIES) this.#found.set(key, { kind, characteristic, engine, count: 1 });
    else this.more++;
  }

  get all(): Tally[] {
    return [...this.#found.values()];
  }
}

/** Keeps the least allowed reading of each characteristic, up to so many of them. */
export class KeptSizes {
  readonly #found = new Map<string, { size: Size; margin: number }>();
  more = 0;

  add(size: Size, margin: number): void {
    const key = `${size.engine ?? ""}|${size.characteristic}|${size.unit ?? ""}`;
    const known = this.#found.get(key);
    if (!known && this.#found.size >= MOST_SIZES) this.more++;
    else if (!known || margin < known.margin) this.#found.set(key, { size, margin });
  }

  get all(): Size[] {
    return [...this.#found.values()].map(({ size }) => size);
  }
}

/** What a label is about. */
export interface Subject {
  characteristic: string;
  engine?: string | undefined;
}
