import { escaped, withoutControlCharacters } from "./text.ts";

/** Numbers of a drawing are written to a hundredth of a pixel. */
export const px = (x: number): string => String(Math.round(x * 100) / 100 + 0);

export type SvgAttributes = Readonly<Record<string, string | number | undefined>>;

/** An element. Attributes are escaped; children are SVG already, text gets in through `label` alone. */
export function svgElement(name: string, attributes: SvgAttributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? px(value) : escaped(value!)}"`)
    .join("");
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join("")}</${name}>`;
}

export const group = (className: string, ...children: readonly string[]): string => svgElement("g", { class: className }, ...children);

/** Sizes of type: for names and numbers, and for what goes with them. */
export const TYPE = 11;
export const SMALL = 10;

/** Text at a place, in the size of names and numbers where nothing else is said. */
export function label(x: number, y: number, text: string, attributes: SvgAttributes = {}): string {
  return svgElement("text", { x, y, ...attributes }, escaped(withoutControlCharacters(text)));
}

/** Lines of text below one another. */
export function labelLines(x: number, y: number, lines: readonly string[], leading: number, attributes: SvgAttributes = {}): string {
  return lines.map((line, i) => label(x, y + i * leading, line, attributes)).join("");
}

export const segment = (x1: number, y1: number, x2: number, y2: number, attributes: SvgAttributes = {}): string =>
  svgElement("line", { x1, y1, x2, y2, ...attributes });

/** Weights of lines and dashes, as on a drawing board. */
export const THICK = 1.6;
export const THIN = 0.75;
export const DASHED = "6 3";
export const CHAIN = "9 3 2 3";
export const DOTTED = "1.5 2.5";

/** Metal cut through: thin lines at 45°, as sections are hatched. */
export function hatching(id: string, spacing = 5): string {
  const line = segment(0, 0, 0, spacing, { stroke: "currentColor", "stroke-width": 0.6 });
  return svgElement("pattern", { id, width: spacing, height: spacing, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" }, line);
}

/** The same crossed, for what has failed. */
export function crossHatching(id: string): string {
  const spacing = 5;
  const lines =
    segment(0, 0, 0, spacing, { stroke: "currentColor", "stroke-width": 0.9 }) + segment(0, 0, spacing, 0, { stroke: "currentColor", "stroke-width": 0.9 });
  return svgElement("pattern", { id, width: spacing, height: spacing, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" }, lines);
}

/** A finished drawing: one ink (`currentColor`) on whatever lies below, so that it suits light, dark and paper. */
export interface Drawing {
  /** The whole `<svg>` element, with its title and description inside. */
  svg: string;
  title: string;
  /** The text alternative, with every number that is drawn. */
  description: string;
  /** Natural size in CSS pixels; the drawing gives way where there is less room. */
  width: number;
  height: number;
}

/** Nothing could be drawn; the sentence says why. */
export interface NoDrawing {
  title: string;
  sentence: string;
}

export type Drawn = Drawing | NoDrawing;

export const isDrawing = (drawn: Drawn): drawn is Drawing => "svg" in drawn;

export interface DrawingOptions {
  /** Start of the ids in the SVG, unique on its page; without one it is made from what is drawn. */
  id?: string;
  /** Room in CSS pixels for which the drawing is laid out. */
  width?: number;
}

/** Letters and digits that go into an id; anything else could break out of a reference to it. */
const IN_IDS = /[^A-Za-z0-9_-]+/g;

/** The id given, or one made from what is drawn: the same data give the same id (FNV-1a). */
export function idOf({ id }: DrawingOptions, kind: string, data: unknown): string {
  const given = id?.replace(IN_IDS, "-");
  if (given) return /^[A-Za-z]/.test(given) ? given : `d${given}`;
  let hash = 0x811c9dc5;
  for (const unit of JSON.stringify(data)) hash = Math.imul(hash ^ unit.codePointAt(0)!, 0x01000193);
  return `${kind}-${(hash >>> 0).toString(36)}`;
}

const FONTS = "'Segoe UI', 'Helvetica Neue', Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif";

interface Parts extends Pick<Drawing, "title" | "description" | "width" | "height"> {
  id: string;
  /** Contents of `<defs>`, may be empty. */
  patterns?: string;
  body: string;
}

export function drawing({ id, title, description, width, height, patterns = "", body }: Parts): Drawing {
  const svg = svgElement(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      class: "drawing",
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      width: Math.ceil(width),
      height: Math.ceil(height),
      role: "img",
      "aria-labelledby": `${id}-title`,
      "aria-describedby": `${id}-desc`,
      "font-family": FONTS,
      "font-size": 11,
      fill: "currentColor",
      "stroke-linecap": "butt",
    },
    `<title id="${id}-title">${escaped(withoutControlCharacters(title))}</title>`,
    `<desc id="${id}-desc">${escaped(withoutControlCharacters(description))}</desc>`,
    patterns === "" ? "" : svgElement("defs", {}, patterns),
    body,
  );
  return {
    svg,
    title: withoutControlCharacters(title),
    description: withoutControlCharacters(description),
    width: Math.ceil(width),
    height: Math.ceil(height),
  };
}
