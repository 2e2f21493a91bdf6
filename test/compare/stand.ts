import { type CompareOptions, compareReadings } from "../../src/compare/compare.ts";
import { readingsOfCsv } from "../../src/compare/from-csv.ts";
import type { Reading, ReadingSet } from "../../src/compare/readings.ts";

let line = 1;

/** A bore reading of engine A in a list, with whatever a test cares for in its place. */
export const reading = (value: number | null, more: Partial<Reading> = {}): Reading => ({
  ...{ engine: "A", cylinder: "1", characteristic: "bore", position: "top thrust", unit: "mm", uncertainty: 0.003, isListed: true, ...more },
  value,
  cell: { sheet: "readings.csv", row: line, column: 4 },
  line: ++line,
});

export const set = (name: string, readings: Reading[], more: Partial<ReadingSet> = {}): ReadingSet => ({ name, readings, notes: [], ...more });

export const compare = (before: Reading[], after: Reading[], options: CompareOptions = {}) =>
  compareReadings(set("build", before), set("strip-down", after), options);

/** The one place that two readings come to. */
export function changeBetween(before: Reading, after: Reading, options: CompareOptions = {}) {
  const { places, refused } = compare([before], [after], options);
  if (places.length !== 1) throw new Error(`no change: ${refused.map(({ why }) => why)}`);
  return places[0]!;
}

/** One side read from text in long form. */
export async function csv(text: string, options: Parameters<typeof readingsOfCsv>[1] = {}) {
  async function* bytes(): AsyncGenerator<Uint8Array> {
    yield new TextEncoder().encode(text);
  }
  return readingsOfCsv(bytes(), options);
}
