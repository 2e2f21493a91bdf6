import { define, row } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { studentQuantile } from "../../math/distributions.ts";
import { sizeOverUseOf, sizeOverUseParams } from "./size-over-use.ts";

const COLUMNS = ["rate", "from", "to", "change"] as const;
const CONFIDENCE = 0.95;

/**
 * Change of a size per unit of use, by the least-squares line, with its 95 % interval. Sources: a marine
 * engine maker's manual (rate = difference of diameters by hours); NIST e-Handbook 4.4.3 (line and interval).
 */
export const wearRate = define({
  name: "WEARRATE",
  group: "wear",
  role: "assists",
  summary: "Wear per unit of use from sizes measured at three or more times, with its 95 % interval",
  definition: "slope b of the least-squares line of size on use; b ± t(0.95, n − 2) × s ÷ √Σ(use − mean use)²",
  source: "rate as size by use: a marine engine maker's manual; least squares and interval: NIST/SEMATECH e-Handbook 4.4.3",
  params: sizeOverUseParams,
  returns: row(COLUMNS, "a row of labels and a row of values: rate, its interval, and in words what the size does"),
  examples: [
    {
      formula: "=HATCH.WEARRATE({0;500;1000;1500}, {73.000;73.011;73.019;73.031})",
      gives: [[...COLUMNS], [0.0000202, 0.0000157, 0.0000247, "grows"]],
    },
    {
      formula: "=HATCH.WEARRATE({0,500,1000,1500}, {73.01,73.00,73.02,73.01})",
      gives: [[...COLUMNS], [0.000004, -0.0000325, 0.0000405, "not distinguishable from zero"]],
    },
  ],
  notes: [
    "Times 1000 it is the wear per 1000 hours that makers' manuals print.",
    "Wear is often fast while running in and slow afterwards: leave the run-in out, or rate it by itself.",
    "The interval knows the scatter about the line only. Points exactly on a line give it no width, whatever the gauge is worth.",
  ],
  compute: ({ use, size }) => {
    const history = sizeOverUseOf(use, size);
    if (history instanceof Fault) return history;
    if (history === undefined) return COLUMNS.map(() => "");
    const { slope, slopeDeviation, degreesOfFreedom } = history.line;
    const half = studentQuantile(CONFIDENCE, degreesOfFreedom) * slopeDeviation;
    return [slope, slope - half, slope + half, slope - half > 0 ? "grows" : slope + half < 0 ? "shrinks" : "not distinguishable from zero"];
  },
});
