import { Patch } from "./edit.ts";
import { scan, startOfEnd, type Tag } from "./scan.ts";

/** A list of the styles' part: what stands in it, and where more is put. */
export interface StyleList {
  tag: Tag;
  end: number;
  items: string[];
}

export interface Fill {
  pattern: string;
  colours: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/** What marking needs of the styles' part (ECMA-376 part 1, 18.8): fills and the formats of cells, as they are written. */
export interface StylesPart {
  patch: Patch;
  root: Tag;
  fills: StyleList | undefined;
  formats: StyleList | undefined;
  /** What each fill says; gradients have no colours of that kind. */
  fillOf: Fill[];
  /** Where lists that are missing go: behind the last of those that stand before them. */
  placeFor: { fills: number; formats: number };
}

/** The order of the lists in the part (18.8.39). */
const BEFORE_FILLS = new Set(["numFmts", "fonts"]);
const BEFORE_FORMATS = new Set(["numFmts", "fonts", "fills", "borders", "cellStyleXfs"]);

export function readStylesPart(part: Uint8Array, name: string): StylesPart {
  const patch = new Patch(part);
  const found = { patch, fills: undefined, formats: undefined, fillOf: [], placeFor: { fills: 0, formats: 0 } } as Partial<StylesPart> &
    Pick<StylesPart, "fillOf" | "placeFor">;
  let list: StyleList | undefined;
  let item: Tag | undefined;
  scan(patch.bytes, name, {
    open(tag, inside) {
      if (inside.length === 0) {
        found.root = tag;
        found.placeFor = { fills: tag.to, formats: tag.to };
      } else if (inside.length === 1 && (tag.name === "fills" || tag.name === "cellXfs")) {
        list = { tag, end: tag.to, items: [] };
        found[tag.name === "fills" ? "fills" : "formats"] = list;
      } else if (inside.length === 2 && list) {
        item = tag;
        if (list === found.fills) found.fillOf.push({ pattern: "", colours: {} });
      } else if (list && list === found.fills) noteFill(found.fillOf.at(-1)!, tag);
    },
    close(element, to) {
      if (item && item.name === element && list) {
        list.items.push(patch.text(item.from, to));
        item = undefined;
      } else if (list && list.tag.name === element) {
        list.end = startOfEnd(patch.bytes, to);
        list = undefined;
      }
      if (BEFORE_FILLS.has(element)) found.placeFor.fills = to;
      if (BEFORE_FORMATS.has(element)) found.placeFor.formats = to;
    },
  });
  return found as StylesPart;
}

function noteFill(fill: Fill, { name, attributes }: Tag): void {
  if (name === "patternFill") fill.pattern = attributes.patternType ?? "none";
  else if (name === "fgColor" || name === "bgColor") fill.colours = { ...fill.colours, [name]: attributes };
}
