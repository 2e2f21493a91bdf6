import { decimal } from "../core/decimal.ts";
import { groupedBy, largestNumber } from "../core/grouped.ts";
import { counted } from "../core/number-text.ts";
import { combined, type Doubt, doubtOfMean, doubtOfOne, halfWidth, weighed } from "../math/gauge-rule.ts";
import { allEqual, mean, standardDeviation } from "../math/statistics.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import { ownerKey } from "../vocabulary/subjects.ts";
import { CONFIDENCE, type Estimate, type LineJudgement, strictestOf } from "./judgement.ts";
import { AVERAGED } from "./mean-change.ts";
import { placeKey } from "./pair-readings.ts";
import type { PlaceEstimate } from "./place-change.ts";
import type { Reading } from "./readings.ts";

/** What a second way of treatment has changed by, less what a first one has: the engine is the unit, a sample of engines. */
export interface GroupEstimate extends Estimate {
  groups: readonly [string, string];
  /** How many engines of each. */
  engines: readonly [number, number];
  characteristic: string;
  unit: string | undefined;
  label: string;
  decimals: number;
  /** The mean change of each group's engines. */
  changes: readonly [number, number];
  /** Places of each engine: those that all of them have. */
  places: number;
  /** A group of one engine: nothing can be said of its way of treatment. */
  lone: string | null;
}

export type GroupDifference = GroupEstimate & LineJudgement & { says: string };

/** The group of each engine that names one, by the key of the engine; engines with two are in none. */
export function groupsOf(readings: readonly Reading[]): { of: ReadonlyMap<string, string>; notes: string[] } {
  const told = new Map<string, { engine: string; names: Map<string, string> }>();
  for (const { engine, group } of readings) {
    const key = ownerKey("engine", engine);
    const one = told.get(key) ?? { engine: engine.trim(), names: new Map() };
    told.set(key, one);
    if (group) one.names.set(foldedHeading(group), group);
  }
  const of = new Map([...told].flatMap(([key, { names }]) => (names.size === 1 ? [[key, [...names.values()][0]!] as const] : [])));
  const spelt = new Map([...of.values()].map((name) => [foldedHeading(name), name]).reverse() as [string, string][]);
  const isTrial = [...told.values()].some(({ names }) => names.size > 0);
  const notes = isTrial
    ? [...told.values()].flatMap(({ engine, names }) => {
        const name = engine === "" ? "an engine without a name" : `engine ${engine}`;
        if (names.size === 1) return [];
        return [
          names.size === 0
            ? `${name} is in no group: left out of the groups`
            : `${name} is in the groups ${[...names.values()].join(" and ")}: left out of both`,
        ];
      })
    : [];
  return { of: new Map([...of].map(([key, name]) => [key, spelt.get(foldedHeading(name))!])), notes };
}

/** The mean changes of one engine at the places that count. */
interface EngineMean {
  group: string;
  places: PlaceEstimate[];
  change: number;
}

/** Differences of all pairs of groups, characteristic by characteristic. */
export function groupEstimates(all: readonly PlaceEstimate[], of: ReadonlyMap<string, string>): { lines: GroupEstimate[]; notes: string[] } {
  const names = [...new Set(of.values())];
  const lines: GroupEstimate[] = [];
  const notes: string[] = [];
  const known = all.filter(({ engine, own }) => own !== "" && of.has(ownerKey("engine", engine)));
  for (const own of groupedBy(known, ({ own: name, unit }) => `${name}|${unit ?? ""}`).values()) {
    for (const [i, first] of names.entries()) {
      for (const second of names.slice(i + 1)) {
        const pair = [first, second] as const;
        const engines = enginesOf(own, of, pair);
        if (pair.some((name) => engines.every(({ group }) => group !== name))) continue;
        const shared = sharedBy(engines);
        const left = engines.reduce((sum, { places }) => sum + places.length, 0) - shared.length * engines.length;
        const label = `${second} against ${first}: ${own[0]!.own}`;
        if (shared.length === 0) notes.push(`${label}: no place was measured on every engine, so the groups cannot be compared`);
        else lines.push(between(pair, onlyAt(engines, new Set(shared)), own[0]!, label));
        if (shared.length > 0 && left > 0) notes.push(`${label}: ${counted(left, "place")} left out, as not every engine has ${left === 1 ? "it" : "them"}`);
      }
    }
  }
  return { lines, notes };
}

function enginesOf(places: readonly PlaceEstimate[], of: ReadonlyMap<string, string>, pair: readonly [string, string]): EngineMean[] {
  const engines = groupedBy(places, ({ engine }) => ownerKey("engine", engine));
  return [...engines].flatMap(([key, own]) => (pair.includes(of.get(key)!) ? [{ group: of.get(key)!, places: own, change: 0 }] : []));
}

const sharedBy = (engines: readonly EngineMean[]): string[] => {
  const sets = engines.map(({ places }) => new Set(places.map((place) => placeKey(place, false))));
  return [...sets[0]!].filter((key) => sets.every((set) => set.has(key)));
};

const onlyAt = (engines: readonly EngineMean[], keys: ReadonlySet<string>): EngineMean[] =>
  engines.map(({ group, places }) => {
    const own = places.filter((place) => keys.has(placeKey(place, false)));
    return { group, places: own, change: mean(own.map(({ difference }) => difference)) };
  });

function between(groups: readonly [string, string], engines: readonly EngineMean[], { own, unit }: PlaceEstimate, label: string): GroupEstimate {
  const sides = groups.map((name) => engines.filter(({ group }) => group === name)) as [EngineMean[], EngineMean[]];
  const [first, second] = sides;
  const counts = [first.length, second.length] as const;
  const lone = counts.includes(1) ? groups.filter((_, i) => counts[i] === 1).join(" and of ") : null;
  const changes = sides.map((side) => decimal(mean(side.map(({ change }) => change)))) as [number, number];
  const places = engines.flatMap((engine) => engine.places);
  const isKnown = places.every(({ doubts }) => doubts !== null);
  const [doubt, common] = lone !== null || !isKnown ? [null, 0] : gaugeDoubt(sides);
  const welch = doubt === null ? undefined : combined(sides.map(spreadOf));
  // No spread at all is chance; the gauge says what that is worth.
  const isWider = welch !== undefined && welch.variance > 0 && halfWidth(welch, CONFIDENCE) > halfWidth(doubt!, CONFIDENCE);
  return {
    ...{ groups, engines: counts, characteristic: own, unit, changes, lone, common, places: first[0]!.places.length },
    label,
    ...{ difference: decimal(changes[1] - changes[0]), n: engines.length },
    decimals: AVERAGED + largestNumber(places.map(({ typedDecimals }) => typedDecimals)),
    ...(isWider ? { doubt: welch!, other: doubt! } : { doubt, ...(welch !== undefined && welch.variance > 0 ? { other: welch } : {}) }),
    matters: strictestOf(places.map(({ matters }) => matters)),
  };
}

/** The spread of a group's engines in the variance of their mean (Welch). */
function spreadOf(side: readonly EngineMean[]): Doubt {
  const changes = side.map(({ change }) => decimal(change));
  return weighed(doubtOfOne(allEqual(changes) ? 0 : standardDeviation(changes), side.length - 1, 0), 1 / side.length);
}

/**
 * The gauge's doubt of the difference of two groups' means. What a session shares moves all engines that were measured in it
 * alike: it counts by the weights of those engines together, and so cancels where both groups were measured in the same
 * sessions. U that is not split counts in the way that makes it count most.
 */
function gaugeDoubt(sides: readonly [EngineMean[], EngineMean[]]): [doubt: Doubt, common: number] {
  const shared = new Map<string, number>();
  const whole: Doubt[] = [];
  const parts: Doubt[] = [];
  let coefficient = 0;
  for (const [i, side] of sides.entries()) {
    const weight = (i === 0 ? -1 : 1) / side.length;
    for (const { places } of side) {
      const changes = places.map(({ difference }) => decimal(difference));
      const own = mean(places.map(({ doubts }) => doubts!.before.own.variance + doubts!.after.own.variance));
      const unsplit = mean(
        places.map(({ doubts }) => [doubts!.before, doubts!.after].reduce((sum, { common, isSplit }) => sum + (isSplit ? 0 : common ** 2), 0)),
      );
      parts.push(weighed(doubtOfMean(changes, Math.sqrt(own), 0), weight ** 2));
      whole.push(weighed(doubtOfMean(changes, Math.sqrt(own + unsplit), 0), weight ** 2));
      coefficient += weight * mean(places.map(({ thermal }) => thermal?.ofCoefficient ?? 0));
      for (const place of places) {
        for (const campaign of ["before", "after"] as const) {
          const key = `${campaign}|${sessionKey(place, campaign)}`;
          shared.set(key, (shared.get(key) ?? 0) + (weight * place.doubts![campaign].common) / places.length);
        }
      }
    }
  }
  const common = Math.hypot(...shared.values(), coefficient);
  const [asCommon, asOwn] = [combined(parts, common), combined(whole, Math.abs(coefficient))];
  return halfWidth(asOwn, CONFIDENCE) > halfWidth(asCommon, CONFIDENCE) ? [asOwn, Math.abs(coefficient)] : [asCommon, common];
}

/** One gauge on one day is one session, whatever engine it measured; where that is not said each engine has its own. */
function sessionKey(place: PlaceEstimate, campaign: "before" | "after"): string {
  const { gauge = "", day = "", engine } = place[campaign].readings[0]!;
  return gauge !== "" && day !== "" ? `${foldedHeading(gauge)}|${foldedHeading(day)}` : `engine ${ownerKey("engine", engine)}`;
}
