import { asSentence } from "../core/words.ts";
import { isEnough, pointsIn } from "../functions/faces/face-points.ts";
import { type FacePoint, flatnessOf, offPlane } from "../math/reference-planes.ts";
import { drawingFoot, drawingHead } from "./head-and-foot.ts";
import { type DrawingOptions, type Drawn, drawing, group, idOf, label, SMALL, segment, svgElement, THIN, TYPE } from "./svg.ts";
import { mostDecimals, numberText, signedText, widthOf, withoutControlCharacters, wrapped } from "./text.ts";

/** Heights of a face on a grid, or along one line. */
export interface FaceHeights {
  name: string;
  unit?: string | undefined;
  rows: readonly string[];
  columns: readonly string[];
  /** Row by row; `null` for a hole in the face, or what is not measured. */
  heights: readonly (readonly (number | null)[])[];
}

const DEFAULT_WIDTH = 420;
/** The largest spot, and the least that is still seen. */
const SPOT = 10;
const LEAST_SPOT = 1.2;
const MOST_CELL = 72;
const LEAST_CELL = 24;

interface Face {
  given: FaceHeights;
  /** From the least-squares plane, in the shape of the heights. */
  off: readonly (readonly (number | null)[])[];
  most: number;
  decimals: number;
  unit: string;
  leastSquares: number;
  zone: number;
}

/** A face from above: each place as a spot as large as its distance from the least-squares plane, filled above it, open below. */
export function drawFaceHeights(given: FaceHeights, options: DrawingOptions = {}): Drawn {
  const title = `Face heights: ${given.name}`;
  const values = given.heights.flat();
  const [rows, columns] = [given.heights.length, given.heights[0]?.length ?? 0];
  const points = pointsIn({ rows, columns, values }, 0, 0, rows, columns);
  if (points.length === 0 || !isEnough(points))
    return {
      title,
      sentence: `${withoutControlCharacters(given.name)}: ${points.length} of ${values.length} heights are there, too few for a plane through them, so there is no face to draw`,
    };
  const face = faceOf(given, points);
  const left = Math.min(110, Math.max(20, ...given.rows.map((name) => widthOf(withoutControlCharacters(name), SMALL)))) + 10;
  const cell = Math.max(LEAST_CELL, Math.min(MOST_CELL, ((options.width ?? DEFAULT_WIDTH) - left - 8) / columns));
  const width = Math.max(left + columns * cell + 8, Math.min(options.width ?? DEFAULT_WIDTH, 300));
  const head = drawingHead(given.name, width, wordsOf(face));
  const top = head.bottom + 18;
  // Numbers that would run into one another are left to the description.
  const isNumbered = cell >= widthOf(signedText(-face.most, face.decimals), SMALL) * 0.92;
  const height = isNumbered ? 40 : 2 * SPOT + 8;
  const foot = drawingFoot(notesOf(face, isNumbered), width, top + rows * height + 18);
  return drawing({
    id: idOf(options, "face", given),
    title,
    description: described(face),
    width,
    height: foot.bottom,
    body: head.svg + grid(face, { left, top, cell, height, isNumbered }) + foot.svg,
  });
}

function faceOf(given: FaceHeights, points: readonly FacePoint[]): Face {
  const distances = offPlane(points);
  let next = 0;
  const off = given.heights.map((line) => line.map((height) => (height === null ? null : distances[next++]!)));
  const heights = points.map(({ height }) => height);
  const most = Math.max(...distances.map(Math.abs));
  return {
    given,
    off,
    // What is left over of an even face is rounding.
    most: most > 1e-9 * Math.max(...heights.map(Math.abs), 1e-9) ? most : 0,
    decimals: mostDecimals(heights) + 1,
    unit: given.unit ? ` ${withoutControlCharacters(given.unit)}` : "",
    leastSquares: flatnessOf(points, "LS"),
    zone: flatnessOf(points, "MZ"),
  };
}

interface Places {
  left: number;
  top: number;
  cell: number;
  height: number;
  isNumbered: boolean;
}

function grid(face: Face, { left, top, cell, height, isNumbered }: Places): string {
  const { given, off, most, decimals } = face;
  const columns = given.heights[0]!.length;
  const bottom = top + off.length * height;
  const flat = off.flat().filter((distance): distance is number => distance !== null);
  const [high, low] = [Math.max(...flat), Math.min(...flat)];
  const line = { stroke: "currentColor", "stroke-width": THIN } as const;
  const spots = off.flatMap((row, r) =>
    row.map((distance, c) => {
      const [x, y] = [left + (c + 0.5) * cell, top + r * height + SPOT + 4];
      if (distance === null) return label(x, y + 4, "–", { class: "hole", "font-size": TYPE, "text-anchor": "middle" });
      const radius = most === 0 ? LEAST_SPOT : Math.max(LEAST_SPOT, SPOT * Math.sqrt(Math.abs(distance) / most));
      const kind = distance >= 0 || radius === LEAST_SPOT ? "above" : "below";
      const spot = svgElement("circle", {
        class: `spot ${kind}`,
        cx: x,
        cy: y,
        r: radius,
        ...(kind === "below" ? { fill: "none", stroke: "currentColor", "stroke-width": 1.3 } : {}),
      });
      if (!isNumbered) return spot;
      const isExtreme = most > 0 && (distance === high || distance === low);
      const text = most === 0 ? "0" : signedText(distance, decimals);
      return (
        spot + label(x, y + SPOT + 13, text, { class: "distance", "font-size": SMALL, "text-anchor": "middle", ...(isExtreme ? { "font-weight": 600 } : {}) })
      );
    }),
  );
  const names = (all: readonly string[], room: number) => all.map((name) => wrapped(name, room, SMALL, 1)[0] ?? "");
  return group(
    "face",
    ...Array.from({ length: columns + 1 }, (_, c) => segment(left + c * cell, top, left + c * cell, bottom, line)),
    ...Array.from({ length: off.length + 1 }, (_, r) => segment(left, top + r * height, left + columns * cell, top + r * height, line)),
    ...names(given.columns, cell).map((name, c) =>
      label(left + (c + 0.5) * cell, top - 5, name, { class: "column-name", "font-size": SMALL, "text-anchor": "middle" }),
    ),
    ...names(given.rows, left - 6).map((name, r) =>
      label(left - 6, top + (r + 0.5) * height + 3.5, name, { class: "row-name", "font-size": SMALL, "text-anchor": "end" }),
    ),
    ...spots,
  );
}

const isLine = ({ given }: Face): boolean => given.heights.length === 1 || given.heights[0]!.length === 1;

function wordsOf(face: Face): string {
  const { leastSquares, zone, decimals, unit } = face;
  const [what, reference] = isLine(face) ? ["straightness", "line"] : ["flatness", "plane"];
  return `${what} ${numberText(leastSquares, decimals)}${unit} about the least-squares ${reference}, ${numberText(zone, decimals)}${unit} minimum zone`;
}

function notesOf(face: Face, isNumbered: boolean): string {
  const reference = isLine(face) ? "line" : "plane";
  const holes = face.off.flat().includes(null) ? " A dash: no height there." : "";
  const numbers = isNumbered ? "Bold: highest and lowest." : "The numbers stand in the description.";
  return `Distances from the least-squares ${reference}, so tilt is taken out. Filled: above it; open: below; the area goes with the distance. ${numbers}${holes}${face.unit ? "" : " The sheet names no unit."}`;
}

function described(face: Face): string {
  const { given, off, most, decimals } = face;
  const words = wordsOf(face);
  const rows = off.map((row, r) => {
    const places = row.map((distance, c) => `${given.columns[c]} ${distance === null ? "none" : most === 0 ? "0" : signedText(distance, decimals)}`);
    return `${given.rows[r]}: ${places.join(", ")}.`;
  });
  return [asSentence(words), `Distances from the least-squares ${isLine(face) ? "line" : "plane"}, seen from above.`, ...rows, notesOf(face, true)].join(" ");
}
