import { type Alike, alikeOf, type Suspicion, suspect } from "./alike.ts";
import type { Subject } from "./report.ts";
import { isLengthUnit } from "./units.ts";

/** A reading that stands in a group of like ones. */
export interface Watched {
  value: number;
  /** As written beside it, if at all. */
  unit?: string | undefined;
  /** Known to be a length whatever its unit. */
  isLength?: boolean;
  subject: () => Subject;
}

interface Group {
  /** Held back until the group is known well enough. */
  waiting: Watched[];
  sample: number[];
  unit: string | undefined;
  alike: Alike | undefined;
  settled: boolean;
}

/** Readings after which a group's unit and middle stand; what comes later is compared at once. */
const ENOUGH = 32;
/** Groups kept open at once; the one that opened first is closed to make room. */
const MOST_GROUPS = 5000;

/**
 * Watches readings group by group as they pass and says which look mistyped. Memory stays the same
 * however many pass: a group keeps its first readings only.
 */
export class Watch {
  readonly #groups = new Map<string, Group>();

  constructor(readonly report: (watched: Watched, suspicion: Suspicion) => void) {}

  add(name: string, watched: Watched): void {
    let group = this.#groups.get(name);
    if (!group) {
      this.#makeRoom();
      group = { waiting: [], sample: [], unit: undefined, alike: undefined, settled: false };
      this.#groups.set(name, group);
    }
    if (group.settled) this.#look(group, watched);
    else {
      group.waiting.push(watched);
      if (group.waiting.length >= ENOUGH) this.#settle(group);
    }
  }

  /** Looks at everything that is still held back. */
  finish(): void {
    for (const group of this.#groups.values()) this.#settle(group);
    this.#groups.clear();
  }

  #makeRoom(): void {
    if (this.#groups.size < MOST_GROUPS) return;
    const [oldest, group] = this.#groups.entries().next().value!;
    this.#settle(group);
    this.#groups.delete(oldest);
  }

  #settle(group: Group): void {
    if (group.settled) return;
    group.settled = true;
    group.unit = mostFrequent(group.waiting.flatMap(({ unit }) => unit ?? []));
    group.sample = group.waiting.filter(({ unit }) => unit === undefined || unit === group.unit).map(({ value }) => value);
    group.alike = alikeOf(group.sample);
    for (const watched of group.waiting) this.#look(group, watched);
    group.waiting = [];
  }

  #look({ unit, alike }: Group, watched: Watched): void {
    const suspicion =
      watched.unit !== undefined && watched.unit !== unit
        ? ({ kind: "mixed units", sentence: `the unit says ${watched.unit} where the like readings are in ${unit}` } as const)
        : alike && suspect(watched.value, alike, watched.isLength ?? (unit === undefined ? undefined : isLengthUnit(unit)));
    if (suspicion) this.report(watched, suspicion);
  }
}

/** The one that comes most often; the first of equals. */
function mostFrequent(texts: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  let best: string | undefined;
  for (const [text, count] of counts) if (best === undefined || count > counts.get(best)!) best = text;
  return best;
}
