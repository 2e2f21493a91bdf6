import { resolvedColour } from "./colours.ts";
import { BytesPatch, withAttributes } from "./edit.ts";
import { scan, startOfEnd, type Tag } from "./scan.ts";

/** What a cell has that says nothing of its looks. */
const PLAIN = '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>';

/** The looks of cells by the number of their style, to which filled ones are added at the end: no style that is there changes. */
export class StylesPatch {
  readonly #styles: StylesPart;
  readonly #formats: string[];
  readonly #fills: string[];
  readonly #numbers = new Map<string, number>();
  readonly #filled = new Map<string, number>();

  constructor(
    part: Uint8Array,
    readonly name: string,
    readonly theme: ReadonlyMap<string, string>,
  ) {
    this.#styles = readStylesPart(part, name);
    this.#formats = [...(this.#styles.formats?.items ?? [])];
    this.#fills = [...(this.#styles.fills?.items ?? [])];
    for (const [i, format] of this.#formats.entries()) if (!this.#numbers.has(format)) this.#numbers.set(format, i);
  }

  /** The colour of a cell's fill, `null` for none; of one that is more than a colour, the ground. */
  fillOf(style: number): string | null {
    const fill = this.#styles.fillOf[this.#fillNumber(style)];
    if (!fill || fill.pattern === "none") return this.#added(this.#fillNumber(style));
    const { fgColor, bgColor } = fill.colours;
    const colour = fill.pattern === "solid" ? fgColor : (bgColor ?? fgColor);
    return (colour && resolvedColour(colour, this.theme)) ?? null;
  }

  /** The style that is like another in all but its fill, which is of that colour. */
  filled(style: number, colour: string): number {
    const key = `${style} ${colour}`;
    const known = this.#filled.get(key);
    if (known !== undefined) return known;
    const number = this.#with(style, this.#fillFor(colour));
    this.#filled.set(key, number);
    return number;
  }

  /** The style that a marked cell had before, when its fill was of that colour or none: the first that is there, else a new one. */
  unfilled(style: number, before: string | null): number {
    const key = `${style} before ${before}`;
    const known = this.#filled.get(key);
    if (known !== undefined) return known;
    const bare = bareOf(this.#format(style));
    const found = this.#formats.findIndex((format, i) => bareOf(format) === bare && this.fillOf(i) === before);
    const number = found >= 0 ? found : before === null ? this.#with(style, 0) : this.filled(style, before);
    this.#filled.set(key, number);
    return number;
  }

  part(): Uint8Array {
    const { patch, fills, formats, placeFor, root } = this.#styles;
    const put = (list: StyleList | undefined, items: readonly string[], name: string, place: number): void => {
      const added = items.slice(list?.items.length ?? 0).join("");
      if (added === "") return;
      const open = `<${root.prefix}${name} count="${items.length}">`;
      const end = `</${root.prefix}${name}>`;
      if (!list) patch.insert(place, open + added + end);
      else if (list.tag.isEmpty) patch.replace(list.tag.from, list.tag.to, open + added + end);
      else {
        patch.replace(list.tag.from, list.tag.to, withAttributes(patch.text(list.tag.from, list.tag.to), { count: items.length }));
        patch.insert(list.end, added);
      }
    };
    put(fills, this.#fills, "fills", placeFor.fills);
    put(formats, this.#formats, "cellXfs", placeFor.formats);
    return patch.result();
  }

  #format(style: number): string {
    return this.#formats[style] ?? this.#formats[0] ?? this.#prefixed(PLAIN);
  }

  #fillNumber(style: number): number {
    return Number(/\sfillId\s*=\s*["'](\d+)["']/.exec(startOf(this.#format(style)))?.[1] ?? 0);
  }

  #with(style: number, fill: number): number {
    const start = startOf(this.#format(style));
    const format = withAttributes(start, { fillId: fill, applyFill: 1 }) + this.#format(style).slice(start.length);
    const known = this.#numbers.get(format);
    if (known !== undefined) return known;
    // Style 0 is what every cell without a style has: it is there before any is added.
    if (this.#formats.length === 0) this.#add(this.#prefixed(PLAIN));
    return this.#add(format);
  }

  #add(format: string): number {
    this.#numbers.set(format, this.#formats.length);
    return this.#formats.push(format) - 1;
  }

  #fillFor(colour: string): number {
    const fill = this.#prefixed(`<fill><patternFill patternType="solid"><fgColor rgb="FF${colour.slice(1)}"/><bgColor indexed="64"/></patternFill></fill>`);
    const known = this.#fills.indexOf(fill);
    if (known >= 0) return known;
    // The first two are fixed: none, and a grey pattern.
    for (const pattern of ["none", "gray125"].slice(this.#fills.length))
      this.#fills.push(this.#prefixed(`<fill><patternFill patternType="${pattern}"/></fill>`));
    return this.#fills.push(fill) - 1;
  }

  /** The colour of a fill that was added here. */
  #added(fill: number): string | null {
    const rgb = fill >= this.#styles.fillOf.length ? /rgb="FF([\dA-F]{6})"/i.exec(this.#fills[fill] ?? "")?.[1] : undefined;
    return rgb ? `#${rgb}` : null;
  }

  #prefixed(xml: string): string {
    return xml.replace(/<(\/?)/g, `<$1${this.#styles.root.prefix}`);
  }
}

const startOf = (format: string): string => format.slice(0, format.indexOf(">") + 1);

/** A format but for its fill. */
const bareOf = (format: string): string => {
  const start = startOf(format);
  return withAttributes(start, { fillId: null, applyFill: null }) + format.slice(start.length);
};

/** A list of the styles' part: what stands in it, and where more is put. */
interface StyleList {
  tag: Tag;
  end: number;
  items: string[];
}

interface Fill {
  pattern: string;
  colours: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/** What marking needs of the styles' part (ECMA-376 part 1, 18.8): fills and the formats of cells, as they are written. */
interface StylesPart {
  patch: BytesPatch;
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

function readStylesPart(part: Uint8Array, name: string): StylesPart {
  const patch = new BytesPatch(part);
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
