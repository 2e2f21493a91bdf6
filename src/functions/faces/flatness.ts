import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { flatnessOf } from "../../math/reference-planes.ts";
import { FACE_NOTES, heightsParam, isEnough, planeParam, pointsIn, tooSmall } from "./face-points.ts";

/** Flatness of a face, or straightness of a line, from heights on a grid. Source: ISO 12781-1 (least-squares and minimum zone reference planes). */
export const flatness = define({
  name: "FLATNESS",
  group: "faces",
  role: "measures",
  summary: "Flatness of a face from heights on a grid; of one row or column the straightness",
  definition: "largest − smallest of height − (a + b × row + c × column); LS: a, b, c by least squares; MZ: those that make it least",
  source: "ISO 12781-1, least-squares and minimum zone reference planes (from memory)",
  params: { heights: heightsParam(), method: planeParam() },
  returns: value("flatness, in the unit of the heights; blank while too few are filled in"),
  draws: { kind: "face", heights: "heights" },
  examples: [
    { formula: "=HATCH.FLATNESS({0,0.02,0;0.01,0.05,0.01;0,0.02,0})", gives: 0.05 },
    { formula: "=HATCH.FLATNESS({0.01,0.03,0.02,0,0})", gives: 0.025 },
    { formula: '=HATCH.FLATNESS({0.01,0.03,0.02,0,0}, "MZ")', gives: 0.023333 },
  ],
  notes: [
    "MZ is never more than LS. Which one a limit means, its maker says; a limit for a straightedge means neither.",
    "Both take tilt off, so the face needs not lie level under the indicator.",
    "Makers also limit a shorter span: HATCH.FLATNESSWITHIN.",
    ...FACE_NOTES,
  ],
  // The programme of the minimum zone looks at every point again for each that it takes in.
  steps: ({ heights }) => heights ** 1.5,
  compute: ({ heights, method }) => {
    const { rows, columns } = heights;
    const points = pointsIn(heights, 0, 0, rows, columns);
    return tooSmall("heights", rows, columns) ?? (isEnough(points) ? decimal(flatnessOf(points, method)) : "");
  },
});
