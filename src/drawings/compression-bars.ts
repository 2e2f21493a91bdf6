import { scaleBand, scaleLinear } from "d3-scale";
import { isBelow } from "../core/decimal.ts";
import { boundBy, type CompressionRule, short } from "../functions/tests/compression-rule.ts";
import {
  crossHatching,
  DASHED,
  type DrawingOptions,
  type Drawn,
  drawing,
  element,
  group,
  hatching,
  idOf,
  label,
  labels,
  SMALL,
  segment,
  THICK,
  THIN,
  TYPE,
} from "./svg.ts";
import { numberText, sharedStart, widthOf, withoutControlCharacters, wrapped } from "./text.ts";

/** One compression test of one engine. */
export interface CompressionTest {
  name: string;
  unit?: string | undefined;
  cylinders: readonly { name: string; pressure: number | null }[];
  /** The rule that the maker gives. Without one nothing is judged. */
  rule?: { rule: CompressionRule; limit: number } | undefined;
}

const PLOT_HEIGHT = 150;
const LEFT = 52;
/** Room for what the rule asks, at the end of its line. */
const RIGHT = 58;
const TOP = 26;
const LEADING = 13;
/** Room for a cylinder: at least for its pressure and its verdict. */
const WIDEST_BAND = 76;
const NARROWEST_BAND = 36;
const DEFAULT_WIDTH = 480;

/** Bars from zero, so that their lengths compare as the pressures do, and the line that the rule draws across them. */
export function drawCompressionBars(test: CompressionTest, options: DrawingOptions = {}): Drawn {
  const title = `Compression test: ${test.name}`;
  const read = pressuresOf(test);
  if (read.length === 0) return { title, sentence: `${withoutControlCharacters(test.name)}: no pressures yet, so there are no bars to draw` };
  const id = idOf(options, "compression", test);
  const bound = test.rule && read.length > 1 ? boundBy(test.rule.rule, test.rule.limit, read) : undefined;
  const plate: Plate = { test, bound, id };
  const least = Math.max(NARROWEST_BAND, ...read.map((pressure) => widthOf(numberText(pressure), TYPE) + 6));
  const band = Math.max(least, Math.min(WIDEST_BAND, ((options.width ?? DEFAULT_WIDTH) - LEFT - RIGHT) / test.cylinders.length));
  const width = Math.max(LEFT + band * test.cylinders.length + RIGHT, 250);
  const head = wrapped(test.name, width - 8, 12.5, 2);
  const top = TOP + (head.length - 1) * 15;
  const x = scaleBand<number>([...test.cylinders.keys()], [LEFT, LEFT + band * test.cylinders.length])
    .paddingInner(0.3)
    .paddingOuter(0.15);
  const y = scaleLinear([0, Math.max(...read, bound?.lower ?? 0) * 1.2], [top + PLOT_HEIGHT, top]);
  const [axisName, ownNames] = sharedStart(test.cylinders.map(({ name }) => withoutControlCharacters(name)));
  const names = ownNames.map((name) => wrapped(name, band - 4, TYPE, 2));
  const under = top + PLOT_HEIGHT + 15 + Math.max(...names.map((lines) => lines.length)) * LEADING;
  const below = axisName ? under + 4 : under - LEADING + 2;
  const foot = wrapped(notes(plate), width - 8, SMALL);
  return drawing({
    id,
    title,
    description: described(plate),
    width,
    height: below + 8 + foot.length * LEADING,
    patterns: hatching(`${id}-passed`, 7) + crossHatching(`${id}-failed`),
    body: [
      labels(4, 14, head, 15, { class: "name", "font-size": 12.5, "font-weight": 600 }),
      scale(test, y, top),
      ...test.cylinders.map((_, i) => bar(plate, i, x, y)),
      ...names.map((lines, i) => labels(x(i)! + x.bandwidth() / 2, top + PLOT_HEIGHT + 15, lines, LEADING, { class: "cylinder", "text-anchor": "middle" })),
      label(LEFT + (band * names.length) / 2, under, axisName, { class: "axis-name", "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" }),
      bound ? ruleLine(bound.lower, y, width - RIGHT) : "",
      segment(LEFT, top + PLOT_HEIGHT, width - RIGHT, top + PLOT_HEIGHT, { class: "base", stroke: "currentColor", "stroke-width": THIN }),
      labels(4, below + 14, foot, LEADING, { class: "note", "font-size": SMALL }),
    ].join(""),
  });
}

interface Plate {
  test: CompressionTest;
  bound: ReturnType<typeof boundBy> | undefined;
  id: string;
}

const pressuresOf = ({ cylinders }: CompressionTest): number[] => cylinders.map(({ pressure }) => pressure).filter((pressure) => pressure !== null);

function scale({ unit }: CompressionTest, y: ReturnType<typeof scaleLinear<number, number>>, top: number): string {
  const ticks = y.ticks(5);
  const marks = ticks.map(
    (tick) =>
      segment(LEFT - 4, y(tick), LEFT, y(tick), { class: "tick", stroke: "currentColor", "stroke-width": THIN }) +
      label(LEFT - 7, y(tick) + 3.5, numberText(tick), { class: "tick-name", "font-size": SMALL, "text-anchor": "end" }),
  );
  const middle = top + PLOT_HEIGHT / 2;
  return group(
    "scale",
    segment(LEFT, top, LEFT, top + PLOT_HEIGHT, { stroke: "currentColor", "stroke-width": THIN }),
    ...marks,
    label(12, middle, `pressure${unit ? `, ${withoutControlCharacters(unit)}` : ""}`, {
      class: "axis-name",
      "font-size": SMALL,
      "font-style": "italic",
      "text-anchor": "middle",
      transform: `rotate(-90 12 ${middle})`,
    }),
  );
}

function bar({ test, bound, id }: Plate, i: number, x: ReturnType<typeof scaleBand<number>>, y: (pressure: number) => number): string {
  const { pressure } = test.cylinders[i]!;
  const middle = x(i)! + x.bandwidth() / 2;
  const centred = { "text-anchor": "middle" } as const;
  if (pressure === null) return label(middle, y(0) - 6, "blank", { class: "blank", "font-size": SMALL, "font-style": "italic", ...centred });
  const isUnder = bound !== undefined && isBelow(pressure, bound.lower);
  const words = isUnder ? ["under", numberText(pressure)] : [numberText(pressure)];
  const lowest = aboveLine(y(pressure), bound && y(bound.lower), words.length * LEADING + 4);
  return group(
    isUnder ? "bar under" : "bar",
    element("rect", {
      class: "pressure",
      x: x(i),
      y: y(pressure),
      width: x.bandwidth(),
      height: y(0) - y(pressure),
      fill: `url(#${id}-${isUnder ? "failed" : "passed"})`,
      stroke: "currentColor",
      "stroke-width": isUnder ? THICK : THIN,
    }),
    labels(middle, lowest - 5 - (words.length - 1) * LEADING, words, LEADING, { class: "number", "font-weight": isUnder ? 700 : undefined, ...centred }),
  );
}

/** Words stand on their bar, or on the rule's line where that would go through them. */
const aboveLine = (bar: number, line: number | undefined, room: number): number => (line !== undefined && line < bar && bar - line < room ? line : bar);

function ruleLine(lower: number, y: (pressure: number) => number, right: number): string {
  return group(
    "rule",
    segment(LEFT, y(lower), right, y(lower), { class: "least", stroke: "currentColor", "stroke-width": 1.2, "stroke-dasharray": DASHED }),
    label(right + 5, y(lower) - 3, "at least", { "font-size": SMALL }),
    label(right + 5, y(lower) + 9, short(lower).replace("-", "−"), { class: "rule-number", "font-weight": 600 }),
  );
}

function notes({ test, bound }: Plate): string {
  const unit = test.unit ? "" : " The sheet names no unit.";
  if (!test.rule) return `No rule is given, so nothing is judged.${unit}`;
  if (!bound) return `The ${test.rule.rule} rule compares cylinders, so it wants a second one.${unit}`;
  return `Dashed line: the ${test.rule.rule} rule asks at least ${short(bound.lower)} (${bound.why}). Crossed bars are under it.${unit}`;
}

function described(plate: Plate): string {
  const { test, bound } = plate;
  const bars = test.cylinders.map(({ name, pressure }) => {
    if (pressure === null) return `${name}: blank`;
    return `${name}: ${numberText(pressure)}${bound ? (isBelow(pressure, bound.lower) ? ", under" : ", within") : ""}`;
  });
  return `Bars from zero${test.unit ? `, in ${test.unit}` : ""}. ${bars.join("; ")}. ${notes(plate)}`;
}
