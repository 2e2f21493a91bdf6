import { define, value } from "../../core/define.ts";
import { axes, choice, length, readings } from "../../core/inputs.ts";
import type { Bore } from "../../core/param.ts";
import { drawnAsBore, largestOf, meanOf, smallestOf } from "./bore-readings.ts";
import { fitClearance } from "./fit-clearance.ts";

const BASES = ["smallest", "mean", "largest"] as const;

/** Which size of the bore counts, by its basis. */
const SIZE: Record<(typeof BASES)[number], (bore: Bore) => number> = {
  smallest: smallestOf,
  mean: meanOf,
  largest: (bore) => largestOf(bore).reading,
};

/**
 * Piston-to-wall clearance: bore diameter less skirt diameter, on the diameter. Source: TM
 * 9-2815-226-34-1 (skirt measured 90° to the pin); the smallest reading is the default because that
 * is where a piston seizes.
 */
export const pistonClearance = define({
  name: "PISTONCLEARANCE",
  group: "cylinder",
  role: "measures",
  summary: "Piston-to-wall clearance, on the diameter, from the bore readings and the piston skirt",
  definition: "basis of readings − skirt",
  source: "TM 9-2815-226-34-1, piston inspection; basis of the bore: common practice",
  params: {
    readings: readings(),
    skirt: length("piston skirt, measured at 90° to the pin"),
    basis: choice("which bore reading counts", BASES).default("smallest"),
    axes: axes(),
  },
  returns: value("clearance, in the unit of the readings"),
  draws: drawnAsBore,
  derives: [{ characteristic: "piston clearance", from: ["bore", "piston skirt"], per: "cylinder" }],
  examples: [
    { formula: "=HATCH.PISTONCLEARANCE(73.04, 73.00)", gives: 0.04 },
    { formula: '=HATCH.PISTONCLEARANCE({73.03,73.02;73.02,73.01}, 72.97, "largest")', gives: 0.06 },
    { formula: "=HATCH.PISTONCLEARANCE({73.02,73.02;73.05,73.04}, {72.98;72.99}, , 2)", gives: [[0.04], [0.05]] },
  ],
  notes: ["Measure bore and piston at one temperature; the maker's service manual says where on the skirt."],
  compute: ({ readings: bore, skirt, basis }) => fitClearance(SIZE[basis](bore), skirt, "bore", "skirt"),
});
