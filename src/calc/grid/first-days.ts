import { type Given, isError, type OwnFunction, SheetFault, singleOf } from "./own-function.ts";

/** 1 March 1900: from here on the grid's days are those of office programs. */
const MARCH_1900 = 61;

interface Registry {
  content: Record<string, OwnFunction>;
  replace(name: string, own: OwnFunction): void;
}

/**
 * The date of one of the first days of a sheet, `undefined` for later ones. Office programs count a 29 February 1900 that never was
 * (day 60) and let day 0 stand in January; to the grid day 0, which is what a blank comes to, is of December 1899.
 */
export function firstDay(day: number): { year: number; month: number; day: number } | undefined {
  const whole = Math.floor(day);
  if (whole < 0 || whole >= MARCH_1900) return undefined;
  return { year: 1900, month: whole < 32 ? 1 : 2, day: whole < 32 ? whole : whole - 31 };
}

/** Functions that count by months and years from days, and which of their inputs are days. */
const BY_CALENDAR: Readonly<Record<string, number>> = { EDATE: 1, EOMONTH: 1, WEEKNUM: 1, ISOWEEKNUM: 1, DATEDIF: 2, YEARFRAC: 2, DAYS360: 2 };
const PARTS = { YEAR: "year", MONTH: "month", DAY: "day" } as const;
const REFUSED = new SheetFault("#NUM!", "Days before 1 March 1900, of which a blank is one, are not calculated with here.");

const numberOf = (given: Given): number | undefined => {
  const value = singleOf(given) ?? 0;
  return typeof value === "number" ? value : undefined;
};

/** The first days as office programs have them, or refused where months are counted from them. */
export function countFirstDays(registry: Registry): void {
  const around = (name: string, of: (args: Given[], grid: () => unknown) => unknown): void => {
    const own = registry.content[name];
    if (!own) return;
    registry.replace(name, {
      ...own,
      compute(...args) {
        return of(args, () => own.compute.apply(this, args));
      },
    });
  };
  for (const [name, part] of Object.entries(PARTS))
    around(name, ([given], grid) => {
      const day = given === undefined ? undefined : numberOf(given);
      return (day === undefined ? undefined : firstDay(day)?.[part]) ?? grid();
    });
  for (const [name, days] of Object.entries(BY_CALENDAR))
    around(name, (args, grid) => {
      const early = args.slice(0, days).some((given) => firstDay(numberOf(given) ?? MARCH_1900));
      const result = early ? REFUSED : grid();
      const isDay = name === "EDATE" || name === "EOMONTH";
      return isDay && firstDay(numberOf(result as Given) ?? MARCH_1900) ? REFUSED : result;
    });
  // Year, month and day: a month that starts before March 1900 starts a day sooner than to the grid.
  const { DATE } = registry.content;
  if (!DATE) return;
  registry.replace("DATE", {
    ...DATE,
    compute(...args) {
      const result = DATE.compute.apply(this, args) as Given;
      const [year, month, day] = args;
      const value = numberOf(result);
      if (value === undefined || value - (numberOf(day) ?? value) >= MARCH_1900 || isError(singleOf(result))) return result;
      const start = numberOf(DATE.compute.apply(this, [year, month, { value: 1 }]) as Given);
      if (start === undefined || start >= MARCH_1900) return value < MARCH_1900 ? REFUSED : result;
      return value > 0 ? { ...(result as object), value: value - 1 } : REFUSED;
    },
  });
}
