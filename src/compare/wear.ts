import { broadcast } from "../core/broadcast.ts";
import { decimal, isAbove } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { decimalsOf, fixed, uncertaintyText } from "../core/number-text.ts";
import { COVERAGE_FACTOR } from "../functions/wear/change-params.ts";
import { wearLife } from "../functions/wear/wear-life.ts";
import { wearRate } from "../functions/wear/wear-rate.ts";
import type { UseUnit } from "../vocabulary/heading-words.ts";
import type { ComparisonVerdict } from "./judgement.ts";
import type { PlaceEstimate } from "./place-change.ts";
import type { ReadingSubject } from "./readings.ts";

/** How one place wears, by WEARRATE and WEARLIFE over its sessions. Rates are per 1000 hours, as makers' manuals print them. */
export interface Wear extends ReadingSubject {
  label: string;
  unit: string | undefined;
  /** What use is counted in. */
  useUnit: UseUnit;
  /** The run-in has a rate of its own, which is not drawn on; nor is one of which it is a part. `null` where no length of it is typed. */
  stage: "run-in" | "after the run-in" | "the run-in and after" | null;
  /** Sessions with known use, and that of the first and the last. */
  n: number;
  useFrom: number;
  useTo: number;
  rate: number;
  /** Interval of the rate at 95 %. */
  lower: number;
  upper: number;
  distinguishable: boolean;
  limit: number | null;
  /** Use at which the line meets the limit, the earliest and the latest; `null` without such. */
  life: number | null;
  earliest: number | null;
  latest: number | null;
  /** Where the rate may be zero: the use before which the limit is not met. */
  notBefore: number | null;
  isPast: boolean;
  verdict: ComparisonVerdict;
  says: string;
}

const PER = 1000;

export interface WearOptions {
  /** Stands in where the sessions' own hours do not tell them apart. */
  hours?: number | undefined;
  /** Use that the run-in takes. */
  runIn?: number | undefined;
}

type Point = { hours: number; value: number };

/** Wear of one place; nothing where the use or the uncertainty is not known. With a run-in typed, before its end and after it are apart. */
export function wearOfPlace(place: PlaceEstimate & { verdict: ComparisonVerdict }, { hours, runIn }: WearOptions): Wear[] {
  const { history, useUnit } = historyOf(place, hours);
  if (runIn === undefined) return wearOver(place, history, useUnit, null);
  const parts = [
    [history.filter((point) => point.hours <= runIn), "run-in"],
    [history.filter((point) => point.hours >= runIn), "after the run-in"],
  ] as const;
  const apart = parts.flatMap(([points, stage]) => wearOver(place, points, useUnit, stage));
  const isSpanned = history.length > 1 && history[0]!.hours < runIn && history.at(-1)!.hours > runIn;
  return apart.length === 0 && isSpanned ? wearOver(place, history, useUnit, "the run-in and after") : apart;
}

function wearOver(place: PlaceEstimate & { verdict: ComparisonVerdict }, history: readonly Point[], useUnit: UseUnit, stage: Wear["stage"]): Wear[] {
  if (history.length < 2 || place.doubts === null) return [];
  const use = history.map(({ hours }) => [hours]);
  const size = history.map(({ value }) => [value]);
  // One gauge is not known better because another one was: the larger counts for all.
  const { before, after } = place.doubts;
  const U = COVERAGE_FACTOR * Math.max(...[before, after].map(({ own, common }) => Math.hypot(Math.sqrt(own.variance), common)));
  const made = broadcast(wearRate, [use, size, U]);
  // Uses that are all equal show no rate.
  if (made instanceof Fault || !Array.isArray(made)) return [];
  const [slope, from, to, words] = made[1] as [number, number, number, string];
  const isDrawnOn = stage === null || stage === "after the run-in";
  const limit = isDrawnOn ? limitFor(slope, place) : undefined;
  const { engine, cylinder, characteristic, position, label, unit, verdict } = place;
  const wear = {
    ...{ engine, cylinder, characteristic, position, label, unit, verdict, useUnit, stage },
    ...{ n: history.length, useFrom: history[0]!.hours, useTo: history.at(-1)!.hours },
    ...{ rate: decimal(PER * slope), lower: decimal(PER * from), upper: decimal(PER * to), distinguishable: words !== "not distinguishable from zero" },
    ...{ limit: limit ?? null, isPast: limit !== undefined && isPast(slope, history.at(-1)!.value, limit) },
    ...lifeOf(use, size, limit, U),
  };
  return [{ ...wear, says: told(wear, place) }];
}

/** Sessions with their use, each once: a later file may repeat what an earlier one holds. Uses in two units are none. */
function historyOf({ history, before, difference }: PlaceEstimate, hoursBetween: number | undefined): { history: Point[]; useUnit: UseUnit } {
  const once = new Map<string, Point>();
  const units = new Set<UseUnit>();
  for (const { hours, value, useUnit = "hours" } of history) {
    if (hours === undefined) continue;
    once.set(`${hours}|${value}`, { hours, value });
    units.add(useUnit);
  }
  const [useUnit = "hours"] = units;
  if (units.size > 1) return { history: [], useUnit };
  const found = [...once.values()].sort((a, b) => a.hours - b.hours);
  if (hoursBetween === undefined || new Set(found.map(({ hours }) => hours)).size > 1) return { history: found, useUnit };
  return {
    history: [
      { hours: 0, value: before.value },
      { hours: hoursBetween, value: decimal(before.value + difference) },
    ],
    useUnit: "hours",
  };
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
  const { rate, lower, upper, distinguishable, useFrom, useTo, useUnit, stage, n, limit, life, earliest, notBefore } = wear;
  const unit = useUnit === "hours" ? "h" : useUnit;
  const during =
    stage === null
      ? ""
      : stage === "run-in"
        ? ", in the run-in"
        : stage === "after the run-in"
          ? ", after the run-in"
          : ", the run-in included, so no life is predicted from it";
  // As many decimals as the half width has with two significant digits.
  const decimals = decimalsOf(Number(uncertaintyText(decimal((upper - lower) / 2))));
  const [least, most] = [lower, upper].map(Math.abs).sort((a, b) => a - b) as [number, number];
  if (!distinguishable) {
    const soonest = notBefore === null ? "" : `; it does not come to its limit ${limit} before ${Math.floor(notBefore)} ${unit}`;
    return `no wear rate yet after ${useTo - useFrom} ${unit}${during}: not distinguishable from zero, at most ${fixed(most, decimals)} in ${PER} ${unit}${soonest}`;
  }
  const grows = `${rate > 0 ? "grows" : "shrinks"} ${fixed(Math.abs(rate), decimals)} in ${PER} ${unit}${during} (${fixed(least, decimals)} to ${fixed(most, decimals)}${n > 2 ? `, ${n} measurings${n === 3 ? ", which are few" : ""}` : ""})`;
  if (limit === null) return grows;
  const name = fixed(limit, Math.max(place.typedDecimals, decimalsOf(limit)));
  if (wear.isPast || (life !== null && !isAbove(life, useTo))) return `${grows}; it is past its limit ${name}`;
  if (life === null) return grows;
  const left = Math.floor((earliest ?? life) - useTo);
  const soonest = left > 0 ? `at the earliest after ${left} ${unit}` : "and it may be there already";
  return `${grows}; at that rate it comes to its limit ${name} after another ${Math.round(life - useTo)} ${unit}, ${soonest}`;
}
