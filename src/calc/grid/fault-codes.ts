import {
  type FunctionRegistry,
  type Given,
  type GridCell,
  givenCells,
  isError,
  notHere,
  type OwnFunction,
  SheetFault,
  singleOf,
  wrapFunction,
} from "./own-function.ts";

/** Functions whose own fault, where all they are given is numbers, is one of numbers: the grid calls every fault one of values. */
const OF_NUMBERS = new Set(
  `SQRT LN LOG POWER POW ASIN ACOS ACOSH ATANH ACOTH LARGE SMALL PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC MEDIAN
  CEILING FLOOR DATE DATEDIF EDATE EOMONTH WEEKDAY WEEKNUM YEARFRAC NETWORKDAYS.INTL WORKDAY.INTL WORKDAY RATE IRR XIRR NPER EFFECT NOMINAL DB DDB VDB SYD IPMT PPMT CUMIPMT
  CUMPRINC PDURATION RRI MIRR DECIMAL DOLLARDE DOLLARFR ISPMT RANDBETWEEN TIME YEAR MONTH DAY HOUR MINUTE SECOND DAYS360 PMT PV FV
  TBILLEQ TBILLPRICE TBILLYIELD DISC ACCRINTM INTRATE RECEIVED`.split(/\s+/),
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
const PASSING_ERRORS = `AND OR XOR SUMPRODUCT FREQUENCY MMULT MDETERM MINVERSE PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC
  LINEST TREND GROWTH LOGEST`.split(/\s+/);

/** Functions that divide by one of their inputs, and by which. */
const DIVIDING: Readonly<Record<string, readonly [place: number, isNothing: (value: number) => boolean]>> = {
  ISPMT: [2, (periods) => periods === 0],
  SLN: [2, (life) => life === 0],
  DOLLARDE: [1, (unit) => unit >= 0 && unit < 1],
  DOLLARFR: [1, (unit) => unit >= 0 && unit < 1],
};

/** Functions of which the grid refuses what office programs work out: where it finds fault, that is not theirs. */
const NARROWER = ["LINEST", "TREND", "GROWTH", "LOGEST", "MIRR"];

/** Functions of loans, with the place of the rate first. */
const OF_LOANS = ["PMT", "PV", "FV", "NPER", "IPMT", "PPMT"];
const BASE = new SheetFault("#DIV/0!", "The logarithm of the base is 0.");
const NO_MATCH = new SheetFault("#N/A", "None of the conditions holds.");
const LOAN = notHere("Rates of -100 % and less are not calculated with here.");
const NO_NUMBER = new SheetFault("#VALUE!", "When payments fall is said by 0 or 1.");
const PERIOD = new SheetFault("#NUM!", "The first period is 1.");

/** Inputs for which office programs give another error than the grid, or for which what they give is not worked out here. */
export function otherFaults(registry: FunctionRegistry): void {
  const below = new SheetFault("#NUM!", "Quarters are counted from 0.");
  for (const name of ["QUARTILE", "QUARTILE.INC", "QUARTILE.EXC"])
    wrapFunction(registry, name, (args, grid) => (Number(singleOf(args[1])) < 0 ? below : grid()));
  for (const name of PASSING_ERRORS)
    wrapFunction(registry, name, (args, grid) => {
      for (const given of args) for (const cell of givenCells(given)) if (isError(cell?.value)) return cell;
      return grid();
    });
  for (const [name, [place, isNothing]] of Object.entries(DIVIDING)) {
    const fault = new SheetFault("#DIV/0!", "This would divide by 0.");
    wrapFunction(registry, name, (args, grid) => (args.length > place && isNothing(Number(singleOf(args[place]) ?? 0)) ? fault : grid()));
  }
  wrapFunction(registry, "LOG", ([value, base], grid) => (Number(singleOf(value) ?? 0) > 0 && base && Number(singleOf(base) ?? 0) === 1 ? BASE : grid()));
  for (const name of NARROWER) {
    const own = registry.content[name];
    if (own) registry.replace(name, { ...own, args: own.args.map((arg) => ({ ...arg, acceptErrors: true })) });
    const sentence = (fault: unknown): string => messageOf(fault).replace("[[FUNCTION_NAME]]", name) || "its values do not fit.";
    wrapFunction(registry, name, (_, grid) =>
      changed(grid, (fault) => new SheetFault("#VALUE!", notHere(`${name} does not work this out here: ${sentence(fault)}`))),
    );
  }
  wrapFunction(registry, "IFS", (_, grid) => changed(grid, (fault) => (/no match/i.test(messageOf(fault)) ? NO_MATCH : fault)));
  for (const name of OF_LOANS)
    wrapFunction(registry, name, (args, grid) => {
      if (Number(singleOf(args[0]) ?? 0) <= -1) return new SheetFault("#NUM!", LOAN);
      if (/^.PMT/.test(name) && Number(singleOf(args[1]) ?? 0) < 1) return PERIOD;
      const [due, ...rest] = args.toReversed();
      const text = singleOf(due);
      if (rest.length < 4 || typeof text !== "string") return grid();
      // Whether payments fall at the start of a period is a number, also in text; no truth value in text is.
      return Number.isNaN(Number(text || "?")) ? NO_NUMBER : grid([...rest.toReversed(), { value: Number(text) !== 0 }]);
    });
  wrapFunction(registry, "MINVERSE", (_, grid) =>
    changed(grid, (fault) => (/invertible/.test(messageOf(fault)) ? new SheetFault("#NUM!", "The matrix has no inverse.") : fault)),
  );
}

const messageOf = (fault: unknown): string => String((fault as { message?: unknown } | null)?.message ?? "");

/** What the grid gives, its faults changed, whether it throws them or gives them back. */
function changed(grid: () => unknown, change: (fault: unknown) => unknown): unknown {
  const isFault = (given: unknown): boolean => isError((given as GridCell | undefined)?.value);
  try {
    const given = grid();
    return isFault(given) ? change(given) : given;
  } catch (fault) {
    throw isFault(fault) ? change(fault) : fault;
  }
}
