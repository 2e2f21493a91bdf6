import { largestNumber } from "../core/grouped.ts";
import { counted } from "../core/number-text.ts";
import { COVERAGE_FACTOR } from "../functions/wear/change-params.ts";
import { ownerKey } from "../vocabulary/subjects.ts";
import { type DifferenceOfChanges, differenceEstimates } from "./difference-of-changes.ts";
import { type EnginePair, isGivenTwice, type Sides, sidesOf } from "./engines.ts";
import { type GroupDifference, groupEstimates, groupsOf } from "./groups.ts";
import { hintsOn } from "./hints.ts";
import { COMPARISON_VERDICTS, countsOf, type Estimate, type Family, type FamilyCounts, judgeFamily, type LineJudgement } from "./judgement.ts";
import { Masters } from "./masters.ts";
import { type MeanChange, meanEstimates } from "./mean-change.ts";
import { pairReadings, type ReadingPair } from "./pair-readings.ts";
import { type PlaceChange, type PlaceEstimate, placeEstimates } from "./place-change.ts";
import { labelOf, type Reading, type ReadingSet } from "./readings.ts";
import { uncertaintyOf } from "./sessions.ts";
import { isHalfWarm } from "./temperatures.ts";
import type { TypedSizes } from "./typed-sizes.ts";
import { type Wear, wearOfPlace } from "./wear.ts";
import { differenceSays, groupSays, headline, meanSays, placeSays, verdictsText } from "./words.ts";

export interface CompareOptions {
  /** Hours in service between the two, where no column says. */
  hours?: number | undefined;
  /** How long the run-in is, in the unit of use; where it is not given, as the workbooks say. */
  runIn?: number | undefined;
  /** Compares the changes of these two engines, or the sizes of the first with those of the second where not both are on both sides. */
  engines?: EnginePair | undefined;
  /** Smallest differences that matter, where no row says. */
  matters?: TypedSizes | undefined;
}

/** Readings that could not be compared, and why. */
export interface RefusedRow extends ReadingPair {
  label: string;
  why: string;
}

export interface Comparison {
  /** In words: `build.csv against strip-down.csv`, or which engine against which. */
  between: string;
  /** Of one engine there are changes and wear; of two engines' sizes there are differences only. */
  kind: Sides["kind"];
  engines: readonly [string, string] | undefined;
  /** The first sentence, on the places; and what all lines came to. */
  headline: string;
  verdicts: string;
  /** Lines of each kind: what differs first, the clearest of them first. */
  places: PlaceChange[];
  means: MeanChange[];
  differences: DifferenceOfChanges[];
  meanDifferences: DifferenceOfChanges[];
  /** Ways of treatment, where readings name the group of their engine. */
  groups: GroupDifference[];
  counts: Record<Family, FamilyCounts>;
  wear: Wear[];
  refused: RefusedRow[];
  /** What a person should know before trusting the numbers. */
  notes: string[];
  /** Places of both sides: always compared + refused. */
  rows: number;
}

/** Every line that was judged. */
export const linesOf = ({ places, means, differences, meanDifferences, groups }: Pick<Comparison, LineKind>) => [
  ...groups,
  ...means,
  ...meanDifferences,
  ...places,
  ...differences,
];
type LineKind = "places" | "means" | "differences" | "meanDifferences" | "groups";

/** Compares two sides place by place: a build with its strip-down, or one engine with another. A lone set holds both sides itself. */
export function compareReadings(first: ReadingSet, second: ReadingSet | undefined, given: CompareOptions = {}): Comparison {
  if (second !== undefined && isGivenTwice(first, second)) {
    const alone = compareReadings(first, undefined, given);
    return { ...alone, notes: [...alone.notes, `${first.name} and ${second.name} hold the same readings, before and after in both: taken once`] };
  }
  const options: CompareOptions = { ...given, runIn: given.runIn ?? typedRunIn([first, second]) };
  const masters = new Masters(first, second);
  const [own, other] = masters.sets;
  const sides = sidesOf(own!, other, options.engines);
  const { pairs, unmatched } = pairReadings(sides.before, sides.after, sides.withEngine, sides.names);
  const refused: RefusedRow[] = [...sides.refused, ...unmatched].map((row) => ({ ...row, label: labelOf([...row.before, ...row.after][0]!) }));
  const estimates: PlaceEstimate[] = [];
  for (const [i, one] of placeEstimates(pairs, options.matters, sides.names, masters).entries()) {
    if ("why" in one) refused.push({ ...pairs[i]!, label: labelOf(pairs[i]!.before[0]!), why: one.why });
    else estimates.push(sides.kind === "sizes" ? { ...one, label: labelOf({ ...one.before.readings[0]!, engine: "" }) } : one);
  }
  const isChange = sides.kind === "changes";
  const places = judged("places", estimates, (place, lines) => placeSays(place, sides, lines));
  const means = judged("means", meanEstimates(estimates, isChange), (mean, lines) => meanSays(mean, sides, lines));
  const { byPlace, means: overPlaces } = isChange && sides.engines ? differenceEstimates(estimates, sides.engines) : { byPlace: [], means: [] };
  const treated = groupsOf([...sides.before, ...sides.after]);
  const treatments = isChange ? groupEstimates(estimates, treated.of) : { lines: [], notes: [] };
  const lines = {
    places,
    means,
    groups: judged("groups", treatments.lines, groupSays),
    differences: judged("differences by place", byPlace, differenceSays),
    meanDifferences: judged("mean differences", overPlaces, differenceSays),
  };
  const wear = isChange ? places.flatMap((place) => wearOfPlace(place, options)) : [];
  const counts = {
    ...{ places: countsOf(places), means: countsOf(means) },
    ...{ "differences by place": countsOf(lines.differences), "mean differences": countsOf(lines.meanDifferences) },
    groups: countsOf(lines.groups),
  };
  return {
    ...{ between: sides.between, kind: sides.kind, engines: sides.engines },
    ...{ headline: headline(counts.places), verdicts: verdictsText(linesOf(lines)), ...lines, counts, wear, refused },
    notes: [
      ...first.notes,
      ...(second?.notes ?? []),
      ...sides.notes,
      ...treated.notes,
      ...treatments.notes,
      ...masters.notes,
      ...masters.notesOn(
        places,
        largestNumber(
          places.map(({ typedDecimals }) => typedDecimals),
          0,
        ),
      ),
      ...heatNotes(places),
      ...notesOn(lines, sides, wear, options),
      ...hintsOn(isChange ? places : []),
    ],
    rows: places.length + refused.length,
  };
}

/** The length of the run-in that the workbooks give, where they give one. */
function typedRunIn(sets: readonly (ReadingSet | undefined)[]): number | undefined {
  const typed = new Set(sets.flatMap((set) => set?.runIn ?? []));
  return typed.size === 1 ? [...typed][0] : undefined;
}

const NO_GROUPS = "no reading names the group of its engine, so engines are judged and ways of treatment are not";

/** Engines treated in different ways, from any number of files: each row says its engine, its group and whether it was measured before or after. */
export function compareTrial(sets: readonly ReadingSet[], options: CompareOptions = {}): Comparison {
  const readings = sets.flatMap(({ readings: own, identity }) =>
    own.map((reading) => (reading.engine === "" && identity?.engine ? { ...reading, engine: identity.engine } : reading)),
  );
  // Two files that do not say it themselves are a build and a strip-down, as to `compare`.
  const areSides = sets.length === 2 && readings.every(({ campaign }) => campaign === undefined);
  const all = { name: nameOf(sets), readings, notes: sets.flatMap(({ notes }) => notes), runIn: typedRunIn(sets) };
  const comparison = areSides ? compareReadings(sets[0]!, sets[1], options) : compareReadings(all, undefined, options);
  if (readings.every(({ group }) => !group)) comparison.notes.unshift(NO_GROUPS);
  return comparison;
}

const MOST_NAMED = 3;
const nameOf = (sets: readonly ReadingSet[]): string => (sets.length > MOST_NAMED ? `${sets.length} files` : sets.map(({ name }) => name).join(" and "));

/** Judges lines of one kind together, and puts what differs first, what is told next, the clearest of each first. */
function judged<Line extends Estimate>(family: Family, estimates: readonly Line[], says: (line: Line & LineJudgement, lines: number) => string) {
  const judgements = judgeFamily(family, estimates);
  const { judged: lines } = countsOf(judgements);
  return estimates
    .map((estimate, i) => ({ ...estimate, ...judgements[i]! }))
    .map((line) => ({ ...line, says: says(line, lines) }))
    .sort((a, b) => rankOf(a) - rankOf(b) || clearnessOf(b) - clearnessOf(a));
}

/** What differs, what nobody can tell, what is the same within what matters. */
const ORDER = [COMPARISON_VERDICTS[0], COMPARISON_VERDICTS[2], COMPARISON_VERDICTS[1]];
const rankOf = ({ verdict }: LineJudgement): number => ORDER.indexOf(verdict);

/** How many times its own uncertainty a difference is: the En number, but for its sign. */
const clearnessOf = (line: Estimate): number => Math.abs(enOf(line) ?? 0);

/** The difference by its expanded uncertainty (ISO/IEC 17043); `null` without one. */
export const enOf = ({ difference, doubt }: Estimate): number | null => (doubt === null ? null : difference / (COVERAGE_FACTOR * Math.sqrt(doubt.variance)));

/** What heat had to do with the places, and where too little is said of it. */
function heatNotes(places: readonly PlaceChange[]): string[] {
  const cold = places.filter(({ thermal }) => thermal !== undefined).length;
  const half = places.filter(({ before, after }) => isHalfWarm(before, after));
  return [
    ...(cold > 0 ? [`${counted(cold, "place")} brought to 20 °C; a degree of each measuring and a tenth of the coefficient count in the uncertainty`] : []),
    ...(half.length > 0
      ? [
          `${counted(half.length, "place")} with a temperature compared as measured: temperature and material of both measurings are needed, for example of ${half[0]!.label}`,
        ]
      : []),
  ];
}

const loneText = (lone: string): string =>
  `only one engine of ${lone}: the engines are judged, the ways of treatment cannot be told; two engines of each are the fewest, and few`;

const ONE_ENGINE_EACH = "one engine each: this judges these two engines, not what was done differently to them";

function notesOn(
  { places, differences, groups }: Pick<Comparison, LineKind>,
  { before, after, kind }: Sides,
  wear: readonly Wear[],
  { hours }: CompareOptions,
): string[] {
  const notes: string[] = [];
  const hasDifferences = differences.length > 0;
  const has = (side: readonly Reading[]): boolean => side.some((reading) => reading.hours !== undefined);
  if (kind === "changes" && has(before) !== has(after) && hours === undefined)
    notes.push(`hours are given ${has(before) ? "before" : "after"} only, so wear cannot be told by them: give the hours between`);
  const units = new Set([...before, ...after].flatMap(({ hours: use, useUnit = "hours" }) => (use === undefined ? [] : [useUnit])));
  if (kind === "changes" && units.size > 1) notes.push(`use is given in ${[...units].join(" and in ")}: no wear is told of places with both`);
  const [first, last] = [before, after].map((side) => largestNumber(side.flatMap((reading) => reading.hours ?? []))) as [number, number];
  if (kind === "changes" && first > last && Number.isFinite(last))
    notes.push(`the hours before (${first}) are more than those after (${last}): are the two sides swapped?`);
  if (kind === "changes" && !hasDifferences && groups.length === 0 && new Set(places.map(({ engine }) => ownerKey("engine", engine))).size > 1)
    notes.push("engines are compared with one another where two are named");
  const without = places.filter(({ doubts }) => doubts === null).length;
  if (without > 0) notes.push(`${without} of ${places.length} places have no uncertainty, so nothing can be told of those: give their U`);
  if (places.some(({ before: a, after: b }) => (uncertaintyOf(a) === undefined) !== (uncertaintyOf(b) === undefined)))
    notes.push("where one side gives no uncertainty, that of the other side stands for both");
  const repeated = places.filter(({ before: a, after: b }) => a.readings.length + b.readings.length > 2).length;
  if (repeated > 0) notes.push(`${repeated === 1 ? "one place was" : `${repeated} places were`} read several times in a session: the mean counts`);
  if (places.length > 0 && (kind === "sizes" || hasDifferences) && groups.length === 0) notes.push(ONE_ENGINE_EACH);
  for (const lone of new Set(groups.flatMap((line) => line.lone ?? []))) notes.push(loneText(lone));
  if (wear.some(({ life }) => life !== null)) notes.push("a life draws the line on as if wear went on as before: measure again before the earliest");
  return notes;
}
