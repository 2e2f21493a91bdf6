import { define, row } from "../../core/define.ts";
import { Fault } from "../../core/fault.ts";
import { tested, weighed } from "../../math/gauge-rule.ts";
import { sizeOverUseOf, sizeOverUseParams, uncertaintyParam, WIDTH_NOTES } from "./size-over-use.ts";

const COLUMNS = ["rate", "from", "to", "change", "by"] as const;
const CONFIDENCE = 0.95;

/**
 * Change of a size per unit of use, by the least-squares line, with its 95 % interval. Sources: a marine
 * engine maker's manual (rate = difference of diameters by hours); NIST e-Handbook 4.4.3 (line and interval).
 */
export const wearRate = define({
  name: "WEARRATE",
  group: "wear",
  role: "assists",
  summary: "Wear per unit of use from sizes measured at several times, with its 95 % interval",
  definition:
    "slope b of the least-squares line of size on use; b ± q × w ÷ √Σ(use − mean use)²; w the scatter s and q = t(0.95, n − 2), or w = u and q = 1.960 while s ≤ u",
  source: "rate as size by use: a marine engine maker's manual; least squares and interval: NIST/SEMATECH e-Handbook 4.4.3; u: JCGM 100:2008",
  params: { ...sizeOverUseParams, uncertainty: uncertaintyParam },
  returns: row(COLUMNS, "a row of labels and a row of values: rate, its interval, in words what the size does, and what gives the interval its width"),
  examples: [
    {
      formula: "=HATCH.WEARRATE({0;500;1000;1500}, {73.000;73.011;73.019;73.031}, 0.004)",
      gives: [[...COLUMNS], [0.0000202, 0.0000167, 0.0000237, "grows", "gauge"]],
    },
    {
      formula: "=HATCH.WEARRATE({0,500,1000,1500}, {73.01,73.00,73.02,73.01}, 0.004)",
      gives: [[...COLUMNS], [0.000004, -0.0000325, 0.0000405, "not distinguishable from zero", "scatter"]],
    },
    {
      formula: "=HATCH.WEARRATE({0;500;1000}, {0;0.01;0.02})",
      gives: [[...COLUMNS], [0.00002, 0.000012, 0.000028, "grows", "resolution only: the real band is wider"]],
    },
  ],
  notes: [
    "Times 1000 it is the wear per 1000 hours that makers' manuals print.",
    "Wear is often fast while running in and slow afterwards: leave the run-in out, or rate it by itself.",
    ...WIDTH_NOTES,
  ],
  compute: ({ use, size, uncertainty }) => {
    const history = sizeOverUseOf(use, size, uncertainty);
    if (history instanceof Fault) return history;
    if (history === undefined) return COLUMNS.map(() => "");
    const { line, doubt, by } = history;
    const { lower, upper } = tested(line.slope, weighed(doubt, 1 / line.spreadOfX), CONFIDENCE);
    return [line.slope, lower, upper, lower > 0 ? "grows" : upper < 0 ? "shrinks" : "not distinguishable from zero", by];
  },
});
