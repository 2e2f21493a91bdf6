import { broadcast } from "../core/broadcast.ts";
import { decimal, isAbove } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { decimalsOf, fixed, uncertaintyText } from "../core/number-text.ts";
import { COVERAGE_FACTOR } from "../functions/wear/change-params.ts";
import { wearLife } from "../functions/wear/wear-life.ts";
import { wearRate } from "../functions/wear/wear-rate.ts";
import type { ComparisonVerdict } from "./judgement.ts";
import type { PlaceEstimate } from "./place-change.ts";
import type { ReadingSubject } from "./readings.ts";

/** How one place wears, by WEARRATE and WEARLIFE over its sessions. Rates are per 1000 hours, as makers' manuals print them. */
export interface Wear extends ReadingSubject {
  label: string;
  unit: string | undefined;
  /** Sessions with known hours, and the hours of the first and the last. */
  n: number;
  useFrom: number;
  useTo: number;
  rate: number;
  /** Interval of the rate at 95 %. */
  lower: number;
  upper: number;
  isReal: boolean;
  limit: number | null;
  /** Hours at which the line meets the limit, the earliest and the latest; `null` without such. */
  life: number | null;
  earliest: number | null;
  latest: number | null;
  /** Where the rate may be zero: the hours before which the limit is not met. */
  notBefore: number | null;
  isPast: boolean;
  verdict: ComparisonVerdict;
  says: string;
}

export const PER = 1000;

/** Wear of one place; `undefined` where the hours or the uncertainty are not known. `hoursBetween` stands in where the sessions' own hours do not tell them apart. */
export function wearOfPlace(place: PlaceEstimate & { verdict: ComparisonVerdict }, hoursBetween: number | undefined): Wear | undefined {
  const history = historyOf(place, hoursBetween);
  if (history.length < 2 || place.doubts === null) return undefined;
  const use = history.map(({ hours }) => [hours]);
  const size = history.map(({ value }) => [value]);
  // One gauge is not known better because another one was: the larger counts for all.
  const { before, after } = place.doubts;
  const U = COVERAGE_FACTOR * Math.max(...[before, after].map(({ own, common }) => Math.hypot(Math.sqrt(own.variance), common)));
  const made = broadcast(wearRate, [use, size, U]);
  // Hours that are all equal show no rate.
  if (made instanceof Fault || !Array.isArray(made)) return undefined;
  const [slope, from, to, words] = made[1] as [number, number, number, string];
  const limit = limitFor(slope, place);
  const { engine, cylinder, characteristic, position, label, unit, verdict } = place;
  const wear = {
    ...{ engine, cylinder, characteristic, position, label, unit, verdict },
    ...{ n: history.length, useFrom: history[0]!.hours, useTo: history.at(-1)!.hours },
    ...{ rate: decimal(PER * slope), lower: decimal(PER * from), upper: decimal(PER * to), isReal: words !== "not distinguishable from zero" },
    ...{ limit: limit ?? null, isPast: limit !== undefined && isPast(slope, place.after.value, limit) },
    ...lifeOf(use, size, limit, U),
  };
  return { ...wear, says: told(wear, place) };
}

/** Sessions with their hours, each once: a later file may repeat what an earlier one holds. */
function historyOf({ history, before, after }: PlaceEstimate, hoursBetween: number | undefined): { hours: number; value: number }[] {
  const once = new Map<string, { hours: number; value: number }>();
  for (const { hours, value } of history) if (hours !== undefined) once.set(`${hours}|${value}`, { hours, value });
  const found = [...once.values()].sort((a, b) => a.hours - b.hours);
  if (hoursBetween === undefined || new Set(found.map(({ hours }) => hours)).size > 1) return found;
  return [
    { hours: 0, value: before.value },
    { hours: hoursBetween, value: after.value },
  ];
}

/** The limit towards which the size goes: that of the later session, or else of the earlier one. */
function limitFor(rate: number, { before, after }: PlaceEstimate): number | undefined {
  if (rate === 0) return undefined;
  const side = rate > 0 ? "upper" : "lower";
  return [...after.readings, ...before.readings].find((reading) => reading[side] !== undefined)?.[side];
}

const isPast = (rate: number, size: number, limit: number): boolean => (rate > 0 ? isAbove(size, limit) : isAbove(limit, size));

type Life = Pick<Wear, "life" | "earliest" | "latest" | "notBefore">;
const NO_LIFE: Life = { life: null, earliest: null, latest: null, notBefore: null };

function lifeOf(use: number[][], size: number[][], limit: number | undefined, U: number): Life {
  const made = limit === undefined ? undefined : broadcast(wearLife, [use, size, limit, U]);
  if (!Array.isArray(made)) return NO_LIFE;
  const [life, earliest, latest, notBefore] = made[1]!.map((value) => (typeof value === "number" ? value : null)) as [
    number | null,
    number | null,
    number | null,
    number | null,
  ];
  return { life, earliest, latest, notBefore };
}

function told(wear: Omit<Wear, "says">, place: PlaceEstimate): string {
  const { rate, lower, upper, isReal, useFrom, useTo, n, limit, life, earliest, notBefore } = wear;
  // As many decimals as the half width has with two significant digits.
  const decimals = decimalsOf(Number(uncertaintyText(decimal((upper - lower) / 2))));
  const [least, most] = [lower, upper].map(Math.abs).sort((a, b) => a - b) as [number, number];
  if (!isReal) {
    const soonest = notBefore === null ? "" : `; it does not come to its limit ${limit} before ${Math.floor(notBefore)} h`;
    return `no wear rate yet after ${useTo - useFrom} h: not distinguishable from zero, at most ${fixed(most, decimals)} in ${PER} h${soonest}`;
  }
  const grows = `${rate > 0 ? "grows" : "shrinks"} ${fixed(Math.abs(rate), decimals)} in ${PER} h (${fixed(least, decimals)} to ${fixed(most, decimals)}${n > 2 ? `, ${n} measurings${n === 3 ? ", which are few" : ""}` : ""})`;
  if (limit === null) return grows;
  const name = fixed(limit, Math.max(place.decimals, decimalsOf(limit)));
  if (wear.isPast || (life !== null && !isAbove(life, useTo))) return `${grows}; it is past its limit ${name}`;
  if (life === null) return grows;
  const left = Math.floor((earliest ?? life) - useTo);
  const soonest = left > 0 ? `at the earliest after ${left} h` : "and it may be there already";
  return `${grows}; at that rate it comes to its limit ${name} after another ${Math.round(life - useTo)} h, ${soonest}`;
}
