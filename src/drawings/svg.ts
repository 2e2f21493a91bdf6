import { escaped, tame } from "./text.ts";

/** Numbers of a drawing are written to a hundredth of a pixel. */
export const px = (x: number): string => String(Math.round(x * 100) / 100 + 0);

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An element. Attributes are escaped; children are SVG already, text gets in through `label` alone. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? px(value) : escaped(value!)}"`)
    .join("");
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join("")}</${name}>`;
}

export const group = (className: string, ...children: readonly string[]): string => element("g", { class: className }, ...children);

/** Sizes of type: for names and numbers, and for what goes with them. */
export const TYPE = 11;
export const SMALL = 10;

/** Text at a place, in the size of names and numbers where nothing else is said. */
export function label(x: number, y: number, text: string, attributes: Attributes = {}): string {
  return element("text", { x, y, ...attributes }, escaped(tame(text)));
}

/** Lines of text below one another. */
export function labels(x: number, y: number, lines: readonly string[], leading: number, attributes: Attributes = {}): string {
  return lines.map((line, i) => label(x, y + i * leading, line, attributes)).join("");
}

export const segment = (x1: number, y1: number, x2: number, y2: number, attributes: Attributes = {}): string =>
  element("line", { x1, y1, x2, y2, ...attributes });

/** Weights of lines and dashes, as on a drawing board. */
export const THICK = 1.6;
export const THIN = 0.75;
export const DASHED = "6 3";
export const CHAIN = "9 3 2 3";
export const DOTTED = "1.5 2.5";

/** Metal cut through: thin lines at 45°, as sections are hatched. */
export function hatching(id: string, spacing = 5): string {
  const line = segment(0, 0, 0, spacing, { stroke: "currentColor", "stroke-width": 0.6 });
  return element("pattern", { id, width: spacing, height: spacing, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" }, line);
}

/** The same crossed, for what has failed. */
export function crossHatching(id: string, spacing = 5): string {
  const lines =
    segment(0, 0, 0, spacing, { stroke: "currentColor", "stroke-width": 0.9 }) + segment(0, 0, spacing, 0, { stroke: "currentColor", "stroke-width": 0.9 });
  return element("pattern", { id, width: spacing, height: spacing, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" }, lines);
}
