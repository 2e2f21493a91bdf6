import { placeName } from "../workbook/address.ts";
import { keyOf, type Reading } from "./reading.ts";

/** Readings of one thing on both sides, in the order of their hours where they have some. */
export interface Pair {
  before: Reading[];
  after: Reading[];
}

/** Readings that cannot be matched. */
export interface Unmatched {
  before: Reading[];
  after: Reading[];
  why: string;
}

/** Brings together the readings of the same thing; every reading ends in a pair or among the unmatched. */
export function match(before: readonly Reading[], after: readonly Reading[], withEngine: boolean): { pairs: Pair[]; unmatched: Unmatched[] } {
  const sides = [grouped(before, withEngine), grouped(after, withEngine)] as const;
  const pairs: Pair[] = [];
  const unmatched: Unmatched[] = [];
  for (const key of new Set([...sides[0].keys(), ...sides[1].keys()])) {
    const [own, other] = [sides[0].get(key) ?? [], sides[1].get(key) ?? []];
    if (own.length === 0 || other.length === 0) unmatched.push(...alone(own, other));
    else if (isHistory(own) && isHistory(other)) pairs.push({ before: byHours(own), after: byHours(other) });
    else matchByPlace(own, other, pairs, unmatched);
  }
  return { pairs, unmatched };
}

function grouped(readings: readonly Reading[], withEngine: boolean): Map<string, Reading[]> {
  const groups = new Map<string, Reading[]>();
  for (const reading of readings) {
    const named = keyOf(reading, withEngine);
    // A reading that nothing names can only be told by its place.
    const key = /^\|*$/.test(named) ? `@${placeName(reading.cell)}` : named;
    const group = groups.get(key);
    if (group) group.push(reading);
    else groups.set(key, [reading]);
  }
  return groups;
}

function alone(before: readonly Reading[], after: readonly Reading[]): Unmatched[] {
  return [
    ...before.map((reading) => ({ before: [reading], after: [], why: "it is measured before only" })),
    ...after.map((reading) => ({ before: [], after: [reading], why: "it is measured after only" })),
  ];
}

/** One reading, or several that were taken at different hours. */
const isHistory = (readings: readonly Reading[]): boolean =>
  readings.length === 1 || (readings.every(({ hours }) => hours !== undefined) && new Set(readings.map(({ hours }) => hours)).size === readings.length);

const byHours = (readings: readonly Reading[]): Reading[] => [...readings].sort((a, b) => (a.hours ?? 0) - (b.hours ?? 0));

/** Several readings of one name: two copies of a workbook hold each in the same cell. */
function matchByPlace(before: readonly Reading[], after: readonly Reading[], pairs: Pair[], unmatched: Unmatched[]): void {
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
  if (rest.length + left.size > 0) unmatched.push({ before: rest, after: [...left], why: ambiguous(before, after) });
}

function ambiguous(before: readonly Reading[], after: readonly Reading[]): string {
  const times = (readings: readonly Reading[]) => (readings.length === 1 ? "once" : `${readings.length} times`);
  return `it stands ${times(before)} before and ${times(after)} after, and nothing tells which belong together`;
}
