import { type FunctionRegistry, type Given, givenCells, isError, type OwnFunction, rangeOf, SheetFault, singleOf, wrapFunction } from "./own-function.ts";

/** Functions whose own fault, where all they are given is numbers, is one of numbers: the grid calls every fault one of values. */
const OF_NUMBERS = new Set(
  `SQRT LN LOG POWER POW ASIN ACOS ACOSH ATANH ACOTH LARGE SMALL PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC MEDIAN
  CEILING FLOOR DATE DATEDIF EDATE EOMONTH WEEKDAY WEEKNUM NETWORKDAYS.INTL WORKDAY.INTL WORKDAY RANDBETWEEN TIME YEAR MONTH DAY HOUR MINUTE SECOND DAYS360`.split(
    /\s+/,
  ),
);
/** Beyond the range that they are given. */
const OF_REFERENCES = new Set(["INDEX", "OFFSET"]);

/** No day lies before the first of a sheet. */
const OF_DAYS = new Set(["DATE", "EDATE", "EOMONTH", "WORKDAY", "WORKDAY.INTL"]);

/** What a fault of values is called by the grid itself. */
const isPlainFault = (value: unknown): boolean => value === "#ERROR";

/** Text stands where a number is wanted. */
const isGivenText = (given: Given, { type }: OwnFunction["args"][number] = { name: "", type: [] }): boolean =>
  !Array.isArray(given) && typeof given?.value === "string" && !type.includes("STRING") && !/^\s*[+-]?[\d.]/.test(given.value);

/** `SQRT(-1)` is `#NUM!` in office programs, `INDEX` beyond its range `#REF!`; text where a number is wanted stays `#VALUE!`. */
export function numberFaults(registry: FunctionRegistry): void {
  for (const [name, own] of Object.entries(registry.content)) {
    const code = OF_NUMBERS.has(name) ? "#NUM!" : OF_REFERENCES.has(name) ? "#REF!" : undefined;
    if (!code) continue;
    const { compute } = own;
    const told = (fault: { value?: unknown; message?: unknown } | null, args: readonly Given[]): unknown =>
      fault &&
      isPlainFault(fault.value) &&
      !args.some((given, i) => isGivenText(given, own.args[i])) &&
      !args.some((given) => given === fault || (!Array.isArray(given) && isError(given?.value)))
        ? Object.assign(Object.create(Object.getPrototypeOf(fault)), fault, { value: code })
        : fault;
    registry.replace(name, {
      ...own,
      compute(...args) {
        try {
          const given = compute.apply(this, args);
          if (OF_DAYS.has(name) && ((given as { value?: unknown }).value as number) < 0)
            return new SheetFault("#NUM!", "This day lies before the first that a sheet knows.");
          return typeof given === "object" && !Array.isArray(given) ? told(given as object, args) : given;
        } catch (fault) {
          throw typeof fault === "object" ? told(fault, args) : fault;
        }
      },
    });
  }
}

/**
 * Functions that give back the first error among the values that they work through, in which the grid passes errors over or speaks
 * of empty values. The values that Excel keeps in public test workbooks say so (vinci1it2000/formulas, test.xlsx; apache/poi,
 * FormulaEvalTestData_Copy.xlsx).
 */
const PASSING_ERRORS = "AND OR XOR SUMPRODUCT FREQUENCY MMULT PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC".split(" ");

const BASE = new SheetFault("#DIV/0!", "The logarithm of the base is 0.");

/** Inputs for which office programs give another error than the grid. */
export function otherFaults(registry: FunctionRegistry): void {
  for (const name of PASSING_ERRORS)
    wrapFunction(registry, name, (args, grid) => {
      for (const given of args) for (const cell of givenCells(given)) if (isError(cell?.value)) return cell;
      return grid();
    });
  for (const name of ["ROWS", "COLUMNS", "COUNTBLANK"])
    wrapFunction(registry, name, ([given], grid) => {
      rangeOf(given);
      return grid();
    });
  wrapFunction(registry, "LOG", ([value, base], grid) => (Number(singleOf(value) ?? 0) > 0 && base && Number(singleOf(base) ?? 0) === 1 ? BASE : grid()));
}
