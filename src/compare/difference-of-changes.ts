import { decimal } from "../core/decimal.ts";
import { groupedBy, largestNumber } from "../core/grouped.ts";
import { combined, doubtOfMean } from "../math/gauge-rule.ts";
import { mean } from "../math/statistics.ts";
import { foldedHeading, labelFrom } from "../vocabulary/headings.ts";
import { ownerKey } from "../vocabulary/subjects.ts";
import type { Estimate, LineJudgement } from "./judgement.ts";
import { strictestOf } from "./judgement.ts";
import { AVERAGED } from "./mean-change.ts";
import { placeKey } from "./pair-readings.ts";
import type { PlaceEstimate } from "./place-change.ts";
import { sameSession } from "./sessions.ts";

/** (After − before) of a second engine less that of a first one, at one place or on the average over the places that both have. */
export interface DifferenceEstimate extends Estimate {
  engines: readonly [string, string];
  /** `""` of a mean. */
  cylinder: string;
  characteristic: string;
  position: string;
  unit: string | undefined;
  label: string;
  decimals: number;
  /** The change of each engine. */
  changes: readonly [number, number];
}

export type DifferenceOfChanges = DifferenceEstimate & LineJudgement & { says: string };

/** The same place of two engines. */
type Couple = readonly [PlaceEstimate, PlaceEstimate];

/** Differences of the changes of two engines, place by place and over the places. */
export function differenceEstimates(
  places: readonly PlaceEstimate[],
  engines: readonly [string, string],
): { byPlace: DifferenceEstimate[]; means: DifferenceEstimate[] } {
  const of = (engine: string) => places.filter((place) => ownerKey("engine", place.engine) === ownerKey("engine", engine));
  const others = new Map(of(engines[1]).map((place) => [placeKey(place, false), place]));
  const couples = of(engines[0]).flatMap((place) => {
    const other = others.get(placeKey(place, false));
    return other === undefined || (other.unit ?? "") !== (place.unit ?? "") ? [] : [[place, other] as const];
  });
  const groups = groupedBy(couples, ([{ own, unit }]) => `${own}|${unit ?? ""}`);
  return {
    byPlace: couples.map((couple) => byPlace(couple, engines)),
    means: [...groups.values()].flatMap((own) => (own.length < 2 || own[0]![0].own === "" ? [] : [overPlaces(own, engines)])),
  };
}

/** What two engines' sessions of one side leave in a difference: what they share cancels where it was one session, and U that is not split counts there as each reading's own. */
function sideOf([first, second]: Couple, side: "before" | "after"): { own: number; common: number } {
  const [a, b] = [first.doubts![side], second.doubts![side]];
  const cancels = sameSession(first[side], second[side]);
  const own = a.own.variance + b.own.variance;
  if (!cancels) return { own, common: Math.hypot(a.common, b.common) };
  const isSplit = a.isSplit && b.isSplit;
  return { own: own + (isSplit ? 0 : a.common ** 2 + b.common ** 2), common: 0 };
}

/** What the coefficient leaves in a difference: of one material it moves both engines' changes alike, as far as both had the same temperatures. */
function byCoefficient([first, second]: Couple): number {
  const [a, b] = [first, second].map(({ thermal }) => thermal?.ofCoefficient ?? 0) as [number, number];
  const [own, other] = [first, second].map(({ before }) => foldedHeading(before.readings[0]!.material ?? ""));
  return own === other ? Math.abs(b - a) : Math.hypot(a, b);
}

const between = ([first, second]: readonly [string, string]): string => `${second} against ${first}: `;

const differenceIn = ([first, second]: Couple): number => decimal(second.difference - first.difference);
const isKnown = (couple: Couple): boolean => couple.every(({ doubts }) => doubts !== null);
const mattersIn = (couples: readonly Couple[]): number | undefined => {
  const typed = couples.flatMap((couple) => couple.map(({ matters }) => matters));
  return strictestOf(typed);
};

function byPlace(couple: Couple, engines: readonly [string, string]): DifferenceEstimate {
  const [{ cylinder, characteristic, position, unit, difference }, other] = couple;
  const sides = isKnown(couple) ? (["before", "after"] as const).map((side) => sideOf(couple, side)) : undefined;
  const common = sides === undefined ? 0 : Math.hypot(...sides.map((side) => side.common), byCoefficient(couple));
  const doubts = couple.flatMap(({ doubts: own }) => (own === null ? [] : [own.before.own, own.after.own]));
  const extra = sides === undefined ? 0 : sides.reduce((sum, { own }) => sum + own, 0) - doubts.reduce((sum, { variance }) => sum + variance, 0);
  return {
    ...{
      engines,
      cylinder,
      characteristic,
      position,
      unit,
      changes: [difference, other.difference],
      label: between(engines) + labelFrom({ cylinder, characteristic, position }),
    },
    ...{ decimals: Math.max(couple[0].decimals, other.decimals), difference: differenceIn(couple), n: 1, common, matters: mattersIn([couple]) },
    doubt: sides === undefined ? null : combined(doubts, Math.sqrt(common ** 2 + Math.max(extra, 0))),
  };
}

function overPlaces(all: readonly Couple[], engines: readonly [string, string]): DifferenceEstimate {
  const known = all.filter(isKnown);
  const couples = known.length > 0 ? known : all;
  const [{ own, unit }] = couples[0]!;
  const differences = couples.map(differenceIn);
  const shared = (["before", "after"] as const).map((side) => (known.length === 0 ? 0 : mean(known.map((couple) => sideOf(couple, side).common))));
  const common = Math.hypot(...shared, known.length === 0 ? 0 : mean(known.map(byCoefficient)));
  const ownU = known.length === 0 ? 0 : Math.sqrt(mean(known.map((couple) => sideOf(couple, "before").own + sideOf(couple, "after").own)));
  return {
    ...{ engines, cylinder: "", characteristic: own, position: "", unit, label: `${between(engines)}${own}, mean of ${couples.length} places` },
    changes: [0, 1].map((i) => decimal(mean(couples.map((couple) => couple[i]!.difference)))) as [number, number],
    ...{
      decimals: AVERAGED + largestNumber(couples.flat().map(({ typedDecimals }) => typedDecimals)),
      difference: decimal(mean(differences)),
      n: couples.length,
      common,
      matters: mattersIn(couples),
    },
    doubt: known.length === 0 ? null : doubtOfMean(differences, ownU, common),
  };
}
