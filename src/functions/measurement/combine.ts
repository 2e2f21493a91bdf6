import { define, value } from "../../core/define.ts";
import { list } from "../../core/inputs.ts";
import { sum } from "../../math/statistics.ts";

/** Root sum of squares of independent uncertainties. Source: JCGM 100:2008, 5.1.2 with all sensitivity coefficients 1. */
export const combine = define({
  name: "COMBINE",
  group: "measurement",
  role: "assists",
  summary: "Uncertainties that do not depend on one another, taken together as one",
  definition: "√(sum of uncertainties²)",
  source: "JCGM 100:2008 (GUM), 5.1.2, sensitivity coefficients 1",
  params: {
    uncertainties: list("number", "uncertainties in one unit, all standard (u) or all expanded (U) at one confidence").atLeast(0),
  },
  returns: value("the combined uncertainty, of the same kind and unit"),
  examples: [
    { formula: "=HATCH.COMBINE({0.003,0.004})", gives: 0.005 },
    { formula: "=HATCH.COMBINE({0.002;0.003;0.006})", gives: 0.007 },
  ],
  notes: [
    "A clearance has the uncertainties of the bore and of the piston in it: combine both.",
    "Two readings with one gauge share what its calibration is off by; that part does not combine so, it cancels in their difference.",
  ],
  compute: ({ uncertainties }) => Math.sqrt(sum(uncertainties.map((u) => u * u))),
});
