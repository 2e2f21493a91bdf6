import { decimal } from "../core/decimal.ts";
import { groupedBy, largestNumber } from "../core/grouped.ts";
import { type Doubt, doubtOfMean } from "../math/gauge-rule.ts";
import { mean } from "../math/statistics.ts";
import { foldedHeading, labelFrom } from "../vocabulary/headings.ts";
import { ownerKey } from "../vocabulary/subjects.ts";
import type { Estimate, LineJudgement } from "./judgement.ts";
import { strictestOf } from "./judgement.ts";
import type { PlaceEstimate } from "./place-change.ts";

/** One characteristic over its places and cylinders: the same place before and after is a pair. */
export interface MeanEstimate extends Estimate {
  /** `""` where two engines are compared with one another, or none is named. */
  engine: string;
  characteristic: string;
  cylinders: number;
  unit: string | undefined;
  label: string;
  decimals: number;
  /** Places left out because no uncertainty is known of them. */
  without: number;
  places: readonly PlaceEstimate[];
}

export type MeanChange = MeanEstimate & LineJudgement & { says: string };

/** A mean is told with a decimal more than what it is the mean of. */
export const AVERAGED = 1;

/** Fewer places are no mean. */
const FEWEST = 2;

/** The mean changes of all characteristics with several places, by the rule and arithmetic of PAIREDCHANGE. */
export function meanEstimates(places: readonly PlaceEstimate[], areOfOneEngine: boolean): MeanEstimate[] {
  const groups = groupedBy(places, ({ engine, own, unit }) => [areOfOneEngine ? ownerKey("engine", engine) : "", own, unit ?? ""].join("|"));
  return [...groups.values()].flatMap((own) => (own.length < FEWEST || own[0]!.own === "" ? [] : [meanEstimate(own, areOfOneEngine)]));
}

function meanEstimate(all: readonly PlaceEstimate[], areOfOneEngine: boolean): MeanEstimate {
  const known = all.filter(({ doubts }) => doubts !== null);
  const places = known.length > 0 ? known : all;
  const { engine, own, unit, characteristic: typed } = places[0]!;
  const changes = places.map(({ difference }) => difference);
  const common = commonOf(known);
  const name = areOfOneEngine ? engine.trim() : "";
  const characteristic = foldedHeading(typed) === own ? typed : own;
  return {
    ...{ engine: name, characteristic, unit, cylinders: new Set(places.map(({ cylinder }) => ownerKey("cylinder", cylinder))).size },
    label: `${labelFrom({ engine: name, characteristic })}, mean of ${places.length} places`,
    ...{
      difference: decimal(mean(changes)),
      n: places.length,
      common,
      decimals: AVERAGED + largestNumber(places.map(({ typedDecimals }) => typedDecimals)),
      without: all.length - places.length,
      places,
    },
    doubt: known.length === 0 ? null : meanDoubt(changes, known),
    matters: strictestOf(places.map(({ matters }) => matters)),
  };
}

/** The doubt of the mean of some changes by the gauge rule: what is each reading's own counts in the scatter's place, what sessions share is not divided. */
function meanDoubt(changes: readonly number[], places: readonly Pick<PlaceEstimate, "doubts" | "thermal">[]): Doubt {
  return doubtOfMean(changes.map(decimal), ownOf(places), commonOf(places));
}

/** Standard uncertainty of one change, as far as it is its readings' own. */
const ownOf = (places: readonly Pick<PlaceEstimate, "doubts">[]): number =>
  Math.sqrt(mean(places.map(({ doubts }) => doubts!.before.own.variance + doubts!.after.own.variance)));

/** What the readings of a session share moves all of them alike, so its mean counts whole, once for each session; so does what a material's coefficient may be off by. */
const commonOf = (places: readonly Pick<PlaceEstimate, "doubts" | "thermal">[]): number =>
  places.length === 0
    ? 0
    : Math.hypot(
        ...(["before", "after"] as const).map((side) => mean(places.map(({ doubts }) => doubts![side].common))),
        mean(places.map(({ thermal }) => Math.abs(thermal?.ofCoefficient ?? 0))),
      );
