import { type FunctionRegistry, type Given, type GridParts, isError, MARCH_1900, notHere, Reader, SheetFault, singleOf, wrapFunction } from "./own-function.ts";

/**
 * The date of one of the first days of a sheet, `undefined` for later ones. Office programs count a 29 February 1900 that never was
 * (day 60) and let day 0 stand in January; to the grid day 0, which is what a blank comes to, is of December 1899.
 */
export function firstDay(day: number): { year: number; month: number; day: number } | undefined {
  const whole = Math.floor(day);
  if (whole < 0 || whole >= MARCH_1900) return undefined;
  return { year: 1900, month: whole < 32 ? 1 : 2, day: whole < 32 ? whole : whole - 31 };
}

/** Functions that count by months and years from days, and how many of their inputs are days. */
const BY_CALENDAR: Readonly<Record<string, number>> = { WEEKNUM: 1, ISOWEEKNUM: 1, DATEDIF: 2 };
const PARTS = { YEAR: "year", MONTH: "month", DAY: "day" } as const;
const NO_DAY = new SheetFault("#NUM!", "This day lies before the first that a sheet knows.");
const REFUSED = new SheetFault("#NUM!", notHere("Days before 1 March 1900, of which a blank is one, are not calculated with here."));

const numberOf = (given: Given): number | undefined => {
  const value = singleOf(given) ?? 0;
  return typeof value === "number" ? value : typeof value === "boolean" ? Number(value) : undefined;
};

const DAY = 86_400_000;
const partsOf = (day: number) => {
  const date = new Date(Date.UTC(1899, 11, 30) + Math.floor(day) * DAY);
  return firstDay(day) ?? { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
};

/** So many months on, in the same day of the month or its last one: from day 0 of January 1900 to a day 0, which is the last of the month before. */
function monthsOn(from: number, months: number, isEnd: boolean): Given | SheetFault {
  if (from < 0) return NO_DAY;
  const { year, month, day } = partsOf(from);
  const [first, next] = [0, 1].map((more) => startOf(year, month + months + more)) as [number, number];
  const on = isEnd ? next - 1 : Math.min(first + day - 1, next - 1);
  return on < 0 ? NO_DAY : { value: on };
}

type Parts = ReturnType<typeof partsOf>;

/** Days between two dates in a year of twelve months of 30 days. */
function daysBy30(from: Parts, to: Parts, isEuropean: boolean): number {
  const isLastOfFebruary = !isEuropean && from.month === 2 && from.day === startOf(from.year, 3) - startOf(from.year, 2);
  const start = from.day === 31 || isLastOfFebruary ? 30 : from.day;
  const end = to.day === 31 && (isEuropean || start === 30) ? 30 : to.day;
  return 360 * (to.year - from.year) + 30 * (to.month - from.month) + end - start;
}

/** Day 1 of a month as office programs count: January 1900 starts with day 1, February with 32, March with 61. */
const startOf = (year: number, month: number): number => {
  const start = Date.UTC(year, month - 1, 1) / DAY + 25_569;
  return start < MARCH_1900 ? start - 1 : start;
};

/** Days alone are counted, and from a day to itself nothing, whenever it is: as in a form that is not filled in yet. */
function daysApart([from, to, unit]: readonly Given[], grid: (others: Given[]) => unknown): unknown {
  const [first, last] = [numberOf(from), numberOf(to)];
  if (first === undefined || last === undefined || (first !== last && !/^d$/i.test(String(singleOf(unit))))) return REFUSED;
  return grid([{ value: first + MARCH_1900 }, { value: last + MARCH_1900 }, unit]);
}

const isOtherText = (value: unknown): boolean => typeof value === "string" && !/^(?:true|false)$/i.test(value);

/** Functions of a day or a time that the grid also counts for what lies before the first day. */
const OF_DAYS = ["WEEKDAY", "HOUR", "MINUTE", "SECOND"];

/** The first days as office programs have them, or refused where months are counted from them. */
export function countFirstDays(registry: FunctionRegistry, { helpers }: GridParts): void {
  const reader = new Reader(helpers);
  const unread = (given: Given, locale: unknown): SheetFault | undefined => {
    const text = singleOf(given);
    return typeof text === "string" && !isError(text) && reader.inText(text, locale) === undefined
      ? new SheetFault("#VALUE!", reader.unread(text, locale))
      : undefined;
  };
  wrapFunction(registry, "DATEVALUE", ([given], grid, { locale }) => unread(given, locale) ?? grid());
  for (const [name, part] of Object.entries(PARTS))
    wrapFunction(registry, name, ([given], grid, { locale }) => {
      const day = given === undefined ? undefined : numberOf(given);
      const fault = unread(given, locale);
      if (fault) return fault;
      if (day !== undefined && day < 0) return NO_DAY;
      return (day === undefined ? undefined : firstDay(day)?.[part]) ?? grid();
    });
  for (const name of OF_DAYS) wrapFunction(registry, name, ([given], grid) => (((given && numberOf(given)) ?? 0) < 0 ? NO_DAY : grid()));
  for (const [name, days] of Object.entries(BY_CALENDAR))
    wrapFunction(registry, name, (args, grid) => {
      const early = args.slice(0, days).some((given) => firstDay(numberOf(given) ?? MARCH_1900));
      return early ? (name === "DATEDIF" ? daysApart(args, grid) : REFUSED) : grid();
    });
  wrapFunction(registry, "DAYS360", ([from, to, isEuropean], grid) => {
    const [first, last] = [numberOf(from), numberOf(to)];
    // A text that is no truth value is told by the grid.
    if (first === undefined || last === undefined || isOtherText(singleOf(isEuropean))) return grid();
    return Math.min(first, last) < 0 ? NO_DAY : { value: daysBy30(partsOf(first), partsOf(last), isEuropean !== undefined && Boolean(singleOf(isEuropean))) };
  });
  for (const name of ["EDATE", "EOMONTH"])
    wrapFunction(registry, name, ([start, months], grid) => {
      const [day, further] = [numberOf(start), numberOf(months)];
      const early = day !== undefined && further !== undefined && day + 31 * Math.min(0, further) < MARCH_1900;
      return early ? monthsOn(day, Math.trunc(further), name === "EOMONTH") : grid();
    });
  // Year, month and day: a month that starts before March 1900 starts a day sooner than to the grid.
  wrapFunction(registry, "DATE", ([year, month, day], grid) => {
    const result = grid() as Given;
    const value = numberOf(result);
    if (value === undefined || value - (numberOf(day) ?? value) >= MARCH_1900 || isError(singleOf(result))) return result;
    const start = numberOf(grid([year, month, { value: 1 }]) as Given);
    if (start === undefined || start >= MARCH_1900) return value < MARCH_1900 ? REFUSED : result;
    return value > 0 ? { ...(result as object), value: value - 1 } : REFUSED;
  });
}
