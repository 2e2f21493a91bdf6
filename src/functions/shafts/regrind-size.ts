import { define, value } from "../../core/define.ts";
import { Fault, unlike } from "../../core/fault.ts";
import { axes, grid, length } from "../../core/inputs.ts";
import { smallestOf } from "../cylinder/bore-readings.ts";
import { GRINDING_NOTES, grindingFor, grindingParams, grindingsOf, journalReadings, neededJournal } from "./undersize.ts";

/**
 * The smallest listed undersize that cleans a journal up. Sources: TM 5-3805-262-34 p. 4-24 (journals are
 * ground to listed undersizes); centring and allowance: common practice.
 */
export const regrindSize = define({
  name: "REGRINDSIZE",
  group: "shafts",
  role: "decides",
  summary: "The smallest listed undersize that cleans the journal up, or the words none: new shaft",
  definition:
    "least undersize with standard − undersize ≤ needed, or < needed without allowance; needed = standard − 2 × (standard − min of readings) − allowance (true), or min of readings − allowance (worn)",
  source: "undersizes: TM 5-3805-262-34 p. 4-24; centring and allowance: common practice",
  params: {
    readings: journalReadings(),
    standard: length("standard journal, from which the undersizes are taken").chosen(),
    undersizes: grid("length", "undersizes that can be had: what each takes off the standard journal, in any order").chosen(),
    ...grindingParams,
    axes: axes(),
  },
  returns: value("the undersize, in the unit of the readings, or the text none: new shaft"),
  examples: [
    { formula: "=HATCH.REGRINDSIZE({49.95,49.93;49.96,49.95}, 50, {0.25,0.5,0.75})", gives: 0.25 },
    { formula: '=HATCH.REGRINDSIZE({49.82,49.8;49.9,49.88}, 50, {0.25,0.5,0.75}, , "worn")', gives: 0.25 },
    { formula: "=HATCH.REGRINDSIZE({49.95,49.93;49.9,49.8;49.6,49.5}, 50, {0.25,0.5,0.75}, 0.03, , 2)", gives: [[0.25], [0.5], ["none: new shaft"]] },
  ],
  notes: ["Where one journal is ground, all of its kind are: HATCH.REGRINDPLAN.", ...GRINDING_NOTES],
  compute: ({ readings: journal, standard, undersizes, allowance, centring }) => {
    const smallest = smallestOf(journal);
    const grindings = unlike("readings", smallest, "standard", standard) ?? grindingsOf(standard, undersizes);
    if (grindings instanceof Fault) return grindings;
    const chosen = grindingFor(neededJournal(smallest, standard, allowance, centring), grindings, standard, allowance);
    return typeof chosen === "string" || chosen instanceof Fault ? chosen : chosen.undersize;
  },
});
