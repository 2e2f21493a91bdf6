import { broadcast } from "../core/broadcast.ts";
import { decimal } from "../core/decimal.ts";
import { Fault } from "../core/fault.ts";
import { faultBody } from "../core/sentences.ts";
import { compareGroups } from "../functions/wear/compare-groups.ts";
import { mean } from "../math/statistics.ts";
import { measuredBy, ownerKey } from "../vocabulary/subjects.ts";
import { type CharacteristicChange, changeOf } from "./change.ts";
import { labelOf, pairReadings, type Reading, type ReadingPair, type ReadingSet } from "./readings.ts";

/** The cylinders of one engine, or of two, compared as groups. */
export interface GroupChange {
  /** `""` where two engines are compared. */
  engine: string;
  characteristic: string;
  /** Cylinders on each side. */
  cylinders: number;
  /** Mean after less mean before, with its interval at 95 %; `null` where the groups do not show one. */
  difference: number | null;
  from: number | null;
  to: number | null;
  p: number | null;
  differs: boolean;
  says: string;
}

/** Fewer cylinders show no spread. */
const FEWEST = 2;

/**
 * Each characteristic over the cylinders, before against after. A cylinder counts once, by the mean of
 * its places: readings of one cylinder are no cylinders of their own.
 */
function groupsOf(pairs: readonly ReadingPair[], sameEngine: boolean): GroupChange[] {
  const groups = new Map<string, { engine: string; characteristic: string; cylinders: Map<string, { before: number[]; after: number[] }> }>();
  for (const pair of pairs) {
    const [before, after] = [pair.before.at(-1)!, pair.after.at(-1)!];
    const { engine, cylinder, characteristic } = before;
    if (before.value === null || after.value === null || cylinder === "" || characteristic === "") continue;
    if (before.unit !== undefined && after.unit !== undefined && before.unit !== after.unit) continue;
    const key = `${sameEngine ? ownerKey("engine", engine) : ""}|${measuredBy(characteristic, "").characteristic}|${before.unit ?? after.unit ?? ""}`;
    const group = groups.get(key) ?? { engine: sameEngine ? engine : "", characteristic, cylinders: new Map() };
    groups.set(key, group);
    const own = group.cylinders.get(ownerKey("cylinder", cylinder)) ?? { before: [], after: [] };
    group.cylinders.set(ownerKey("cylinder", cylinder), own);
    own.before.push(before.value);
    own.after.push(after.value);
  }
  return [...groups.values()].flatMap(({ engine, characteristic, cylinders }) =>
    cylinders.size < FEWEST ? [] : [groupChange(engine, characteristic, [...cylinders.values()])],
  );
}

function groupChange(engine: string, characteristic: string, cylinders: readonly { before: number[]; after: number[] }[]): GroupChange {
  const group = { engine, characteristic, cylinders: cylinders.length };
  const [after, before] = [cylinders.map((one) => mean(one.after)), cylinders.map((one) => mean(one.before))];
  const made = broadcast(compareGroups, [[after], [before]]);
  if (made instanceof Fault || !Array.isArray(made)) {
    const why = made instanceof Fault ? faultBody(made) : "nothing to compare";
    return { ...group, difference: null, from: null, to: null, p: null, differs: false, says: why };
  }
  // Groups without any spread: the function says what keeps it from telling.
  if (made[1]![1] === "") return { ...group, difference: null, from: null, to: null, p: null, differs: false, says: String(made[1]!.at(-1)) };
  const [difference, from, to, , , p] = (made[1] as number[]).map((value) => Number(decimal(value).toPrecision(4))) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const differs = from > 0 || to < 0;
  const size = difference === 0 ? "equal on average" : `${Math.abs(difference)} ${difference > 0 ? "larger" : "smaller"} on average`;
  const says = `${size} over ${cylinders.length} cylinders (${from} to ${to}, p ${p})`;
  return { ...group, difference, from, to, p, differs, says };
}

export type { CharacteristicChange };

interface CompareOptions {
  /** Hours in service between the two, where no column says. */
  hours?: number | undefined;
  /** Compares this engine of the first with that of the second; characteristics are then matched without the engine. */
  engines?: { before: string; after: string } | undefined;
}

/** Readings that could not be compared, and why. */
export interface RefusedRow {
  label: string;
  before: Reading[];
  after: Reading[];
  why: string;
}

export interface Comparison {
  /** In words: `build.csv against strip-down.csv`, or which engine against which. */
  between: string;
  /** Wear is told of one engine only. */
  sameEngine: boolean;
  /** Real changes first, the clearest of them first; then what the gauge may explain. */
  changes: CharacteristicChange[];
  refused: RefusedRow[];
  groups: GroupChange[];
  /** What a person should know before trusting the numbers. */
  notes: string[];
  /** Readings of both sides: always compared + refused. */
  rowsIn: number;
  rowsCompared: number;
  rowsRefused: number;
  /** How many of the changes are real. */
  real: number;
}

/** Compares two sides characteristic by characteristic: a build with its strip-down, or one engine with another. */
export function compareReadings(before: ReadingSet, after: ReadingSet, options: CompareOptions = {}): Comparison {
  const { engines } = options;
  const [own, other] = [pick(before.readings, engines?.before), pick(after.readings, engines?.after)];
  const mode = modeOf(before, after, own, other, engines);
  const { pairs, unmatched } = pairReadings(own, other, mode.withEngine);
  const compared: { pair: ReadingPair; change: CharacteristicChange }[] = [];
  const sound: ReadingPair[] = [];
  const refused: RefusedRow[] = unmatched.map((row) => ({ ...row, label: labelOf([...row.before, ...row.after][0]!) }));
  for (const pair of pairs) {
    const change = changeOf(pair, options.hours);
    if (!("why" in change) || change.isSound) sound.push(pair);
    if ("why" in change) refused.push({ ...pair, label: labelOf(pair.before[0]!), why: change.why });
    else compared.push({ pair, change: mode.sameEngine ? change : { ...change, wear: null } });
  }
  const changes = compared.map(({ change }) => change).sort((a, b) => Number(isReal(b)) - Number(isReal(a)) || Math.abs(b.en) - Math.abs(a.en));
  return {
    between: mode.between,
    sameEngine: mode.sameEngine,
    changes,
    refused,
    groups: groupsOf(sound, mode.sameEngine),
    notes: [
      ...before.notes,
      ...after.notes,
      ...notesOn(changes, own, other, options, before.readings.length + after.readings.length - own.length - other.length),
    ],
    rowsIn: own.length + other.length,
    rowsCompared: rowsOf(compared.map(({ pair }) => pair)),
    rowsRefused: rowsOf(refused),
    real: changes.filter(isReal).length,
  };
}

export const isReal = ({ verdict }: Pick<CharacteristicChange, "verdict">): boolean => verdict !== "no real change";

const rowsOf = (rows: readonly ReadingPair[]): number => rows.reduce((sum, { before, after }) => sum + before.length + after.length, 0);

const sameName = (a: string, b: string): boolean => ownerKey("engine", a) === ownerKey("engine", b);

const pick = (readings: readonly Reading[], engine: string | undefined): Reading[] =>
  engine === undefined ? [...readings] : readings.filter((reading) => sameName(reading.engine, engine));

/** Engines that a side names; one engine may also go unnamed. */
const enginesIn = (readings: readonly Reading[]): string[] => [...new Map(readings.map(({ engine }) => [ownerKey("engine", engine), engine.trim()])).values()];

interface Mode {
  withEngine: boolean;
  sameEngine: boolean;
  between: string;
}

/** With one engine on each side their names need not agree: they may be two engines, or one of them unnamed. */
function modeOf(before: ReadingSet, after: ReadingSet, own: readonly Reading[], other: readonly Reading[], engines: CompareOptions["engines"]): Mode {
  const files = `${before.name} against ${after.name}`;
  const [named, others] = [enginesIn(own), enginesIn(other)];
  if (named.length > 1 || others.length > 1) return { withEngine: true, sameEngine: true, between: files };
  const [a, b] = [engines?.before ?? named[0] ?? "", engines?.after ?? others[0] ?? ""];
  if (a === "" || b === "" || sameName(a, b)) return { withEngine: false, sameEngine: true, between: files };
  return { withEngine: false, sameEngine: false, between: `engine ${a} of ${before.name} against engine ${b} of ${after.name}` };
}

function notesOn(
  changes: readonly CharacteristicChange[],
  own: readonly Reading[],
  other: readonly Reading[],
  { hours, engines }: CompareOptions,
  left: number,
): string[] {
  const notes: string[] = [];
  if (left > 0) notes.push(`${left} ${left === 1 ? "reading" : "readings"} of other engines ${left === 1 ? "is" : "are"} left out`);
  if (engines && own.length === 0) notes.push(`no reading before is of engine ${engines.before}`);
  if (engines && other.length === 0) notes.push(`no reading after is of engine ${engines.after}`);
  const [has, others] = [own, other].map((side) => side.some((reading) => reading.hours !== undefined)) as [boolean, boolean];
  if (has !== others && hours === undefined)
    notes.push(`hours are given ${has ? "before" : "after"} only, so wear cannot be told by them: give the hours between`);
  const missing = changes.some(({ before, after }) => (before.uncertainty === undefined) !== (after.uncertainty === undefined));
  if (missing) notes.push("where one side gives no uncertainty, that of the other side stands for both");
  if (changes.some(({ wear }) => wear?.life)) notes.push("a life draws the line on as if wear went on as before: measure again before the earliest");
  return notes;
}
