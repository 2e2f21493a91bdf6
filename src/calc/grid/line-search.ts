import { compareTexts } from "../../core/decimal.ts";
import { equalityKey } from "./criteria.ts";
import { countSteps, type GridCell, isAskedAgain, isError } from "./own-function.ts";
import type { Wildcards } from "./wildcards.ts";

/** Searching a row or column, as look-ups do. What is found out about a line is kept for the next formula that searches it. */
export type Line = readonly (GridCell | undefined)[];

/** What is found out about a row or column that many formulas search; it stays the same as long as its values do. */
interface Known {
  first: Map<unknown, number>;
  last: Map<unknown, number>;
  /** The places of all values of one kind. */
  kinds: Map<string, number[]>;
  /** Whether the values go up or, where it is asked for, down throughout. */
  isSorted: Map<boolean, boolean>;
  /** Of each place, where the run of equal neighbours ends in which it stands. */
  runEnds?: Int32Array;
}

const known = new WeakMap<object, Known>();
/** The first row of a block, which the grid does not have as a list of its own. */
const rows = new WeakMap<object, Line>();

/** The line that is searched: the first column of a block, or its first row. */
export function lineOf(block: (GridCell | undefined)[][], isAcross: boolean): Line {
  if (!isAcross) return block[0] ?? [];
  let row = rows.get(block);
  if (!row) {
    row = block.map((column) => column[0]);
    rows.set(block, row);
  }
  return row;
}

function knownOf(line: Line): Known {
  const there = known.get(line);
  if (there) return there;
  const made: Known = { first: new Map(), last: new Map(), kinds: new Map(), isSorted: new Map() };
  countSteps(line.length);
  for (const [i, cell] of line.entries()) {
    const value = cell?.value ?? null;
    if (isError(value)) continue;
    const key = equalityKey(value);
    if (!made.first.has(key)) made.first.set(key, i);
    made.last.set(key, i);
    const kind = typeof value;
    const places = made.kinds.get(kind);
    if (places) places.push(i);
    else made.kinds.set(kind, [i]);
  }
  known.set(line, made);
  return made;
}

const KINDS = ["number", "string", "boolean"];
/** Order of two values as sheets sort them: numbers, texts, truth values. Errors have none. */
export const order = (a: unknown, b: unknown): number =>
  typeof a !== typeof b
    ? KINDS.indexOf(typeof a) - KINDS.indexOf(typeof b)
    : typeof a === "string"
      ? compareTexts(a, b as string)
      : equalityKey(a) === equalityKey(b)
        ? 0
        : (a as number) < (b as number)
          ? -1
          : 1;

/** The place of the equal value, from the start or from the end; −1 where there is none. */
export function equalPlace(line: Line, target: unknown, isFromEnd = false): number {
  if (!known.has(line) && !isAskedAgain(line)) {
    countSteps(line.length);
    const key = equalityKey(target);
    const isEqual = (cell: GridCell | undefined): boolean => equalityKey(cell?.value) === key && !isError(cell?.value);
    return isFromEnd ? line.findLastIndex(isEqual) : line.findIndex(isEqual);
  }
  const { first, last } = knownOf(line);
  countSteps(20);
  return (isFromEnd ? last : first).get(equalityKey(target)) ?? -1;
}

/** The place of the first text of this kind, or the last one. */
export function wildcardPlace(line: Line, pattern: Wildcards, isFromEnd = false): number {
  countSteps(line.length);
  const fits = (cell: GridCell | undefined): boolean => typeof cell?.value === "string" && !isError(cell.value) && pattern.fits(cell.value);
  return isFromEnd ? line.findLastIndex(fits) : line.findIndex(fits);
}

/** The places of all values of a kind. */
function placesOfKind(line: Line, kind: string): readonly number[] {
  if (known.has(line) || isAskedAgain(line)) return knownOf(line).kinds.get(kind) ?? [];
  countSteps(line.length);
  const places: number[] = [];
  for (const [i, cell] of line.entries()) if (typeof cell?.value === kind && !isError(cell!.value)) places.push(i);
  return places;
}

/**
 * In a line that goes up, the last place whose value is not above the target. Values of another kind are passed over. Where the line
 * is in no order, what is found is what office programs find that halve it in this way: from a value of another kind on to the next of
 * the target's, and among equal ones to the last of the run.
 */
export function sortedPlace(line: Line, target: unknown): number {
  const places = placesOfKind(line, typeof target);
  countSteps(40);
  let low = -1;
  let high = line.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    const index = firstFrom(places, middle);
    // All from the middle on is of another kind.
    const way = index < places.length && places[index]! < high ? order(line[places[index]!]!.value, target) : 1;
    if (way < 0) low = places[index]!;
    else if (way > 0) high = middle;
    else return Math.min(endOfRun(line, places[index]!), high - 1);
  }
  return low;
}

/**
 * In a line that goes down, the last of the first equal values, or the last above the target before one below it. Office programs go through the
 * line from its start: by Excel's values in public test workbooks (vinci1it2000/formulas, test.xlsx; dgorissen/pycel, lookup.xlsx).
 */
export function fallingPlace(line: Line, target: unknown): number {
  let found = -1;
  for (const place of placesOfKind(line, typeof target)) {
    countSteps(1);
    const way = order(line[place]!.value, target);
    if (way === 0) return endOfRun(line, place);
    if (way < 0) return found;
    found = place;
  }
  return found;
}

/** Where the run of equal neighbours ends that this place is in: found out for the whole line where it is searched again. */
function endOfRun(line: Line, place: number): number {
  const isAlike = (at: number): boolean => {
    const [value, next] = [line[at]?.value, line[at + 1]?.value];
    return typeof value === typeof next && !isError(next) && order(value, next) === 0;
  };
  const of = known.get(line);
  if (!of) {
    let end = place;
    while (end + 1 < line.length && isAlike(end)) end++;
    countSteps(end - place);
    return end;
  }
  if (!of.runEnds) {
    countSteps(line.length);
    of.runEnds = new Int32Array(line.length);
    for (let at = line.length - 1; at >= 0; at--) of.runEnds[at] = at + 1 < line.length && isAlike(at) ? of.runEnds[at + 1]! : at;
  }
  return of.runEnds[place]!;
}

/** Which of places that go up is the first from here on. */
export function firstFrom(places: readonly number[], from: number): number {
  let low = 0;
  let high = places.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[middle]! < from) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The place of the value next to the target, below it or above it, wherever in the line it stands. */
export function nearestPlace(line: Line, target: unknown, isAbove: boolean, isFromEnd: boolean): number {
  countSteps(line.length);
  let found = -1;
  for (let i = 0; i < line.length; i++) {
    const value = line[i]?.value;
    if (value === null || value === undefined || isError(value)) continue;
    const way = order(value, target);
    if (isAbove ? way < 0 : way > 0) continue;
    const better = found < 0 ? 1 : order(value, line[found]!.value) * (isAbove ? -1 : 1);
    if (better > 0 || (better === 0 && isFromEnd)) found = i;
  }
  return found;
}

export function isSorted(line: Line, isDown: boolean): boolean {
  const known = knownOf(line);
  let sorted = known.isSorted.get(isDown);
  if (sorted === undefined) {
    countSteps(line.length);
    const values = line.flatMap((cell) => cell?.value ?? []).filter((value) => !isError(value));
    sorted = values.every((value, i) => i === 0 || order(values[i - 1], value) * (isDown ? -1 : 1) <= 0);
    known.isSorted.set(isDown, sorted);
  }
  return sorted;
}
