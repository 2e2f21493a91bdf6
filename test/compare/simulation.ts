import { type Comparison, compareReadings } from "../../src/compare/compare.ts";
import type { Reading } from "../../src/compare/readings.ts";
import { SeededNormal } from "../helpers/normal.ts";
import { set } from "./stand.ts";

/** Every reading has this U; of its u, `shared` is one setting for all readings of a session of one gauge. */
export const U = 0.004;
const u = U / 2;

const ENGINES = ["A", "B"];

/** The characteristics of a study, measured at as many places of each of its cylinders: 64 places of one engine, or 32 of each of two. */
const CHARACTERISTICS = ["bore", "crankpin", "main journal", "piston skirt"];
const CYLINDERS = 4;

export interface Study {
  engines?: readonly string[];
  /** Standard uncertainty of a session's setting. */
  shared?: number;
  /** Part of U that is typed as common; left out: not split. */
  common?: number | undefined;
  /** Both engines were measured in the same sessions. */
  together?: boolean;
  /** What every size has changed by. */
  change?: number;
  matters?: number;
  /** How much larger a second engine was built. */
  apart?: number;
  /** Wear of each place, the same in both engines; places wear differently. */
  wear?: number;
}

const SIZES: Readonly<Record<string, number>> = { bore: 73, crankpin: 40, "main journal": 50, "piston skirt": 72.98 };

/** One study as it might have been measured. */
export function measured(study: Study, random: SeededNormal): Comparison {
  const { engines = ["A"], shared = 0, common, together = false, change = 0, matters, apart = 0, wear = 0 } = study;
  const own = Math.sqrt(u ** 2 - shared ** 2);
  const places = 4 / engines.length;
  const settings = new Map<string, number>();
  const setting = (session: string): number => {
    if (!settings.has(session)) settings.set(session, random.normal(shared));
    return settings.get(session)!;
  };
  const sides: [Reading[], Reading[]] = [[], []];
  for (const characteristic of CHARACTERISTICS) {
    for (let cylinder = 1; cylinder <= CYLINDERS; cylinder++) {
      for (let place = 0; place < places; place++) {
        const worn = wear * (1 + place + cylinder);
        for (const [e, engine] of engines.entries()) {
          const size = SIZES[characteristic]! + e * apart + place / 100;
          for (const [at, side] of sides.entries()) {
            // Each characteristic has a gauge of its own, set once for a session.
            const session = `${characteristic} ${at}${together ? "" : engine}`;
            const value = size + at * (change + worn) + setting(session) + random.normal(own);
            side.push({
              ...{ engine, cylinder: `${cylinder}`, characteristic, position: `place ${place}`, value, unit: "mm", uncertainty: U, common, matters },
              ...{ isListed: true, gauge: characteristic, day: session, line: side.length, cell: { sheet: "study", row: side.length, column: 0 } },
            });
          }
        }
      }
    }
  }
  return compareReadings(set("before", sides[0]), set("after", sides[1]));
}

/** In what share of so many studies any line of each kind differs, and any is called the same. */
export function sharesOf(study: Study, runs: number, seed: number) {
  const random = new SeededNormal(seed);
  const found = { places: 0, means: 0, differences: 0, meanDifferences: 0 };
  for (let run = 0; run < runs; run++) {
    const comparison = measured(study, random);
    for (const kind of KINDS) if (comparison[kind].some(({ verdict }) => verdict === "differs")) found[kind] += 1 / runs;
  }
  return found;
}

const KINDS = ["places", "means", "differences", "meanDifferences"] as const;

/** In what share of lines of studies something is said to be within what matters, whether it differs as well or not. */
export function sameOf(study: Study, runs: number, seed: number): { places: number; means: number } {
  const random = new SeededNormal(seed);
  const same = { places: 0, means: 0 };
  for (let run = 0; run < runs; run++) {
    const comparison = measured(study, random);
    for (const kind of ["places", "means"] as const)
      same[kind] += comparison[kind].filter(({ withinMatters }) => withinMatters).length / comparison[kind].length / runs;
  }
  return same;
}

/** Studies in which nothing has changed, or both engines have changed alike: what was shared, and what was typed of it. */
export const UNCHANGED: readonly (readonly [name: string, study: Study])[] = [
  ["one engine, every reading with its own error, and typed so", { common: 0 }],
  ["one engine, nothing split", {}],
  ["one engine, a setting moved by 0.15 U, not split", { shared: 0.15 * U }],
  ["one engine, a setting moved by 0.4 U, not split", { shared: 0.4 * U }],
  ["one engine, a setting moved by 0.25 U, typed", { shared: 0.25 * U, common: 0.5 * U }],
  ["one engine, a setting moved by 0.4 U, typed", { shared: 0.4 * U, common: 0.8 * U }],
  ["two engines, every reading with its own error", { engines: ENGINES, common: 0 }],
  ["two engines in the same sessions, a setting moved by 0.4 U, not split", { engines: ENGINES, together: true, shared: 0.4 * U }],
  ["two engines in the same sessions, a setting moved by 0.4 U, typed", { engines: ENGINES, together: true, shared: 0.4 * U, common: 0.8 * U }],
  ["two engines built 2 U apart that wear alike", { engines: ENGINES, common: 0, apart: 2 * U, wear: U / 2 }],
  ["two engines built 2 U apart that wear alike, settings moved by 0.4 U, not split", { engines: ENGINES, shared: 0.4 * U, apart: 2 * U, wear: U / 2 }],
];

/** Where the true share is just this, so many studies come out above it by chance in one case of 200. */
export const byChance = (truth: number, runs: number): number => truth + 2.576 * Math.sqrt((truth * (1 - truth)) / runs);
