import { textValue } from "../../core/number-text.ts";
import {
  type CallContext,
  type FunctionRegistry,
  type Given,
  type GridCell,
  type GridParts,
  isError,
  notHere,
  type OwnFunction,
  Reader,
  SheetFault,
  wrapFunction,
} from "./own-function.ts";

/** A number in text with an exponent that the grid does not read. */
const FAR_DOWN = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)e-\d{3,}\s*$/i;
/** Nearer to nothing a sheet holds no number: it is 0. */
const NEAREST = 1e-307;
const isNothing = (text: string): boolean => FAR_DOWN.test(text) && Math.abs(Number(text)) < NEAREST;

/**
 * Functions that came to Excel as an add-in: they take no truth value for a number, nothing that is left out between two commas, and
 * no range of several cells. The values that Excel keeps in public test workbooks say so (ironcalc/IronCalc, calc_tests;
 * vinci1it2000/formulas, test.xlsx; dgorissen/pycel, tests/fixtures).
 */
const OF_ADD_IN = new Set("CONVERT DELTA EDATE EOMONTH GCD ISEVEN ISODD LCM MROUND QUOTIENT SQRTPI WEEKNUM".split(" "));
/** Those of them that do take ranges. */
const OF_RANGES = new Set(["GCD", "LCM"]);
const SEVERAL = notHere(
  "This function takes one cell: what it gives for a range of several, and for several values that a formula makes, is not told apart here.",
);

const isOf = (kinds: readonly string[], { type }: OwnFunction["args"][number]): boolean => type.length > 0 && type.every((one) => kinds.includes(one));

/** Whether office programs ask for one cell where the grid works through ranges cell by cell. */
export const takesOneCell = (name: string): boolean => OF_ADD_IN.has(name) && !OF_RANGES.has(name);

/**
 * Where single values are wanted, the first input that is an error, or a text that is no number where one is wanted, is what comes
 * out. The grid looks for errors first, and takes empty text for 0: a cell that says "nothing yet" must not turn into a measured
 * zero. Text of a number that is nothing, as "1E-320", is 0. A number becomes text with the 15 digits that a sheet keeps of it.
 */
export function readSingleValues(registry: FunctionRegistry, { helpers }: GridParts): void {
  const reader = new Reader(helpers);
  for (const [name, own] of Object.entries(registry.content)) {
    const { compute, args: params } = own;
    const isOfAddIn = OF_ADD_IN.has(name);
    const single = params.map((param) => !param.repeating && !param.acceptMatrix && !param.acceptErrors);
    const numeric = params.map((param, i) => single[i]! && isOf(["NUMBER", "DATE"], param));
    const texts = params.map((param) => !param.acceptMatrix && isOf(["STRING"], param));
    if (!numeric.includes(true) && !texts.includes(true)) continue;
    const isAlone = takesOneCell(name);

    /** The input as it is to be read, or the fault that it is. */
    const read = function (this: CallContext, i: number, one: GridCell | undefined): GridCell | SheetFault | undefined {
      if (isOfAddIn && one === undefined) return new SheetFault("#N/A", "Nothing may be left out here between two commas.");
      if (isError(one?.value)) return one;
      if (texts[i] && typeof one?.value === "number") return { ...one, value: textValue(one.value) };
      if (!numeric[i]) return one;
      if (isOfAddIn && typeof one?.value === "boolean") return new SheetFault("#VALUE!", "A number is wanted where there is a truth value.");
      if (typeof one?.value === "string") return isNothing(one.value) ? { value: 0 } : { ...one, value: reader.number(one, this) };
      return one;
    };
    registry.replace(name, {
      ...own,
      args: params.map((param, i) => (single[i] ? { ...param, acceptErrors: true, ...(isAlone && numeric[i] ? { acceptMatrix: true } : {}) } : param)),
      compute(...args) {
        if (isAlone && args.some(isSeveral)) return new SheetFault("#VALUE!", SEVERAL);
        const given = isAlone ? args.map((one) => (Array.isArray(one) ? one[0]?.[0] : one)) : [...args];
        for (const i of params.keys()) {
          if (i >= given.length || !(single[i] || texts[i])) continue;
          const last = params[i]!.repeating ? given.length : i + 1;
          for (let at = i; at < last; at++) {
            try {
              const one = read.call(this, i, given[at] as GridCell | undefined);
              if (isError(one?.value)) return one;
              given[at] = one as GridCell | undefined;
            } catch (fault) {
              return fault;
            }
          }
        }
        return compute.apply(this, given);
      },
    });
  }
  wrapFunction(registry, "TEXTJOIN", (args, grid) =>
    grid(args.map((given) => (Array.isArray(given) ? given.map((column) => column.map(asText)) : asText(given)))),
  );
}

const asText = (cell: GridCell | undefined): GridCell | undefined => (typeof cell?.value === "number" ? { ...cell, value: textValue(cell.value) } : cell);

const isSeveral = (given: Given): boolean => Array.isArray(given) && (given.length > 1 || (given[0]?.length ?? 0) > 1);
