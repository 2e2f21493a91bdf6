import { scaleLinear } from "d3-scale";
import { DASHED, type DrawingOptions, type Drawn, drawing, idOf, label, SMALL, segment, svgElement, THICK, THIN } from "./svg.ts";
import { mostDecimals, signedText } from "./text.ts";

/** A difference with its intervals, as it was judged. */
export interface JudgedBar {
  name: string;
  unit?: string | undefined;
  difference: number;
  /** The interval at 95 %, by which it differs or not. */
  lower: number;
  upper: number;
  /** Half of the one at 90 %: while all of that lies within what matters, the two are the same within it. */
  half: number;
  matters: number | null;
  /** As many as the difference is told with. */
  decimals: number;
  verdict: string;
}

const DEFAULT_WIDTH = 296;
const HEIGHT = 34;
const MIDDLE = 12;
const BAND = 8;
const EDGE = 20;

/** How far the axis of bars that belong together goes to either side of 0, so that they can be held against one another. */
export const reachOfBars = (bars: readonly Pick<JudgedBar, "lower" | "upper" | "matters">[]): number => {
  const reach = bars.reduce((most, { lower, upper, matters }) => Math.max(most, Math.abs(lower), Math.abs(upper), matters ?? 0), 0);
  return reach > 0 ? scaleLinear([0, reach], [0, 1]).nice(4).domain()[1]! : 1;
};

/**
 * One difference on an axis that goes as far as `reach` to both sides of 0: a thick bar of its 90 % interval, a thin one of its 95 %
 * interval, and between broken lines what does not matter.
 */
export function drawJudgedBar(bar: JudgedBar, reach: number, options: DrawingOptions = {}): Drawn {
  const { name, unit, difference, lower, upper, half, matters, decimals, verdict } = bar;
  const width = Math.max(200, options.width ?? DEFAULT_WIDTH);
  const x = scaleLinear([-reach, reach], [EDGE, width - EDGE]).clamp(true);
  const size = (value: number): string => signedText(value, decimals);
  const ofUnit = unit ? ` ${unit}` : "";
  const title = `Change: ${name}`;
  const within = matters === null ? "what matters is not typed" : `±${matters} matters`;
  const ends = [-reach, 0, reach];
  const tickDecimals = mostDecimals([reach]);
  const differs = verdict === "differs";
  const at = x(difference);
  return drawing({
    id: idOf(options, "bar", bar),
    title,
    description: `${size(difference)}${ofUnit}: ${verdict}. 90 % from ${size(difference - half)} to ${size(difference + half)}, 95 % from ${size(lower)} to ${size(upper)}; ${within}. The axis goes from ${signedText(-reach)} to ${signedText(reach)}.`,
    width,
    height: HEIGHT,
    body: [
      ...(matters === null
        ? []
        : [
            svgElement("rect", { class: "band", x: x(-matters), y: MIDDLE - BAND, width: x(matters) - x(-matters), height: 2 * BAND, "fill-opacity": 0.12 }),
            ...[-matters, matters].map((edge) =>
              segment(x(edge), MIDDLE - BAND, x(edge), MIDDLE + BAND, {
                class: "matters",
                stroke: "currentColor",
                "stroke-width": THIN,
                "stroke-dasharray": DASHED,
              }),
            ),
          ]),
      segment(EDGE, MIDDLE + BAND + 2, width - EDGE, MIDDLE + BAND + 2, { class: "axis", stroke: "currentColor", "stroke-width": 0.5 }),
      segment(x(0), MIDDLE - BAND - 2, x(0), MIDDLE + BAND + 4, { class: "zero", stroke: "currentColor", "stroke-width": THIN }),
      segment(x(lower), MIDDLE, x(upper), MIDDLE, { class: "interval", stroke: "currentColor", "stroke-width": THIN }),
      segment(x(difference - half), MIDDLE, x(difference + half), MIDDLE, { class: "inner", stroke: "currentColor", "stroke-width": 4 }),
      differs
        ? svgElement("rect", { class: "mark", x: at - 4.5, y: MIDDLE - 4.5, width: 9, height: 9 })
        : svgElement("circle", { class: "mark", cx: at, cy: MIDDLE, r: 4.5, fill: "none", stroke: "currentColor", "stroke-width": THICK }),
      ...ends.map((end, i) =>
        label(x(end), HEIGHT - 2, end === 0 ? "0" : signedText(end, tickDecimals), {
          class: "tick-name",
          "font-size": SMALL,
          "text-anchor": (["start", "middle", "end"] as const)[i],
        }),
      ),
    ].join(""),
  });
}
