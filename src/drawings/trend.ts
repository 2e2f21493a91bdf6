import { scaleLinear, scaleUtc } from "d3-scale";
import { type DrawingOptions, type Drawn, drawing, idOf } from "./drawing.ts";
import { DASHED, DOTTED, element, group, label, labels, SMALL, segment, THICK, THIN } from "./svg.ts";
import { decimalsOf, numberText, tame, wrapped } from "./text.ts";
import { binned, describedTrend, type Mark, timeOfDay } from "./trend-marks.ts";

/** One reading of one engine on one day: the one that its limits allow least. */
export interface TrendPoint {
  engine: string;
  /** `2026-11-25` */
  day: string;
  value: number;
  isOutside: boolean;
}

/** How one characteristic went over the years. */
export interface Trend {
  characteristic: string;
  unit?: string | undefined;
  points: readonly TrendPoint[];
  /** Where all readings had the same. */
  lower?: number | undefined;
  upper?: number | undefined;
}

const PLOT_HEIGHT = 130;
const LEFT = 56;
const RIGHT = 46;
const LEADING = 13;
const DEFAULT_WIDTH = 320;
const TOP = 14;
/** Room between the outermost marks and the frame, as a share of the heights between them. */
const AIR = 0.08;

/** Readings by their day, a line for each engine that was measured more than once, and the limits across them. */
export function drawTrend(trend: Trend, options: DrawingOptions = {}): Drawn {
  const title = `Trend: ${trend.characteristic}`;
  const points = trend.points.filter(({ day, value }) => Number.isFinite(timeOfDay(day)) && Number.isFinite(value));
  if (points.length === 0) return { title, sentence: `${tame(trend.characteristic)}: no reading has a day, so there is no trend to draw` };
  const width = Math.max(260, options.width ?? DEFAULT_WIDTH);
  const head = wrapped(trend.characteristic, width - 8, 12.5, 2);
  const top = TOP + head.length * 15;
  const { marks, isBinned } = binned(points);
  const plate: Plate = { trend, marks, top, right: width - RIGHT, ...scalesOf(trend, marks, top, width) };
  const foot = wrapped(notes(trend, isBinned), width - 8, SMALL);
  const below = top + PLOT_HEIGHT + 34;
  return drawing({
    id: idOf(options, "trend", trend),
    title,
    description: `${describedTrend(trend, points)} ${notes(trend, isBinned)}`,
    width,
    height: below + 6 + foot.length * LEADING,
    body: [
      labels(4, 14, head, 15, { class: "name", "font-size": 12.5, "font-weight": 600 }),
      frame(plate),
      limitLine(plate, trend.lower, "at least"),
      limitLine(plate, trend.upper, "at most"),
      isBinned ? "" : paths(plate),
      ...marks.map((mark) => drawnMark(mark, plate)),
      labels(4, below + 8, foot, LEADING, { class: "note", "font-size": SMALL }),
    ].join(""),
  });
}

interface Scales {
  x: ReturnType<typeof scaleUtc<number, number>>;
  y: ReturnType<typeof scaleLinear<number, number>>;
}

interface Plate extends Scales {
  trend: Trend;
  marks: readonly Mark[];
  top: number;
  right: number;
}

const DAY = 86_400_000;

function scalesOf({ lower, upper }: Trend, marks: readonly Mark[], top: number, width: number): Scales {
  const heights = [...marks.flatMap(({ least, most }) => [least, most]), ...[lower, upper].filter((limit) => limit !== undefined)];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const air = (high - low) * AIR || Math.abs(high) * 0.01 || 1;
  const times = marks.map(({ time }) => time);
  const [first, last] = [Math.min(...times), Math.max(...times)];
  // A single day stands in the middle of a month around it.
  const span = first === last ? 15 * DAY : (last - first) * 0.04;
  return {
    x: scaleUtc([first - span, last + span], [LEFT, width - RIGHT]),
    y: scaleLinear([low - air, high + air], [top + PLOT_HEIGHT, top]),
  };
}

function frame({ trend, x, y, top, right }: Plate): string {
  const bottom = top + PLOT_HEIGHT;
  const heights = y.ticks(5);
  const decimals = decimalsOf(heights);
  const days = x.ticks(Math.max(2, Math.floor((right - LEFT) / 70)));
  const middle = top + PLOT_HEIGHT / 2;
  const name = { "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" } as const;
  return group(
    "frame",
    segment(LEFT, top, LEFT, bottom, { stroke: "currentColor", "stroke-width": THIN }),
    segment(LEFT, bottom, right, bottom, { stroke: "currentColor", "stroke-width": THIN }),
    ...heights.map(
      (height) =>
        segment(LEFT - 4, y(height), LEFT, y(height), { class: "tick", stroke: "currentColor", "stroke-width": THIN }) +
        label(LEFT - 6, y(height) + 3.5, numberText(height, decimals), { class: "tick-name", "font-size": SMALL, "text-anchor": "end" }),
    ),
    ...days.map(
      (day) =>
        segment(x(day), bottom, x(day), bottom + 4, { class: "tick", stroke: "currentColor", "stroke-width": THIN }) +
        label(x(day), bottom + 15, dayText(day, days), { class: "tick-name", "font-size": SMALL, "text-anchor": "middle" }),
    ),
    label((LEFT + right) / 2, bottom + 28, "day of measurement", { class: "axis-name", ...name }),
    label(10, middle, trend.unit ? tame(trend.unit) : "unit not named", { class: "axis-name", ...name, transform: `rotate(-90 10 ${middle})` }),
  );
}

/** As short as tells the ticks apart: years, months or days. */
function dayText(day: Date, days: readonly Date[]): string {
  const text = day.toISOString();
  if (days.every((one) => one.toISOString().slice(5, 10) === "01-01")) return text.slice(0, 4);
  return days.every((one) => one.toISOString().slice(8, 10) === "01") ? text.slice(0, 7) : text.slice(0, 10);
}

function limitLine({ y, right }: Plate, limit: number | undefined, words: string): string {
  if (limit === undefined) return "";
  return group(
    "limit",
    segment(LEFT, y(limit), right, y(limit), { stroke: "currentColor", "stroke-width": 1.2, "stroke-dasharray": DASHED }),
    label(right + 3, y(limit) - 2, words, { "font-size": SMALL }),
    label(right + 3, y(limit) + 9, numberText(limit), { "font-size": SMALL, "font-weight": 600 }),
  );
}

function paths({ marks, x, y }: Plate): string {
  const ofEngines = new Map<string, Mark[]>();
  for (const mark of marks) ofEngines.set(mark.engine, [...(ofEngines.get(mark.engine) ?? []), mark]);
  const lines = [...ofEngines.values()]
    .filter((own) => own.length > 1)
    .map((own) => {
      const d = own.map(({ time, middle }, i) => `${i === 0 ? "M" : "L"}${x(time).toFixed(2)} ${y(middle).toFixed(2)}`).join("");
      return element("path", { class: "engine", d, fill: "none", stroke: "currentColor", "stroke-width": THIN, "stroke-dasharray": DOTTED });
    });
  return lines.length === 0 ? "" : group("engines", ...lines);
}

const SIZE = 3.2;

function drawnMark({ time, least, middle, most, isOutside }: Mark, { x, y }: Plate): string {
  const at = x(time);
  const span = least === most ? "" : segment(at, y(least), at, y(most), { class: "span", stroke: "currentColor", "stroke-width": THICK });
  const sign = isOutside
    ? element("rect", { class: "mark outside", x: at - SIZE, y: y(middle) - SIZE, width: 2 * SIZE, height: 2 * SIZE })
    : element("circle", { class: "mark", cx: at, cy: y(middle), r: SIZE, fill: "none", stroke: "currentColor", "stroke-width": 1.2 });
  return span + sign;
}

function notes({ lower, upper }: Trend, isBinned: boolean): string {
  const marks = isBinned
    ? "Each bar spans the readings of one stretch of time, its mark stands at their mean: a filled square where any is outside its limits, otherwise an open circle."
    : "Open circle: within its limits or near them. Filled square: outside. A dotted line joins the readings of one engine.";
  return lower === undefined && upper === undefined ? `${marks} The limits were not the same for all, so none is drawn.` : `${marks} Dashed: the limits.`;
}
