import { define, row } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { length } from "../../core/param.ts";
import { studentQuantile } from "../../math/distributions.ts";
import { inversePrediction } from "../../math/regression.ts";
import { sizeOverUseOf, sizeOverUseParams } from "./size-over-use.ts";

const COLUMNS = ["use at the limit", "earliest", "latest"] as const;
const CONFIDENCE = 0.95;

/** Use at which a size comes to its limit, with the 95 % interval. Source: Draper & Smith, Applied Regression Analysis, 3rd ed., pp. 47–51 (inverse prediction). */
export const wearLife = define({
  name: "WEARLIFE",
  group: "wear",
  role: "assists",
  summary: "Use at which a wearing size meets its limit, with the earliest and latest at 95 %",
  definition: "x where the least-squares line of size on use meets the limit; from and to: the roots of (limit − line)² = t² s² (1 + 1/n + (x − mean use)²/S)",
  source: "Draper & Smith, Applied Regression Analysis, 3rd ed., pp. 47–51: inverse prediction",
  params: { ...sizeOverUseParams, limit: length("the size at which the part is worn out").chosen() },
  returns: row(COLUMNS, "a row of labels and a row of values, in the unit of the use; or text where no use can be named"),
  examples: [
    {
      formula: "=HATCH.WEARLIFE({0;500;1000;1500}, {73.000;73.011;73.019;73.031}, 73.1)",
      gives: [[...COLUMNS], [4945.54, 4144.76, 6178.67]],
    },
    {
      formula: "=HATCH.WEARLIFE({0,500,1000,1500}, {73.01,73.00,73.02,73.01}, 73.1)",
      gives: [[...COLUMNS], ["no wear rate yet: not distinguishable from zero", "", ""]],
    },
  ],
  notes: [
    "It draws the line on: far beyond the longest use measured it holds only if wear goes on as before, and it seldom does to the end.",
    "The interval is for a single reading, so it includes the scatter of the gauge. Plan by the earliest, and measure again before it.",
  ],
  compute: ({ use, size, limit }) => {
    const history = sizeOverUseOf(use, size);
    if (history instanceof Fault) return history;
    if (history === undefined) return COLUMNS.map(() => "");
    const life = inversePrediction(history.line, limit, studentQuantile(CONFIDENCE, history.line.degreesOfFreedom));
    if (!life) return ["no wear rate yet: not distinguishable from zero", "", ""];
    if (life.at < Math.min(...history.use)) return ["the limit lies before the first measuring: passed already, or the size wears away from it", "", ""];
    return [life.at, life.earliest, life.latest];
  },
});
