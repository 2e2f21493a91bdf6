import { type Comparison, compareReadings } from "../../src/compare/compare.ts";
import { studentQuantile } from "../../src/math/distributions.ts";
import { SeededNormal } from "../helpers/normal.ts";
import { csv } from "./stand.ts";

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
  /** Readings of each gauge's master in each campaign. */
  masters?: number;
  /** Way of treatment of each engine, and the standard deviation by which engines that are treated alike change differently. */
  groups?: readonly string[];
  spread?: number;
}

const SIZES: Readonly<Record<string, number>> = { bore: 73, crankpin: 40, "main journal": 50, "piston skirt": 72.98 };

const HEADER = "group,engine,campaign,cylinder,characteristic,position,value,unit,U,common,matters,gauge,day";

/** One study as it might have been measured and written down: it goes the whole way from a file. */
export async function measured(study: Study, random: SeededNormal): Promise<Comparison> {
  const { engines = ["A"], shared = 0, common, together = false, change = 0, matters, apart = 0, wear = 0, masters = 0, groups, spread = 0 } = study;
  const own = Math.sqrt(u ** 2 - shared ** 2);
  const places = Math.max(1, 4 / engines.length);
  const settings = new Map<string, number>();
  const setting = (session: string): number => {
    if (!settings.has(session)) settings.set(session, random.normal(shared));
    return settings.get(session)!;
  };
  const lines = [HEADER];
  const write = (...cells: (string | number | undefined)[]) => void lines.push(cells.join(","));
  const beside = ["mm", U, common, matters];
  const apartBy = engines.map(() => random.normal(spread));
  for (const characteristic of CHARACTERISTICS) {
    // Each characteristic has a gauge of its own, set once for a session.
    const sessionOf = (at: number, engine: string): string => `${characteristic} ${at}${together ? "" : engine}`;
    for (const [at, campaign] of ["before", "after"].entries()) {
      for (const session of new Set(engines.map((engine) => sessionOf(at, engine)))) {
        for (let j = 0; j < masters; j++)
          write("", "", campaign, "", "master", "", (50 + setting(session) + random.normal(own)).toFixed(7), ...beside, characteristic, session);
      }
    }
    for (let cylinder = 1; cylinder <= CYLINDERS; cylinder++) {
      for (let place = 0; place < places; place++) {
        const worn = wear * (1 + place + cylinder);
        for (const [e, engine] of engines.entries()) {
          const size = SIZES[characteristic]! + e * apart + place / 100;
          for (const [at, campaign] of ["before", "after"].entries()) {
            const session = sessionOf(at, engine);
            const value = size + at * (change + worn + apartBy[e]!) + setting(session) + random.normal(own);
            write(groups?.[e] ?? "", engine, campaign, cylinder, characteristic, `place ${place}`, value.toFixed(7), ...beside, characteristic, session);
          }
        }
      }
    }
  }
  return compareReadings(await csv(lines.join("\n")), undefined);
}

/** In what share of so many studies any line of each kind differs. */
export async function sharesOf(study: Study, runs: number, seed: number) {
  const random = new SeededNormal(seed);
  const found = { places: 0, means: 0, differences: 0, meanDifferences: 0, groups: 0 };
  for (let run = 0; run < runs; run++) {
    const comparison = await measured(study, random);
    for (const kind of KINDS) if (comparison[kind].some(({ verdict }) => verdict === "differs")) found[kind] += 1 / runs;
  }
  return found;
}

const KINDS = ["places", "means", "differences", "meanDifferences", "groups"] as const;

/** In what share of lines of studies something is said to be within what matters, whether it differs as well or not. */
export async function sameOf(study: Study, runs: number, seed: number): Promise<{ places: number; means: number }> {
  const random = new SeededNormal(seed);
  const same = { places: 0, means: 0 };
  for (let run = 0; run < runs; run++) {
    const comparison = await measured(study, random);
    for (const kind of ["places", "means"] as const)
      same[kind] += comparison[kind].filter(({ withinMatters }) => withinMatters).length / comparison[kind].length / runs;
  }
  return same;
}

/** Standard uncertainty of a setting that all readings of a session share, and what is left of each reading's own. */
const SETTING = 0.4 * U;
const OWN = Math.sqrt(u ** 2 - SETTING ** 2);

/** Means whose places scatter by their readings alone: of one engine whose U is typed as each reading's own, or of what two engines measured in the same sessions differ by, where the typed common part cancels. */
export type Uncommon = "typed as none" | "cancelled";

/** The deviation of one change, or of one difference of changes. */
export const deviationOf = (kind: Uncommon): number => (kind === "cancelled" ? 2 * OWN : Math.SQRT2 * u);

/** In what share of lines a mean of so many places, changed by so much, differs by itself; and as seldom as that the paired t test misses it. */
export async function powerOfMeans(kind: Uncommon, places: number, change: number, runs: number, seed: number): Promise<{ rule: number; pairedT: number }> {
  const random = new SeededNormal(seed);
  const [engines, own, common] = kind === "cancelled" ? ([ENGINES, OWN, 2 * SETTING] as const) : ([["A"], u, 0] as const);
  const found = { rule: 0, pairedT: 0 };
  for (let run = 0; run < runs; run++) {
    const lines = [HEADER];
    const settings = kind === "cancelled" ? [random.normal(SETTING), random.normal(SETTING)] : [0, 0];
    const changes = Array.from({ length: places }, (_, i) => {
      const of = engines.map((engine, e) => {
        const read = (at: 0 | 1): number => 73 + i / 100 + settings[at]! + (e === engines.length - 1 ? at * change : 0) + random.normal(own);
        const [before, after] = [read(0), read(1)];
        for (const [campaign, value] of [["before", before] as const, ["after", after] as const])
          lines.push(["", engine, campaign, i, "bore", "", value.toFixed(7), "mm", U, common, "", "BG-1", campaign].join(","));
        return after - before;
      });
      return of.at(-1)! - (of.length > 1 ? of[0]! : 0);
    });
    const { means, meanDifferences } = compareReadings(await csv(lines.join("\n")), undefined);
    if ((kind === "cancelled" ? meanDifferences : means)[0]!.p! <= 0.05) found.rule += 1 / runs;
    const mean = changes.reduce((sum, one) => sum + one, 0) / places;
    const deviation = Math.sqrt(changes.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (places - 1));
    if (Math.abs(mean) > (studentQuantile(0.95, places - 1) * deviation) / Math.sqrt(places)) found.pairedT += 1 / runs;
  }
  return found;
}

/** What lives that are told from an honest gauge come to. */
export interface Lives {
  /** The interval holds the true life; the true life comes before the earliest. */
  covered: number;
  early: number;
  /** How many of all have a life at all. */
  known: number;
  /** The median width of the interval, by that of the interval which knows the gauge's variance. */
  width: number;
}

/** Lives of one wearing place from so many measurings with an honest gauge that reads to U/5. */
export async function livesOf(n: number, wearInU: number, runs: number, seed: number): Promise<Lives> {
  const random = new SeededNormal(seed);
  const found = { covered: 0, early: 0, told: 0 };
  const widths = { told: [] as number[], known: [] as number[] };
  const [use, limit] = [1000, 73 + 2 * wearInU * U];
  const step = U / 5;
  for (let run = 0; run < runs; run++) {
    const lines = ["campaign,cylinder,characteristic,value,unit,U,upper,hours"];
    const points = Array.from({ length: n }, (_, i) => {
      const hours = Math.round((i * use) / (n - 1));
      const size = Math.round((73 + (wearInU * U * hours) / use + random.normal(u)) / step) * step;
      lines.push([i === 0 ? "before" : "after", 1, "bore", size.toFixed(7), "mm", U, limit.toFixed(7), hours].join(","));
      return { hours, size };
    });
    const [wear] = compareReadings(await csv(lines.join("\n")), undefined).wear;
    widths.known.push(widthOfKnown(points, limit));
    if (wear?.life == null) {
      widths.told.push(Number.POSITIVE_INFINITY);
      continue;
    }
    found.told++;
    const [earliest, latest] = [wear.earliest ?? 0, wear.latest ?? Number.POSITIVE_INFINITY];
    widths.told.push(latest - earliest);
    if (earliest <= 2 * use && 2 * use <= latest) found.covered++;
    if (2 * use < earliest) found.early++;
  }
  const { covered, early, told } = found;
  return { covered: covered / told, early: early / told, known: told / runs, width: median(widths.told) / median(widths.known) };
}

/**
 * Width of the interval at 95 % of where a line meets a limit, the variance known: E. C. Fieller, J. Royal Statistical Society B 16 (1954) 175.
 * It is where (limit − mean size − slope × t)² ≤ z² u² (1/n + t²/Sxx), t from the mean use.
 */
function widthOfKnown(points: readonly { hours: number; size: number }[], limit: number): number {
  const n = points.length;
  const [x, y] = [points.reduce((sum, { hours }) => sum + hours, 0) / n, points.reduce((sum, { size }) => sum + size, 0) / n];
  const squares = points.reduce((sum, { hours }) => sum + (hours - x) ** 2, 0);
  const slope = points.reduce((sum, { hours, size }) => sum + (hours - x) * (size - y), 0) / squares;
  // Two-sided 95 % of the normal law.
  const spread = (1.959963985 * u) ** 2;
  const [a, b, c] = [slope ** 2 - spread / squares, -2 * slope * (limit - y), (limit - y) ** 2 - spread / n];
  return a > 0 ? Math.sqrt(b ** 2 - 4 * a * c) / a : Number.POSITIVE_INFINITY;
}

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}

/** Studies in which nothing has changed, or both engines have changed alike: what was shared, and what was typed of it. */
export const UNCHANGED: readonly (readonly [name: string, study: Study])[] = [
  ["one engine, every reading with its own error, and typed so", { common: 0 }],
  ["one engine, nothing split", {}],
  ["one engine, a setting moved by 0.15 U, not split", { shared: 0.15 * U }],
  ["one engine, a setting moved by 0.4 U, not split", { shared: 0.4 * U }],
  ["one engine, a setting moved by 0.4 U, not split, its master read twice in each campaign", { shared: 0.4 * U, masters: 2 }],
  ["one engine, a setting moved by 0.4 U, typed, its master read twice in each campaign", { shared: 0.4 * U, common: 0.8 * U, masters: 2 }],
  ["one engine, a setting moved by 0.25 U, typed", { shared: 0.25 * U, common: 0.5 * U }],
  ["one engine, a setting moved by 0.4 U, typed", { shared: 0.4 * U, common: 0.8 * U }],
  ["two engines, every reading with its own error", { engines: ENGINES, common: 0 }],
  ["two engines in the same sessions, a setting moved by 0.4 U, not split", { engines: ENGINES, together: true, shared: 0.4 * U }],
  ["two engines in the same sessions, a setting moved by 0.4 U, typed", { engines: ENGINES, together: true, shared: 0.4 * U, common: 0.8 * U }],
  ["two engines built 2 U apart that wear alike", { engines: ENGINES, common: 0, apart: 2 * U, wear: U / 2 }],
  ["two engines built 2 U apart that wear alike, settings moved by 0.4 U, not split", { engines: ENGINES, shared: 0.4 * U, apart: 2 * U, wear: U / 2 }],
];

/** Six engines of two ways of treatment that do nothing, while engines differ from one another. */
export const TREATED: Study = { engines: ["A", "B", "C", "D", "E", "F"], groups: ["p", "p", "p", "q", "q", "q"], common: 0, spread: U };

/** Where the true share is just this, so many studies come out above it by chance in one case of 200. */
export const byChance = (truth: number, runs: number): number => truth + 2.576 * Math.sqrt((truth * (1 - truth)) / runs);
