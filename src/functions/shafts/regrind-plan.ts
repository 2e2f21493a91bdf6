import type { Result } from "../../core/cell.ts";
import { decimal } from "../../core/decimal.ts";
import { define, table } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { axes, cells, grid, length, truth } from "../../core/inputs.ts";
import { checkText } from "../../core/sentences.ts";
import { boresIn } from "../cylinder/bore-readings.ts";
import { GRINDING_NOTES, grindingFor, grindingParams, grindingsOf, neededJournal } from "./undersize.ts";

const HEADER = ["journal", "needed", "undersize", "finish", "least stock", "most stock"];

/** To what size each journal of a crankshaft is ground. Source: TM 5-3805-262-34 p. 4-24 (if one is ground, all are). */
export const regrindPlan = define({
  name: "REGRINDPLAN",
  group: "shafts",
  role: "decides",
  summary: "To what size each journal is ground: one undersize for all, or each its own, with the stock to remove",
  definition:
    "REGRINDSIZE of each journal; in common the largest of these; finish = standard − undersize, or housing − 2 × shell − clearance; least stock = min of readings − finish, most = max − finish",
  source: "if one is ground, all are: TM 5-3805-262-34 p. 4-24; centring and allowance: common practice",
  params: {
    journals: cells("length", "readings of one journal; with axes one journal a row, place by place"),
    standard: length("standard journal, from which the undersizes are taken").chosen(),
    undersizes: grid("length", "undersizes that can be had: what each takes off the standard journal").chosen(),
    ...grindingParams,
    axes: axes(),
    common: truth("TRUE: one undersize for all journals; FALSE: each its own").default(true),
    housing: length("bore of the housing, for grinding to measured shells").optional(),
    shells: grid("length", "measured wall of the shell of each undersize, in the shape of undersizes").optional(),
    clearance: length("oil clearance to grind for, with those shells").optional().chosen(),
  },
  returns: table("a row for each journal: needed size, undersize, finish, least and most stock to remove, on the diameter"),
  examples: [
    {
      formula: "=HATCH.REGRINDPLAN({49.97,49.95;49.9,49.8}, 50, {0.25,0.5,0.75}, 0.03, , 2)",
      gives: [HEADER, [1, 49.87, 0.5, 49.5, 0.45, 0.47], [2, 49.57, 0.5, 49.5, 0.3, 0.4]],
    },
    {
      formula: "=HATCH.REGRINDPLAN({49.97,49.95}, 50, {0.25,0.5}, , , 2, , 54, {2.105,2.23}, 0.05)",
      gives: [HEADER, [1, 49.9, 0.25, 49.74, 0.21, 0.23]],
    },
  ],
  notes: [
    "Main journals and crankpins are two calls: each kind has its own standard size.",
    "One common undersize counts the journals measured so far: it can grow until the last one is filled in.",
    "A journal that no listed undersize cleans up gets the words none: new shaft; the others are planned without it.",
    ...GRINDING_NOTES,
  ],
  compute: ({ journals, standard, undersizes, allowance, centring, axes: axesGiven, common, housing, shells, clearance }) => {
    const grindings = grindingsOf(standard, undersizes, { housing, shells, clearance });
    if (grindings instanceof Fault) return grindings;
    const sizes = boresIn("journals", journals, axesGiven, standard);
    if (sizes instanceof Fault) return sizes;
    const needs = sizes.map((journal) =>
      Array.isArray(journal) ? neededJournal(Math.min(...journal), standard, allowance, centring) : Number.POSITIVE_INFINITY,
    );
    const chosen = needs.map((needed) => grindingFor(needed, grindings, standard, allowance));
    const worst = chosen.reduce((a: (typeof grindings)[number] | undefined, b, at) => {
      if (!Array.isArray(sizes[at]) || typeof b === "string" || b instanceof Fault) return a;
      // By its place in the list, smallest first: one undersize may be listed with several measured shells.
      return a && grindings.indexOf(a) > grindings.indexOf(b) ? a : b;
    }, undefined);
    const rows = sizes.map((journal, at): Result[] => {
      if (!Array.isArray(journal)) return [at + 1, journal ? checkText(journal) : "", "", "", "", ""];
      const own = chosen[at]!;
      if (typeof own === "string" || own instanceof Fault) return [at + 1, needs[at]!, typeof own === "string" ? own : checkText(own), "", "", ""];
      const { undersize, finish } = common ? worst! : own;
      return [at + 1, needs[at]!, undersize, finish, decimal(Math.min(...journal) - finish), decimal(Math.max(...journal) - finish)];
    });
    return [HEADER, ...rows];
  },
});
