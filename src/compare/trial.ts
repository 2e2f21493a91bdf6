import { type CompareOptions, type Comparison, compareReadings } from "./compare.ts";
import type { ReadingSet } from "./readings.ts";

const NO_GROUPS = "no reading names the group of its engine, so engines are judged and ways of treatment are not";

/** Engines treated in different ways, from any number of files: each row says its engine, its group and whether it was measured before or after. */
export function compareTrial(sets: readonly ReadingSet[], options: CompareOptions = {}): Comparison {
  const readings = sets.flatMap(({ readings: own, identity }) =>
    own.map((reading) => (reading.engine === "" && identity?.engine ? { ...reading, engine: identity.engine } : reading)),
  );
  // Two files that do not say it themselves are a build and a strip-down, as to `compare`.
  const areSides = sets.length === 2 && readings.every(({ campaign }) => campaign === undefined);
  const all = { name: nameOf(sets), readings, notes: sets.flatMap(({ notes }) => notes) };
  const comparison = areSides ? compareReadings(sets[0]!, sets[1], options) : compareReadings(all, undefined, options);
  if (readings.every(({ group }) => !group)) comparison.notes.unshift(NO_GROUPS);
  return comparison;
}

const MOST_NAMED = 3;
const nameOf = (sets: readonly ReadingSet[]): string => (sets.length > MOST_NAMED ? `${sets.length} files` : sets.map(({ name }) => name).join(" and "));
