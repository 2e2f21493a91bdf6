import { LONGEST_TEXT } from "../../core/cell.ts";
import {
  type CallContext,
  COUNTING,
  declared,
  type Given,
  type GridCell,
  type GridParts,
  givenCells,
  gridBlock,
  isError,
  type Outcome,
  type OwnFunction,
  Reader,
  SheetFault,
  singleOf,
} from "./own-function.ts";
import { toPlaces } from "./rounding.ts";
import { Wildcards } from "./wildcards.ts";

export const ERROR_TYPES = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA"];

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
const outOf = (what: string): SheetFault => new SheetFault("#NUM!", what);

/** A number of more than the 15 digits that a sheet keeps, 0 for those behind them. */
const inFull = (value: number, places: number): string =>
  `${BigInt(
    Math.abs(value)
      .toPrecision(15)
      .replace(/^(\d)\.(\d+)e\+(\d+)$/, (_, first, rest, power) => `${first}${rest.padEnd(Number(power), "0")}`),
  )}${places > 0 ? `.${"0".repeat(Math.min(100, places))}` : ""}`;

/** A number with so many decimals, with commas between its thousands. */
export function decimalText(value: number, places: number, hasCommas: boolean): string {
  const rounded = toPlaces(value, places, "nearest");
  const [whole, behind] = (
    rounded === 0 || Math.abs(rounded) < 1e15 ? Math.abs(rounded).toFixed(Math.max(0, Math.min(100, places))) : inFull(rounded, places)
  ).split(".") as [string, string?];
  const grouped = hasCommas ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  return `${rounded < 0 ? "-" : ""}${grouped}${behind ? `.${behind}` : ""}`;
}

/** The letters of office programs by their numbers: code page 1252. */
const FROM_128 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";
export const letterOf = (number: number): string => FROM_128[number - 128] ?? String.fromCharCode(number);
const numberOf = (letter: string): number => {
  const place = FROM_128.indexOf(letter);
  return place >= 0 ? place + 128 : letter.charCodeAt(0);
};
const QUESTION_MARK = 63;

/** Functions that shops use and the grid lacks, or has with less than office programs do. Checked against LibreOffice: test/reference/formulas. */
export function addedFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const { helpers } = grid;

  /** A function of plain numbers. */
  const ofNumbers = (description: string, args: readonly string[], of: (...numbers: number[]) => number): OwnFunction =>
    declared(
      helpers,
      description,
      args.map((name) => `${name} (number)`),
      function (...given) {
        return of(...given.map((one) => reader.number(one, this)));
      },
    );
  /**
   * A function of whole numbers, of every value in what it is given; a text in a cell counts as the number that it reads as. No truth
   * value and no number of more than 53 bits does: by Excel's values in a public test workbook (ironcalc/IronCalc, GCD_LCM.xlsx), as
   * that blanks in a range are 0, and blank cells alone are none.
   */
  const ofWholes = (description: string, of: (numbers: number[]) => number): OwnFunction =>
    declared(helpers, description, ["value (number, range<number>, repeating)"], function (...args) {
      const numbers: number[] = [];
      for (const given of args) {
        if (given === undefined) return new SheetFault("#N/A", "Nothing may be left out here between two commas.");
        const cells = [...givenCells(given)];
        for (const cell of cells) {
          if (typeof cell?.value === "boolean") return new SheetFault("#VALUE!", "A number is wanted where there is a truth value.");
          if ((cell?.value ?? null) !== null || cells.length > 1) numbers.push(reader.number(cell, this));
        }
      }
      if (numbers.length === 0) return new SheetFault("#VALUE!", "There is no number among these values.");
      if (numbers.some((number) => number < 0)) throw outOf("No number here may be below 0.");
      const found = of(numbers.map(Math.trunc));
      if (Math.max(found, ...numbers) > Number.MAX_SAFE_INTEGER) throw outOf("Whole numbers above 2^53 are not told apart.");
      return found;
    });
  const whole = (values: readonly number[]): number[] => {
    const found = values.map(Math.trunc);
    if (found.some((value) => value < 0)) throw outOf("No number here may be below 0.");
    return found;
  };
  const factorial = (value: number): number => {
    const [most] = whole([value]) as [number];
    if (most > 170) throw outOf("This comes to no number that a cell can hold.");
    let product = 1;
    for (let i = 2; i <= most; i++) product *= i;
    return product;
  };
  const first = (given: Given): GridCell | undefined => gridBlock(given)[0]?.[0];
  const search = function (this: CallContext, wanted: Given, text: Given, from: Given): Outcome {
    const start = Math.trunc(reader.number(from, this, 1));
    const within = reader.text(text);
    if (start < 1 || start > within.length + 1) return new SheetFault("#VALUE!", "The search starts at no letter of the text.");
    const found = new Wildcards(reader.text(wanted)).find(within, start - 1);
    return found < 0 ? new SheetFault("#VALUE!", "The text does not hold what is searched.") : found + 1;
  };

  const functions: Record<string, OwnFunction> = {
    SIGN: ofNumbers("1 above 0, -1 below 0, 0 at 0", ["value"], (value) => Math.sign(value) + 0),
    LOG10: ofNumbers("Logarithm to base 10", ["value"], (value) => {
      if (value <= 0) throw outOf("The number has to be above 0.");
      return Math.log10(value);
    }),
    RADIANS: ofNumbers("Degrees in radians", ["angle"], (angle) => (angle * Math.PI) / 180),
    ACOT: ofNumbers("Angle whose cotangent is a number, from 0 to pi", ["value"], (value) => Math.PI / 2 - Math.atan(value)),
    DAYS: ofNumbers("Days from one day to another", ["end", "start"], (end, start) => {
      if (Math.min(end, start!) < 0) throw outOf("No day of a sheet is below 0.");
      return Math.floor(end) - Math.floor(start!);
    }),
    QUOTIENT: ofNumbers("How often one number goes into another as a whole", ["value", "divisor"], (value, by) => {
      if (by === 0) throw new SheetFault("#DIV/0!", "The divisor is 0.");
      return Math.trunc(toPlaces(value / by!, 12, "nearest")) + 0;
    }),
    EVEN: ofNumbers("Next even number away from 0", ["value"], (value) => Math.sign(value) * 2 * Math.ceil(Number((Math.abs(value) / 2).toPrecision(15))) + 0),
    SQRTPI: ofNumbers("Square root of a number times pi", ["value"], (value) => {
      if (value < 0) throw outOf("The number may not be below 0.");
      return Math.sqrt(value * Math.PI);
    }),
    FACT: ofNumbers("Factorial of a number", ["value"], factorial),
    COMBIN: ofNumbers("Ways to choose so many out of a number", ["number", "chosen"], (number, chosen) => {
      const [n, k] = whole([number, chosen!]) as [number, number];
      if (k > n) throw outOf("No more can be chosen than there are.");
      let ways = 1;
      for (let i = 1; i <= Math.min(k, n - k); i++) ways = Math.round((ways * (n - i + 1)) / i);
      return ways;
    }),
    GCD: ofWholes("Greatest common divisor", (values) => values.reduce(gcd, 0)),
    LCM: ofWholes("Least common multiple", (values) => values.reduce((a, b) => (a === 0 || b === 0 ? 0 : (a / gcd(a, b)) * b), 1)),
    N: declared(helpers, "A value as a number; text is 0", ["value (any, range)"], (given) => {
      const value = first(given)?.value;
      if (isError(value)) throw first(given);
      return typeof value === "number" ? { value, ...(first(given)!.format ? { format: first(given)!.format! } : {}) } : value === true ? 1 : 0;
    }),
    T: declared(helpers, "A value where it is text, otherwise nothing", ["value (any, range)"], (given) => {
      const value = first(given)?.value;
      if (isError(value)) throw first(given);
      return typeof value === "string" ? value : "";
    }),
    TYPE: declared(helpers, "The kind of a value by its number", ["value (any, range)"], (given) => {
      if (Array.isArray(given) && given.length * (given[0]?.length ?? 0) > 1) return 64;
      const value = singleOf(given);
      return isError(value) ? 16 : typeof value === "string" ? 2 : typeof value === "boolean" ? 4 : 1;
    }),
    "ERROR.TYPE": declared(helpers, "The kind of an error by its number", ["error (any)"], (given) => {
      const value = singleOf(given);
      const code = value === "#ERROR" || value === "#BAD_EXPR" ? "#VALUE!" : value === "#REF" || value === "#CYCLE" ? "#REF!" : value;
      const type = ERROR_TYPES.indexOf(String(code)) + 1;
      return isError(value) && type > 0 ? type : new SheetFault("#N/A", "This is no error.");
    }),
    REPT: declared(helpers, "A text several times over", ["text (string)", "times (number)"], function (text, times) {
      const [part, count] = [reader.text(text), Math.trunc(reader.number(times, this))];
      if (count < 0) return new SheetFault("#VALUE!", "A text cannot be repeated less than 0 times.");
      if (part.length * count > LONGEST_TEXT)
        return new SheetFault("#VALUE!", `This text would be longer than the ${LONGEST_TEXT.toLocaleString("en")} characters that a cell holds.`);
      return part.repeat(count);
    }),
    CONCAT: declared(helpers, "Several texts as one", ["text (any, range, repeating)"], (...args) => {
      let text = "";
      for (const given of args) {
        for (const cell of givenCells(given)) text += reader.text(cell);
        if (text.length > LONGEST_TEXT)
          return new SheetFault("#VALUE!", `This text would be longer than the ${LONGEST_TEXT.toLocaleString("en")} characters that a cell holds.`);
      }
      return text;
    }),
    FIXED: declared(
      helpers,
      "A number as text with so many decimals",
      ["value (number)", "decimals (number, default=2)", "no_commas (boolean, default=FALSE)"],
      function (given, decimals, plain) {
        const places = Math.trunc(reader.number(decimals, this, 2));
        if (places > 100) return new SheetFault("#VALUE!", "At most 100 decimals are written.");
        return decimalText(reader.number(given, this), places, !reader.flag(plain, this, false));
      },
    ),
    NUMBERVALUE: declared(
      helpers,
      "The number that a text writes, with its own signs for decimals and thousands",
      ["text (string)", "decimal_sign (string, default='.')", "group_sign (string, default=',')"],
      (given, decimal, group) => {
        const point = decimal === undefined ? "." : reader.text(decimal)[0];
        const comma = group === undefined ? (point === "," ? "." : ",") : reader.text(group)[0];
        if (point === undefined || comma === undefined) return new SheetFault("#VALUE!", "The signs for decimals and for thousands are one letter each.");
        const [whole, ...behind] = reader.text(given).replace(/\s/g, "").split(point);
        const signs = /%*$/.exec([whole, ...behind].join("."))![0].length;
        const plain = [whole!.replaceAll(comma, ""), ...behind].join(".").slice(0, signs ? -signs : undefined);
        if (plain === "" && signs === 0) return 0;
        if (behind.length > 1 || !/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(plain)) return new SheetFault("#VALUE!", "This text is no number.");
        return Number((Number(plain) / 100 ** signs).toPrecision(15));
      },
    ),
    SEARCH: declared(
      helpers,
      "Where a text holds another, * and ? standing for others",
      ["wanted (string)", "text (string)", "start (number, default=1)"],
      search,
    ),
    CHAR: declared(helpers, "The letter of a number from 1 to 255", ["number (number)"], function (given) {
      const number = Math.trunc(reader.number(given, this));
      return number >= 1 && number <= 255 ? letterOf(number) : new SheetFault("#VALUE!", "Letters are numbered from 1 to 255.");
    }),
    CODE: declared(helpers, "Number of the first letter of a text", ["text (string)"], (given) => {
      const text = reader.text(given);
      if (text === "") return new SheetFault("#VALUE!", "The text is empty.");
      const number = numberOf(text[0]!);
      return number > 255 ? QUESTION_MARK : number;
    }),
    UNICODE: declared(
      helpers,
      "Number of the first letter of a text",
      ["text (string)"],
      (text) => reader.text(text).codePointAt(0) ?? new SheetFault("#VALUE!", "The text is empty."),
    ),
    UNICHAR: declared(helpers, "The letter of a number", ["number (number)"], function (given) {
      const point = Math.trunc(reader.number(given, this));
      return point < 1 || point > 0x10ffff || (point >= 0xd800 && point < 0xe000)
        ? new SheetFault("#VALUE!", "No letter has this number.")
        : String.fromCodePoint(point);
    }),
  };
  for (const name of ["N", "T"]) COUNTING.add(name);
  return functions;
}
