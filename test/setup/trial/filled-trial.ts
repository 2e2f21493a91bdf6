import type { Comparison } from "../../../src/compare/compare.ts";
import type { LineJudgement } from "../../../src/compare/judgement.ts";
import { trialWorkbookSpec } from "../../../src/setup/trial/trial-workbook.ts";
import { SeededNormal } from "../../helpers/normal.ts";
import { Made } from "../made.ts";

export const CHOICES = { cylinders: 2, heights: 2, axes: 2, unit: "mm", engines: 2, seed: 7, use: "hours" } as const;
/** Rows of one engine in one campaign: four places of a bore, skirt, two ring gaps, two of a crankpin. */
export const ITEMS = 4 + 5;
const SIZES = [73.01, 73.02, 73.01, 73.02, 72.97, 0.3, 0.32, 39.98, 39.99];
const isGap = (item: number): boolean => item === 5 || item === 6;
export const ENGINES = { A: "plain", B: "plain", C: "coated", D: "coated" };
const GROUPS = Object.entries(ENGINES);

export const make = (choices: object = {}) => Made.ofBook(trialWorkbookSpec({ ...CHOICES, ...choices }));

export interface Filling {
  /** What the bore gauge's ring read at the start and the end of both campaigns; none where it was not read. */
  ring?: readonly number[];
  /** Of the parts, before and after. */
  temperatures?: readonly [number, number];
  runIn?: number;
  /** Of the readings' errors. */
  seed?: number;
}

/** The sessions that a gauge had. */
const sessionOf = (campaign: string, item: number): string => `${campaign} ${isGap(item) ? 2 : 1}`;

/** A reading as it was typed. */
export interface TypedReading {
  engine: string;
  group: string;
  campaign: "before" | "after";
  item: number;
  cylinder: number;
  value: number;
}

/** Four engines; bores of the second group wear by 0.02 more, and all but the gaps read 0.006 larger after. */
export function readingsTyped(seed = 1019): TypedReading[] {
  const random = new SeededNormal(seed);
  return (["before", "after"] as const).flatMap((campaign, c) =>
    GROUPS.flatMap(([engine, group], e) =>
      SIZES.flatMap((size, item) =>
        [1, 2].map((cylinder) => {
          const worn = item < 4 ? 0.01 + (e > 1 ? 0.02 : 0) + e / 5000 : 0;
          const value = Number((size + c * (worn + (isGap(item) ? 0 : 0.006)) + random.normal(isGap(item) ? 0.005 : 0.0007)).toFixed(4));
          return { engine, group, campaign, item, cylinder, value };
        }),
      ),
    ),
  );
}

export const GAUGES = [
  ["BG-1", 0.002, 0.001],
  ["FG-1", 0.02, 0],
] as const;
export const MATTERS = [0.005, 0.005, 0.03, 0.03, 0.005];
export const DAYS = { before: 46095, after: 46298 };
export const HOURS = { before: 0, after: 600 };

/** A workbook for a trial in which all this is typed. */
export async function filled({ ring = [], temperatures, runIn, seed }: Filling = {}): Promise<Made> {
  const made = await make();
  for (const [i, [engine, group]] of GROUPS.entries()) {
    await made.type("Engines", "Engine", i, engine);
    await made.type("Engines", "Group", i, group);
    await made.type("Engines", "Hours before", i, HOURS.before);
    await made.type("Engines", "Hours after", i, HOURS.after);
  }
  for (const [i, [id, U, common]] of GAUGES.entries()) {
    await made.type("Gauges", "Gauge id", i, id);
    await made.type("Gauges", "Uncertainty", i, U);
    await made.type("Gauges", "Common part", i, common);
  }
  await made.fill("TrialLimits", "Matters", MATTERS);
  if (runIn !== undefined) await made.type("TrialData", "Entry", 0, runIn);
  if (temperatures !== undefined) for (let i = 0; i < 5; i++) await made.type("TrialLimits", "Material", i, "grey iron");
  for (const [c, campaign] of (["before", "after"] as const).entries()) {
    for (const [g, [id]] of GAUGES.entries()) {
      const row = 8 * c + g;
      await made.type("Campaigns", "Gauge", row, id);
      await made.type("Campaigns", "Measured on", row, DAYS[campaign]);
      if (temperatures !== undefined) await made.type("Campaigns", "Part temperature", row, temperatures[c]!);
      if (g > 0) continue;
      for (const [k, heading] of ["Master at start", "Master at end"].entries())
        if (ring[2 * c + k] !== undefined) await made.type("Campaigns", heading, row, ring[2 * c + k]!);
    }
    const typed = readingsTyped(seed).filter((reading) => reading.campaign === campaign);
    for (const cylinder of [1, 2])
      await made.fill(
        `Readings${campaign}`,
        `Cylinder ${cylinder}`,
        typed.filter((reading) => reading.cylinder === cylinder).map(({ value }) => value),
      );
    for (let row = 0; row < 4 * ITEMS; row++) await made.type(`Readings${campaign}`, "Session", row, sessionOf(campaign, row % ITEMS));
  }
  return made;
}

/** What each item of the sheets is, in words. */
const WORDS = [
  ...["top thrust", "top pin", "bottom thrust", "bottom pin"].map((position) => ["bore", position]),
  ...[
    ["piston skirt", ""],
    ["top ring end gap", ""],
    ["second ring end gap", ""],
    ["crankpin", "across"],
    ["crankpin", "along"],
  ],
] as [string, string][];
export const CHARACTERISTICS = [...new Set(WORDS.map(([characteristic]) => characteristic))];

/** The same trial typed as CSV. */
export function asCsv({ ring = [], temperatures, seed }: Filling): string {
  const head = "group,engine,campaign,cylinder,characteristic,position,value,unit,U,common,matters,gauge,day,hours,temperature,material";
  const masters = ring.map((value, i) => {
    const campaign = i < 2 ? "before" : "after";
    return `,,${campaign},,master,${i % 2 === 0 ? "start" : "end"},${value},mm,0.002,0.001,,BG-1,${DAYS[campaign]},,,`;
  });
  const rows = readingsTyped(seed).map(({ engine, group, campaign, item, cylinder, value }) => {
    const [characteristic, position] = WORDS[item]!;
    const [gauge, U, common] = GAUGES[characteristic.includes("ring") ? 1 : 0];
    const warm = temperatures === undefined ? "," : `${temperatures[campaign === "before" ? 0 : 1]},grey iron`;
    return `${group},${engine},${campaign},${cylinder},${characteristic},${position},${value},mm,${U},${common},${MATTERS[CHARACTERISTICS.indexOf(characteristic)]},${gauge},${DAYS[campaign]},${HOURS[campaign]},${warm}`;
  });
  return [head, ...masters, ...rows].join("\n");
}

/** What every line of a comparison says, for one to be held against another. */
export const linesSaid = (comparison: Comparison) => ({
  ...Object.fromEntries(
    (["places", "means", "groups"] as const).map((kind) => [
      kind,
      comparison[kind].map(({ label, says, p, uncertainty }: LineJudgement & { label: string; says: string }) => ({ label, says, p, uncertainty })),
    ]),
  ),
  wear: comparison.wear.map(({ label, says, stage }) => ({ label, says, stage })),
});
