import { scaleBand, scaleLinear } from "d3-scale";
import { isBelow } from "../core/decimal.ts";
import { faultBody } from "../core/sentences.ts";
import { type Limits, type Verdict, verdictOf } from "../core/verdict.ts";
import { boundBy, type CompressionRule, ruleFault, short } from "../functions/tests/compression-rule.ts";
import { drawingFoot, drawingHead } from "./head-and-foot.ts";
import {
  crossHatching,
  DASHED,
  DOTTED,
  type DrawingOptions,
  type Drawn,
  drawing,
  group,
  hatching,
  idOf,
  label,
  labelLines,
  SMALL,
  segment,
  svgElement,
  THICK,
  THIN,
  TYPE,
} from "./svg.ts";
import { numberText, sharedStart, widthOf, withoutControlCharacters, wrapped } from "./text.ts";

/** One compression test of one engine. */
export interface CompressionTest {
  name: string;
  unit?: string | undefined;
  /** With what the sheet itself says of a pressure by its limits, as it may know an uncertainty. */
  cylinders: readonly { name: string; pressure: number | null; verdict?: Verdict | undefined }[];
  /** The rule that the maker gives, with its limit as typed. */
  rule?: { rule: CompressionRule; limit: number } | undefined;
  /** Limits of the pressure of every cylinder, as typed. Without these and a rule nothing is judged. */
  limits?: Limits | undefined;
}

const PLOT_HEIGHT = 150;
const LEFT = 52;
/** Room for what the rule asks, at the end of its line. */
const RIGHT = 58;
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
  const plate: Plate = { test, id, ...boundOf(test, read) };
  const lines = linesOf(plate);
  const least = Math.max(NARROWEST_BAND, ...read.map((pressure) => widthOf(numberText(pressure), TYPE) + 6));
  const band = Math.max(least, Math.min(WIDEST_BAND, ((options.width ?? DEFAULT_WIDTH) - LEFT - RIGHT) / test.cylinders.length));
  const width = Math.max(LEFT + band * test.cylinders.length + RIGHT, 250);
  const head = drawingHead(test.name, width);
  const top = head.bottom - 3;
  const x = scaleBand<number>([...test.cylinders.keys()], [LEFT, LEFT + band * test.cylinders.length])
    .paddingInner(0.3)
    .paddingOuter(0.15);
  const y = scaleLinear([0, Math.max(...read, ...lines.map(({ at }) => at)) * 1.2 || 1], [top + PLOT_HEIGHT, top]);
  const [axisName, ownNames] = sharedStart(test.cylinders.map(({ name }) => withoutControlCharacters(name)));
  const names = ownNames.map((name) => wrapped(name, band - 4, TYPE, 2));
  const under = top + PLOT_HEIGHT + 15 + Math.max(...names.map((lines) => lines.length)) * LEADING;
  const below = axisName ? under + 4 : under - LEADING + 2;
  const foot = drawingFoot(notes(plate), width, below + 14);
  return drawing({
    id,
    title,
    description: described(plate),
    width,
    height: foot.bottom - 6,
    patterns: hatching(`${id}-passed`, 7) + crossHatching(`${id}-failed`),
    body: [
      head.svg,
      scale(test, y, top),
      ...test.cylinders.map((_, i) => bar(plate, i, x, y)),
      ...names.map((lines, i) => labelLines(x(i)! + x.bandwidth() / 2, top + PLOT_HEIGHT + 15, lines, LEADING, { class: "cylinder", "text-anchor": "middle" })),
      label(LEFT + (band * names.length) / 2, under, axisName, { class: "axis-name", "font-size": SMALL, "font-style": "italic", "text-anchor": "middle" }),
      ...limitLines(lines, y, width - RIGHT),
      segment(LEFT, top + PLOT_HEIGHT, width - RIGHT, top + PLOT_HEIGHT, { class: "base", stroke: "currentColor", "stroke-width": THIN }),
      foot.svg,
    ].join(""),
  });
}

interface Plate {
  test: CompressionTest;
  bound: ReturnType<typeof boundBy> | undefined;
  /** Why the rule judges nothing here. */
  refused: string;
  id: string;
}

function boundOf({ rule: given }: CompressionTest, read: readonly number[]): Pick<Plate, "bound" | "refused"> {
  if (!given || read.length < 2) return { bound: undefined, refused: "" };
  const fault = ruleFault(given.rule, given.limit, "limit", read, "pressures");
  return fault ? { bound: undefined, refused: faultBody(fault) } : { bound: boundBy(given.rule, given.limit, read), refused: "" };
}

interface Line {
  name: "rule" | "limit";
  words: "at least" | "at most";
  at: number;
}

/** Across the bars; a typed limit that stands where the rule does needs no line of its own. */
function linesOf({ test: { limits = {} }, bound }: Plate): Line[] {
  const lines: Line[] = bound ? [{ name: "rule", words: "at least", at: bound.lower }] : [];
  if (limits.lower !== undefined && limits.lower !== bound?.lower) lines.push({ name: "limit", words: "at least", at: limits.lower });
  if (limits.upper !== undefined) lines.push({ name: "limit", words: "at most", at: limits.upper });
  return lines;
}

/** What is said of a cylinder: by the rule, and by the limits in the sheet's own word where it has one. */
function verdictIn({ test: { limits = {} }, bound }: Plate, pressure: number, said: Verdict | undefined): Verdict | undefined {
  if (bound && isBelow(pressure, bound.lower)) return "under";
  return said ?? verdictOf(pressure, limits.lower, limits.upper) ?? (bound ? "within" : undefined);
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

function bar(plate: Plate, i: number, x: ReturnType<typeof scaleBand<number>>, y: (pressure: number) => number): string {
  const { pressure, verdict: said } = plate.test.cylinders[i]!;
  const middle = x(i)! + x.bandwidth() / 2;
  const centred = { "text-anchor": "middle" } as const;
  if (pressure === null) return label(middle, y(0) - 6, "blank", { class: "blank", "font-size": SMALL, "font-style": "italic", ...centred });
  const verdict = verdictIn(plate, pressure, said);
  const isOutside = verdict === "under" || verdict === "over";
  const words = verdict === undefined || verdict === "within" ? [numberText(pressure)] : [verdict, numberText(pressure)];
  const lowest = aboveLines(
    y(pressure),
    linesOf(plate).map(({ at }) => y(at)),
    words.length * LEADING + 4,
  );
  return group(
    isOutside ? `bar ${verdict}` : "bar",
    svgElement("rect", {
      class: "pressure",
      x: x(i),
      y: y(pressure),
      width: x.bandwidth(),
      height: y(0) - y(pressure),
      fill: `url(#${plate.id}-${isOutside ? "failed" : "passed"})`,
      stroke: "currentColor",
      "stroke-width": isOutside ? THICK : THIN,
    }),
    labelLines(middle, lowest - 5 - (words.length - 1) * LEADING, words, LEADING, { class: "number", "font-weight": isOutside ? 700 : undefined, ...centred }),
  );
}

/** Words stand on their bar, or on a line where that would go through them. */
function aboveLines(bar: number, lines: readonly number[], room: number): number {
  let lowest = bar;
  for (const line of [...lines].sort((a, b) => b - a)) if (line < lowest && lowest - line < room) lowest = line;
  return lowest;
}

/** Room for the two lines of words at the end of a line across the bars. */
const NAME_ROOM = 25;

/** The rule's line is dashed, that of a typed limit dotted; the words of two that are close do not meet. */
function limitLines(lines: readonly Line[], y: (pressure: number) => number, right: number): string[] {
  let free = Number.NEGATIVE_INFINITY;
  return [...lines]
    .sort((a, b) => b.at - a.at)
    .map(({ name, words, at }) => {
      const middle = Math.max(y(at), free);
      free = middle + NAME_ROOM;
      const dashes = name === "rule" ? DASHED : DOTTED;
      return group(
        name,
        segment(LEFT, y(at), right, y(at), { class: "least", stroke: "currentColor", "stroke-width": 1.2, "stroke-dasharray": dashes }),
        label(right + 5, middle - 3, words, { "font-size": SMALL }),
        label(right + 5, middle + 9, short(at).replace("-", "−"), { class: `${name}-number`, "font-weight": 600 }),
      );
    });
}

function notes(plate: Plate): string {
  const { test, bound, refused } = plate;
  const { rule, limits = {} } = test;
  const ends = [limits.lower === undefined ? "" : `at least ${short(limits.lower)}`, limits.upper === undefined ? "" : `at most ${short(limits.upper)}`];
  const asked = ends.filter(Boolean).join(", ");
  const parts: string[] = [];
  if (rule && bound) parts.push(`Dashed line: the ${rule.rule} rule asks at least ${short(bound.lower)} (${bound.why}).`);
  else if (rule) parts.push(refused ? `The rule judges nothing here: ${refused}.` : `The ${rule.rule} rule compares cylinders, so it needs a second one.`);
  if (asked) parts.push(`Dotted line: the limit typed for each cylinder, ${asked}.`);
  const beyond = limits.upper !== undefined ? "outside" : bound && asked ? "under one of them" : "under it";
  if (bound || asked) parts.push(`Crossed bars are ${beyond}.`);
  else if (!rule) parts.push("No rule and no limit is given, so nothing is judged.");
  if (!test.unit) parts.push("The sheet names no unit.");
  return parts.join(" ");
}

function described(plate: Plate): string {
  const { test } = plate;
  const bars = test.cylinders.map(({ name, pressure, verdict: said }) => {
    if (pressure === null) return `${name}: blank`;
    const verdict = verdictIn(plate, pressure, said);
    return `${name}: ${numberText(pressure)}${verdict === undefined ? "" : `, ${verdict}`}`;
  });
  return `Bars from zero${test.unit ? `, in ${test.unit}` : ""}. ${bars.join("; ")}. ${notes(plate)}`;
}
