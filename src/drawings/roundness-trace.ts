import { scaleLinear } from "d3-scale";
import { curveLinearClosed, lineRadial } from "d3-shape";
import { circlesOf, type FittedCircle, roundnessOf } from "../math/reference-circles.ts";
import { drawingFoot, drawingHead, type TextBlock } from "./head-and-foot.ts";
import { DASHED, DOTTED, type DrawingOptions, type Drawn, drawing, group, idOf, label, SMALL, segment, svgElement, THICK, THIN } from "./svg.ts";
import { mostDecimals, numberText, signedText, withoutControlCharacters } from "./text.ts";

/** Radial readings at equal steps all round one cross-section. */
export interface RoundTrace {
  name: string;
  unit?: string | undefined;
  /** One after the other round the circle; any zero point. */
  deviations: readonly (number | null)[];
}

const FEWEST = 4;
const RADIUS = 86;
/** What deviations may add to the radius, or take from it. */
const REACH = 36;
const MIDDLE = 150;
const WIDTH = 2 * MIDDLE + 24;
const LEADING = 14;
/** More numbers than this round a circle run into one another; then every so many readings has its number. */
const MOST_NUMBERS = 24;

/**
 * A trace of roundness about its least-squares circle, with the two circles of the minimum zone. The
 * circle is a base line and not to scale; being off centre is taken out, as it says nothing of the form.
 */
export function drawRoundnessTrace(trace: RoundTrace, options: DrawingOptions = {}): Drawn {
  const title = `Roundness trace: ${trace.name}`;
  const { deviations } = trace;
  const blank = deviations.filter((deviation) => deviation === null).length;
  if (deviations.length < FEWEST)
    return {
      title,
      sentence: `${withoutControlCharacters(trace.name)}: ${deviations.length} of at least ${FEWEST} readings are there, so there is no trace to draw`,
    };
  if (blank > 0)
    return { title, sentence: `${withoutControlCharacters(trace.name)}: ${blank} of ${deviations.length} readings are blank, so there is no trace to draw` };
  const form = formOf(deviations as readonly number[]);
  const head = drawingHead(trace.name, WIDTH);
  const middle = head.bottom - 3 + MIDDLE;
  const foot = legend(trace, form, middle + MIDDLE + 6);
  return drawing({
    id: idOf(options, "trace", trace),
    title,
    description: described(trace, form),
    width: WIDTH,
    height: foot.bottom,
    body: head.svg + svgElement("g", { transform: `translate(${WIDTH / 2} ${middle})` }, plot(trace, form)) + foot.svg,
  });
}

interface Form {
  /** Readings as they stand from the least-squares circle, at its own centre. */
  left: readonly number[];
  /** Circles of the minimum zone on the same footing. */
  outer: FittedCircle;
  inner: FittedCircle;
  leastSquares: number;
  zone: number;
  /** The largest of all that is drawn, to either side. */
  most: number;
}

function formOf(deviations: readonly number[]): Form {
  const { leastSquares: base, outer, inner } = circlesOf(deviations);
  const left = deviations.map((deviation, i) => deviation - radiusAt(base, i / deviations.length));
  const moved = (circle: FittedCircle): FittedCircle => ({ radius: circle.radius - base.radius, a: circle.a - base.a, b: circle.b - base.b });
  const zone = { outer: moved(outer), inner: moved(inner) };
  const reaches = [zone.outer, zone.inner].map(({ radius, a, b }) => Math.abs(radius) + Math.hypot(a, b));
  // What is left over of a round trace is rounding, not form.
  const scale = Math.max(...deviations.map(Math.abs), 1e-9);
  const most = Math.max(...left.map(Math.abs), ...reaches);
  return {
    left,
    ...zone,
    leastSquares: roundnessOf(deviations, "LS"),
    zone: roundnessOf(deviations, "MZ"),
    most: most > 1e-9 * scale ? most : 0,
  };
}

const radiusAt = ({ radius, a, b }: FittedCircle, turns: number): number => radius + a * Math.cos(2 * Math.PI * turns) + b * Math.sin(2 * Math.PI * turns);

/** From the middle, in pixels: the first reading stands at the top, the others follow clockwise. */
const radial = ({ most }: Form) => scaleLinear([-1, 1], [RADIUS - REACH, RADIUS + REACH]).domain(most > 0 ? [-most, most] : [-1, 1]);

/** Turns at which a curve is drawn: about every 2°, the readings among them. */
function stepsOf(n: number): number[] {
  const steps = n * Math.max(1, Math.ceil(180 / n));
  return Array.from({ length: steps }, (_, i) => i / steps);
}

/** Between two readings the deviation goes over evenly, so that equal readings make a circle and not a polygon. */
function between(left: readonly number[], turns: number): number {
  const place = turns * left.length;
  const i = Math.floor(place + 1e-9);
  const share = Math.max(0, place - i);
  return left[i % left.length]! * (1 - share) + left[(i + 1) % left.length]! * share;
}

function plot(trace: RoundTrace, form: Form): string {
  const r = radial(form);
  const n = form.left.length;
  const curve = (radiusOf: (turns: number) => number) =>
    lineRadial<number>()
      .angle((turns) => 2 * Math.PI * turns)
      .radius((turns) => r(radiusOf(turns)))
      .curve(curveLinearClosed);
  const ring = (circle: FittedCircle) => curve((turns) => radiusAt(circle, turns))(stepsOf(4))!;
  const stroke = { fill: "none", stroke: "currentColor" } as const;
  return group(
    "plot",
    segment(-8, 0, 8, 0, { stroke: "currentColor", "stroke-width": THIN }) + segment(0, -8, 0, 8, { stroke: "currentColor", "stroke-width": THIN }),
    svgElement("circle", { class: "least-squares", cx: 0, cy: 0, r: r(0), ...stroke, "stroke-width": THIN, "stroke-dasharray": DASHED }),
    ...[form.outer, form.inner].map((circle) =>
      svgElement("path", { class: "zone", d: ring(circle), ...stroke, "stroke-width": 1.1, "stroke-dasharray": DOTTED }),
    ),
    svgElement("path", {
      class: "trace",
      d: curve((turns) => between(form.left, turns))(stepsOf(n))!,
      ...stroke,
      "stroke-width": THICK,
      "stroke-linejoin": "round",
    }),
    ...form.left.map((deviation, i) => mark(deviation, i / n, r)),
    ...numbers(n),
    scale(trace, form),
  );
}

const at = (turns: number, radius: number): [x: number, y: number] => [radius * Math.sin(2 * Math.PI * turns), -radius * Math.cos(2 * Math.PI * turns)];

function mark(deviation: number, turns: number, r: (deviation: number) => number): string {
  const [cx, cy] = at(turns, r(deviation));
  return svgElement("circle", { class: "mark", cx, cy, r: 2.2 });
}

/** The number of each reading outside the trace, so that a high spot can be found again on the part. */
function numbers(n: number): string[] {
  const every = Math.ceil(n / MOST_NUMBERS);
  return Array.from({ length: Math.ceil(n / every) }, (_, k) => {
    const i = k * every;
    const [x, y] = at(i / n, RADIUS + REACH + 13);
    return label(x, y + 3.5, String(i + 1), { class: "number", "font-size": SMALL, "text-anchor": "middle" });
  });
}

/** How long a deviation is drawn, in the middle where the trace does not come. */
function scale({ unit }: RoundTrace, form: Form): string {
  if (form.most === 0) return label(0, 24, "no deviation", { class: "flat", "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" });
  const step = scaleLinear([0, form.most], [0, 1]).ticks(3).at(-1)!;
  const r = radial(form);
  const length = r(step) - r(0);
  return group(
    "scale",
    segment(-length / 2, 24, length / 2, 24, { class: "bar", stroke: "currentColor", "stroke-width": THIN }),
    ...[-1, 1].map((side) => segment((side * length) / 2, 21, (side * length) / 2, 27, { stroke: "currentColor", "stroke-width": THIN })),
    label(0, 39, `${numberText(step)}${unit ? ` ${withoutControlCharacters(unit)}` : ""}`, { class: "bar-name", "font-size": SMALL, "text-anchor": "middle" }),
    label(0, -14, "radial deviation", { class: "axis-name", "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" }),
  );
}

/** Two figures more than the readings have say all that a fit of them can. */
const fitted = (x: number, deviations: readonly number[]): string => numberText(x, mostDecimals(deviations) + 1);

function legend({ deviations, unit }: RoundTrace, form: Form, top: number): TextBlock {
  const typed = deviations as readonly number[];
  const withUnit = (x: number) => `${fitted(x, typed)}${unit ? ` ${withoutControlCharacters(unit)}` : ""}`;
  const rows: [text: string, sample: { "stroke-width": number; "stroke-dasharray"?: string }][] = [
    [`trace, ${typed.length} readings, clockwise from the top`, { "stroke-width": THICK }],
    [`least-squares circle: roundness ${withUnit(form.leastSquares)}`, { "stroke-width": THIN, "stroke-dasharray": DASHED }],
    [`minimum-zone circles: roundness ${withUnit(form.zone)}`, { "stroke-width": 1.1, "stroke-dasharray": DOTTED }],
  ];
  const lines = rows.map(([text, sample], i) => {
    const y = top + 10 + i * LEADING;
    return segment(4, y - 3.5, 34, y - 3.5, { stroke: "currentColor", ...sample }) + label(40, y, text, { class: "note", "font-size": SMALL });
  });
  const note = drawingFoot(
    `The circle is a base line, not to scale; being off centre is taken out; between readings the trace is only joined up.${unit ? "" : " The sheet names no unit."}`,
    WIDTH,
    top + 10 + rows.length * LEADING,
  );
  return { svg: lines.join("") + note.svg, bottom: note.bottom - 4 };
}

function described({ deviations, unit }: RoundTrace, form: Form): string {
  const typed = deviations as readonly number[];
  const withUnit = (x: number) => `${fitted(x, typed)}${unit ? ` ${unit}` : ""}`;
  const highest = form.left.indexOf(Math.max(...form.left)) + 1;
  const lowest = form.left.indexOf(Math.min(...form.left)) + 1;
  const spots = form.most === 0 ? "All readings lie on one circle." : `Highest at reading ${highest}, lowest at reading ${lowest}.`;
  return [
    `${typed.length} radial readings at equal steps, clockwise from the top, drawn about their least-squares circle.`,
    `Roundness ${withUnit(form.leastSquares)} by least squares, ${withUnit(form.zone)} by minimum zone.`,
    spots,
    `Readings: ${typed.map((deviation, i) => `${i + 1}: ${signedText(deviation)}`).join(", ")}.`,
    `From the least-squares circle: ${form.left.map((deviation, i) => `${i + 1}: ${form.most === 0 ? "0" : signedText(deviation, mostDecimals(typed) + 1)}`).join(", ")}.`,
  ].join(" ");
}
