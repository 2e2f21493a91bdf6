import { scaleLinear } from "d3-scale";
import { AXES_LEFT, plotAxes } from "./axes.ts";
import type { TexturePlate } from "./surface-profile.ts";
import { CHAIN, DASHED, DOTTED, group, label, px, SMALL, segment, svgElement, THICK, THIN } from "./svg.ts";
import { numberText } from "./text.ts";

export const CURVE_HEIGHT = 170;
/** Names of the lines stand right of the curve. */
const RIGHT = 78;

export const upward = ({ unit }: TexturePlate): string => unit.trim() || "unit not named";

/** More points than this make the curve no finer. */
const MOST_POINTS = 400;

/** The share of the surface that is metal at each depth, with the straight line of ISO 13565-2 through its flattest part. */
export function materialRatio(plate: TexturePlate, top: number, width: number): string {
  const {
    curve,
    pattern,
    texture: { core },
  } = plate;
  const n = curve.length;
  const [upper, lower] = [core.top, core.top - core.rk];
  const [peak, valley] = [upper + core.rpk, lower - core.rvk];
  const x = scaleLinear([0, 100], [AXES_LEFT, width - RIGHT]);
  const y = scaleLinear([Math.min(curve.at(-1)!, valley), Math.max(curve[0]!, peak)], [top + CURVE_HEIGHT, top]);
  const bottom = top + CURVE_HEIGHT;
  const every = Math.max(1, Math.floor(n / MOST_POINTS));
  const points = curve.flatMap((height, i) => (i % every === 0 || i === n - 1 ? [[(100 * (i + 0.5)) / n, height] as const] : []));
  const d = points.map(([ratio, height], i) => `${i === 0 ? "M" : "L"}${px(x(ratio))} ${px(y(height))}`).join("");
  const [mr1, mr2] = [100 * core.mr1, 100 * core.mr2];
  const stroke = { fill: "none", stroke: "currentColor" } as const;
  const triangle = (className: string, corners: readonly (readonly [number, number])[]) =>
    svgElement("path", {
      class: className,
      d: `${corners.map(([ratio, height], i) => `${i === 0 ? "M" : "L"}${px(x(ratio))} ${px(y(height))}`).join("")}Z`,
      fill: `url(#${pattern})`,
      stroke: "currentColor",
      "stroke-width": THIN,
    });
  const level = (height: number) =>
    segment(x(0), y(height), x(100) + 6, y(height), { class: "level", ...stroke, "stroke-width": THIN, "stroke-dasharray": CHAIN });
  return group(
    "curve",
    plotAxes({ x, y, names: ["material ratio, %", upward(plate)], along: [0, 20, 40, 60, 80, 100] }),
    core.rpk > 0
      ? triangle("peaks", [
          [0, upper],
          [0, peak],
          [mr1, upper],
        ])
      : "",
    core.rvk > 0
      ? triangle("valleys", [
          [100, lower],
          [100, valley],
          [mr2, lower],
        ])
      : "",
    level(upper),
    level(lower),
    ...(["Mr1", "Mr2"] as const).map((name) => {
      const [ratio, height] = name === "Mr1" ? [mr1, upper] : [mr2, lower];
      const text = `${name} ${numberText(ratio, 1)} %`;
      const [at, anchor, line] = name === "Mr1" ? [x(ratio) + 4, "start", top + 8] : [x(ratio) - 4, "end", bottom - 5];
      return (
        segment(x(ratio), y(height), x(ratio), bottom, { class: "ratio", ...stroke, "stroke-width": THIN, "stroke-dasharray": DOTTED }) +
        label(at, line, text, { class: "ratio-name", "font-size": SMALL, "text-anchor": anchor })
      );
    }),
    segment(x(0), y(upper), x(100), y(lower), { class: "core", ...stroke, "stroke-width": 1.1, "stroke-dasharray": DASHED }),
    svgElement("path", { class: "ratio-curve", d, ...stroke, "stroke-width": THICK }),
    ...spans(plate, x(100) + 10, y, { upper, lower, peak, valley }),
  );
}

/** Rpk, Rk and Rvk as dimensions beside the curve; their names keep apart where the parts are low. */
function spans(
  plate: TexturePlate,
  at: number,
  y: (height: number) => number,
  { upper, lower, peak, valley }: Readonly<Record<"upper" | "lower" | "peak" | "valley", number>>,
): string[] {
  const {
    decimals,
    texture: { core },
  } = plate;
  const all = [
    { name: "Rpk", size: core.rpk, from: peak, to: upper },
    { name: "Rk", size: core.rk, from: upper, to: lower },
    { name: "Rvk", size: core.rvk, from: lower, to: valley },
  ];
  const middle = y((upper + lower) / 2);
  const apart = 12;
  return all.map(({ name, size, from, to }, i) => {
    const own = y((from + to) / 2);
    const place = i === 0 ? Math.min(own, middle - apart) : i === 2 ? Math.max(own, middle + apart) : middle;
    const tick = (height: number) => segment(at - 3, y(height), at + 3, y(height), { stroke: "currentColor", "stroke-width": THIN });
    const span = segment(at, y(from), at, y(to), { class: "span", stroke: "currentColor", "stroke-width": i === 1 ? THICK : THIN }) + tick(from) + tick(to);
    return (size > 0 ? span : "") + label(at + 7, place + 3.5, `${name} ${numberText(size, decimals)}`, { class: "span-name", "font-size": SMALL });
  });
}
