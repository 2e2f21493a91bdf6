import type { Book } from "../formula/workbook-cells.ts";
import { type MappedLimit, type MappedReading, readLayout, type Subject } from "./mapped-readings.ts";
import type { MappedRange } from "./mapping.ts";

/** What a range holds. */
export interface Summary {
  what: string;
  readings: number;
  limits: number;
  isComplete: boolean;
}

/** Counts what a range holds, and says it in words. */
export function summaryOf(book: Book, range: MappedRange): Summary {
  const { readings, limits } = readLayout(book, { version: 1, ranges: [range] });
  const own = ownLimits(readings);
  const parts = [
    ...counted(readings).map(([name, count]) => `${count} ${count === 1 ? "reading" : "readings"} of ${name}`),
    ...(limits.length
      ? [
          `limits of ${counted(limits)
            .map(([name]) => name)
            .join(", ")}`,
        ]
      : []),
  ];
  const of = [named("engine", readings), named("cylinder", readings)].filter(Boolean).join(", ");
  const what = `${parts.join(", ")}${own ? ", with their limits" : ""}${of ? `; ${of}` : ""}`;
  const isComplete = [...readings, ...limits].every(({ characteristic }) => characteristic !== "");
  return { what, readings: readings.length, limits: limitCount(readings, limits), isComplete };
}

const ownLimits = (readings: readonly MappedReading[]): number =>
  readings.filter(({ own: beside }) => beside && (beside.beside.lower || beside.beside.upper)).length;

/** Limits for themselves, and those that stand in line with a reading. */
export const limitCount = (readings: readonly MappedReading[], limits: readonly MappedLimit[]): number => limits.length + ownLimits(readings);

function counted(subjects: readonly Subject[]): [string, number][] {
  const counts = new Map<string, number>();
  for (const { characteristic } of subjects) counts.set(characteristic || "something", (counts.get(characteristic || "something") ?? 0) + 1);
  return [...counts];
}

/** `engines A, B` or `cylinder 1`. */
function named(word: "engine" | "cylinder", subjects: readonly Subject[]): string {
  const names = [...new Set(subjects.map((subject) => subject[word]))].filter(Boolean);
  return names.length === 0 ? "" : `${word}${names.length === 1 ? "" : "s"} ${names.join(", ")}`;
}
