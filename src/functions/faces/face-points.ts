import type { Fault } from "../../core/fault.ts";
import { refuse } from "../../core/fault.ts";
import { choice, grid } from "../../core/inputs.ts";
import type { NumberGrid } from "../../core/param.ts";
import { type FacePoint, PLANES, spanning } from "../../math/reference-planes.ts";

export const heightsParam = () => grid("number", "heights over the face at equal steps each way, any zero point; empty where there is a hole");
export const planeParam = () => choice("reference plane: LS least squares, or MZ the narrowest zone", PLANES).default("LS");

/** What both functions have to say of the heights. */
export const FACE_NOTES = [
  "Empty cells are holes in the face and are left out; some sheets hand them over as 0, which Check points out: there leave holes outside the range.",
  "A straightedge and feeler find the largest gap under it: on a warped face that is near to this figure, on a twisted one less.",
  "Clean and dry the face first, and measure it at room temperature: a warm head is bent by its own heat.",
];

const LEAST_ON_LINE = 3;
const LEAST_ON_FACE = 4;

/** The filled cells of a part of the range as points; on one coordinate where it is a single row or column. */
export function pointsIn({ columns, values }: NumberGrid, top: number, left: number, rows: number, width: number): FacePoint[] {
  const points: FacePoint[] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < width; c++) {
      const height = values[(top + r) * columns + left + c]!;
      if (height !== null) points.push({ height, at: rows === 1 ? [c] : width === 1 ? [r] : [r, c] });
    }
  }
  return points;
}

/** True for enough points to be flat or not: through fewer, or through points in one line of a face, a plane goes without anything left. */
export const isEnough = (points: readonly FacePoint[]): boolean =>
  points.length >= (points[0]?.at.length === 1 ? LEAST_ON_LINE : LEAST_ON_FACE) && spanning(points) !== undefined;

/** The fault of a range, or of a part of one, that has too few places even when all are filled. */
export function tooSmall(param: string, rows: number, columns: number): Fault | undefined {
  // Two rows of two are a face already.
  return rows * columns < LEAST_ON_LINE ? refuse(param, rows * columns, `heights are too few, at least ${LEAST_ON_LINE} are needed`) : undefined;
}
