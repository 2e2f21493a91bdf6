import { define, value } from "../../core/define.ts";
import { length } from "../../core/inputs.ts";
import { fitClearance } from "../cylinder/fit-clearance.ts";

/** Side clearance of a ring: groove width less ring width. Source: common practice. */
export const ringSide = define({
  name: "RINGSIDE",
  group: "rings",
  role: "measures",
  summary: "Side clearance of a piston ring in its groove",
  definition: "groove − ring",
  source: "common practice: what a feeler measures between the ring and the land above it",
  params: {
    groove: length("width of the groove in the piston"),
    ring: length("width of the ring, measured along the bore"),
  },
  returns: value("side clearance, in the unit of the groove"),
  derives: [{ characteristic: "ring side clearance", from: ["ring groove", "ring width"], per: "place" }],
  examples: [
    { formula: "=HATCH.RINGSIDE(1.54, 1.48)", gives: 0.06 },
    { formula: "=HATCH.RINGSIDE({1.54;1.55;3.04}, {1.48;1.49;2.98})", gives: [[0.06], [0.06], [0.06]] },
  ],
  notes: ["A groove wears wider at its mouth: measure all round, with the carbon cleaned out. The maker's service manual gives the limit."],
  compute: ({ groove, ring }) => fitClearance(groove, ring, "groove", "ring"),
});
