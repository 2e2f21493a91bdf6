import type { Result } from "../../core/cell.ts";
import { isAbove, isBelow } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { Fault, unlike } from "../../core/fault.ts";
import { number } from "../../core/inputs.ts";
import { studentQuantile } from "../../math/distributions.ts";
import { type Meeting, meetingOf } from "../../math/regression.ts";
import { sizeOverUseOf, sizeOverUseParams, uncertaintyParam, WIDTH_NOTES } from "./size-over-use.ts";

const COLUMNS = ["use at the limit", "earliest", "latest", "not before", "by", "verdict"] as const;
const CONFIDENCE = 0.95;

/** Use at which a size comes to its limit, with the 95 % interval. Source: E. C. Fieller, J. Royal Statistical Society B 16 (1954) 175 (ratio of two estimates). */
export const wearLife = define({
  name: "WEARLIFE",
  group: "wear",
  role: "assists",
  summary: "Use at which a wearing size meets its limit, with the earliest and latest at 95 %",
  definition:
    "x where the least-squares line of size on use meets the limit; from and to: the roots of (limit − line)² = q² w² (1/n + (x − mean use)²/S), q and w as in WEARRATE",
  source: "E. C. Fieller, J. Royal Statistical Society B 16 (1954) 175: interval for where a line meets a level; u: JCGM 100:2008",
  params: { ...sizeOverUseParams, limit: number("the size at which the part is worn out").chosen(), uncertainty: uncertaintyParam },
  returns: row(COLUMNS, "a row of labels and a row of values, in the unit of the use; what cannot be named stays blank, and the verdict says why"),
  examples: [
    {
      formula: "=HATCH.WEARLIFE({0;500;1000;1500}, {73.000;73.011;73.019;73.031}, 73.1, 0.004)",
      gives: [[...COLUMNS], [4945.54, 4318.59, 5833.14, "", "gauge", "to come"]],
    },
    {
      formula: "=HATCH.WEARLIFE({0,500,1000,1500}, {73.01,73.00,73.02,73.01}, 73.1, 0.004)",
      gives: [[...COLUMNS], ["", "", "", 2907.5, "scatter", "no life: the rate is not distinguishable from zero"]],
    },
    {
      formula: "=HATCH.WEARLIFE({0;500;1000}, {73.000;73.02;73.04}, 73.03, 0.004)",
      gives: [[...COLUMNS], [750, 687.7, 822.1, "", "gauge", "passed"]],
    },
  ],
  notes: [
    "It draws the line on: far beyond the longest use measured it holds only if wear goes on as before, and it seldom does to the end.",
    "The interval is for the line, not for the next reading, which scatters besides. Plan by the earliest, and measure again before it.",
    "Where the rate may be zero there is no life, only a use before which the limit is not met.",
    "The run-in wears at a rate of its own, which tells nothing of later wear: leave it out.",
    ...WIDTH_NOTES,
  ],
  compute: ({ use, size, limit, uncertainty }) => {
    const history = sizeOverUseOf(use, size, uncertainty);
    if (history instanceof Fault) return history;
    if (history === undefined) return COLUMNS.map(() => "");
    const { line, doubt, by } = history;
    const fault = limitFault(limit, history.size);
    if (fault) return fault;
    const meeting = meetingOf(line, limit, studentQuantile(CONFIDENCE, doubt.degreesOfFreedom), doubt.variance);
    return [...told(meeting, history.use, by)];
  },
});

/** Sizes that change by little, such as diameters, come to no limit so many times as large. */
const LITTLE = 1.25;
const FIVEFOLD = 5;

/** A limit with its decimal point elsewhere, or in another unit, beside sizes that change by little. */
function limitFault(limit: number, sizes: readonly number[]): Fault | undefined {
  const least = sizes.reduce((a, b) => Math.min(a, b));
  const most = sizes.reduce((a, b) => Math.max(a, b));
  return least > 0 && limit > 0 && most <= LITTLE * least ? unlike("limit", limit, "size", most, FIVEFOLD) : undefined;
}

function told(meeting: Meeting, use: readonly number[], by: string): Result[] {
  if (!meeting.slopeIsReal) {
    const why = "the rate is not distinguishable from zero";
    if (meeting.notBefore === undefined) return ["", "", "", "", by, `cannot tell: ${why}, and the limit lies within what the sizes are known to`];
    return ["", "", "", Number.isFinite(meeting.notBefore) ? meeting.notBefore : "", by, `no life: ${why}`];
  }
  const { at, earliest, latest } = meeting;
  const [first, last] = [use.reduce((a, b) => Math.min(a, b)), use.reduce((a, b) => Math.max(a, b))];
  if (isBelow(at, first)) return ["", "", "", "", by, "no life: passed before the first measuring, or the size goes away from the limit"];
  return [at, earliest, latest, "", by, !isAbove(at, last) ? "passed" : !isAbove(earliest, last) ? "to come, or passed already" : "to come"];
}
