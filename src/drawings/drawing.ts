import { element } from "./svg.ts";
import { escaped, tame } from "./text.ts";

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
  const svg = element(
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
    `<title id="${id}-title">${escaped(tame(title))}</title>`,
    `<desc id="${id}-desc">${escaped(tame(description))}</desc>`,
    patterns === "" ? "" : element("defs", {}, patterns),
    body,
  );
  return { svg, title: tame(title), description: tame(description), width: Math.ceil(width), height: Math.ceil(height) };
}
