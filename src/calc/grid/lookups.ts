import { compareTexts } from "../../core/decimal.ts";
import { equalityKey } from "./criteria.ts";
import {
  COUNTING,
  countSteps,
  declared,
  type Given,
  type GridCell,
  type GridParts,
  gridBlock,
  isAskedAgain,
  isError,
  type OwnFunction,
  Reader,
  SheetFault,
  singleOf,
} from "./own-function.ts";
import { Wildcards } from "./wildcards.ts";

type Line = readonly (GridCell | undefined)[];

/** What is found out about a row or column that many formulas search; it stays the same as long as its values do. */
interface Known {
  first: Map<unknown, number>;
  last: Map<unknown, number>;
  /** The places of all values of one kind. */
  kinds: Map<string, number[]>;
  /** Whether the values of a kind go up or down throughout. */
  isSorted: Map<string, boolean>;
}

const known = new WeakMap<object, Known>();
/** The first row of a block, which the grid does not have as a list of its own. */
const rows = new WeakMap<object, Line>();

/** The line that is searched: the first column of a block, or its first row. */
function lineOf(block: (GridCell | undefined)[][], isAcross: boolean): Line {
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

/** Order of two values of one kind, as sheets sort them. */
const order = (a: unknown, b: unknown): number =>
  typeof a === "string" ? compareTexts(a, b as string) : equalityKey(a) === equalityKey(b) ? 0 : (a as number) < (b as number) ? -1 : 1;

/** The place of the equal value, from the start or from the end; −1 where there is none. */
function equalPlace(line: Line, target: unknown, isFromEnd = false): number {
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
function wildcardPlace(line: Line, pattern: Wildcards, isFromEnd = false): number {
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
 * In a line that goes up, the last place whose value is not above the target; in one that goes down, the last
 * that is not below it. Values of another kind are passed over.
 */
function sortedPlace(line: Line, target: unknown, isDown = false): number {
  const places = placesOfKind(line, typeof target);
  let low = 0;
  let high = places.length;
  countSteps(40);
  while (low < high) {
    const middle = (low + high) >> 1;
    const way = order(line[places[middle]!]!.value, target);
    if (isDown ? way >= 0 : way <= 0) low = middle + 1;
    else high = middle;
  }
  return low === 0 ? -1 : places[low - 1]!;
}

/** The place of the value next to the target, below it or above it, wherever in the line it stands. */
function nearestPlace(line: Line, target: unknown, isAbove: boolean, isFromEnd: boolean): number {
  countSteps(line.length);
  let found = -1;
  for (let i = 0; i < line.length; i++) {
    const value = line[i]?.value;
    if (typeof value !== typeof target || isError(value)) continue;
    const way = order(value, target);
    if (isAbove ? way < 0 : way > 0) continue;
    const better = found < 0 ? 1 : order(value, line[found]!.value) * (isAbove ? -1 : 1);
    if (better > 0 || (better === 0 && isFromEnd)) found = i;
  }
  return found;
}

function isSorted(line: Line, kind: string, isDown: boolean): boolean {
  const { isSorted, kinds } = knownOf(line);
  const name = `${kind} ${isDown}`;
  let sorted = isSorted.get(name);
  if (sorted === undefined) {
    const places = kinds.get(kind) ?? [];
    countSteps(places.length);
    sorted = places.every((place, i) => i === 0 || order(line[places[i - 1]!]!.value, line[place]!.value) * (isDown ? -1 : 1) <= 0);
    isSorted.set(name, sorted);
  }
  return sorted;
}

const missing = new SheetFault("#N/A", "The value that is looked up is not there.");
const outside = (what: string): SheetFault => new SheetFault("#REF!", `There is no ${what} of this number in the range.`);

/** Functions that look values up, as office programs do. What is known of a range is kept for the next formula that searches it. */
export function lookupFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const { helpers } = grid;

  /** What is looked up; a blank cell stands for 0. */
  const targetOf = (given: Given): unknown => {
    const value = singleOf(given) ?? 0;
    if (isError(value)) throw given;
    return value;
  };
  const exactPlace = (line: Line, target: unknown): number => {
    if (typeof target !== "string" || !/[*?~]/.test(target)) return equalPlace(line, target);
    const pattern = new Wildcards(target);
    return pattern.isPlain ? equalPlace(line, pattern.plain) : wildcardPlace(line, pattern);
  };
  const oneLine = (block: (GridCell | undefined)[][]): Line => {
    if (block.length > 1 && (block[0]?.length ?? 0) > 1) throw new SheetFault("#N/A", "What is searched has to be one row or one column.");
    return lineOf(block, block.length > 1);
  };

  const table = (isAcross: boolean): OwnFunction =>
    declared(
      helpers,
      isAcross ? "Looks a value up in the first row of a range" : "Looks a value up in the first column of a range",
      ["value (any)", "range (any, range)", "number (number)", "is_sorted (boolean, default=TRUE)"],
      function (value, range, number, sorted) {
        const block = gridBlock(range);
        const target = targetOf(value);
        const at = Math.trunc(reader.number(number, this));
        const most = isAcross ? (block[0]?.length ?? 0) : block.length;
        const what = isAcross ? "row" : "column";
        if (at < 1) return new SheetFault("#VALUE!", `The ${what} to give back counts from 1.`);
        if (at > most) return outside(what);
        const line = lineOf(block, isAcross);
        const place = reader.flag(sorted, this, true) ? sortedPlace(line, target) : exactPlace(line, target);
        if (place < 0) return missing;
        return (isAcross ? block[place]![at - 1] : block[at - 1]![place]) ?? { value: null };
      },
    );

  /** Where XLOOKUP and XMATCH find the value. */
  function placeBy(line: Line, given: Given, match: number, search: number): number {
    const target = singleOf(given) ?? null;
    if (isError(target)) throw given;
    if (![-1, 0, 1, 2].includes(match)) throw new SheetFault("#VALUE!", "The kind of match is 0, -1, 1 or 2.");
    if (![-2, -1, 1, 2].includes(search)) throw new SheetFault("#VALUE!", "The way of searching is 1, -1, 2 or -2.");
    if (match === 2) {
      if (Math.abs(search) === 2) throw new SheetFault("#VALUE!", "A search for * and ? goes through all values, from the first or the last.");
      return typeof target === "string" ? wildcardPlace(line, new Wildcards(target), search < 0) : equalPlace(line, target, search < 0);
    }
    if (Math.abs(search) === 2 && !isSorted(line, typeof target, search < 0))
      throw new SheetFault(
        "#VALUE!",
        `The values that are searched do not go ${search < 0 ? "down" : "up"} throughout, as this way of searching takes for granted.`,
      );
    const equal = equalPlace(line, target, search === -1);
    return equal >= 0 || match === 0 || target === null ? equal : nearestPlace(line, target, match > 0, search === -1);
  }
  const whole = (given: Given, around: ThisParameterType<OwnFunction["compute"]>, otherwise: number): number =>
    Math.trunc(reader.number(given, around, otherwise));
  const MODES = ["match_mode (number, default=0)", "search_mode (number, default=1)"];

  const functions: Record<string, OwnFunction> = {
    VLOOKUP: table(false),
    HLOOKUP: table(true),
    MATCH: declared(
      helpers,
      "Place of a value in a row or column",
      ["value (any)", "range (any, range)", "match_type (number, default=1)"],
      function (value, range, type) {
        const line = oneLine(gridBlock(range));
        const target = targetOf(value);
        const way = Math.sign(reader.number(type, this, 1));
        const place = way === 0 ? exactPlace(line, target) : sortedPlace(line, target, way < 0);
        return place < 0 ? missing : place + 1;
      },
    ),
    LOOKUP: declared(
      helpers,
      "Looks a value up in a sorted row or column",
      ["value (any)", "range (any, range)", "result_range (any, range, optional)"],
      (value, range, results) => {
        const block = gridBlock(range);
        const height = block[0]?.length ?? 0;
        const isAcross = block.length > height;
        const place = sortedPlace(lineOf(block, isAcross), targetOf(value));
        if (place < 0) return missing;
        if (results === undefined) return (isAcross ? block[place]![height - 1] : block.at(-1)![place]) ?? { value: null };
        return oneLine(gridBlock(results))[place] ?? outside("value");
      },
    ),
    XLOOKUP: declared(
      helpers,
      "Looks a value up in a row or column and gives what stands beside it",
      ["value (any)", "searched (any, range)", "results (any, range)", "if_not_found (any, optional)", ...MODES],
      function (value, searched, results, otherwise, match, search) {
        const block = gridBlock(searched);
        const line = oneLine(block);
        const given = gridBlock(results);
        const isAcross = block.length > 1;
        if (isAcross ? given.length !== line.length : given[0]!.length !== line.length)
          return new SheetFault("#VALUE!", "The results are not as many as the values that are searched.");
        const place = placeBy(line, value, whole(match, this, 0), whole(search, this, 1));
        if (place < 0) return otherwise === undefined ? missing : (gridBlock(otherwise)[0]![0] ?? { value: null });
        const found = isAcross ? [given[place]!] : given.map((column) => [column[place]]);
        return found.length === 1 && found[0]!.length === 1 ? (found[0]![0] ?? { value: null }) : (found as GridCell[][]);
      },
    ),
    XMATCH: declared(
      helpers,
      "Place of a value in a row or column",
      ["value (any)", "searched (any, range)", ...MODES],
      function (value, searched, match, search) {
        const place = placeBy(oneLine(gridBlock(searched)), value, whole(match, this, 0), whole(search, this, 1));
        return place < 0 ? missing : place + 1;
      },
    ),
  };
  for (const name of Object.keys(functions)) COUNTING.add(name);
  // They look at no more than their answer.
  for (const name of ["INDEX", "ROWS", "COLUMNS"]) COUNTING.add(name);
  return functions;
}
