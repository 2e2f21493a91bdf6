import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { count } from "../../core/inputs.ts";
import { flatnessOf } from "../../math/reference-planes.ts";
import { FACE_NOTES, heightsParam, isEnough, planeParam, pointsIn, tooSmall } from "./face-points.ts";

/** Flatness over any span of a face: of all windows of one size the worst. Source: makers' limits over a span, such as .002 in in any 6 in. */
export const flatnessWithin = define({
  name: "FLATNESSWITHIN",
  group: "faces",
  role: "measures",
  summary: "Flatness over any span of a face: the worst of all windows of so many grid points",
  definition: "max of FLATNESS over every window of rows × columns neighbouring grid points",
  source: "a limit over a span: an engine maker's manual, .004 in overall and .002 in over any 6 in; ISO 12781-1 (from memory) for each window",
  params: {
    heights: heightsParam(),
    rows: count("grid points of the window down the range; 1 for a line across"),
    columns: count("grid points of the window across the range; 1 for a line down"),
    method: planeParam(),
  },
  returns: value("the worst flatness of a window, in the unit of the heights; blank while no window has enough filled in"),
  draws: { kind: "face", heights: "heights" },
  examples: [
    { formula: "=HATCH.FLATNESSWITHIN({0,0.01,0,0,0.06,0}, 1, 3)", gives: 0.06 },
    { formula: '=HATCH.FLATNESSWITHIN({0,0.02,0,0;0.01,0.05,0.01,0.02;0,0.02,0,0.01}, {2,3}, 2, "MZ")', gives: [[0.01, 0.03]] },
  ],
  notes: [
    "A window of n points spans n − 1 steps: over 6 in with points 1 in apart it is 7.",
    "A window with too few points, because of holes, is passed over.",
    ...FACE_NOTES,
  ],
  steps: ({ heights }) => heights ** 2.5 / 4,
  compute: ({ heights, rows, columns, method }) => {
    if (rows > heights.rows) return refuse("rows", rows, `the heights have only ${heights.rows}`);
    if (columns > heights.columns) return refuse("columns", columns, `the heights have only ${heights.columns}`);
    const fault = tooSmall(rows < columns ? "rows" : "columns", rows, columns);
    if (fault) return fault;
    let worst: number | undefined;
    for (let top = 0; top + rows <= heights.rows; top++) {
      for (let left = 0; left + columns <= heights.columns; left++) {
        const points = pointsIn(heights, top, left, rows, columns);
        if (isEnough(points)) worst = Math.max(worst ?? 0, flatnessOf(points, method));
      }
    }
    return worst === undefined ? "" : decimal(worst);
  },
});
