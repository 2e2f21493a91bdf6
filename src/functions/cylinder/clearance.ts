import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";
import { fitClearance } from "./fit-clearance.ts";

/**
 * Clearance of a running fit, on the diameter: pin in its bush, crankpin in its bearing, valve stem
 * in its guide. Source: ISO 286-1 (clearance: size of the hole less size of the shaft when positive).
 */
export const clearance = define({
  name: "CLEARANCE",
  group: "cylinder",
  role: "measures",
  summary: "Clearance of a running fit, on the diameter: pin, rod, guide or journal",
  definition: "hole − shaft",
  source: "ISO 286-1, clearance",
  params: {
    hole: length("inside diameter: bush, bearing, guide or bore"),
    shaft: length("outside diameter: pin, journal, stem or piston"),
  },
  returns: value("clearance on the diameter, in the unit of both"),
  derives: [
    { characteristic: "pin clearance", from: ["pin bore", "piston pin"], per: "place" },
    { characteristic: "stem clearance", from: ["valve guide", "valve stem"], per: "place" },
  ],
  examples: [
    { formula: "=HATCH.CLEARANCE(50.025, 49.975)", gives: 0.05 },
    { formula: "=HATCH.CLEARANCE({73.04;22.02;8.01}, {73;22;7.97})", gives: [[0.04], [0.02], [0.04]] },
  ],
  notes: ["A press fit, where the shaft is meant to be the larger, is a swap to this function: HATCH.INTERFERENCE gives how much larger."],
  compute: ({ hole, shaft }) => fitClearance(hole, shaft, "hole", "shaft", "A press fit is one for HATCH.INTERFERENCE"),
});
