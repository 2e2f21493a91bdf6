import type { Result } from "../../core/cell.ts";
import { decimal } from "../../core/decimal.ts";
import { define, table } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { axes, cells, choice, grid, length, truth } from "../../core/inputs.ts";
import { checkText } from "../../core/sentences.ts";
import { boresIn } from "./bore-readings.ts";
import { CENTRINGS, type Choice, choicesOf, cleansUp, NO_ALLOWANCE_NOTE, neededSize, noneCleansUp } from "./oversize.ts";

const HEADER = ["bore", "needed", "oversize", "finish bore", "least stock", "most stock"];

/**
 * To what size each bore of a block is taken. Source: TM 55-1905-219-14-10 p. 5-368 (the worn bore
 * decides the oversize, the sizes come from a list); one oversize for the block: common practice.
 */
export const reborePlan = define({
  name: "REBOREPLAN",
  group: "cylinder",
  role: "decides",
  summary: "Rebore of a whole block: needed size, oversize, finish bore and stock to remove, bore by bore",
  definition: "needed as in REBORESIZE; finish bore = piston + pistonClearance, or standard + oversize; stock = finish bore − largest and − smallest reading",
  source: "TM 55-1905-219-14-10 p. 5-368 (oversizes chosen by the worn bore); one oversize throughout, centring and allowance: common practice",
  params: {
    bores: cells("length", "readings of one bore; with axes one bore a row, height by height"),
    standard: length("standard bore, to which the oversizes are added").chosen(),
    oversizes: grid("length", "oversizes that can be had: what each adds to the standard bore").chosen(),
    allowance: length("least stock to leave for honing, on the diameter").atLeast(0).default(0).chosen(),
    centring: choice("worn: bored on the worn hole; true: bored on the original centre line", CENTRINGS).default("worn"),
    axes: axes(),
    common: truth("TRUE: one oversize for the block; FALSE: each bore its own").default(true),
    pistons: grid("length", "measured skirt of the piston of each oversize, in the shape of oversizes").optional(),
    pistonClearance: length("piston-to-wall clearance, added to those pistons").optional().chosen(),
  },
  returns: table("a row for each bore: needed size, oversize, finish bore, least and most stock to remove, on the diameter"),
  draws: { kind: "bore", readings: "bores", axes: "axes", standard: "standard" },
  examples: [
    {
      formula: "=HATCH.REBOREPLAN({73.05,73.02;73.27,73.2}, 73, {0.25,0.5,0.75}, 0.03, , 2)",
      gives: [HEADER, [1, 73.08, 0.5, 73.5, 0.45, 0.48], [2, 73.3, 0.5, 73.5, 0.23, 0.3]],
    },
    {
      formula: "=HATCH.REBOREPLAN({73.05,73.02;73.24,73.2}, 73, {0.25,0.5}, , , 2, FALSE, {73.2,73.46}, 0.04)",
      gives: [HEADER, [1, 73.05, 0.25, 73.24, 0.19, 0.22], [2, 73.24, 0.5, 73.5, 0.26, 0.3]],
    },
  ],
  notes: [
    "A bore that no listed oversize cleans up gets the words none: sleeve; the others are planned without it.",
    NO_ALLOWANCE_NOTE,
    "An oversize above a twentieth of the standard bore is refused as one in another unit.",
    "One common oversize counts the bores measured so far: it can grow until the last one is filled in.",
    "Which oversizes a block bears, and how far apart bores may end up, its maker's service manual says.",
    "Honing dust is hard and fine: wear eye protection, wash the bores with hot soapy water and oil them.",
  ],
  compute: ({ bores, standard, oversizes, allowance, centring, axes: axesGiven, common, pistons, pistonClearance }) => {
    const choices = choicesOf(standard, oversizes, pistons, pistonClearance);
    if (choices instanceof Fault) return choices;
    const holes = boresIn("bores", bores, axesGiven, standard);
    if (holes instanceof Fault) return holes;
    const sizeFor = (needed: number): Choice | undefined => choices.find(({ finish }) => cleansUp(finish, needed, allowance));
    const needs = holes.map((hole) => (Array.isArray(hole) ? neededSize(Math.max(...hole), standard, allowance, centring) : 0));
    const worst = needs.filter((needed) => sizeFor(needed)).reduce((a, b) => Math.max(a, b), 0);
    const none = noneCleansUp(
      choices.map(({ oversize }) => oversize),
      standard,
    );
    const rows = holes.map((hole, at): Result[] => {
      if (!Array.isArray(hole)) return [at + 1, hole ? checkText(hole) : "", "", "", "", ""];
      const chosen = sizeFor(needs[at]!);
      if (!chosen) return [at + 1, needs[at]!, none instanceof Fault ? checkText(none) : none, "", "", ""];
      const { oversize, finish } = common ? sizeFor(worst)! : chosen;
      return [at + 1, needs[at]!, oversize, finish, decimal(finish - Math.max(...hole)), decimal(finish - Math.min(...hole))];
    });
    return [HEADER, ...rows];
  },
});
