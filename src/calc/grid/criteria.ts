import { compareAsSheets, compareTexts } from "../../core/decimal.ts";
import { commonCode } from "./grid-text.ts";
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
  rangeOf,
  SheetFault,
} from "./own-function.ts";
import { Wildcards } from "./wildcards.ts";

/** What stands for a value where equal ones are looked up: numbers by the 15 digits that sheets compare, text without regard to case. */
export function equalityKey(value: unknown): unknown {
  if (typeof value === "number") return Number.isInteger(value) ? value + 0 : Number(value.toPrecision(15));
  if (typeof value === "string") return isError(value) ? commonCode(value) : value.toLowerCase();
  return value ?? null;
}

export interface Criterion {
  fits(value: unknown): boolean;
  /** Values that are alike by this key, and no others, fit. */
  key?: unknown;
}

const TRUTH = /^(?:true|false)$/i;
const isTrue = (word: string): boolean => /^t/i.test(word);
const OPERATOR = /^(<=|>=|<>|=|<|>)?(.*)$/s;
const ORDER: Readonly<Record<string, (difference: number) => boolean>> = {
  "<": (difference) => difference < 0,
  ">": (difference) => difference > 0,
  "<=": (difference) => difference <= 0,
  ">=": (difference) => difference >= 0,
};

/** A criterion as sheets write it: a value, or text such as `>73`, `<>`, `p*`. A blank cell asks for 0. */
export function criterionOf(given: unknown, read: (text: string) => number | undefined): Criterion {
  if (typeof given === "number" || given === null || given === undefined) return equalNumber((given as number) ?? 0, read);
  if (typeof given === "boolean") return { fits: (value) => value === given, key: given };
  const [, sign, operand] = OPERATOR.exec(String(given)) as unknown as [string, string | undefined, string];
  const equal = equalTo(sign, operand, read);
  if (sign === undefined || sign === "=") return equal;
  const number = read(operand);
  // Text that reads as the number is like it for `=`, and other than it for `<>`.
  if (sign === "<>") return { fits: (value) => !equal.fits(value) || (typeof value === "string" && number !== undefined) };
  const holds = ORDER[sign]!;
  if (number !== undefined) return { fits: (value) => typeof value === "number" && holds(compareAsSheets(value, number)) };
  // As Excel keeps them, FALSE is less than TRUE and nothing else is compared with either.
  if (TRUTH.test(operand)) return { fits: (value) => typeof value === "boolean" && holds(Number(value) - Number(isTrue(operand))) };
  return { fits: (value) => typeof value === "string" && !isError(value) && operand !== "" && holds(compareTexts(value, operand)) };
}

function equalTo(sign: string | undefined, operand: string, read: (text: string) => number | undefined): Criterion {
  // `=` asks for cells with nothing in them, empty text also for text of no letters.
  if (operand === "") return { fits: (value) => (value ?? null) === null || (sign === undefined && value === "") };
  const number = read(operand);
  if (number !== undefined) return equalNumber(number, read);
  if (TRUTH.test(operand)) return { fits: (value) => value === isTrue(operand), key: isTrue(operand) };
  if (isError(operand)) return { fits: (value) => isError(value) && commonCode(value as string) === commonCode(operand), key: commonCode(operand) };
  const wanted = new Wildcards(operand);
  return {
    fits: (value) => typeof value === "string" && !isError(value) && wanted.fits(value),
    ...(wanted.isPlain ? { key: wanted.plain } : {}),
  };
}

/** Text that reads as the number counts as well. */
const equalNumber = (number: number, read: (text: string) => number | undefined): Criterion => ({
  fits: (value) => {
    const own = typeof value === "string" && !isError(value) ? read(value) : value;
    return typeof own === "number" && compareAsSheets(own, number) === 0;
  },
  key: equalityKey(number),
});

type Places = Map<unknown, number[]>;
/** Of blocks that many formulas look through: where each value stands. A block is the same as long as its values are. */
const indexes = new WeakMap<object, Places>();

function placesIn(block: (GridCell | undefined)[][], read: (text: string) => number | undefined): Places | undefined {
  const known = indexes.get(block);
  if (known || !isAskedAgain(block)) return known;
  const places: Places = new Map();
  const height = block[0]?.length ?? 0;
  countSteps(height * block.length);
  const put = (key: unknown, place: number): void => {
    const there = places.get(key);
    if (there) there.push(place);
    else places.set(key, [place]);
  };
  for (const [c, column] of block.entries()) {
    for (let r = 0; r < height; r++) {
      const value = column[r]?.value;
      const number = typeof value === "string" && /\d/.test(value) ? read(value) : undefined;
      put(equalityKey(value), c * height + r);
      if (number !== undefined) put(equalityKey(number), c * height + r);
    }
  }
  indexes.set(block, places);
  return places;
}

/** Functions that count, add up and the like where criteria are met, as office programs have them: an error in a cell that is added up is the result. */
export function conditionalFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);

  /** The places, column by column, at which every range meets its criterion. */
  function matches(pairs: readonly Given[], locale: unknown): { places: number[]; height: number; width: number } {
    const read = (text: string) => reader.inText(text, locale);
    const tests: { block: (GridCell | undefined)[][]; criterion: Criterion }[] = [];
    if (pairs.length % 2 === 1) throw new SheetFault("#VALUE!", "Each range needs its criterion.");
    for (let i = 0; i < pairs.length; i += 2) tests.push({ block: rangeOf(pairs[i]), criterion: criterionOf(gridBlock(pairs[i + 1])[0]?.[0]?.value, read) });
    const width = tests[0]!.block.length;
    const height = tests[0]!.block[0]?.length ?? 0;
    if (tests.some(({ block }) => block.length !== width || (block[0]?.length ?? 0) !== height))
      throw new SheetFault("#VALUE!", "The ranges of criteria are not of the same size.");
    let places: Iterable<number> = new Array(width * height).keys();
    let size = width * height;
    let indexed: (typeof tests)[number] | undefined;
    for (const test of tests) {
      if (!("key" in test.criterion)) continue;
      const index = placesIn(test.block, read);
      const found = index?.get(test.criterion.key) ?? [];
      if (!index || (indexed && found.length >= size)) continue;
      [places, size, indexed] = [found, found.length, test];
    }
    const others = tests.filter((test) => test !== indexed);
    countSteps(20 + size * Math.max(1, others.length));
    const kept: number[] = [];
    for (const place of places) {
      const [c, r] = [Math.floor(place / height), place % height];
      if (others.every(({ block, criterion }) => criterion.fits(block[c]![r]?.value))) kept.push(place);
    }
    return { places: kept, height, width };
  }

  /** The numbers at these places of a range; an error there is the result. */
  function numbersAt(range: Given, { places, height, width }: ReturnType<typeof matches>, isResized: boolean): number[] {
    const block = rangeOf(range);
    const [w, h] = [block.length, block[0]?.length ?? 0];
    if (isResized ? w < width || h < height : w !== width || h !== height)
      throw new SheetFault("#VALUE!", "The range to work on is not of the size of the range of the criterion.");
    const found: number[] = [];
    for (const place of places) {
      const cell = block[Math.floor(place / height)]![place % height];
      if (typeof cell?.value === "number") found.push(cell.value);
      else if (isError(cell?.value)) throw cell;
    }
    return found;
  }

  const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
  const mean = (numbers: readonly number[]): number => {
    if (numbers.length === 0) throw new SheetFault("#DIV/0!", "No number meets the criteria, so there is no mean.");
    return sum(numbers) / numbers.length;
  };
  const one = (description: string, of: (numbers: number[]) => number): OwnFunction =>
    declared(grid.helpers, description, ["range (any, range)", "criterion (any)", "summed_range (any, range, optional)"], function (range, criterion, summed) {
      return of(numbersAt(summed ?? range, matches([range, criterion], this.locale), true));
    });
  const several = (description: string, of: (numbers: number[]) => number): OwnFunction =>
    declared(
      grid.helpers,
      description,
      ["range (any, range)", "criteria_range (any, range, repeating)", "criterion (any, repeating)"],
      function (range, ...pairs) {
        return of(numbersAt(range, matches(pairs, this.locale), false));
      },
    );
  const functions = {
    SUMIF: one("Adds up the numbers where a criterion is met", sum),
    AVERAGEIF: one("Mean of the numbers where a criterion is met", mean),
    SUMIFS: several("Adds up the numbers where all criteria are met", sum),
    AVERAGEIFS: several("Mean of the numbers where all criteria are met", mean),
    MAXIFS: several("Largest number where all criteria are met", (numbers) => numbers.reduce((a, b) => Math.max(a, b), numbers[0] ?? 0)),
    MINIFS: several("Smallest number where all criteria are met", (numbers) => numbers.reduce((a, b) => Math.min(a, b), numbers[0] ?? 0)),
    COUNTIF: declared(grid.helpers, "Counts the cells that meet a criterion", ["range (any, range)", "criterion (any)"], function (range, criterion) {
      return matches([range, criterion], this.locale).places.length;
    }),
    COUNTIFS: declared(
      grid.helpers,
      "Counts where all criteria are met",
      ["criteria_range (any, range, repeating)", "criterion (any, repeating)"],
      function (...pairs) {
        return matches(pairs, this.locale).places.length;
      },
    ),
    /** What is left out of ranges that are cut to where cells end: nothing but blanks. */
    "SHEET.BLANKS": declared(
      grid.helpers,
      "counts cells that are left out of ranges",
      ["cells (number)", "criterion (any, repeating)"],
      function (cells, ...criteria) {
        const read = (text: string) => reader.inText(text, this.locale);
        return criteria.every((given) => criterionOf(gridBlock(given)[0]?.[0]?.value, read).fits(null)) ? reader.number(cells, this) : 0;
      },
    ),
  };
  for (const name of Object.keys(functions)) COUNTING.add(name);
  return functions;
}
