import { groupedBy } from "../core/grouped.ts";
import { positionText } from "../vocabulary/parse-heading.ts";
import { measuredBy, ownerKey } from "../vocabulary/subjects.ts";
import { placeName } from "../workbook/address.ts";
import type { Reading, ReadingSubject } from "./readings.ts";

/** Readings of one thing on both sides, in the order of their hours where they have some. */
export interface ReadingPair {
  before: Reading[];
  after: Reading[];
}

/** Readings that cannot be compared, and why. */
export interface Unmatched extends ReadingPair {
  why: string;
}

/** What the two sides are called in sentences: `before` and `after`, or `on engine A` and `on engine B`. */
export type SideNames = Readonly<Record<"before" | "after", string>>;

/** Brings together the readings of the same thing; every reading ends in a pair or among the unmatched. */
export function pairReadings(
  before: readonly Reading[],
  after: readonly Reading[],
  withEngine: boolean,
  names: SideNames,
): { pairs: ReadingPair[]; unmatched: Unmatched[] } {
  const sides = [grouped(before, withEngine), grouped(after, withEngine)] as const;
  const pairs: ReadingPair[] = [];
  const unmatched: Unmatched[] = [];
  for (const key of new Set([...sides[0].keys(), ...sides[1].keys()])) {
    const [own, other] = [sides[0].get(key) ?? [], sides[1].get(key) ?? []];
    if (own.length === 0 || other.length === 0) unmatched.push(alone(own, other, names));
    else if (areOneThing(own) && areOneThing(other)) pairs.push(withoutFaulty({ before: byHours(own), after: byHours(other) }, unmatched, names));
    else matchByPlace(own, other, pairs, unmatched, names);
  }
  return { pairs, unmatched };
}

const grouped = (readings: readonly Reading[], withEngine: boolean): Map<string, Reading[]> =>
  groupedBy(readings, (reading) => {
    const named = placeKey(reading, withEngine);
    // A reading that nothing names can only be told by its place.
    return /^\|*$/.test(named) ? `@${placeName(reading.cell)}` : named;
  });

const alone = (before: Reading[], after: Reading[], names: SideNames): Unmatched => ({
  before,
  after,
  why: `it is measured ${after.length === 0 ? names.before : names.after} only`,
});

/** One reading, or several of which a list or a table of repeats says that they are of one thing; on sheets laid out otherwise a name may not tell all. */
const areOneThing = (readings: readonly Reading[]): boolean =>
  new Set(readings.map(({ isListed, repeats, cell }) => (isListed ? "" : (repeats ?? placeName(cell))))).size === 1;

const byHours = (readings: readonly Reading[]): Reading[] => [...readings].sort((a, b) => (a.hours ?? 0) - (b.hours ?? 0));

/** A repeat that is blank or no good is refused for itself where others of its side are sound. */
function withoutFaulty(pair: ReadingPair, unmatched: Unmatched[], names: SideNames): ReadingPair {
  const kept: ReadingPair = { ...pair };
  for (const side of ["before", "after"] as const) {
    const sound = pair[side].filter(({ value }) => value !== null);
    if (sound.length === 0) continue;
    kept[side] = sound;
    for (const reading of pair[side]) {
      if (reading.value === null) unmatched.push({ before: [], after: [], [side]: [reading], why: `${names[side]}: ${reading.fault}` });
    }
  }
  return kept;
}

/** Several readings of one name: two copies of a workbook hold each in the same cell. */
function matchByPlace(before: readonly Reading[], after: readonly Reading[], pairs: ReadingPair[], unmatched: Unmatched[], names: SideNames): void {
  const places = new Map(after.filter(({ line }) => line === undefined).map((reading) => [placeName(reading.cell), reading]));
  const left = new Set(after);
  const rest: Reading[] = [];
  for (const reading of before) {
    const partner = reading.line === undefined ? places.get(placeName(reading.cell)) : undefined;
    if (partner) {
      pairs.push({ before: [reading], after: [partner] });
      left.delete(partner);
    } else rest.push(reading);
  }
  if (rest.length + left.size > 0) unmatched.push({ before: rest, after: [...left], why: ambiguous(before, after, names) });
}

function ambiguous(before: readonly Reading[], after: readonly Reading[], names: SideNames): string {
  const times = (readings: readonly Reading[]) => (readings.length === 1 ? "once" : `${readings.length} times`);
  return `it stands ${times(before)} ${names.before} and ${times(after)} ${names.after}, and nothing tells which belong together`;
}

/** The same for readings of the same thing, however it is spelt; of one engine against another without the engine. */
export function placeKey({ engine, cylinder, characteristic, position }: ReadingSubject, withEngine: boolean): string {
  const measured = measuredBy(characteristic, position);
  const owners = [withEngine ? ownerKey("engine", engine) : "", ownerKey("cylinder", cylinder)];
  return [...owners, measured.characteristic, positionText(measured.places)].join("|");
}
