import type { ScaleLinear } from "d3-scale";
import { group, label, SMALL, segment, THIN } from "./svg.ts";
import { mostDecimals, numberText } from "./text.ts";

interface Axes {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  /** What is counted along, and upward; the latter stands upright beside the axis. */
  names: readonly [along: string, upward: string];
  /** Numbers along, where those of the scale are not the ones to read. */
  along?: readonly number[];
}

/** Room that the axes take left of the plot and below it. */
export const AXES_LEFT = 56;
export const AXES_BELOW = 32;

/** The axis upward on the left of a plot and the one along its foot, with round numbers and names. */
export function plotAxes({ x, y, names: [along, upward], along: given }: Axes): string {
  const [left, right] = x.range() as [number, number];
  const [bottom, top] = y.range() as [number, number];
  const steps = given ?? x.ticks(5);
  const name = { class: "axis-name", "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" } as const;
  const middle = (top + bottom) / 2;
  return group(
    "axes",
    plotFrame({ left, right, top, bottom }, y),
    ...steps.map((step) => tickBelow(x(step), bottom, numberText(step))),
    label((left + right) / 2, bottom + 28, along, name),
    label(9, middle, upward, { ...name, transform: `rotate(-90 9 ${middle})` }),
  );
}

/** The lines on the left of a plot and along its foot, with some `count` round numbers up the left one. */
export function plotFrame(
  { left, right, top, bottom }: Readonly<Record<"left" | "right" | "top" | "bottom", number>>,
  y: ScaleLinear<number, number>,
  count = 5,
): string {
  const line = { stroke: "currentColor", "stroke-width": THIN };
  const heights = y.ticks(count);
  const decimals = mostDecimals(heights);
  const ticks = heights.map(
    (height) =>
      segment(left - 4, y(height), left, y(height), { class: "tick", ...line }) +
      label(left - 6, y(height) + 3.5, numberText(height, decimals), { class: "tick-name", "font-size": SMALL, "text-anchor": "end" }),
  );
  return [segment(left, top, left, bottom, line), segment(left, bottom, right, bottom, line), ...ticks].join("");
}

/** A mark below the line along the foot, with what it stands for. */
export const tickBelow = (x: number, bottom: number, text: string): string =>
  segment(x, bottom, x, bottom + 4, { class: "tick", stroke: "currentColor", "stroke-width": THIN }) +
  label(x, bottom + 15, text, { class: "tick-name", "font-size": SMALL, "text-anchor": "middle" });
