import { scaleLinear } from "d3-scale";
import { Fault } from "../core/fault.ts";
import { BLANK } from "../core/param.ts";
import { sentence } from "../core/sentences.ts";
import { surface, type Texture, textureOf, withoutTail } from "../functions/surface/surface.ts";
import { AXES_BELOW, AXES_LEFT, plotAxes } from "./axes.ts";
import { drawingFoot, drawingHead } from "./head-and-foot.ts";
import { CURVE_HEIGHT, materialRatio, upward } from "./material-ratio.ts";
import { DASHED, DOTTED, type DrawingOptions, type Drawn, drawing, group, hatching, idOf, px, segment, svgElement, THIN } from "./svg.ts";
import { mostDecimals, numberText, withoutControlCharacters } from "./text.ts";

/** A stylus profile, with the step and the cut-off by which the sheet evaluates it. */
export interface SurfaceProfile {
  name: string;
  unit?: string | undefined;
  profile: readonly (number | null)[];
  spacing: number;
  cutoff: number;
}

const PROFILE_HEIGHT = 96;
const DEFAULT_WIDTH = 420;

export interface TexturePlate {
  given: SurfaceProfile;
  unit: string;
  texture: Texture;
  /** Heights about the line over the valleys, from the highest down. */
  curve: readonly number[];
  decimals: number;
  pattern: string;
}

/** The roughness profile, and below it its material ratio curve with the core, what stands above it and what lies below. */
export function drawSurfaceProfile(given: SurfaceProfile, options: DrawingOptions = {}): Drawn {
  const title = `Surface profile: ${given.name}`;
  const name = withoutControlCharacters(given.name);
  const { spacing, cutoff } = given;
  const typed = { spacing, cutoff };
  for (const { name: input, param } of surface.inputs) {
    const taken = input in typed ? param.take(typed[input as keyof typeof typed], input) : undefined;
    if (taken instanceof Fault) return { title, sentence: `${name}: ${sentence(taken.placed(surface.name))}` };
    if (taken === BLANK) return { title, sentence: `${name}: the ${input} is missing, so there is nothing to draw` };
  }
  const heights = withoutTail(given.profile);
  if (heights.includes(null)) return { title, sentence: `${name}: a height is missing in the profile, so there is nothing to draw` };
  const texture = textureOf(heights as number[], spacing, cutoff);
  if (texture instanceof Fault) return { title, sentence: `${name}: ${sentence(texture.placed(surface.name))}` };
  const curve = [...texture.heights].sort((a, b) => b - a);
  if (!(curve[0]! > curve.at(-1)!)) return { title, sentence: `${name}: all heights are alike, so there is no profile to draw` };
  const id = idOf(options, "surface", given);
  const plate: TexturePlate = {
    given,
    unit: given.unit ? ` ${withoutControlCharacters(given.unit)}` : "",
    texture,
    curve,
    decimals: Math.min(3, mostDecimals(heights as number[]) + 1),
    pattern: `${id}-metal`,
  };
  const width = options.width ?? DEFAULT_WIDTH;
  const head = drawingHead(given.name, width, wordsOf(plate));
  const profileTop = head.bottom + 4;
  const curveTop = profileTop + PROFILE_HEIGHT + AXES_BELOW + 16;
  const foot = drawingFoot(notesOf(plate), width, curveTop + CURVE_HEIGHT + AXES_BELOW + 14);
  return drawing({
    id,
    title,
    description: described(plate),
    width,
    height: foot.bottom,
    patterns: hatching(plate.pattern),
    body: head.svg + profile(plate, profileTop, width) + materialRatio(plate, curveTop, width) + foot.svg,
  });
}

/** Heights along the surface, with the sections between which Rz is taken. */
function profile(plate: TexturePlate, top: number, width: number): string {
  const { heights, section } = plate.texture.roughness;
  const step = plate.given.spacing;
  const x = scaleLinear([0, heights.length * step], [AXES_LEFT, width - 12]);
  const y = scaleLinear([Math.min(...heights), Math.max(...heights)], [top + PROFILE_HEIGHT, top]);
  const starts = section.flatMap((at, i) => (i > 0 && at !== section[i - 1] ? [i] : []));
  const stroke = { fill: "none", stroke: "currentColor" } as const;
  return group(
    "profile",
    plotAxes({ x, y, names: ["along the surface, in the unit of the cut-off", upward(plate)] }),
    ...starts.map((i) =>
      segment(x(i * step), top, x(i * step), top + PROFILE_HEIGHT, { class: "section", ...stroke, "stroke-width": THIN, "stroke-dasharray": DOTTED }),
    ),
    segment(x(0), y(0), x(heights.length * step), y(0), { class: "mean", ...stroke, "stroke-width": THIN, "stroke-dasharray": DASHED }),
    svgElement("path", { class: "heights", d: outline(heights, (i) => x(i * step), y), ...stroke, "stroke-width": 1 }),
  );
}

/** Highest and lowest of what falls on one pixel: a trace of thousands of heights has all its peaks, and few points. */
function outline(heights: readonly number[], xOf: (i: number) => number, y: (height: number) => number): string {
  const points: [number, number][] = [];
  let from = 0;
  while (from < heights.length) {
    let to = from + 1;
    while (to < heights.length && xOf(to) - xOf(from) < 1) to++;
    const own = heights.slice(from, to);
    if (own.length <= 2) for (const [i, height] of own.entries()) points.push([xOf(from + i), height]);
    else points.push([xOf(from), own[0]!], [xOf(from), Math.max(...own)], [xOf(from), Math.min(...own)], [xOf(to - 1), own.at(-1)!]);
    from = to;
  }
  return points.map(([at, height], i) => `${i === 0 ? "M" : "L"}${px(at)} ${px(y(height))}`).join("");
}

function wordsOf({ texture, decimals, unit }: TexturePlate): string {
  const { ra, rq, rz, core, roughness, isFew } = texture;
  const all = { Ra: ra, Rq: rq, Rz: rz, Rk: core.rk, Rpk: core.rpk, Rvk: core.rvk };
  const sizes = Object.entries(all).map(([name, size]) => `${name} ${numberText(size, decimals)}`);
  const sections = `${roughness.sections}${isFew ? ", fewer than the standard's" : ""}`;
  return `${sizes.join(", ")}${unit}; Mr1 ${numberText(100 * core.mr1, 1)} %, Mr2 ${numberText(100 * core.mr2, 1)} %; sections: ${sections}`;
}

function notesOf({ given: { cutoff }, unit }: TexturePlate): string {
  const filter =
    cutoff === 0
      ? "Taken as filtered already."
      : `Above: roughness about the Gaussian mean line, cut-off ${numberText(cutoff)}. Below: about the line over the valleys of ISO 13565-1.`;
  return `${filter} Dashed on the curve: the line through its flattest 40 %; hatched: triangles as large as the peaks above the core and the valleys below. Heights are drawn far larger than lengths.${unit ? "" : " The sheet names no unit."}`;
}

/** Shares of the surface at which the curve is told in words. */
const TOLD = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100];

function described(plate: TexturePlate): string {
  const { curve, decimals, texture } = plate;
  const heightAt = (ratio: number) => curve[Math.min(curve.length - 1, Math.floor((ratio / 100) * curve.length))]!;
  return [
    `Roughness profile of ${texture.roughness.heights.length} heights and its material ratio curve.`,
    `${wordsOf(plate)}.`,
    `The curve: ${TOLD.map((ratio) => `${ratio} % at ${numberText(heightAt(ratio), decimals)}`).join(", ")}.`,
    notesOf(plate),
  ].join(" ");
}
