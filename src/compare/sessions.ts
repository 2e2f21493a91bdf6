import { groupedBy, largestNumber, smallestNumber } from "../core/grouped.ts";
import { COVERAGE_FACTOR } from "../functions/wear/change-params.ts";
import { studentQuantile } from "../math/distributions.ts";
import { type Doubt, doubtOfOne, weighed } from "../math/gauge-rule.ts";
import { mean, sumOfSquares } from "../math/statistics.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import type { Reading } from "./readings.ts";

/** What one measuring session found at one place: several readings are repeats, and their mean counts. */
export interface Session {
  value: number;
  readings: readonly Reading[];
  hours: number | undefined;
  /** Of the part, where all readings say it: their mean. */
  temperature: number | undefined;
}

/** The sessions of sound readings of one place in the order of their hours. */
export function sessionsOf(readings: readonly Reading[]): Session[] {
  // A repeat whose hours nobody typed belongs to the only session that there is.
  const told = new Set(readings.flatMap(({ hours }) => hours ?? []));
  const only = told.size === 1 ? [...told][0] : undefined;
  return [...groupedBy(readings, ({ hours }) => hours ?? only)].map(([hours, own]) => ({
    hours,
    readings: own,
    value: own.length === 1 ? own[0]!.value! : mean(own.map(({ value }) => value!)),
    temperature: own.some(({ temperature }) => temperature === undefined) ? undefined : mean(own.map(({ temperature }) => temperature!)),
  }));
}

/** How far a session's value may be off, as standard uncertainties: what is its own, and what it shares with all readings of the session. */
export interface SessionDoubt {
  own: Doubt;
  common: number;
  /** The gauge's U was not split: all of it stands in `common`, although some may be each reading's own. */
  isSplit: boolean;
}

/** U of the own part of one reading: all of U where it is not split, as where what is common cancels that makes it count most. */
export const ownUOf = (session: Session, uncertainty: number): number => {
  const common = commonOf(session) ?? 0;
  return Math.sqrt(Math.max(uncertainty ** 2 - Math.min(common, uncertainty) ** 2, 0));
};

/** Expanded uncertainty of one reading of a session; `undefined` for none. 0 says no more than a blank. */
export const uncertaintyOf = ({ readings }: Session): number | undefined => largestNumber(readings.map(({ uncertainty = 0 }) => uncertainty)) || undefined;

/** The part of U that is common, where every reading of the session says so. */
function commonOf({ readings }: Session): number | undefined {
  const typed = readings.map(({ common }) => common);
  return typed.includes(undefined) ? undefined : largestNumber(typed as number[]);
}

/** Scatter of repeats by side, characteristic, unit and gauge. */
export class RepeatScatter {
  readonly #pools = new Map<string, { squares: number; degreesOfFreedom: number }>();
  /** Pairs of repeats that are looked at. */
  #repeats = 0;

  take(side: string, { readings }: Session): void {
    if (readings.length < 2) return;
    const pool = this.#pools.get(poolOf(side, readings[0]!)) ?? { squares: 0, degreesOfFreedom: 0 };
    this.#pools.set(poolOf(side, readings[0]!), pool);
    pool.squares += sumOfSquares(readings.map(({ value }) => value!));
    pool.degreesOfFreedom += readings.length - 1;
    this.#repeats += (readings.length * (readings.length - 1)) / 2;
  }

  /** Takes a session out again, once it is known to contradict itself. */
  leaveOut(side: string, { readings }: Session): void {
    const pool = this.#pools.get(poolOf(side, readings[0]!))!;
    pool.squares = Math.max(pool.squares - sumOfSquares(readings.map(({ value }) => value!)), 0);
    pool.degreesOfFreedom -= readings.length - 1;
  }

  /**
   * The doubt of a session whose gauge has the expanded uncertainty U. The scatter of repeats takes the place
   * of the reading's own part where it is larger, and the mean of repeats shrinks that part alone: a U that
   * is not split may all be common to the session, so no repeats make it smaller. With a `master` read before
   * and after, what is common cancels, and what the master's own readings leave stands in its place.
   */
  doubtOf(side: string, session: Session, uncertainty: number, master: number | undefined, heat: number): SessionDoubt {
    const split = master === undefined ? commonOf(session) : 0;
    const common = Math.min(split ?? uncertainty, uncertainty);
    const ownU = master === undefined ? Math.sqrt(Math.max(uncertainty ** 2 - common ** 2, 0)) : ownUOf(session, uncertainty);
    const { scatter, degreesOfFreedom } = this.#scatterOf(side, session);
    const own = weighed(doubtOfOne(scatter, degreesOfFreedom, ownU / COVERAGE_FACTOR), 1 / session.readings.length);
    return { own, common: Math.hypot(common / COVERAGE_FACTOR, master ?? 0, heat), isSplit: split !== undefined };
  }

  #scatterOf(side: string, session: Session, without = false): { scatter: number; degreesOfFreedom: number } {
    const pool = this.#pools.get(poolOf(side, session.readings[0]!)) ?? { squares: 0, degreesOfFreedom: 0 };
    const own = without && session.readings.length > 1 ? sumOfSquares(session.readings.map(({ value }) => value!)) : 0;
    const degreesOfFreedom = pool.degreesOfFreedom - (without ? session.readings.length - 1 : 0);
    return { scatter: degreesOfFreedom > 0 ? Math.sqrt(Math.max(pool.squares - own, 0) / degreesOfFreedom) : 0, degreesOfFreedom };
  }

  /**
   * True where repeats of one place lie so far apart that neither the gauge nor the scatter of the other repeats explains
   * it, once in a hundred comparisons (all pairs of repeats together, C. E. Bonferroni 1936). Without other repeats
   * nothing shows that it is this place: then its scatter counts, unless a gauge ten times as bad would not explain it.
   */
  contradicts(side: string, session: Session, uncertainty: number): boolean {
    if (session.readings.length < 2) return false;
    const values = session.readings.map(({ value }) => value!);
    const range = largestNumber(values) - smallestNumber(values);
    const { scatter, degreesOfFreedom } = this.#scatterOf(side, session, true);
    const worst = degreesOfFreedom < FEW ? MUCH_WORSE : 1;
    const { variance, degreesOfFreedom: known } = doubtOfOne(scatter, degreesOfFreedom, (worst * uncertainty) / COVERAGE_FACTOR);
    return range > studentQuantile(1 - RARE / this.#repeats, known) * Math.sqrt(2 * variance);
  }
}

/** So seldom are sound repeats said to contradict one another, in one of so many comparisons. */
const RARE = 0.01;
/** Fewer repeats elsewhere show little. */
const FEW = 3;
/** Where nothing else tells how far repeats scatter: a choice of ours, for gauges that are worse than their U says. */
const MUCH_WORSE = 10;

const poolOf = (side: string, { characteristic, position, unit = "", gauge = "" }: Reading): string =>
  [side, ownCharacteristic(measuredBy(characteristic, position)), unit, foldedHeading(gauge)].join("|");

/** True where both were measured with one gauge on one day: what its setting was off by is in both alike. */
export function sameSession(a: Session, b: Session): boolean {
  const [own, other] = [a, b].map(({ readings }) => new Set(readings.map(({ gauge = "", day = "" }) => `${foldedHeading(gauge)}|${foldedHeading(day)}`)));
  return own!.size === other!.size && [...own!].every((one) => /^[^|]+\|[^|]+$/.test(one) && other!.has(one));
}
