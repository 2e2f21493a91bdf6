import { uncertaintyText } from "../core/number-text.ts";
import { COVERAGE_FACTOR, uncertaintyOfChange } from "../functions/wear/change-params.ts";
import { smallestChangeSeen } from "../functions/wear/detectable.ts";
import { normalQuantile, powerOf, smallestSeen } from "../math/power.ts";

/** What is planned: every U is expanded, k = 2. */
export interface TrialPlan {
  /** U of one reading, and the part of it that all readings of one session share. */
  uncertainty: number;
  common: number;
  /** Readings of the gauge's master in each campaign: then what is common cancels, and what these readings leave counts. 0 for none. */
  masters: number;
  repeats: number;
  /** Places of one characteristic on each cylinder. */
  places: number;
  cylinders: number;
  /** Characteristics that are looked at. */
  characteristics: number;
  /** Engines in each of two groups. */
  engines: number;
  /** Standard deviation between engines that are treated alike; `undefined` where nobody knows. */
  spread: number | undefined;
  /** The smallest difference between the groups that matters. */
  matters: number | undefined;
}

/** Chances of being seen that a plan tells of. */
export const POWERS = [0.8, 0.9] as const;
type Both = readonly [eighty: number, ninety: number];

export interface PlannedLine {
  level: "place" | "mean" | "group";
  /** Lines of its kind that are judged together. */
  rows: number;
  /** Places or engines that it is the mean of. */
  n: number;
  /** The smallest true difference that is seen 8 and 9 times in 10; `null` where none is. */
  seen: Both | null;
  /** A mean of few places sees no more than a single place: then it is one place's. */
  by: "place" | "mean" | "group";
}

export interface PlannedTrial {
  lines: PlannedLine[];
  /** Engines that each group needs to see what matters 8 and 9 times in 10; `null` where spread or what matters is not given. */
  needed: Both | null;
  /** Standard deviation of one engine's mean change, its measuring included. */
  engineSpread: number | null;
}

const LEVEL = 0.05;
/** More engines than anybody has. */
const MOST_ENGINES = 10_000;

/** What a trial will see, before anybody measures. */
export function planTrial(plan: TrialPlan): PlannedTrial {
  const own = Math.sqrt(plan.uncertainty ** 2 - Math.min(plan.common, plan.uncertainty) ** 2) || plan.uncertainty;
  // A master read j times in each campaign leaves u_r²/j of each in place of what is common.
  const common = plan.masters > 0 ? own / Math.sqrt(plan.masters) : plan.common;
  const perEngine = plan.places * plan.cylinders;
  const change = (places: number, rows: number, power: number) =>
    smallestChangeSeen({ uBefore: own, uAfter: own, repeats: plan.repeats, places, power, rows, common });
  const both = <T>(of: (power: number) => T): readonly [T, T] => [of(POWERS[0]), of(POWERS[1])];
  const [placeRows, meanRows] = [plan.characteristics * perEngine * plan.engines * 2, plan.characteristics * plan.engines * 2];
  const means = both((power) => change(perEngine, meanRows, power));
  const lines: PlannedLine[] = [
    { level: "place", rows: placeRows, n: 1, seen: both((power) => change(1, placeRows, power).change), by: "place" },
    { level: "mean", rows: meanRows, n: perEngine, seen: [means[0].change, means[1].change], by: means[1].by },
  ];
  if (plan.spread === undefined) return { lines, needed: null, engineSpread: null };
  const measuring = Math.hypot(uncertaintyOfChange(own, own) / Math.sqrt(plan.repeats * perEngine), uncertaintyOfChange(common, common)) / COVERAGE_FACTOR;
  const scatter = Math.hypot(plan.spread, measuring);
  const level = LEVEL / plan.characteristics;
  // The gauge's p must be small as well as Welch's, so its bar is a floor under the engines' own.
  const design = (n: number) => ({
    ...{ weight: 2 / n, degreesOfFreedom: 2 * n - 2, u: 0, scatter, common: 0, level, isWelch: true },
    floor: normalQuantile(1 - level / 2) * measuring * Math.sqrt(2 / n),
  });
  const groups = (power: number): number => smallestSeen(design(plan.engines), power, 200 * scatter) ?? Number.POSITIVE_INFINITY;
  lines.push({ level: "group", rows: plan.characteristics, n: plan.engines, seen: plan.engines > 1 ? both(groups) : null, by: "group" });
  const { matters } = plan;
  const needed = matters === undefined ? null : both((power) => fewest((n) => powerOf(design(n), matters) >= power));
  return { lines, needed, engineSpread: scatter };
}

/** The fewest engines of each group, at least 2, that are enough; endless where no number is. */
function fewest(areEnough: (n: number) => boolean): number {
  let high = 2;
  while (!areEnough(high)) {
    high *= 2;
    if (high > MOST_ENGINES) return Number.POSITIVE_INFINITY;
  }
  let low = Math.max(2, high / 2);
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (areEnough(middle)) high = middle;
    else low = middle + 1;
  }
  return high;
}

const LEVELS: Readonly<Record<PlannedLine["level"], (line: PlannedLine) => string>> = {
  place: () => "one place",
  mean: ({ n }) => `mean of ${n} ${n === 1 ? "place" : "places"} of one engine`,
  group: ({ n }) => `two groups of ${n} ${n === 1 ? "engine" : "engines"}`,
};

/** What is looked at, among how many, and the smallest that is seen 8 and 9 times in 10. */
export function plannedRow(line: PlannedLine): [what: string, eighty: string, ninety: string, note: string] {
  const note =
    line.seen === null
      ? "one engine of each: the ways of treatment cannot be told"
      : line.level === "mean" && line.by === "place" && line.n > 1
        ? "no more than one place sees"
        : "";
  return [
    `${LEVELS[line.level](line)}, among ${line.rows}`,
    ...((line.seen ?? ["–", "–"]).map((size) => (typeof size === "number" ? uncertaintyText(size) : size)) as [string, string]),
    note,
  ];
}

const enginesText = (n: number): string => (Number.isFinite(n) ? String(n) : `more than ${MOST_ENGINES}`);

/** `0.01 between the groups takes 7 engines in each to be seen 8 times in 10, 9 to be seen 9 times in 10`. */
export const neededText = (matters: number, [eighty, ninety]: Both): string =>
  `a difference of ${matters} between the groups takes ${enginesText(eighty)} engines in each to be seen 8 times in 10, ${enginesText(ninety)} to be seen 9 times in 10`;

/** What stands below every plan. */
export const TRIAL_CAUTION =
  "A trial is work on running engines: take the usual cautions, and let the maker's service manual and a qualified technician decide, on running in above all.";
