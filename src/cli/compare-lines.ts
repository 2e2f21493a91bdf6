import { type Comparison, enOf } from "../compare/compare.ts";
import type { DifferenceOfChanges } from "../compare/difference-of-changes.ts";
import type { GroupDifference } from "../compare/groups.ts";
import type { LineJudgement } from "../compare/judgement.ts";
import type { MeanChange } from "../compare/mean-change.ts";
import type { ReadingPair } from "../compare/pair-readings.ts";
import type { PlaceChange } from "../compare/place-change.ts";
import type { Reading } from "../compare/readings.ts";
import type { Wear } from "../compare/wear.ts";
import { decimal } from "../core/decimal.ts";
import { limitsOfPlace } from "../report/comparison-rows.ts";
import { placeName } from "../workbook/address.ts";

/** A comparison as data, line by line: for programs, one object each; the last sums up. Which fields each has stands in README. */
export function* jsonLines(comparison: Comparison): Generator<Record<string, unknown>> {
  const { places, means, differences, meanDifferences, groups, wear, refused, kind, engines } = comparison;
  const word = kind === "changes" ? "change" : "difference of sizes";
  const between = kind === "sizes" ? { engines } : {};
  for (const place of places) yield { kind: word, ...between, ...placeFields(place) };
  for (const mean of means) yield { kind: `mean ${word}`, ...between, ...meanFields(mean) };
  for (const difference of [...differences, ...meanDifferences]) yield { kind: "difference of changes", ...differenceFields(difference) };
  for (const line of groups) yield { kind: "groups", ...groupFields(line) };
  for (const one of wear) yield { kind: "wear", ...wearFields(one) };
  for (const row of refused) yield { kind: "refused", label: row.label, ...subjectOf([...row.before, ...row.after][0]!), reason: row.why, ...readingsOf(row) };
  yield summaryOf(comparison);
}

function summaryOf({ between, headline, verdicts, rows, places, refused, counts, notes }: Comparison): Record<string, unknown> {
  return { kind: "summary", between, says: headline, verdicts, rows, compared: places.length, refused: refused.length, counts, notes, unread: [] };
}

const subjectOf = ({ engine, cylinder, characteristic, position }: Pick<Reading, "engine" | "cylinder" | "characteristic" | "position">) => ({
  ...{ engine, cylinder, characteristic, position },
});

const whereOf = ({ line, cell }: Reading): string => (line === undefined ? placeName(cell) : `line ${line}`);
const readingsOf = ({ before, after }: ReadingPair) => ({
  before: before.map((reading) => ({ value: reading.value, at: whereOf(reading) })),
  after: after.map((reading) => ({ value: reading.value, at: whereOf(reading) })),
});

/** What every judged line carries. */
const judgementFields = (line: LineJudgement & { unit: string | undefined; says: string }) => ({
  ...{ level: line.level, unit: line.unit ?? null, n: line.n, by: line.by, degreesOfFreedom: line.degreesOfFreedom },
  ...{ uncertainty: line.uncertainty, commonUncertainty: line.commonUncertainty, lower: told(line.lower), upper: told(line.upper) },
  ...{ p: line.p, pAdjusted: line.pAdjusted, family: line.family, matters: line.matters, withinMatters: line.withinMatters },
  ...{ mayHide: told(line.mayHide), toSee: told(line.toSee), beyondGauge: line.beyondGauge, verdict: line.verdict, says: line.says },
});

const told = (value: number | null): number | null => (value === null ? null : decimal(value));

function placeFields(place: PlaceChange): Record<string, unknown> {
  const { before, after, difference, direction } = place;
  const repeats = [before, after].map(({ readings }) => readings.length);
  return {
    ...{ label: place.label, ...subjectOf(place) },
    ...{ before: decimal(before.value), after: decimal(after.value), change: difference, en: told(enOf(place)), direction },
    ...(Math.max(...repeats) > 1 ? { repeats } : {}),
    ...(place.master === undefined ? {} : { masterMoved: place.master.moved }),
    ...(place.thermal === undefined ? {} : { temperatureCorrection: place.thermal.correction }),
    ...judgementFields(place),
    limits: limitsOfPlace(place),
    at: { before: before.readings.map(whereOf), after: after.readings.map(whereOf) },
  };
}

const meanFields = (mean: MeanChange): Record<string, unknown> => ({
  ...{ label: mean.label, engine: mean.engine, characteristic: mean.characteristic, cylinders: mean.cylinders, change: mean.difference },
  ...{ without: mean.without, ...judgementFields(mean) },
});

const differenceFields = ({
  label,
  engines,
  cylinder,
  characteristic,
  position,
  changes,
  difference,
  ...line
}: DifferenceOfChanges): Record<string, unknown> => ({
  ...{ label, engines, characteristic },
  // A mean is of no cylinder and of no place.
  ...(line.level === "place" ? { cylinder, position } : {}),
  ...{ changes, difference, ...judgementFields(line) },
});

const groupFields = (line: GroupDifference): Record<string, unknown> => ({
  ...{ label: line.label, groups: line.groups, engines: line.engines, characteristic: line.characteristic, places: line.places },
  ...{ changes: line.changes, difference: line.difference, ...judgementFields(line) },
});

const wearFields = ({
  label,
  unit,
  useUnit,
  stage,
  n,
  useFrom,
  useTo,
  rate,
  lower,
  upper,
  distinguishable,
  limit,
  life,
  earliest,
  latest,
  notBefore,
  says,
  ...subject
}: Wear) => ({
  ...{ label, ...subjectOf(subject), unit: unit ?? null, useUnit, stage, n, useFrom, useTo, ratePer: 1000, rate, lower, upper, distinguishable },
  ...{ limit, life, earliest, latest, notBefore, says },
});
