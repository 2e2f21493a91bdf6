import { decimal } from "../core/decimal.ts";
import { decimalsOf, numberText, tame } from "./text.ts";
import type { Trend, TrendPoint } from "./trend.ts";

/** One mark of a trend: one reading, or those of one stretch of time. */
export interface Mark {
  engine: string;
  time: number;
  least: number;
  middle: number;
  most: number;
  isOutside: boolean;
}

/** More marks than this run into one another. */
const MOST_MARKS = 150;
const STRETCHES = 24;
/** More readings than this are not listed one by one in words. */
const MOST_TOLD = 40;

export const timeOfDay = (day: string): number => Date.parse(`${day}T00:00:00Z`);

/** Readings as marks in the order of their days; many together by stretches of time. */
export function binned(points: readonly TrendPoint[]): { marks: Mark[]; isBinned: boolean } {
  const marks = points.map(markOf).sort((a, b) => a.time - b.time);
  if (marks.length <= MOST_MARKS) return { marks, isBinned: false };
  const first = marks[0]!.time;
  const span = marks.at(-1)!.time - first || 1;
  const bins = new Map<number, Mark[]>();
  for (const mark of marks) {
    const bin = Math.min(STRETCHES - 1, Math.floor(((mark.time - first) / span) * STRETCHES));
    const own = bins.get(bin);
    if (own) own.push(mark);
    else bins.set(bin, [mark]);
  }
  return { marks: [...bins.values()].map(together), isBinned: true };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function together(marks: readonly Mark[]): Mark {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { middle } of marks) {
    least = Math.min(least, middle);
    most = Math.max(most, middle);
  }
  const middle = mean(marks.map((mark) => mark.middle));
  return { engine: "", time: mean(marks.map(({ time }) => time)), least, middle, most, isOutside: marks.some(({ isOutside }) => isOutside) };
}

/** The same in words, with the numbers: reading by reading, or year by year where there are many. */
export function describedTrend({ unit, lower, upper }: Trend, points: readonly TrendPoint[]): string {
  const decimals = decimalsOf(points.map(({ value }) => value));
  const show = (value: number): string => numberText(decimal(value), decimals);
  const ordered = [...points].sort((a, b) => timeOfDay(a.day) - timeOfDay(b.day));
  const sizes =
    ordered.length <= MOST_TOLD
      ? ordered.map(({ engine, day, value, isOutside }) => `${day} ${tame(engine)}: ${show(value)}${isOutside ? ", outside" : ""}`)
      : years(ordered).map(([year, own]) => {
          const { least, middle, most } = together(own.map(markOf));
          const outside = own.filter(({ isOutside }) => isOutside).length;
          return `${year}: ${own.length} readings from ${show(least)} to ${show(most)}, mean ${show(middle)}, ${outside} outside`;
        });
  const limits = [lower === undefined ? "" : `at least ${numberText(lower)}`, upper === undefined ? "" : `at most ${numberText(upper)}`].filter(Boolean);
  return `${unit ? `In ${tame(unit)}. ` : ""}${sizes.join("; ")}.${limits.length > 0 ? ` Limits: ${limits.join(", ")}.` : ""}`;
}

const markOf = ({ engine, day, value, isOutside }: TrendPoint): Mark => ({
  ...{ engine, isOutside, time: timeOfDay(day) },
  ...{ least: value, middle: value, most: value },
});

function years(points: readonly TrendPoint[]): [year: string, own: TrendPoint[]][] {
  const found = new Map<string, TrendPoint[]>();
  for (const point of points) {
    const year = point.day.slice(0, 4);
    const own = found.get(year);
    if (own) own.push(point);
    else found.set(year, [point]);
  }
  return [...found];
}
