import { isBlank } from "../core/cell.ts";
import { entriesOn } from "../layout/entries.ts";
import { foldedHeading } from "../vocabulary/headings.ts";
import type { IdentityField } from "../vocabulary/identity.ts";
import { ownerKey } from "../vocabulary/subjects.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { SideNames, Unmatched } from "./pair-readings.ts";
import type { EngineIdentity, Reading, ReadingSet } from "./readings.ts";

/** Whose engine sheets say that it is; what two of them say differently is not said. */
export function engineIdentity(sheets: readonly SheetSnapshot[]): EngineIdentity {
  const told = new Map<IdentityField, Map<string, string>>();
  for (const sheet of sheets) {
    for (const { field, entry } of entriesOn(sheet)) {
      if (isBlank(entry) || typeof entry === "object") continue;
      const texts = told.get(field) ?? new Map<string, string>();
      told.set(field, texts.set(field === "engine" ? ownerKey("engine", String(entry)) : foldedHeading(String(entry)), String(entry).trim()));
    }
  }
  const only = (field: IdentityField): string | undefined => (told.get(field)?.size === 1 ? [...told.get(field)!.values()][0] : undefined);
  const [serial, engine] = [only("serial number") ?? only("engine number"), only("engine")];
  return { ...(serial === undefined ? {} : { serial }), ...(engine === undefined ? {} : { engine }) };
}

/** Which readings are set against which. */
export interface Sides {
  /** Changes of one engine or of several; or the sizes of two engines, which are differences and no changes. */
  kind: "changes" | "sizes";
  before: Reading[];
  after: Reading[];
  /** Engines are told apart by their names in the readings. */
  withEngine: boolean;
  /** The two whose changes are compared with one another, or whose sizes are. */
  engines: readonly [string, string] | undefined;
  names: SideNames;
  /** In words: `build.csv against strip-down.csv`. */
  between: string;
  refused: Unmatched[];
  notes: string[];
}

export interface EnginePair {
  before: string;
  after: string;
}

/** True for two spellings of one engine's name. */
export const isSameEngine = (a: string, b: string): boolean => ownerKey("engine", a) === ownerKey("engine", b);

/** Engines that readings name, each once; `""` for none. */
const enginesIn = (readings: readonly Reading[]): string[] => [...new Map(readings.map(({ engine }) => [ownerKey("engine", engine), engine.trim()])).values()];

/** What is compared with what. A lone set holds both sides itself, or two engines that are named. */
export function sidesOf(first: ReadingSet, second: ReadingSet | undefined, named: EnginePair | undefined): Sides {
  const { before, after, refused, isByCampaign } = byCampaign(first, second, named !== undefined);
  const names = second === undefined ? first.name : `${first.name} against ${second.name}`;
  const between = isByCampaign ? `${second === undefined ? first.name : `${first.name} and ${second.name}`}, before against after` : names;
  const sides: Sides = {
    kind: "changes",
    before,
    after,
    withEngine: true,
    engines: undefined,
    between,
    refused,
    notes: [],
    names: { before: "before", after: "after" },
  };
  if (named) return ofNamed(sides, named, first, second ?? first);
  const [own, others] = [enginesIn(before), enginesIn(after)];
  if (own.length > 1 || others.length > 1) {
    const both = own.filter((name) => name !== "" && others.some((other) => isSameEngine(name, other)));
    return { ...sides, engines: both.length === 2 ? [both[0]!, both[1]!] : undefined };
  }
  const other = second ?? first;
  const [a, b] = [own[0] || first.identity?.engine || "", others[0] || other.identity?.engine || ""];
  const serials = isByCampaign ? [] : [first.identity?.serial, other.identity?.serial];
  const [serial, otherSerial] = serials;
  const knowsSerials = serial !== undefined && otherSerial !== undefined;
  const isSame = knowsSerials ? foldedHeading(serial) === foldedHeading(otherSerial) : a === "" || b === "" || isSameEngine(a, b);
  if (isSame) return { ...sides, withEngine: false };
  const called = (name: string, number: string | undefined): string =>
    knowsSerials && (name === "" || isSameEngine(a, b)) ? `${name} number ${number}`.trim() : name;
  return { ...sizes(sides, called(a, serial), called(b, otherSerial), first, other), withEngine: false };
}

const sizes = (sides: Sides, a: string, b: string, first: ReadingSet, second: ReadingSet): Sides => ({
  ...sides,
  kind: "sizes",
  withEngine: false,
  engines: [a, b],
  names: { before: `on engine ${a}`, after: `on engine ${b}` },
  between: `engine ${a} of ${first.name} against engine ${b} of ${second.name}`,
});

/** Two engines that are named: their changes where both sides hold both of them, else the sizes of the one against those of the other. */
function ofNamed(sides: Sides, { before: a, after: b }: EnginePair, first: ReadingSet, second: ReadingSet): Sides {
  const of = (readings: readonly Reading[], ...names: string[]) => readings.filter(({ engine }) => names.some((name) => isSameEngine(engine, name)));
  const holdsBoth = [sides.before, sides.after].every((side) => [a, b].every((name) => of(side, name).length > 0));
  if (holdsBoth && !isSameEngine(a, b) && !areTheSame(sides.before, sides.after)) {
    const [before, after] = [of(sides.before, a, b), of(sides.after, a, b)];
    return { ...sides, before, after, engines: [a, b], notes: leftOut(sides, before, after) };
  }
  const [before, after] = [of(sides.before, a), of(sides.after, b)];
  const notes = leftOut(sides, before, after);
  if (before.length === 0) notes.push(`no reading of ${first.name} is of engine ${a}`);
  if (after.length === 0) notes.push(`no reading of ${second.name} is of engine ${b}`);
  if (isSameEngine(a, b)) return { ...sides, before, after, withEngine: false, notes };
  return { ...sizes(sides, a, b, first, second), before, after, notes };
}

function leftOut(sides: Sides, before: readonly Reading[], after: readonly Reading[]): string[] {
  const left = sides.before.length + sides.after.length - before.length - after.length;
  return left > 0 ? [`${left} ${left === 1 ? "reading" : "readings"} of other engines ${left === 1 ? "is" : "are"} left out`] : [];
}

/** One file that was given twice. */
const areTheSame = (before: readonly Reading[], after: readonly Reading[]): boolean =>
  before.length === after.length &&
  before.every(({ value, cell }, i) => value === after[i]!.value && cell.row === after[i]!.cell.row && cell.sheet === after[i]!.cell.sheet);

/** The same readings given twice, as when one file that holds both sides is chosen for each: taken twice they would pass for repeats. */
export const isGivenTwice = ({ readings: before }: ReadingSet, { readings: after }: ReadingSet): boolean =>
  before.length === after.length &&
  before.some(({ campaign }) => campaign !== undefined) &&
  before.every(({ value, cell, engine, campaign }, i) => {
    const other = after[i]!;
    return value === other.value && cell.row === other.cell.row && cell.column === other.cell.column && engine === other.engine && campaign === other.campaign;
  });

/** Rows that say themselves whether they were taken before or after stand on that side, whatever file they come from. */
function byCampaign(
  first: ReadingSet,
  second: ReadingSet | undefined,
  areEnginesNamed: boolean,
): Pick<Sides, "before" | "after" | "refused"> & { isByCampaign: boolean } {
  const sets = second === undefined ? [first] : [first, second];
  const says = sets.map(({ readings }) => new Set(readings.map(({ campaign }) => campaign)));
  if (!says.some((campaigns) => campaigns.has("before") || campaigns.has("after"))) {
    if (second === undefined && !areEnginesNamed) {
      const refused = first.readings.map((reading) => ({ before: [reading], after: [], why: NO_SIDE }));
      return { before: [], after: [], refused, isByCampaign: false };
    }
    return { before: first.readings, after: (second ?? first).readings, refused: [], isByCampaign: false };
  }
  // Two files with both sides each hold two engines, by the names of the files where nothing else tells them.
  const holdBoth = second !== undefined && says.every((campaigns) => campaigns.has("before") && campaigns.has("after"));
  const sides: Pick<Sides, "before" | "after" | "refused"> = { before: [], after: [], refused: [] };
  for (const [i, { readings, identity, name }] of sets.entries()) {
    for (const reading of readings) {
      const own = holdBoth && reading.engine === "" ? { ...reading, engine: identity?.engine ?? name } : reading;
      const side = reading.campaign ?? (second === undefined ? undefined : i === 0 ? "before" : "after");
      if (side === undefined) sides.refused.push({ before: [own], after: [], why: NO_SIDE });
      else sides[side].push(own);
    }
  }
  return { ...sides, isByCampaign: true };
}

const NO_SIDE = "nothing says whether it was measured before or after";
