import { COVERAGE_FACTOR } from "../functions/wear/change-params.ts";
import { type Doubt, doubtOfOne, weighed } from "../math/gauge-rule.ts";
import { mean, sumOfSquares } from "../math/statistics.ts";
import { plain } from "../vocabulary/headings.ts";
import { measuredBy, ownCharacteristic } from "../vocabulary/subjects.ts";
import { groupedBy, largestOf } from "./grouped.ts";
import type { Reading } from "./readings.ts";

/** What one measuring session found at one place: several readings are repeats, and their mean counts. */
export interface Session {
  value: number;
  readings: readonly Reading[];
  hours: number | undefined;
}

/** The sessions of sound readings of one place in the order of their hours. */
export function sessionsOf(readings: readonly Reading[]): Session[] {
  return [...groupedBy(readings, ({ hours }) => hours)].map(([hours, own]) => ({
    hours,
    readings: own,
    value: own.length === 1 ? own[0]!.value! : mean(own.map(({ value }) => value!)),
  }));
}

/** How far a session's value may be off, as standard uncertainties: what is its own, and what it shares with all readings of the session. */
export interface SessionDoubt {
  own: Doubt;
  common: number;
  /** The gauge's U was not split: all of it stands in `common`, although some may be each reading's own. */
  isSplit: boolean;
}

/** Expanded uncertainty of one reading of a session; `undefined` for none. 0 says no more than a blank. */
export const uncertaintyOf = ({ readings }: Session): number | undefined => largestOf(readings.map(({ uncertainty = 0 }) => uncertainty)) || undefined;

/** The part of U that is common, where every reading of the session says so. */
function commonOf({ readings }: Session): number | undefined {
  const typed = readings.map(({ common }) => common);
  return typed.includes(undefined) ? undefined : largestOf(typed as number[]);
}

/** Scatter of repeats by side, characteristic, unit and gauge. */
export class RepeatScatter {
  readonly #pools = new Map<string, { squares: number; degreesOfFreedom: number }>();

  take(side: string, { readings }: Session): void {
    if (readings.length < 2) return;
    const pool = this.#pools.get(poolOf(side, readings[0]!)) ?? { squares: 0, degreesOfFreedom: 0 };
    this.#pools.set(poolOf(side, readings[0]!), pool);
    pool.squares += sumOfSquares(readings.map(({ value }) => value!));
    pool.degreesOfFreedom += readings.length - 1;
  }

  /**
   * The doubt of a session whose gauge has the expanded uncertainty U. The scatter of repeats takes the place
   * of the reading's own part where it is larger, and the mean of repeats shrinks that part alone: a U that
   * is not split may all be common to the session, so no repeats make it smaller.
   */
  doubtOf(side: string, session: Session, uncertainty: number): SessionDoubt {
    const split = commonOf(session);
    const common = Math.min(split ?? uncertainty, uncertainty);
    const ownU = Math.sqrt(Math.max(uncertainty ** 2 - common ** 2, 0)) / COVERAGE_FACTOR;
    const { squares = 0, degreesOfFreedom = 0 } = this.#pools.get(poolOf(side, session.readings[0]!)) ?? {};
    const scatter = degreesOfFreedom > 0 ? Math.sqrt(squares / degreesOfFreedom) : 0;
    const own = weighed(doubtOfOne(scatter, degreesOfFreedom, ownU), 1 / session.readings.length);
    return { own, common: common / COVERAGE_FACTOR, isSplit: split !== undefined };
  }
}

const poolOf = (side: string, { characteristic, position, unit = "", gauge = "" }: Reading): string =>
  [side, ownCharacteristic(measuredBy(characteristic, position)), unit, plain(gauge)].join("|");

/** True where both were measured with one gauge on one day: what its setting was off by is in both alike. */
export function sameSession(a: Session, b: Session): boolean {
  const [own, other] = [a, b].map(({ readings }) => new Set(readings.map(({ gauge = "", day = "" }) => `${plain(gauge)}|${plain(day)}`)));
  return own!.size === other!.size && [...own!].every((one) => /^[^|]+\|[^|]+$/.test(one) && other!.has(one));
}
