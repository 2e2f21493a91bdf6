import { scaleLinear } from "d3-scale";
import { broadcast } from "../core/broadcast.ts";
import { Fault } from "../core/fault.ts";
import { sentence } from "../core/sentences.ts";
import { asSentence } from "../core/words.ts";
import { runout } from "../functions/faces/runout.ts";
import { mean } from "../math/statistics.ts";
import { AXES_BELOW, AXES_LEFT, plotAxes } from "./axes.ts";
import { drawingFoot, drawingHead } from "./head-and-foot.ts";
import { CHAIN, DASHED, type DrawingOptions, type Drawn, drawing, group, idOf, label, px, SMALL, segment, svgElement, THICK, THIN } from "./svg.ts";
import { mostDecimals, numberText, signedText, withoutControlCharacters } from "./text.ts";

/** Indicator readings at equal steps round one turn. */
export interface TurnReadings {
  name: string;
  unit?: string | undefined;
  readings: readonly (number | null)[];
}

const PLOT_HEIGHT = 150;
const RIGHT = 12;
const DEFAULT_WIDTH = 420;
const DEGREES = [0, 90, 180, 270, 360];

interface Turn {
  readings: readonly number[];
  unit: string;
  decimals: number;
  total: number;
  eccentricity: number;
  /** Degrees from the first reading; `undefined` where nothing is off centre. */
  direction: number | undefined;
  left: number;
  middle: number;
}

/** Readings of an indicator round a turn, with the wave that being off centre makes of them: what stands off that wave is form. */
export function drawRunOut(turn: TurnReadings, options: DrawingOptions = {}): Drawn {
  const title = `Run-out: ${turn.name}`;
  const name = withoutControlCharacters(turn.name);
  const blank = turn.readings.filter((reading) => reading === null).length;
  if (blank > 0) return { title, sentence: `${name}: ${blank} of ${turn.readings.length} readings are blank, so there is no trace to draw` };
  const readings = turn.readings as readonly number[];
  const worked = broadcast(runout, [[[...readings]]]);
  if (worked instanceof Fault || !Array.isArray(worked)) return { title, sentence: `${name}: ${worked instanceof Fault ? sentence(worked) : worked}` };
  const [total, eccentricity, direction, left] = worked[1] as [number, number, number | "", number];
  const shown: Turn = {
    readings,
    unit: turn.unit ? ` ${withoutControlCharacters(turn.unit)}` : "",
    decimals: mostDecimals(readings),
    total,
    eccentricity,
    direction: direction === "" ? undefined : direction,
    left,
    middle: mean(readings),
  };
  const width = options.width ?? DEFAULT_WIDTH;
  const head = drawingHead(turn.name, width, wordsOf(shown));
  const plotTop = head.bottom + 8;
  const foot = drawingFoot(notesOf(shown), width, plotTop + PLOT_HEIGHT + AXES_BELOW + 14);
  return drawing({
    id: idOf(options, "turn", turn),
    title,
    description: described(shown),
    width,
    height: foot.bottom,
    body: head.svg + plot(shown, plotTop, width) + foot.svg,
  });
}

/** What being off centre alone would make of the readings. */
const waveOf = ({ middle, eccentricity, direction = 0 }: Turn, degrees: number): number =>
  middle + eccentricity * Math.cos(((degrees - direction) * Math.PI) / 180);

const degreesOf = ({ readings }: Turn, i: number): number => (360 * i) / readings.length;

function plot(turn: Turn, top: number, width: number): string {
  const { readings, eccentricity, middle, direction, total } = turn;
  const x = scaleLinear([0, 360], [AXES_LEFT, width - RIGHT]);
  const [low, high] = [Math.min(...readings, middle - eccentricity), Math.max(...readings, middle + eccentricity)];
  const air = total > 0 ? (high - low) * 0.12 : Math.abs(high) * 0.01 || 1;
  const y = scaleLinear([low - air, high + air], [top + PLOT_HEIGHT, top]);
  const path = (points: readonly (readonly [number, number])[]) => points.map(([a, b], i) => `${i === 0 ? "M" : "L"}${px(x(a))} ${px(y(b))}`).join("");
  const steps = Array.from({ length: 73 }, (_, i) => 5 * i);
  const stroke = { fill: "none", stroke: "currentColor" } as const;
  // The turn closes with the first reading again.
  const round = [...readings, readings[0]!].map((reading, i) => [degreesOf(turn, i), reading] as const);
  const [highest, lowest] = [readings.indexOf(Math.max(...readings)), readings.indexOf(Math.min(...readings))];
  return group(
    "plot",
    plotAxes({ x, y, names: ["degrees round from the first reading", turn.unit.trim() || "unit not named"], along: DEGREES }),
    segment(x(0), y(middle), x(360), y(middle), { class: "mean", stroke: "currentColor", "stroke-width": THIN }),
    svgElement("path", {
      class: "wave",
      d: path(steps.map((at) => [at, waveOf(turn, at)] as const)),
      ...stroke,
      "stroke-width": 1.1,
      "stroke-dasharray": DASHED,
    }),
    direction === undefined
      ? ""
      : segment(x(direction), top, x(direction), top + PLOT_HEIGHT, { class: "high-side", ...stroke, "stroke-width": THIN, "stroke-dasharray": CHAIN }),
    svgElement("path", { class: "trace", d: path(round), ...stroke, "stroke-width": THIN }),
    ...readings.map((reading, i) => {
      const at = degreesOf(turn, i);
      return segment(x(at), y(waveOf(turn, at)), x(at), y(reading), { class: "form", stroke: "currentColor", "stroke-width": THICK });
    }),
    ...readings.map((reading, i) => svgElement("circle", { class: "mark", cx: x(degreesOf(turn, i)), cy: y(reading), r: 2.6 })),
    ...(total > 0 ? [highest, lowest] : []).map((i) => {
      const above = i === highest;
      const anchor = i === 0 ? "start" : x(degreesOf(turn, i)) > width - 40 ? "end" : "middle";
      const text = numberText(readings[i]!, turn.decimals);
      return label(x(degreesOf(turn, i)) + (i === 0 ? 4 : 0), y(readings[i]!) + (above ? -6 : 13), text, {
        class: "extreme",
        "font-size": SMALL,
        "font-weight": 600,
        "text-anchor": anchor,
      });
    }),
  );
}

/** One figure more than the readings have says all that a fit of them can. */
const fitted = (x: number, { decimals, unit }: Turn): string => `${numberText(x, decimals + 1)}${unit}`;

function wordsOf(turn: Turn): string {
  const { total, decimals, unit, direction } = turn;
  if (total === 0) return "no run-out: all readings are alike";
  const side = direction === undefined ? "" : ` with its high side at ${numberText(direction, 0)}°`;
  return `total ${numberText(total, decimals)}${unit}, eccentricity ${fitted(turn.eccentricity, turn)}${side}, form left ${fitted(turn.left, turn)}`;
}

function notesOf({ direction, unit }: Turn): string {
  const side = direction === undefined ? "" : "; chain line: high side";
  return `Dashed: what being off centre makes of the readings${side}. Bold from it to each reading: the form left, out-of-round or dirt. Between readings the trace is only joined up.${unit ? "" : " The sheet names no unit."}`;
}

function described(turn: Turn): string {
  const { readings, decimals, middle } = turn;
  const all = readings.map((reading, i) => {
    const at = degreesOf(turn, i);
    return `${numberText(at, 0)}°: ${numberText(reading, decimals)} (${signedText(reading - waveOf(turn, at), decimals + 1)})`;
  });
  const words = wordsOf(turn);
  return [
    `${readings.length} indicator readings at equal steps round a turn, about their mean ${numberText(middle, decimals + 1)}.`,
    asSentence(words),
    `Readings, with what is left of each when being off centre is taken out: ${all.join(", ")}.`,
    notesOf(turn),
  ].join(" ");
}
