import { define, value } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { marginOf } from "../../core/verdict.ts";
import { EMPTY_CELL_NOTE, limitParams, limitsOf, ZERO_LIMIT_NOTE } from "./limit-params.ts";

/** Distance of a value to the nearest limit: positive inside, 0 on it, negative outside. */
export const margin = define({
  name: "MARGIN",
  group: "verdict",
  role: "judges",
  summary: "Distance to the nearest limit: positive inside, negative outside",
  definition: "min(upper − value, value − lower)",
  source: "common practice; sign as in ISO 14253-1, conformity inside the limits",
  params: limitParams,
  returns: value("distance in the unit of the value; blank while there is no limit"),
  examples: [
    { formula: "=HATCH.MARGIN(0.035, 0.02, 0.04)", gives: 0.005 },
    { formula: "=HATCH.MARGIN({0.019;0.02;0.03;0.05}, 0.02, 0.04)", gives: [[-0.001], [0], [0.01], [-0.01]] },
    { formula: "=HATCH.MARGIN(73.04-73.00, , 0.04)", gives: 0 },
  ],
  notes: ["Sort a sheet by this column to see what is nearest to its limit, whatever was measured.", ZERO_LIMIT_NOTE, EMPTY_CELL_NOTE],
  compute: ({ value: reading, lower, upper }) => {
    const limits = limitsOf(lower, upper);
    return limits instanceof Fault ? limits : (marginOf(reading, limits) ?? "");
  },
});
