import { define, value } from "../../core/define.ts";
import { tooFew } from "../../core/fault.ts";
import { axes, readings } from "../../core/inputs.ts";
import { drawnAsBore, outOfRoundOf } from "./bore-readings.ts";

/**
 * Two-point out-of-round: at each height the largest reading less the smallest, over the axes; of
 * these the largest. A difference of diameters, not of radii. Source: FAA powerplant handbook (the
 * two axes in one plane).
 */
export const outOfRound = define({
  name: "OUTOFROUND",
  group: "cylinder",
  role: "measures",
  summary: "Bore out-of-round: the largest difference between axes at one height",
  definition: "max over heights of (max over axes − min over axes)",
  source: "FAA-H-8083-32 powerplant handbook, cylinder inspection; US Navy Engineman training manual p. 3-5",
  params: { readings: readings(), axes: axes() },
  returns: value("out-of-round on the diameter, in the unit of the readings"),
  draws: drawnAsBore,
  derives: [{ characteristic: "out-of-round", from: ["bore"], per: "cylinder", axes: 2 }],
  examples: [
    { formula: "=HATCH.OUTOFROUND({73.01,73.03;73.00,73.01})", gives: 0.02 },
    { formula: "=HATCH.OUTOFROUND({73.03,73.02,73.01,73.00;73.00,73.00,73.00,73.00}, 2)", gives: [[0.01], [0]] },
  ],
  notes: [
    "Out-of-round needs at least two axes, 90° apart; readings on one axis are refused, as their out-of-round would always be 0.",
    "A two-point gauge is blind to a three-lobed bore; HATCH.ROUNDNESS takes radial readings instead.",
  ],
  compute: ({ readings: bore }) => (bore.axes > 1 ? outOfRoundOf(bore) : tooFew("readings", "one axis", "out-of-round needs two or more, 90° apart")),
});
