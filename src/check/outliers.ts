import { ownCauses } from "./causes.ts";
import type { FindingCollector } from "./collect.ts";
import type { FindingKind, FindingSubject } from "./finding.ts";
import type { CellJudgement } from "./judge.ts";
import {
  areNear,
  farFrom,
  type LikelySlip,
  type MeasuredKind,
  measuredKindOf,
  type RobustStatistics,
  RobustStatisticsBetween,
  robustStatistics,
  suspicionOn,
  thousandfoldOver,
} from "./likely-slip.ts";

/** A reading that stands in a group of like ones. */
export interface WatchedReading {
  value: number;
  /** As written beside it, if at all. */
  unit?: string | undefined;
  /** What it measures, where that is known whatever its unit. */
  measures?: MeasuredKind;
  /** What has been told of it already by its limits. */
  told?: FindingKind | undefined;
  subject(): FindingSubject;
}

/** The readings of a group that wait until enough of their like are known. */
export interface PendingRow {
  readonly length: number;
  valueAt(i: number): number;
  unitAt(i: number): string | undefined;
  measuresAt(i: number): MeasuredKind;
  at(i: number): WatchedReading;
  clear(): void;
}

/** They are kept as they come; whoever has millions of them keeps them smaller. Most groups never have a second one. */
class Readings implements PendingRow {
  #first: WatchedReading | undefined;
  #others: WatchedReading[] = [];

  get length(): number {
    return this.#first ? this.#others.length + 1 : 0;
  }
  add(watched: WatchedReading): void {
    if (this.#first) this.#others.push(watched);
    else this.#first = watched;
  }
  at(i: number): WatchedReading {
    return i === 0 ? this.#first! : this.#others[i - 1]!;
  }
  valueAt(i: number): number {
    return this.at(i).value;
  }
  unitAt(i: number): string | undefined {
    return this.at(i).unit;
  }
  measuresAt(i: number): MeasuredKind {
    return this.at(i).measures;
  }
  clear(): void {
    this.#first = undefined;
    if (this.#others.length > 0) this.#others = [];
  }
}

export interface ReadingGroup<W extends PendingRow> {
  /** Its name says what is read, so that its readings are of one thing. */
  isOfOneThing: boolean;
  /** Held back until the group is known well enough; `undefined` from then on. */
  waiting: W | undefined;
  unit: string | undefined;
  /** As far as its unit tells. */
  measures: MeasuredKind;
  alike: RobustStatistics | undefined;
  /** How far from the middle a reading must be to be looked at. */
  far: number;
}

/** Readings after which a group's unit and middle stand; what comes later is compared at once. */
export const ENOUGH = 32;

/** Groups kept open at once; the one that opened first is closed to make room. */
const MOST_GROUPS = 5000;

/**
 * Watches readings group by group as they pass and says which look mistyped. Memory stays the same
 * however many pass: a group keeps its first readings only.
 */
export class GroupOutliers<W extends PendingRow> {
  readonly #groups = new Map<string, ReadingGroup<W>>();
  /** Goes through the groups in the order in which they opened, also those that are yet to come. */
  readonly #oldest = this.#groups.entries();
  /** Emptied by groups that are known now, to be filled by others. */
  readonly #spare: W[] = [];

  constructor(
    readonly report: (watched: WatchedReading, suspicion: LikelySlip) => void,
    readonly fresh: () => W,
  ) {}

  /** To be used at once: a group that has been closed to make room becomes another. */
  group(name: string): ReadingGroup<W> {
    let group = this.#groups.get(name);
    if (!group) {
      group = this.#closed() ?? { isOfOneThing: false, waiting: undefined, unit: undefined, measures: undefined, alike: undefined, far: 0 };
      // Names end with the characteristic.
      group.isOfOneThing = !name.endsWith("|");
      group.waiting = this.#spare.pop() ?? this.fresh();
      this.#groups.set(name, group);
    }
    return group;
  }

  /** To be told after a reading has been put among those that wait. */
  added(group: ReadingGroup<W>): void {
    if (group.waiting!.length >= ENOUGH) this.#settle(group);
  }

  /** A reading of a group that waits no more. */
  look(group: ReadingGroup<W>, watched: WatchedReading): void {
    const suspicion = suspicionOf(group, watched.value, watched.unit, watched.measures);
    if (suspicion && suspicion.kind !== watched.told) this.report(watched, suspicion);
  }

  /** Looks at everything that is still held back. */
  finish(): void {
    for (const group of this.#groups.values()) this.#end(group);
    this.#groups.clear();
  }

  /** The group that opened first, when there is no room for another. */
  #closed(): ReadingGroup<W> | undefined {
    if (this.#groups.size < MOST_GROUPS) return undefined;
    const [name, group] = this.#oldest.next().value!;
    this.#end(group);
    this.#groups.delete(name);
    group.alike = undefined;
    return group;
  }

  /** Nothing more comes of this group: of readings close together in one unit there is nothing to say. */
  #end(group: ReadingGroup<W>): void {
    if (group.waiting && areClose(group.waiting)) this.#release(group);
    else this.#settle(group);
  }

  #release(group: ReadingGroup<W>): void {
    group.waiting!.clear();
    this.#spare.push(group.waiting!);
    group.waiting = undefined;
  }

  #settle(group: ReadingGroup<W>): void {
    const { waiting } = group;
    if (!waiting) return;
    group.unit = mostFrequent(waiting);
    group.measures = measuredKindOf(group.unit);
    const sample: number[] = [];
    for (let i = 0; i < waiting.length; i++) if ((waiting.unitAt(i) ?? group.unit) === group.unit) sample.push(waiting.valueAt(i));
    group.alike = robustStatistics(sample);
    if (group.alike) group.far = farFrom(group.alike);
    for (let i = 0; i < waiting.length; i++) {
      if (suspicionOf(group, waiting.valueAt(i), waiting.unitAt(i), waiting.measuresAt(i))) this.look(group, waiting.at(i));
    }
    this.#release(group);
  }
}

/** True when nothing about a reading is odd beside its group, which is known. */
export const isOrdinary = (group: ReadingGroup<PendingRow>, value: number, unit: string | undefined): boolean => suspicionOf(group, value, unit) === undefined;

function suspicionOf(
  { unit, measures, alike, far, isOfOneThing }: ReadingGroup<PendingRow>,
  value: number,
  ownUnit: string | undefined,
  own?: MeasuredKind,
): LikelySlip | undefined {
  if (ownUnit !== undefined && ownUnit !== unit)
    return { kind: "mixed units", details: { unit: ownUnit, likeUnit: unit ?? "", expected: null, beside: null, converted: null, causes: [] } };
  // Most readings are no further, which is all that there is to ask.
  if (!alike || Math.abs(value - alike.middle) <= far) return undefined;
  return suspicionOn(value, alike, own ?? measures, isOfOneThing);
}

/** The unit that comes most often; the first of equals. */
function mostFrequent(readings: PendingRow): string | undefined {
  if (areAllOf(readings, readings.unitAt(0))) return readings.unitAt(0);
  const counts = new Map<string, number>();
  for (let i = 0; i < readings.length; i++) {
    const unit = readings.unitAt(i);
    if (unit !== undefined) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  }
  let best: string | undefined;
  for (const [unit, count] of counts) if (best === undefined || count > counts.get(best)!) best = unit;
  return best;
}

/** As close as readings are that are never looked at, whatever their middle is. */
function areClose(readings: PendingRow): boolean {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < readings.length; i++) {
    const value = readings.valueAt(i);
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return areNear(least, most) && areAllOf(readings, readings.unitAt(0));
}

function areAllOf(readings: PendingRow, unit: string | undefined): boolean {
  for (let i = 0; i < readings.length; i++) if (readings.unitAt(i) !== unit) return false;
  return true;
}

/** Watches readings that are kept as they come. */
export class Outliers extends GroupOutliers<Readings> {
  constructor(report: (watched: WatchedReading, suspicion: LikelySlip) => void) {
    super(report, () => new Readings());
  }

  add(name: string, watched: WatchedReading): void {
    const group = this.group(name);
    if (!group.waiting) this.look(group, watched);
    else {
      group.waiting.add(watched);
      this.added(group);
    }
  }
}

/** With what the reading itself causes where it is judged. */
export const tellSuspicion = (report: FindingCollector, subject: FindingSubject, { kind, details }: LikelySlip): void =>
  report.find(kind, subject, { ...details, causes: ownCauses(subject) });

/** A typed reading beside its limits and beside its like: does it look mistyped? */
export function compareReading(
  report: FindingCollector,
  watch: Pick<Outliers, "add">,
  judged: CellJudgement,
  about: () => FindingSubject,
  unit: string | undefined,
  group: string | undefined,
): void {
  if (judged.as !== "judged" && judged.as !== "missing limit") return;
  report.inputs++;
  const { value } = judged;
  const { lower, upper } = judged.as === "judged" ? judged.limits : {};
  const suspicion = upper === undefined ? undefined : besideLimits(value, lower, upper, unit);
  if (suspicion) tellSuspicion(report, about(), suspicion);
  if (group !== undefined) watch.add(group, { value, unit, subject: about, told: suspicion?.kind });
}

const besideLimits = (value: number, lower: number | undefined, upper: number, unit: string | undefined): LikelySlip | undefined =>
  lower === undefined ? thousandfoldOver(value, upper) : suspicionOn(value, new RobustStatisticsBetween(lower, upper), measuredKindOf(unit));
