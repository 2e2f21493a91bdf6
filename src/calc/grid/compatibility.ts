import { isErrorCode } from "../../core/cell.ts";
import { compareAsSheets, compareTexts } from "../../core/decimal.ts";
import { addedFunctions } from "./added.ts";
import { blockFunctions } from "./blocks.ts";
import { convertFunctions } from "./convert.ts";
import { conditionalFunctions } from "./criteria.ts";
import { distributionFunctions } from "./distributions.ts";
import { numberFaults, otherFaults } from "./fault-codes.ts";
import { countFirstDays } from "./first-days.ts";
import { lookupFunctions } from "./lookups.ts";
import {
  declared,
  type FunctionRegistry,
  type Given,
  type GridCell,
  type GridParts,
  gridBlock,
  isError,
  notHere,
  type OwnFunction,
  Reader,
  SheetFault,
  singleOf,
  wrapFunction,
} from "./own-function.ts";
import { placeFunctions } from "./places.ts";
import { ROUNDING } from "./rounding.ts";
import { readSingleValues } from "./single-values.ts";
import { answerAsExcel } from "./small-differences.ts";
import { statisticFunctions } from "./statistics.ts";
import { subtotalFunctions } from "./subtotals.ts";
import { textFunctions } from "./text-format.ts";

/** Functions of ours that take the place of the grid's, or are new to it. */
const OWN = [
  addedFunctions,
  blockFunctions,
  convertFunctions,
  conditionalFunctions,
  distributionFunctions,
  lookupFunctions,
  mroundFunction,
  placeFunctions,
  statisticFunctions,
  subtotalFunctions,
  textFunctions,
];

const done = new WeakSet<object>();

/** Brings the grid's own functions to what other sheets do, where a shop would take harm. Doing it again changes nothing. */
export function applyCompatibility(engine: GridParts): void {
  const registry = engine.registries.functionRegistry as FunctionRegistry;
  if (done.has(registry)) return;
  done.add(registry);
  for (const functions of OWN) for (const [name, own] of Object.entries(functions(engine))) registry.replace(name, own);
  falseWithoutElse(registry);
  compareAsOthers(registry);
  joinOneByOne(registry);
  roundDecimals(registry);
  countWholeLetters(registry, engine);
  indexAlongRows(registry, engine);
  chooseAsOthers(registry);
  numberFaults(registry);
  otherFaults(registry);
  answerAsExcel(registry);
  countFirstDays(registry, engine);
  countNoCutReferences(registry);
  // Around all others, which need not look for errors and texts then.
  readSingleValues(registry, engine);
}

/** `IF` without its third argument gives FALSE in other sheets, 0 in the grid, which would read as a measured zero too. */
function falseWithoutElse(registry: FunctionRegistry): void {
  wrapFunction(registry, "IF", (args, grid) => grid(args.length === 2 ? [...args, { value: false }] : args));
}

const KINDS = ["number", "string", "boolean"];

/** Counts from 1; 0 for what is blank or an error, which the grid sees to. */
const rankOf = (value: unknown): number => (typeof value === "string" && isErrorCode(value) ? 0 : KINDS.indexOf(typeof value) + 1);

const HOLDS: Readonly<Record<string, (difference: number) => boolean>> = {
  EQ: (difference) => difference === 0,
  NE: (difference) => difference !== 0,
  GT: (difference) => difference > 0,
  GTE: (difference) => difference >= 0,
  LT: (difference) => difference < 0,
  LTE: (difference) => difference <= 0,
};

/**
 * In other sheets every truth value is above every text, and every text above every number; the grid takes
 * TRUE for the text "TRUE". They compare numbers to 15 digits; to the grid two are equal whose difference
 * is below 2E-16, so that a small number is 0 and 73.02 + 0.02 is not 73.04. It orders text by its capitals,
 * in which "ß" is "SS" and `_` stands behind the letters.
 */
function compareAsOthers(registry: FunctionRegistry): void {
  for (const [name, holds] of Object.entries(HOLDS)) {
    const own = registry.content[name];
    if (!own) continue;
    const { compute } = own;
    registry.replace(name, {
      ...own,
      compute(...args) {
        const [left, right] = args.map((arg) => (arg as GridCell | undefined)?.value);
        const ranks = [rankOf(left), rankOf(right)] as const;
        if (ranks[0] && ranks[1] && ranks[0] !== ranks[1]) return { value: holds(ranks[0] - ranks[1]) };
        if (ranks[0] && ranks[1] && typeof left === "string" && typeof right === "string") return { value: holds(compareTexts(left, right)) };
        const [a, b] = [numberBeside(left, right), numberBeside(right, left)];
        return a === undefined || b === undefined ? compute.apply(this, args) : { value: holds(compareAsSheets(a, b)) };
      },
    });
  }
}

/** A blank beside a number is 0. */
const numberBeside = (value: unknown, other: unknown): number | undefined =>
  typeof value === "number" ? value : (value === null || value === undefined) && typeof other === "number" ? 0 : undefined;

/** In other sheets `&` and CONCATENATE work through ranges cell by cell; the grid makes one text of all. */
function joinOneByOne(registry: FunctionRegistry): void {
  const own = registry.content.CONCATENATE;
  if (own) registry.replace("CONCATENATE", { ...own, args: own.args.map((arg) => ({ ...arg, type: ["STRING"], acceptMatrix: false })) });
}

/** The grid has none; what it gives is worked out with its like. */
function mroundFunction({ helpers }: GridParts): Record<string, OwnFunction> {
  const fault = new SheetFault("#NUM!", "The number and its step have to be of the same sign.");
  return { MROUND: declared(helpers, "A number to the nearest multiple of a step", ["value (number)", "step (number)"], () => fault) };
}

const WHOLE_COLUMNS = /(?:^|!)\$?[a-z]{1,3}:\$?[a-z]{1,3}$/i;
const WHOLE_ROWS = /(?:^|!)\$?\d+:\$?\d+$/;

/** Whole columns or rows that INDIRECT is told in text end with the grid's own, smaller sheet: how many cells they have is not counted. */
function countNoCutReferences(registry: FunctionRegistry): void {
  const cut = { rows: new WeakSet<object>(), columns: new WeakSet<object>() };
  const { INDIRECT } = registry.content;
  if (!INDIRECT) return;
  registry.replace("INDIRECT", {
    ...INDIRECT,
    compute(...args) {
      const found = INDIRECT.compute.apply(this, args);
      const text = String((args[0] as GridCell | undefined)?.value).trim();
      if (Array.isArray(found) && WHOLE_COLUMNS.test(text)) cut.rows.add(found);
      if (Array.isArray(found) && WHOLE_ROWS.test(text)) cut.columns.add(found);
      return found;
    },
  });
  for (const [names, sides] of [
    [["ROW", "ROWS"], [cut.rows]],
    [["COLUMN", "COLUMNS"], [cut.columns]],
    [["COUNTBLANK"], [cut.rows, cut.columns]],
  ] as const) {
    const fault = new SheetFault("#VALUE!", notHere("Whole columns or rows named in text go on to the end of the sheet, which is not counted here."));
    for (const name of names)
      wrapFunction(registry, name, (args, grid) => (args.some((given) => Array.isArray(given) && sides.some((side) => side.has(given))) ? fault : grid()));
  }
}

/** Functions of text, and which of their inputs count letters or places: office programs cut off what is behind the decimal point. */
const WHOLE: Readonly<Record<string, readonly number[]>> = { LEFT: [1], RIGHT: [1], MID: [1, 2], REPLACE: [1, 2], SUBSTITUTE: [3] };

function countWholeLetters(registry: FunctionRegistry, engine: GridParts): void {
  const reader = new Reader(engine.helpers);
  const fault = new SheetFault("#VALUE!", "Which of the texts is to be replaced counts from 1.");
  const below = new SheetFault("#VALUE!", "No fewer than 0 letters are replaced.");
  wrapFunction(registry, "REPLACE", (args, grid) => ((singleOf(args[2]) as number) < 0 ? below : grid()));
  wrapFunction(registry, "SUBSTITUTE", (args, grid) => (args[3] && singleOf(args[3]) === 0 ? fault : grid()));
  for (const [name, places] of Object.entries(WHOLE))
    wrapFunction(registry, name, (args, grid, { locale }) =>
      grid(
        args.map((given, i) => {
          const value = places.includes(i) && given && !Array.isArray(given) ? given.value : undefined;
          const number = typeof value === "string" ? reader.inText(value, locale) : value;
          return typeof number === "number" ? { ...(given as GridCell), value: Math.trunc(number) } : given;
        }),
      ),
    );
}

/** `INDEX` with one place counts along a single row too, as in other sheets, and by whole numbers; the grid counts rows alone. */
function indexAlongRows(registry: FunctionRegistry, engine: GridParts): void {
  const reader = new Reader(engine.helpers);
  const fault = new SheetFault("#VALUE!", "Rows and columns count from 1.");
  wrapFunction(registry, "INDEX", ([of, ...given], grid, around) => {
    const places = given.map((place) => place && { value: Math.trunc(reader.number(place, around)) });
    if (places.some((place) => place && place.value < 0)) return fault;
    const isRow = Array.isArray(of) && of.length > 1 && of[0]?.length === 1;
    return grid([of, ...(isRow && places.length === 1 ? [{ value: 1 }] : []), ...places]);
  });
}

/** Beside numbers a blank cell is 0; to SWITCH two blank cells are not the same. */
const isCase = (value: unknown, wanted: unknown): boolean => {
  const [a, b] = [value ?? (wanted === null || wanted === undefined ? undefined : EMPTY_OF[typeof wanted]), wanted ?? EMPTY_OF[typeof value]];
  if (a === undefined || b === undefined || typeof a !== typeof b) return false;
  return typeof a === "number" ? compareAsSheets(a, b as number) === 0 : typeof a === "string" ? compareTexts(a, b as string) === 0 : a === b;
};
const EMPTY_OF: Readonly<Record<string, unknown>> = { number: 0, string: "" };

/** `IFS` of which no condition holds is `#N/A`; `SWITCH` does not tell capitals from small letters, and ends with an error that it comes by. */
function chooseAsOthers(registry: FunctionRegistry): void {
  const fault = new SheetFault("#N/A", "None of the conditions holds.");
  const isFalse = (given: Given): boolean => {
    const [cell, ...more] = gridBlock(given).flat();
    return more.length === 0 && [false, 0, null, undefined].includes(cell?.value as null);
  };
  wrapFunction(registry, "IFS", (args, grid) => (args.every((given, i) => i % 2 === 1 || isFalse(given)) ? fault : grid()));
  wrapFunction(registry, "SWITCH", (args, grid) => {
    const [value, ...rest] = args;
    if (isError(singleOf(value)) || args.some((given, i) => Array.isArray(given) && (i === 0 || i % 2 === 1))) return grid();
    for (let i = 0; i + 1 < rest.length; i += 2) {
      const wanted = rest[i] === undefined ? { value: 0 } : rest[i];
      if (isError(singleOf(wanted))) return wanted;
      if (isCase(singleOf(value), singleOf(wanted))) return rest[i + 1] ?? { value: 0 };
    }
    return rest.length % 2 === 1 ? (rest.at(-1) ?? { value: 0 }) : new SheetFault("#N/A", "SWITCH names no such value.");
  });
}

/** `ROUND` and its like work on decimals. Text is read, and faults are told, by the grid's own functions. */
function roundDecimals(registry: FunctionRegistry): void {
  const { UMINUS } = registry.content;
  for (const [name, { defaults, of }] of Object.entries(ROUNDING)) {
    const own = registry.content[name];
    if (!own || !UMINUS) continue;
    const { compute } = own;
    registry.replace(name, {
      ...own,
      compute(...args) {
        const numbers = defaults.map((usual, i) => (args[i] === undefined ? usual : numberIn(args[i], (given) => UMINUS.compute.call(this, given))));
        const value = numbers.includes(undefined) || args.length > defaults.length ? undefined : of(...(numbers as number[]));
        if (value instanceof SheetFault) return value;
        return value === undefined ? compute.apply(this, args) : { value, format: (args[0] as { format?: string }).format };
      },
    });
  }
}

/** What an argument counts as; `undefined` for what is no number. The grid reads text with the opposite sign. */
function numberIn(given: Given, opposite: (given: Given) => unknown): number | undefined {
  const value = (given as GridCell).value;
  if (typeof value === "number") return value;
  if (value === null || value === undefined) return 0;
  const negated = opposite(given);
  const read = typeof negated === "object" && negated !== null ? (negated as GridCell).value : negated;
  return typeof read === "number" ? 0 - read : undefined;
}
