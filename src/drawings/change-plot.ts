import { scaleLinear } from "d3-scale";
import { decimal } from "../core/decimal.ts";
import { DIRECTION_WORDS, directionBeyond, uncertaintyOfChange } from "../functions/wear/change-params.ts";
import { drawingFoot, drawingHead } from "./head-and-foot.ts";
import { DOTTED, type DrawingOptions, type Drawn, drawing, group, idOf, label, labelLines, SMALL, segment, svgElement, THICK, THIN, TYPE } from "./svg.ts";
import { mostDecimals, numberText, signedText, widthOf, withoutControlCharacters, wrapped } from "./text.ts";

/** One size measured twice. */
export interface ChangeBar {
  name: string;
  unit?: string | undefined;
  before: number | null;
  after: number | null;
  /** Expanded uncertainties at 95 %; without the second one the same gauge measured twice. */
  uBefore?: number | null | undefined;
  uAfter?: number | null | undefined;
  /** Expanded uncertainty of the change itself, where it is known already. */
  uncertainty?: number | null | undefined;
}

export interface ChangePlot {
  name: string;
  changes: readonly ChangeBar[];
}

/** What is known of a change: whether it lies beyond its gauge, or why nobody can say. */
interface Told {
  name: string;
  change?: number;
  uncertainty?: number;
  isBeyond: boolean;
  words: string;
  decimals: number;
}

const DEFAULT_WIDTH = 640;
/** Narrower than this, a row's words stand above its bar instead of beside it. */
const ROOM_BESIDE = 500;
const RIGHT = 176;

/**
 * Each change as a mark with its uncertainty on either side of it: a bar that reaches across zero is
 * what nobody can tell from nothing. Sizes in one unit share one scale.
 */
export function drawChangePlot({ name, changes }: ChangePlot, options: DrawingOptions = {}): Drawn {
  const title = `Changes: ${name}`;
  const units = [...new Set(changes.map(({ unit }) => unit ?? ""))];
  const panels = units.map((unit) => ({
    unit: withoutControlCharacters(unit),
    rows: alike(changes.filter((change) => (change.unit ?? "") === unit).map(told)),
  }));
  if (!panels.some(({ rows }) => rows.some(({ change }) => change !== undefined)))
    return { title, sentence: `${withoutControlCharacters(name)}: nothing has been measured twice yet, so there is no change to draw` };
  const width = Math.max(260, options.width ?? DEFAULT_WIDTH);
  const isWide = width >= ROOM_BESIDE;
  const left = isWide ? Math.max(24, Math.min(200, Math.max(...changes.map((change) => widthOf(withoutControlCharacters(change.name), TYPE)))) + 14) : 24;
  const frame: Frame = { width, left, right: isWide ? width - RIGHT : width - 24, isWide };
  const head = drawingHead(name, width);
  let y = head.bottom;
  const drawn: string[] = [];
  for (const { unit, rows } of panels) {
    const panel = panelOf(rows, unit, frame, y);
    drawn.push(panel.svg);
    y = panel.bottom;
  }
  const foot = drawingFoot(NOTE + (units.includes("") ? " The sheet names no unit." : ""), width, y + 6);
  return drawing({
    id: idOf(options, "changes", { name, changes }),
    title,
    description: `${panels.map(({ unit, rows }) => `${unit ? `In ${unit}: ` : ""}${rows.map(sentenceOf).join("; ")}.`).join(" ")} ${NOTE}`,
    width,
    height: foot.bottom - 6,
    body: head.svg + drawn.join("") + foot.svg,
  });
}

const NOTE =
  "Bars: expanded uncertainty of the change, from the uncertainties before and after. Filled square, thick bar: beyond its gauge. Open circle, thin bar: nobody can tell.";

function told({ name, before, after, uBefore, uAfter, uncertainty }: ChangeBar): Told {
  if (before === null || after === null) return { name, isBeyond: false, words: "not measured twice", decimals: 0 };
  const change = decimal(after - before);
  const decimals = mostDecimals([before, after]);
  const known = uncertainty || (uBefore ? uncertaintyOfChange(uBefore, uAfter || uBefore) : 0);
  if (!(known > 0)) return { name, change, isBeyond: false, words: "no uncertainty, not judged", decimals };
  const direction = directionBeyond(before, after, known);
  return { name, change, uncertainty: known, isBeyond: direction !== 0, words: DIRECTION_WORDS[direction], decimals };
}

/** Changes on one scale are written with equally many decimals. */
function alike(rows: readonly Told[]): Told[] {
  const decimals = Math.max(0, ...rows.map((row) => row.decimals));
  return rows.map((row) => ({ ...row, decimals }));
}

/** `+0.040 ± 0.011`: the uncertainty to two figures, as JCGM 100 (7.2.6) has it. */
function numbersOf({ change, uncertainty, decimals }: Told): string {
  if (change === undefined) return "";
  if (uncertainty === undefined) return signedText(change, decimals);
  return `${signedText(change, decimals)} ± ${numberText(uncertainty, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))))}`;
}

const sentenceOf = (row: Told): string => `${row.name}: ${[numbersOf(row), row.words].filter(Boolean).join(", ")}`;

interface Frame {
  width: number;
  left: number;
  right: number;
  isWide: boolean;
}

function panelOf(rows: readonly Told[], unit: string, frame: Frame, top: number): { svg: string; bottom: number } {
  const { left, right, isWide } = frame;
  const x = scaleLinear(reachOf(rows), [left, right]).nice(5);
  const step = isWide ? 28 : 52;
  const places = rows.map((_, i) => top + (isWide ? 16 : 40) + i * step);
  const base = top + rows.length * step + (isWide ? 2 : 4);
  const ticks = x.ticks(isWide ? 6 : 4);
  const decimals = mostDecimals(ticks);
  const svg = group(
    "panel",
    ...ticks.map((tick) => segment(x(tick), base, x(tick), base + 4, { class: "tick", stroke: "currentColor", "stroke-width": THIN })),
    ...ticks.map((tick) =>
      label(x(tick), base + 14, tick === 0 ? "0" : signedText(tick, decimals), { class: "tick-name", "font-size": SMALL, "text-anchor": "middle" }),
    ),
    segment(left, base, right, base, { stroke: "currentColor", "stroke-width": THIN }),
    // Words that stand above their bars must not be run through.
    ...(isWide ? [[top, base]] : [...places.map((y) => [y - 7, y + 7]), [base - 7, base]]).map(([from, to]) =>
      segment(x(0), from!, x(0), to!, { class: "zero", stroke: "currentColor", "stroke-width": THIN }),
    ),
    label((left + right) / 2, base + 27, `change${unit ? `, ${unit}` : ""}`, {
      class: "axis-name",
      "font-size": SMALL,
      "font-style": "italic",
      "text-anchor": "middle",
    }),
    ...rows.map((row, i) => rowOf(row, x, places[i]!, frame)),
  );
  return { svg, bottom: base + 40 };
}

/** From the lowest to the highest end of a bar, zero included. */
function reachOf(rows: readonly Told[]): [number, number] {
  const ends = rows.flatMap(({ change, uncertainty = 0 }) => (change === undefined ? [] : [change - uncertainty, change + uncertainty]));
  const least = Math.min(0, ...ends);
  const most = Math.max(0, ...ends);
  return least === most ? [-1, 1] : [least, most];
}

function rowOf(row: Told, x: (change: number) => number, y: number, frame: Frame): string {
  const { left, right, isWide, width } = frame;
  const guide = segment(left, y, right, y, { class: "guide", stroke: "currentColor", "stroke-width": 0.4, "stroke-dasharray": DOTTED });
  return group(row.isBeyond ? "row beyond" : "row", isWide ? beside(row, y, left, right) : above(row, y, width), guide, barOf(row, x, y));
}

function beside(row: Told, y: number, left: number, right: number): string {
  const name = wrapped(row.name, left - 12, TYPE, 2);
  return (
    labelLines(left - 10, y + 4 - ((name.length - 1) * 12) / 2, name, 12, { class: "row-name", "text-anchor": "end" }) +
    label(right + 10, y + (row.change === undefined ? 4 : -1), row.words, { class: "words", "font-weight": row.isBeyond ? 700 : undefined }) +
    label(right + 10, y + 11, numbersOf(row), { class: "numbers", "font-size": SMALL })
  );
}

function above(row: Told, y: number, width: number): string {
  const words = [row.words, numbersOf(row)].filter(Boolean).join(", ");
  return (
    label(4, y - 25, wrapped(row.name, width - 8, TYPE, 1)[0] ?? "", { class: "row-name" }) +
    label(4, y - 12, words, { class: "words", "font-size": SMALL, "font-weight": row.isBeyond ? 700 : undefined })
  );
}

function barOf({ change, uncertainty, isBeyond }: Told, x: (change: number) => number, y: number): string {
  if (change === undefined) return "";
  const line = { stroke: "currentColor", "stroke-width": isBeyond ? 2.2 : 1 };
  const cap = isBeyond ? 5 : 4;
  const ends = uncertainty === undefined ? [] : [x(change - uncertainty), x(change + uncertainty)];
  const at = x(change);
  if (uncertainty === undefined)
    return svgElement("path", { class: "mark", d: `M${at} ${y}m-4 -4l8 8m0 -8l-8 8`, fill: "none", stroke: "currentColor", "stroke-width": THICK });
  const mark = isBeyond
    ? svgElement("rect", { class: "mark", x: at - 4, y: y - 4, width: 8, height: 8 })
    : svgElement("circle", { class: "mark", cx: at, cy: y, r: RING, fill: "none", stroke: "currentColor", "stroke-width": THICK });
  // The bar stops at an open ring, so that it reads as open on any ground.
  const gap = isBeyond ? 0 : RING;
  const arms = ends.map((end) => (Math.abs(end - at) > gap ? segment(at + Math.sign(end - at) * gap, y, end, y, { class: "uncertainty", ...line }) : ""));
  return arms.join("") + ends.map((end) => segment(end, y - cap, end, y + cap, { class: "end", ...line })).join("") + mark;
}

const RING = 4;
