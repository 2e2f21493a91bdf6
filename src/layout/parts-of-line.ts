import { groupedBy } from "../core/grouped.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import type { LabelledNumber } from "./heading-fields.ts";
import type { Role } from "./mapping.ts";

/** Readings of one line with what limits them, or limits by themselves. */
export type PartOfLine = readonly LabelledNumber[];

const isReading = ({ role }: LabelledNumber): boolean => role === "value";

/**
 * What of a line of readings and limits belongs together. A limit whose own heading says what it is for, as `Bore upper` does, is for
 * that wherever it stands, and by itself where the line reads no such thing. One that does not say is for the readings beside it. What
 * says more goes before what says less.
 */
export function partsOfLine(facts: readonly LabelledNumber[]): readonly PartOfLine[] {
  const [values, others] = [facts.filter(isReading), facts.filter((fact) => !isReading(fact))];
  if (isPlain(values, others)) return [facts];
  const parts = new Map(values.map((value) => [value, new Map<Role, LabelledNumber[]>()]));
  const take = (line: readonly LabelledNumber[]): void => {
    for (const [value, limits] of byPlace(line)) for (const [role, found] of limits) if (!parts.get(value)!.has(role)) parts.get(value)!.set(role, found);
  };
  const alone: PartOfLine[] = [];
  const bySaid = [...groupedBy(others, saidBy).values()].sort(([one], [other]) => weightOf(other!) - weightOf(one!));
  for (const same of bySaid) {
    const line = facts.filter((fact) => same.includes(fact) || (isReading(fact) && isFor(same[0]!, fact)));
    if (!line.some(isReading)) alone.push(same);
    else take(line);
  }
  // Behind the last reading a blank heading may be the end of a merged one, or stand over limits of all readings.
  const last = facts.findLastIndex(isReading);
  const shared = others.filter((fact) => fact.named.isInherited && facts.indexOf(fact) > last);
  if (values.length > 0 && shared.length > 0) take([...values, ...shared]);
  // What is said of no limit in particular, as a unit is, is said of all that stand by themselves.
  const general = others.filter((fact) => weightOf(fact) === 0 && fact.role !== "lower" && fact.role !== "upper");
  const inOrder = (some: Iterable<LabelledNumber>): PartOfLine => {
    const held = new Set(some);
    return facts.filter((fact) => held.has(fact));
  };
  return [...[...parts].map(([value, limits]) => [value, ...inOrder([...limits.values()].flat())]), ...alone.map((part) => inOrder([...part, ...general]))];
}

/** Nothing to tell apart: limits of each side but once and without a name, beside readings of one thing. Most lines are so. */
const isPlain = (values: readonly LabelledNumber[], others: readonly LabelledNumber[]): boolean =>
  others.every((fact) => weightOf(fact) === 0) &&
  new Set(others.map(({ role }) => role)).size === others.length &&
  new Set(values.map(({ says }) => says.characteristic)).size < 2;

const NAMES = ["engine", "cylinder", "characteristic"] as const;

const saidBy = ({ named }: LabelledNumber): string => JSON.stringify([...NAMES.map((name) => named[name] ?? ""), ...named.places.map(({ word }) => word)]);

const weightOf = ({ named }: LabelledNumber): number => NAMES.filter((name) => named[name] !== undefined).length + named.places.length;

/** Whether a limit says no other thing than the reading does; a reading that nothing names may be anything. */
function isFor({ named }: LabelledNumber, { says }: LabelledNumber): boolean {
  const words = new Set(says.places.map(({ word }) => word));
  const isSame = (a: string | undefined, b: string | undefined) => a === undefined || b === undefined || foldedHeading(a) === foldedHeading(b);
  return NAMES.every((name) => isSame(named[name], says[name])) && named.places.every(({ word }) => words.has(word));
}

type ByRole = Map<Role, LabelledNumber[]>;

/**
 * Limits that say the same, by where they stand: each goes with the reading before it, or with the one after it where the line starts
 * with limits; with the other one where that has such a limit already. Readings of one thing share what only some of them have.
 */
function byPlace(line: readonly LabelledNumber[]): Map<LabelledNumber, ByRole> {
  const walk = line.find(({ role }) => role !== "unit")!.role === "value" ? line : [...line].reverse();
  const values = walk.filter(isReading);
  const given = values.map((): ByRole => new Map());
  let passed = 0;
  for (const limit of walk) {
    if (isReading(limit)) passed++;
    else {
      const near = given[Math.max(0, passed - 1)]!;
      const far = given[passed];
      const taker = far !== undefined && near.has(limit.role) && !far.has(limit.role) ? far : near;
      taker.set(limit.role, [...(taker.get(limit.role) ?? []), limit]);
    }
  }
  const isWhole = line.filter(({ role }) => role === "unit").length === 1;
  for (const role of new Set(line.map((fact) => fact.role))) {
    const own = given.map((limits) => limits.get(role));
    for (const order of [[...own.keys()].reverse(), [...own.keys()]]) {
      const last = new Map<string | undefined, LabelledNumber[]>();
      for (const at of order) {
        const thing = role === "unit" && isWhole ? "" : values[at]!.says.characteristic;
        const limits = own[at] ?? last.get(thing);
        if (limits === undefined) continue;
        if (own[at]) last.set(thing, own[at]);
        if (!given[at]!.has(role)) given[at]!.set(role, limits);
      }
    }
  }
  return new Map(values.map((value, at) => [value, given[at]!]));
}
