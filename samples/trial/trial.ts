/**
 * The sample trial: the invented yard's two engines, run in in two ways, as built and as stripped down after a season.
 * What is planted, and what must be found, is told in samples/trial/README.md.
 */
import { SeededNormal } from "../../test/helpers/normal.ts";

const HEADER = "group,engine,campaign,hours,cylinder,characteristic,position,value,unit,uncertainty,common,lower,upper,matters,gauge,day,direction of wear";
const SEED = 20261003;
const CYLINDERS = [1, 2, 3];

const ENGINES = [
  { name: "A", group: "long run-in", hours: 612 },
  { name: "B", group: "short run-in", hours: 598 },
];
const CAMPAIGNS = [
  { name: "before", day: "2026-03-14" },
  { name: "after", day: "2026-10-03" },
];

/** U of each gauge and the part of it that a session shares, and its master: what it read at the start and end of both sessions. */
const GAUGES = {
  "BG-1": {
    U: 0.003,
    common: 0.002,
    master: [
      [73, 73],
      [73.006, 73.006],
    ],
  },
  "MIC-1": {
    U: 0.002,
    common: 0.001,
    master: [
      [50, 50.001],
      [50, 50],
    ],
  },
  "FG-1": { U: 0.02, common: 0, master: undefined },
} as const;

interface Characteristic {
  name: string;
  gauge: keyof typeof GAUGES;
  positions: readonly string[];
  size: number;
  digits: number;
  lower: number;
  upper: number;
  matters: number;
  wears: "larger" | "smaller" | "";
  /** What each engine has really changed by, and how much of that each position has. */
  change: readonly [number, number];
  shares?: readonly number[];
}

const CHARACTERISTICS: readonly Characteristic[] = [
  {
    ...{ name: "bore", gauge: "BG-1", size: 73.012, digits: 3, lower: 73, upper: 73.08, matters: 0.005, wears: "larger", change: [0.008, 0.02] },
    positions: ["top thrust", "top pin", "middle thrust", "middle pin", "bottom thrust", "bottom pin"],
    shares: [1.2, 1.1, 1, 1, 0.9, 0.8],
  },
  {
    ...{ name: "piston skirt", gauge: "MIC-1", positions: [""], size: 72.975, digits: 3, lower: 72.95, upper: 73, matters: 0.006 },
    ...{ wears: "smaller", change: [-0.005, -0.005] },
  },
  {
    ...{ name: "crankpin", gauge: "MIC-1", positions: ["across", "along"], size: 39.985, digits: 3, lower: 39.96, upper: 40, matters: 0.004 },
    ...{ wears: "smaller", change: [0, 0] },
  },
  {
    ...{ name: "ring end gap", gauge: "FG-1", positions: ["top ring"], size: 0.31, digits: 2, lower: 0.25, upper: 0.6, matters: 0.02 },
    ...{ wears: "larger", change: [0.04, 0.05] },
  },
];

/** The one file of the sample, by its name. */
export function trialSample(): Record<string, string> {
  const random = new SeededNormal(SEED);
  const lines = [HEADER];
  const row = (cells: readonly (string | number)[]) => void lines.push(cells.join(","));
  for (const [c, campaign] of CAMPAIGNS.entries()) {
    for (const [gauge, { U, common, master }] of Object.entries(GAUGES)) {
      for (const [i, value] of (master?.[c] ?? []).entries())
        row(["", "", campaign.name, "", "", "master", i === 0 ? "start" : "end", value.toFixed(3), "mm", U, common, "", "", "", gauge, campaign.day, ""]);
    }
  }
  for (const [e, engine] of ENGINES.entries()) {
    for (const cylinder of CYLINDERS) {
      for (const of of CHARACTERISTICS) {
        for (const [p, position] of of.positions.entries()) {
          const { U, common, master } = GAUGES[of.gauge];
          // Parts are not all built alike.
          const built = of.size + random.normal(0.002);
          for (const [c, campaign] of CAMPAIGNS.entries()) {
            const moved = c === 0 || master === undefined ? 0 : master[1][0] - master[0][0];
            const size = built + c * (of.change[e]! * (of.shares?.[p] ?? 1) + moved) + random.normal(Math.sqrt(U ** 2 - common ** 2) / 2);
            row([
              ...[engine.group, engine.name, campaign.name, c === 0 ? 0 : engine.hours, cylinder, of.name, position, size.toFixed(of.digits)],
              ...["mm", U, common, of.lower, of.upper, of.matters, of.gauge, campaign.day, of.wears],
            ]);
          }
        }
      }
    }
  }
  return { "trial.csv": `${lines.join("\r\n")}\r\n` };
}
