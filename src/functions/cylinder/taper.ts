import { define, value } from "../../core/define.ts";
import { tooFew } from "../../core/fault.ts";
import { axes, readings } from "../../core/inputs.ts";
import { drawnAsBore, taperOf } from "./bore-readings.ts";

/**
 * Bore taper: along each axis the largest reading less the smallest, over the heights; of these the
 * largest. Source: FAA powerplant handbook (top against bottom); heights and axes as in the US Navy
 * Engineman training manual, p. 3-5.
 */
export const taper = define({
  name: "TAPER",
  group: "cylinder",
  role: "measures",
  summary: "Bore taper: the largest difference between heights along one axis",
  definition: "max over axes of (max over heights − min over heights)",
  source: "FAA-H-8083-32 powerplant handbook, cylinder inspection; US Navy Engineman training manual p. 3-5",
  params: { readings: readings(), axes: axes() },
  returns: value("taper, in the unit of the readings"),
  draws: drawnAsBore,
  derives: [{ characteristic: "taper", from: ["bore"], per: "cylinder", heights: 2 }],
  examples: [
    { formula: "=HATCH.TAPER({73.01,73.02;73.00,73.01})", gives: 0.01 },
    { formula: "=HATCH.TAPER({73.03,73.02,73.01,73.00;73.00,73.00,73.00,73.00}, 2)", gives: [[0.02], [0]] },
  ],
  notes: [
    "Taper needs at least two heights, and three show a barrel or a waist; readings at one height are refused, as their taper would always be 0.",
    "Measure just below the top of ring travel, in the middle and just above the bottom of ring travel.",
  ],
  compute: ({ readings: bore }) =>
    bore.heights > 1 ? taperOf(bore) : tooFew("readings", "one height", "taper needs two or more; where each row is one bore, give its axes"),
});
