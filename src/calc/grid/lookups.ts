import { equalPlace, fallingPlace, isSorted, type Line, lineOf, nearestPlace, sortedPlace, wildcardPlace } from "./line-search.ts";
import {
  COUNTING,
  declared,
  type Given,
  type GridCell,
  type GridParts,
  gridBlock,
  isError,
  notHere,
  type OwnFunction,
  Reader,
  rangeOf,
  SheetFault,
  singleOf,
} from "./own-function.ts";
import { Wildcards } from "./wildcards.ts";

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
  const oneLine = (block: (GridCell | undefined)[][], code = "#N/A"): Line => {
    if (block.length > 1 && (block[0]?.length ?? 0) > 1) throw new SheetFault(code, "What is searched has to be one row or one column.");
    return lineOf(block, block.length > 1);
  };

  const table = (isAcross: boolean): OwnFunction =>
    declared(
      helpers,
      isAcross ? "Looks a value up in the first row of a range" : "Looks a value up in the first column of a range",
      ["value (any)", "range (any, range)", "number (number)", "is_sorted (boolean, default=TRUE)"],
      function (value, range, number, sorted) {
        const target = targetOf(value);
        const block = rangeOf(range);
        if (!Array.isArray(range) && typeof range?.value === "string") return new SheetFault("#VALUE!", "A text is no range.");
        const at = Math.trunc(reader.number(number, this));
        const most = isAcross ? (block[0]?.length ?? 0) : block.length;
        const what = isAcross ? "row" : "column";
        const line = lineOf(block, isAcross);
        const place = reader.flag(sorted, this, true) ? sortedPlace(line, target) : exactPlace(line, target);
        if (place < 0) return missing;
        if (at < 1) return new SheetFault("#VALUE!", `The ${what} to give back counts from 1.`);
        if (at > most) return outside(what);
        return (isAcross ? block[place]![at - 1] : block[at - 1]![place]) ?? { value: null };
      },
    );

  /** Where XLOOKUP and XMATCH find the value. */
  function placeBy(line: Line, given: Given, match: number, search: number): number {
    const target = singleOf(given) ?? null;
    if (isError(target)) throw given;
    if (match === 3) throw new SheetFault("#VALUE!", notHere("A search by regular expressions is not worked out here."));
    if (![-1, 0, 1, 2].includes(match)) throw new SheetFault("#VALUE!", "The kind of match is 0, -1, 1 or 2.");
    if (![-2, -1, 1, 2].includes(search)) throw new SheetFault("#VALUE!", "The way of searching is 1, -1, 2 or -2.");
    if (match === 2) {
      if (Math.abs(search) === 2) throw new SheetFault("#VALUE!", "A search for * and ? goes through all values, from the first or the last.");
      return typeof target === "string" ? wildcardPlace(line, new Wildcards(target), search < 0) : equalPlace(line, target, search < 0);
    }
    if (Math.abs(search) === 2 && !isSorted(line, search < 0))
      throw new SheetFault(
        "#VALUE!",
        notHere(
          `The values that are searched do not go ${search < 0 ? "down" : "up"} throughout, as this way of searching takes for granted: what it finds in others is not worked out here.`,
        ),
      );
    const equal = equalPlace(line, target, search < 0);
    if (equal >= 0 || match === 0 || target === null) return equal;
    // Halving ends beside the place where the value would stand.
    return nearestPlace(line, target, match > 0, Math.abs(search) === 2 ? match < 0 === search > 0 : search < 0);
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
        const target = targetOf(value);
        const line = oneLine(rangeOf(range));
        const way = Math.sign(reader.number(type, this, 1));
        const place = way === 0 ? exactPlace(line, target) : way < 0 ? fallingPlace(line, target) : sortedPlace(line, target);
        return place < 0 ? missing : place + 1;
      },
    ),
    LOOKUP: declared(
      helpers,
      "Looks a value up in a sorted row or column",
      ["value (any)", "range (any, range)", "result_range (any, range, optional)"],
      (value, range, results) => {
        const target = targetOf(value);
        const block = rangeOf(range);
        const height = block[0]?.length ?? 0;
        const isAcross = block.length > height;
        const place = sortedPlace(lineOf(block, isAcross), target);
        if (place < 0) return missing;
        if (results === undefined) return (isAcross ? block[place]![height - 1] : block.at(-1)![place]) ?? { value: null };
        return oneLine(rangeOf(results))[place] ?? outside("value");
      },
    ),
    XLOOKUP: declared(
      helpers,
      "Looks a value up in a row or column and gives what stands beside it",
      ["value (any)", "searched (any, range)", "results (any, range)", "if_not_found (any, optional)", ...MODES],
      function (value, searched, results, otherwise, match, search) {
        const block = rangeOf(searched);
        const line = oneLine(block);
        const given = rangeOf(results);
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
        const place = placeBy(oneLine(rangeOf(searched), "#VALUE!"), value, whole(match, this, 0), whole(search, this, 1));
        return place < 0 ? missing : place + 1;
      },
    ),
  };
  for (const name of Object.keys(functions)) COUNTING.add(name);
  // They look at no more than their answer.
  for (const name of ["INDEX", "ROWS", "COLUMNS"]) COUNTING.add(name);
  return functions;
}
