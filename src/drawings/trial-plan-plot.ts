import { scaleLinear } from "d3-scale";
import { plotFrame } from "./axes.ts";
import { drawingFoot } from "./head-and-foot.ts";
import { DASHED, DOTTED, type DrawingOptions, type Drawn, drawing, group, idOf, label, SMALL, segment, svgElement, THICK, THIN } from "./svg.ts";
import { numberText } from "./text.ts";

/** The smallest difference that is seen, by how many of something there are. */
export interface SeenCurve {
  /** `repeats of each place` */
  name: string;
  /** As planned. */
  now: number;
  points: readonly { n: number; eighty: number; ninety: number }[];
  /** The difference that must not be missed. */
  matters?: number | undefined;
}

const DEFAULT_WIDTH = 296;
const PLOT_HEIGHT = 76;
const PANEL = PLOT_HEIGHT + 44;
const LEFT = 48;
const RIGHT = 16;
const NOTE = "Solid: seen 9 times in 10. Broken: 8 times in 10. Square: as planned.";

/** One panel below the other, each on a scale of its own from 0: a mean of one engine sees far less than two groups do. */
export function drawTrialPlan(curves: readonly SeenCurve[], options: DrawingOptions = {}): Drawn {
  const title = "Smallest difference seen";
  const drawn = curves.filter(({ points }) => points.length > 1);
  if (drawn.length === 0) return { title, sentence: "there is nothing to draw yet" };
  const width = Math.max(220, options.width ?? DEFAULT_WIDTH);
  const note = NOTE + (drawn.every(({ matters }) => matters === undefined) ? "" : " Dotted: what must not be missed.");
  const foot = drawingFoot(note, width, drawn.length * PANEL + 12);
  return drawing({
    id: idOf(options, "plan", curves),
    title,
    description: `${drawn.map((curve) => describedCurve(curve)).join(" ")} ${note}`,
    width,
    height: foot.bottom - 8,
    body: drawn.map((curve, i) => panel(curve, 16 + i * PANEL, width - RIGHT)).join("") + foot.svg,
  });
}

const sized = (value: number): string => numberText(Number(value.toPrecision(2)));

const describedCurve = ({ name, now, points }: SeenCurve): string =>
  `By ${name}: ${points.map(({ n, eighty, ninety }) => `${n}${n === now ? " (planned)" : ""} ${sized(eighty)} and ${sized(ninety)}`).join(", ")}.`;

function panel({ name, now, points, matters }: SeenCurve, top: number, right: number): string {
  const bottom = top + PLOT_HEIGHT;
  const x = scaleLinear([points[0]!.n, points.at(-1)!.n], [LEFT, right]);
  const y = scaleLinear([0, Math.max(matters ?? 0, ...points.map(({ ninety }) => ninety))], [bottom, top]).nice(3);
  const counts = x.ticks(6).filter(Number.isInteger);
  const path = (of: "eighty" | "ninety"): string =>
    points.map((point, i) => `${i === 0 ? "M" : "L"}${x(point.n).toFixed(1)} ${y(point[of]).toFixed(1)}`).join("");
  const planned = points.find(({ n }) => n === now);
  const line = { fill: "none", stroke: "currentColor" } as const;
  return group(
    "panel",
    plotFrame({ left: LEFT, right, top, bottom }, y, 3),
    ...counts.map((n) => label(x(n), bottom + 12, String(n), { class: "tick-name", "font-size": SMALL, "text-anchor": "middle" })),
    label((LEFT + right) / 2, bottom + 24, name, { class: "axis-name", "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" }),
    matters === undefined
      ? ""
      : segment(LEFT, y(matters), right, y(matters), { class: "matters", stroke: "currentColor", "stroke-width": 1, "stroke-dasharray": DOTTED }),
    svgElement("path", { class: "eighty", d: path("eighty"), ...line, "stroke-width": THIN, "stroke-dasharray": DASHED }),
    svgElement("path", { class: "ninety", d: path("ninety"), ...line, "stroke-width": THICK }),
    planned === undefined ? "" : svgElement("rect", { class: "mark", x: x(now) - 3.5, y: y(planned.ninety) - 3.5, width: 7, height: 7 }),
  );
}
