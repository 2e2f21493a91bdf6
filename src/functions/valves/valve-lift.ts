import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { length, ratio } from "../../core/inputs.ts";

/** Lift of the valve from that of its lobe. Source: the lever law; lash at the valve: common practice. */
export const valveLift = define({
  name: "VALVELIFT",
  group: "valves",
  role: "measures",
  summary: "Lift of a valve from the lift of its lobe, the rocker ratio and the lash",
  definition: "max(0, lobeLift × ratio − lash)",
  source: "common practice",
  params: {
    lobeLift: length("lift of the lobe, 0 on its base circle").atLeast(0),
    ratio: ratio("rocker ratio, lift at the valve by lift at the lobe; 1 for a bucket").atLeast(0.5).atMost(3),
    lash: length("valve clearance, as set at the valve").atLeast(0).default(0),
  },
  returns: value("lift of the valve, in the unit of the lobe's"),
  examples: [
    { formula: "=HATCH.VALVELIFT(6.4, 1.5, 0.25)", gives: 9.35 },
    { formula: "=HATCH.VALVELIFT({0;0.1;6.4}, 1.5, 0.25)", gives: [[0], [0], [9.35]] },
  ],
  notes: [
    "A rocker's ratio changes a little as it swings, and parts give under the spring: an indicator on the valve shows the lift that there is.",
    "Lash in the unit of the lift: 0.25 mm, not 25.",
  ],
  compute: ({ lobeLift, ratio: rocker, lash }) => Math.max(0, decimal(lobeLift * rocker - lash)),
});
