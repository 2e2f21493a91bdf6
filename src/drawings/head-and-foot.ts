import { labelLines, SMALL } from "./svg.ts";
import { wrapped } from "./text.ts";

/** Lines across a drawing, and how far down what stands below them begins. */
export interface TextBlock {
  svg: string;
  bottom: number;
}

const LEFT = 4;
const TOP = 14;
const NAME_SIZE = 12.5;
const NAME_LEADING = 15;
const LEADING = 13;

function linesOf(lines: readonly string[], top: number, leading: number, attributes: Parameters<typeof labelLines>[4]): TextBlock {
  return { svg: labelLines(LEFT, top, lines, leading, attributes), bottom: top + lines.length * leading };
}

const fitting = (text: string, width: number, size: number, most?: number): string[] => wrapped(text, width - 2 * LEFT, size, most);

/** Whose drawing it is, in two lines at most, and below it its figures. */
export function drawingHead(name: string, width: number, summary = "", mostOfSummary?: number): TextBlock {
  const named = linesOf(fitting(name, width, NAME_SIZE, 2), TOP, NAME_LEADING, { class: "name", "font-size": NAME_SIZE, "font-weight": 600 });
  const figures = linesOf(fitting(summary, width, SMALL, mostOfSummary), named.bottom, LEADING, { class: "summary", "font-size": SMALL });
  return { svg: named.svg + figures.svg, bottom: figures.bottom };
}

/** How the drawing is to be read. */
export const drawingFoot = (notes: string, width: number, top: number): TextBlock =>
  linesOf(fitting(notes, width, SMALL), top, LEADING, { class: "note", "font-size": SMALL });
