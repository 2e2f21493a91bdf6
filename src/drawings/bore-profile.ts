import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import { type BoreReadings, boreWords, described, deviationsOf, exaggerationOf, HALF, INWARD, notes, nothingToDraw, OUTWARD, type Plate } from "./bore.ts";
import { drawingFoot, drawingHead } from "./head-and-foot.ts";
import {
  CHAIN,
  DASHED,
  type DrawingOptions,
  type Drawn,
  drawing,
  group,
  hatching,
  idOf,
  label,
  labelLines,
  px,
  SMALL,
  segment,
  svgElement,
  THICK,
  THIN,
  TYPE,
} from "./svg.ts";
import { mostDecimals, numberText, signedText, widthOf, withoutControlCharacters, wrapped } from "./text.ts";

export interface ProfileOptions extends DrawingOptions {
  /** How many times as large as the bore its deviations are drawn; without it as large as there is room for. */
  factor?: number;
}

const METAL = 7;
const GAP = 4;
const PANEL = 2 * (HALF + OUTWARD + METAL) + GAP;
const STEP = 42;
/** A lone reading gets so much wall above and below it. */
const STUB = 12;
/** Numbers of the last scale reach a little beyond their panel. */
const RIGHT = 8;
const LEADING = 13;
const DEFAULT_WIDTH = 640;

/**
 * A bore cut open along each axis, with the deviation of its diameter drawn so many times as large as
 * the bore itself, half of it on either wall.
 */
export function drawBoreProfile(bore: BoreReadings, options: ProfileOptions = {}): Drawn {
  const title = `Bore profile: ${bore.name}`;
  const deviations = deviationsOf(bore);
  const factor = options.factor ?? exaggerationOf(bore);
  if (!deviations || factor === undefined) return { title, sentence: nothingToDraw(bore) };
  const id = idOf(options, "bore", bore);
  const isDrawn = (h: number, a: number) => typeof deviations.rows[h]?.[a] === "number";
  const decimals = mostDecimals([...bore.readings.flatMap((row, h) => row.filter((_, a) => isDrawn(h, a)) as number[]), deviations.base]);
  const plate: Plate = { bore, deviations, factor, decimals, pattern: `${id}-metal` };
  const left = leftOf(bore);
  const inARow = Math.max(1, Math.min(bore.axes.length, Math.floor(((options.width ?? DEFAULT_WIDTH) - left) / PANEL)));
  const width = left + inARow * PANEL + RIGHT;
  const head = drawingHead(bore.name, width, boreWords(plate), 2);
  const panelHeight = heightAt(0, bore.heights.length - 1) + 20 + 36;
  const panels = bore.axes.map((_, axis) => {
    const x = left + (axis % inARow) * PANEL;
    const y = head.bottom + Math.floor(axis / inARow) * panelHeight;
    return (axis % inARow === 0 ? heightNames(plate, y) : "") + panel(plate, axis, x, y);
  });
  const foot = drawingFoot(notes(plate), width, head.bottom + Math.ceil(bore.axes.length / inARow) * panelHeight + 10);
  return drawing({
    id,
    title,
    description: described(plate),
    width,
    height: foot.bottom - 2,
    patterns: hatching(plate.pattern),
    body: head.svg + panels.join("") + foot.svg,
  });
}

/** Room for the names of the heights. */
const leftOf = ({ heights }: BoreReadings): number => Math.min(110, Math.max(44, ...heights.map((name) => widthOf(withoutControlCharacters(name), TYPE)))) + 14;

function heightNames({ bore }: Plate, top: number): string {
  const left = leftOf(bore);
  const names = bore.heights.map((name, h) => {
    const lines = wrapped(name, left - 10, TYPE, 2);
    return labelLines(left - 8, heightAt(top, h) + 4 - ((lines.length - 1) * LEADING) / 2, lines, LEADING, { class: "height", "text-anchor": "end" });
  });
  return label(left - 8, top + 14, "height", { class: "axis-name", "font-size": SMALL, "font-style": "italic", "text-anchor": "end" }) + names.join("");
}

const heightAt = (top: number, height: number): number => top + 44 + height * STEP;

/** One axis: both walls cut through, a dimension line at each height, and the scale of the deviation below. */
function panel(plate: Plate, axis: number, x: number, top: number): string {
  const { bore, deviations } = plate;
  const centre = x + PANEL / 2;
  const column = deviations.rows.map((row) => row[axis] ?? null);
  const out = outward(plate);
  const heading = wrapped(bore.axes[axis]!, PANEL - 8, TYPE, 1)[0] ?? "";
  return group(
    "axis",
    label(centre, top + 14, heading, { class: "axis-name", "text-anchor": "middle", "font-weight": 600 }),
    walls(plate, column, centre, top),
    ...column.map((deviation, h) => dimension(plate, deviation, bore.readings[h]?.[axis] ?? null, centre, heightAt(top, h))),
    ruler(plate, centre, heightAt(top, bore.heights.length - 1) + 20, out),
  );
}

/** From the middle of the bore to a wall, in pixels, for a deviation of the diameter. */
const outward = ({ deviations, factor }: Plate) => scaleLinear([0, deviations.base / factor], [HALF, 2 * HALF]);

function walls(plate: Plate, column: readonly (number | null | "off")[], centre: number, top: number): string {
  const { deviations, pattern } = plate;
  const out = outward(plate);
  const points = wallPoints(column, top);
  const first = heightAt(top, 0) - STUB;
  const last = heightAt(top, column.length - 1) + STUB;
  const sides = [-1, 1].map((side) => {
    const at = (point: WallPoint) => centre + side * out(point.deviation ?? 0);
    const isThere = (point: WallPoint) => point.deviation !== null;
    const outer = centre + side * (HALF + OUTWARD + METAL);
    const metal = area<WallPoint>(
      at,
      (point) => point.y,
      () => outer,
    ).defined(isThere);
    // d3's area runs along x; with y given once and x twice it stands upright.
    metal
      .x0(at)
      .x1(outer)
      .y((point) => point.y);
    const wall = line<WallPoint>(at, (point) => point.y).defined(isThere);
    return (
      svgElement("path", { class: "metal", d: metal(points) ?? "", fill: `url(#${pattern})` }) +
      svgElement("path", { class: "wall", d: wall(points) ?? "", fill: "none", stroke: "currentColor", "stroke-width": THICK }) +
      upright("nominal", centre + side * HALF, first, last, DASHED) +
      (deviations.limit === undefined ? "" : upright("limit", centre + side * out(deviations.limit), first, last, CHAIN, 1.2))
    );
  });
  return sides.join("");
}

const upright = (className: string, x: number, from: number, to: number, dashes: string, weight = THIN): string =>
  segment(x, from, x, to, { class: className, stroke: "currentColor", "stroke-width": weight, "stroke-dasharray": dashes });

interface WallPoint {
  y: number;
  deviation: number | null;
}

/** The wall from height to height; at its ends, and where a neighbour is missing, it goes on straight for a little. */
function wallPoints(column: readonly (number | null | "off")[], top: number): WallPoint[] {
  return column.flatMap((deviation, h): WallPoint[] => {
    const y = heightAt(top, h);
    if (typeof deviation !== "number") return [{ y, deviation: null }];
    const isOpen = (neighbour: number | null | "off" | undefined) => typeof neighbour !== "number";
    return [...(isOpen(column[h - 1]) ? [{ y: y - STUB, deviation }] : []), { y, deviation }, ...(isOpen(column[h + 1]) ? [{ y: y + STUB, deviation }] : [])];
  });
}

function dimension(plate: Plate, deviation: number | null | "off", reading: number | null, centre: number, y: number): string {
  const { decimals, deviations } = plate;
  const middle = { "text-anchor": "middle" } as const;
  if (deviation === null) return label(centre, y + 4, "blank", { class: "blank", "font-style": "italic", "font-size": SMALL, ...middle });
  if (deviation === "off")
    return (
      label(centre, y, numberText(reading!), { class: "reading", ...middle }) +
      label(centre, y + 11, "off the scale", { class: "off", "font-size": SMALL, "font-style": "italic", ...middle })
    );
  const text = numberText(reading!, decimals);
  const out = outward(plate)(deviation);
  const [first] = deviations.drawn;
  const isLargest = deviation === Math.max(...deviations.drawn) && deviations.drawn.some((other) => other !== first);
  return group(
    "dimension",
    ...[-1, 1].map((side) => arrow(centre + side * out, centre + side * (text.length * 3.2 + 2), y, side)),
    label(centre, y + 4, text, { class: "reading", "font-weight": isLargest ? 700 : undefined, ...middle }),
    label(centre, y + 16, signedText(deviation, decimals), { class: "deviation", "font-size": SMALL, ...middle }),
  );
}

/** Half a dimension line, its tip on the wall: from the number outward, or from outside where the number leaves no room. */
function arrow(wall: number, number: number, y: number, side: number): string {
  const isInside = (wall - number) * side > 7;
  const back = isInside ? -side * 6.5 : side * 6.5;
  const head = svgElement("path", { class: "mark", d: `M${px(wall)} ${px(y)}l${back} -1.9v3.8z` });
  return head + segment(wall, y, isInside ? number : wall + side * 12, y, { stroke: "currentColor", "stroke-width": 0.6 });
}

/** The scale of the deviation, once for either wall: 0 at the nominal wall, growing outward. */
function ruler(plate: Plate, centre: number, y: number, out: (deviation: number) => number): string {
  const ticks = ticksOf(plate);
  const decimals = mostDecimals(ticks);
  const marks = [-1, 1].flatMap((side) => [
    segment(centre + side * out(Math.min(...ticks)), y, centre + side * (HALF + OUTWARD), y, { stroke: "currentColor", "stroke-width": THIN }),
    ...ticks.map((tick) =>
      segment(centre + side * out(tick), y, centre + side * out(tick), y + 4, { class: "tick", stroke: "currentColor", "stroke-width": THIN }),
    ),
    ...ticks
      .filter((tick) => isNamed(tick, side, ticks))
      .map((tick) =>
        label(centre + side * out(tick), y + 14, tick === 0 ? "0" : signedText(tick, decimals), {
          class: "tick-name",
          "font-size": SMALL,
          "text-anchor": "middle",
        }),
      ),
  ]);
  const unit = plate.bore.unit ? `, ${withoutControlCharacters(plate.bore.unit)}` : "";
  return group(
    "ruler",
    ...marks,
    label(centre, y + 27, `deviation of diameter${unit}`, { class: "axis-name", "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" }),
  );
}

/** Either side begins with its 0; numbers stand on the right alone, and none so near another that they would touch. */
const isNamed = (tick: number, side: number, ticks: readonly number[]): boolean => (tick === 0 ? side < 0 || ticks.length === 2 : side > 0);

/** 0, the largest round deviation that there is room for, and one inward where a wall goes there. */
function ticksOf({ deviations: { base, drawn }, factor }: Plate): number[] {
  const room = (pixels: number) => (pixels / HALF) * (base / factor);
  const round = scaleLinear([0, room(OUTWARD)], [0, 1])
    .ticks(4)
    .at(-1)!;
  const inward =
    Math.min(...drawn) < 0
      ? scaleLinear([0, room(INWARD)], [0, 1])
          .ticks(3)
          .at(-1)!
      : 0;
  return inward > 0 ? [-inward, 0, round] : [0, round];
}
