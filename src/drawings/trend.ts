import { scaleLinear, scaleUtc } from "d3-scale";
import { decimal } from "../core/decimal.ts";
import { plotFrame, tickBelow } from "./axes.ts";
import { drawingFoot, drawingHead } from "./head-and-foot.ts";
import { DASHED, DOTTED, type DrawingOptions, type Drawn, drawing, group, idOf, label, SMALL, segment, svgElement, THICK, THIN } from "./svg.ts";
import { mostDecimals, numberText, withoutControlCharacters } from "./text.ts";

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
const DEFAULT_WIDTH = 320;
/** Room between the outermost marks and the frame, as a share of the heights between them. */
const AIR = 0.08;

/** Readings by their day, a line for each engine that was measured more than once, and the limits across them. */
export function drawTrend(trend: Trend, options: DrawingOptions = {}): Drawn {
  const title = `Trend: ${trend.characteristic}`;
  const points = trend.points.filter(({ day, value }) => Number.isFinite(timeOfDay(day)) && Number.isFinite(value));
  if (points.length === 0) return { title, sentence: `${withoutControlCharacters(trend.characteristic)}: no reading has a day, so there is no trend to draw` };
  const width = Math.max(260, options.width ?? DEFAULT_WIDTH);
  const head = drawingHead(trend.characteristic, width);
  const top = head.bottom;
  const { marks, isBinned } = binned(points);
  const plate: Plate = { trend, marks, top, right: width - RIGHT, ...scalesOf(trend, marks, top, width) };
  const foot = drawingFoot(notes(trend, isBinned), width, top + PLOT_HEIGHT + 42);
  return drawing({
    id: idOf(options, "trend", trend),
    title,
    description: `${describedTrend(trend, points)} ${notes(trend, isBinned)}`,
    width,
    height: foot.bottom - 2,
    body: [
      head.svg,
      frame(plate),
      limitLine(plate, trend.lower, "at least"),
      limitLine(plate, trend.upper, "at most"),
      isBinned ? "" : paths(plate),
      ...marks.map((mark) => drawnMark(mark, plate)),
      foot.svg,
    ].join(""),
  });
}

interface Scales {
  x: ReturnType<typeof scaleUtc<number, number>>;
  y: ReturnType<typeof scaleLinear<number, number>>;
}

interface Plate extends Scales {
  trend: Trend;
  marks: readonly TrendMark[];
  top: number;
  right: number;
}

const DAY = 86_400_000;

function scalesOf({ lower, upper }: Trend, marks: readonly TrendMark[], top: number, width: number): Scales {
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
  const days = x.ticks(Math.max(2, Math.floor((right - LEFT) / 70)));
  const middle = top + PLOT_HEIGHT / 2;
  const name = { "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" } as const;
  return group(
    "frame",
    plotFrame({ left: LEFT, right, top, bottom }, y),
    ...days.map((day) => tickBelow(x(day), bottom, dayText(day, days))),
    label((LEFT + right) / 2, bottom + 28, "day of measurement", { class: "axis-name", ...name }),
    label(10, middle, trend.unit ? withoutControlCharacters(trend.unit) : "unit not named", {
      class: "axis-name",
      ...name,
      transform: `rotate(-90 10 ${middle})`,
    }),
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
  const ofEngines = new Map<string, TrendMark[]>();
  for (const mark of marks) ofEngines.set(mark.engine, [...(ofEngines.get(mark.engine) ?? []), mark]);
  const lines = [...ofEngines.values()]
    .filter((own) => own.length > 1)
    .map((own) => {
      const d = own.map(({ time, middle }, i) => `${i === 0 ? "M" : "L"}${x(time).toFixed(2)} ${y(middle).toFixed(2)}`).join("");
      return svgElement("path", { class: "engine", d, fill: "none", stroke: "currentColor", "stroke-width": THIN, "stroke-dasharray": DOTTED });
    });
  return lines.length === 0 ? "" : group("engines", ...lines);
}

const SIZE = 3.2;

function drawnMark({ time, least, middle, most, isOutside }: TrendMark, { x, y }: Plate): string {
  const at = x(time);
  const span = least === most ? "" : segment(at, y(least), at, y(most), { class: "span", stroke: "currentColor", "stroke-width": THICK });
  const sign = isOutside
    ? svgElement("rect", { class: "mark outside", x: at - SIZE, y: y(middle) - SIZE, width: 2 * SIZE, height: 2 * SIZE })
    : svgElement("circle", { class: "mark", cx: at, cy: y(middle), r: SIZE, fill: "none", stroke: "currentColor", "stroke-width": 1.2 });
  return span + sign;
}

function notes({ lower, upper }: Trend, isBinned: boolean): string {
  const marks = isBinned
    ? "Each bar spans the readings of one stretch of time, its mark stands at their mean: a filled square where any is outside its limits, otherwise an open circle."
    : "Open circle: within its limits or near them. Filled square: outside. A dotted line joins the readings of one engine.";
  return lower === undefined && upper === undefined ? `${marks} The limits were not the same for all, so none is drawn.` : `${marks} Dashed: the limits.`;
}

/** One mark of a trend: one reading, or those of one stretch of time. */
interface TrendMark {
  engine: string;
  time: number;
  least: number;
  middle: number;
  most: number;
  isOutside: boolean;
}

/** More marks than this run into one another. */
const MOST_MARKS = 150;
const STRETCHES = 24;
/** More readings than this are not listed one by one in words. */
const MOST_TOLD = 40;

const timeOfDay = (day: string): number => Date.parse(`${day}T00:00:00Z`);

/** Readings as marks in the order of their days; many together by stretches of time. */
function binned(points: readonly TrendPoint[]): { marks: TrendMark[]; isBinned: boolean } {
  const marks = points.map(markOf).sort((a, b) => a.time - b.time);
  if (marks.length <= MOST_MARKS) return { marks, isBinned: false };
  const first = marks[0]!.time;
  const span = marks.at(-1)!.time - first || 1;
  const bins = new Map<number, TrendMark[]>();
  for (const mark of marks) {
    const bin = Math.min(STRETCHES - 1, Math.floor(((mark.time - first) / span) * STRETCHES));
    const own = bins.get(bin);
    if (own) own.push(mark);
    else bins.set(bin, [mark]);
  }
  return { marks: [...bins.values()].map(together), isBinned: true };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function together(marks: readonly TrendMark[]): TrendMark {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { middle } of marks) {
    least = Math.min(least, middle);
    most = Math.max(most, middle);
  }
  const middle = mean(marks.map((mark) => mark.middle));
  return { engine: "", time: mean(marks.map(({ time }) => time)), least, middle, most, isOutside: marks.some(({ isOutside }) => isOutside) };
}

/** The same in words, with the numbers: reading by reading, or year by year where there are many. */
function describedTrend({ unit, lower, upper }: Trend, points: readonly TrendPoint[]): string {
  const decimals = mostDecimals(points.map(({ value }) => value));
  const show = (value: number): string => numberText(decimal(value), decimals);
  const ordered = [...points].sort((a, b) => timeOfDay(a.day) - timeOfDay(b.day));
  const sizes =
    ordered.length <= MOST_TOLD
      ? ordered.map(({ engine, day, value, isOutside }) => `${day} ${withoutControlCharacters(engine)}: ${show(value)}${isOutside ? ", outside" : ""}`)
      : years(ordered).map(([year, own]) => {
          const { least, middle, most } = together(own.map(markOf));
          const outside = own.filter(({ isOutside }) => isOutside).length;
          return `${year}: ${own.length} readings from ${show(least)} to ${show(most)}, mean ${show(middle)}, ${outside} outside`;
        });
  const limits = [lower === undefined ? "" : `at least ${numberText(lower)}`, upper === undefined ? "" : `at most ${numberText(upper)}`].filter(Boolean);
  return `${unit ? `In ${withoutControlCharacters(unit)}. ` : ""}${sizes.join("; ")}.${limits.length > 0 ? ` Limits: ${limits.join(", ")}.` : ""}`;
}

const markOf = ({ engine, day, value, isOutside }: TrendPoint): TrendMark => ({
  ...{ engine, isOutside, time: timeOfDay(day) },
  ...{ least: value, middle: value, most: value },
});

function years(points: readonly TrendPoint[]): [year: string, own: TrendPoint[]][] {
  const found = new Map<string, TrendPoint[]>();
  for (const point of points) {
    const year = point.day.slice(0, 4);
    const own = found.get(year);
    if (own) own.push(point);
    else found.set(year, [point]);
  }
  return [...found];
}
