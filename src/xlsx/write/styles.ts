import type { CellSpec, CellStyle } from "../../workbook/sheet-spec.ts";
import { STYLES, type StyleParts, VERDICT_FILLS } from "../../workbook/styles.ts";
import { element, HEADING, MAIN } from "./xml.ts";

/** Places of fonts, fills and borders in the lists below. */
interface Parts {
  font: number;
  fill: number;
  border: number;
  alignment?: string;
}

const rgb = (colour: string): string => `rgb="FF${colour.slice(1)}"`;

const font = ({ isBold, isItalic, size = 11, ink }: StyleParts): string =>
  `<font>${isBold ? "<b/>" : ""}${isItalic ? "<i/>" : ""}<sz val="${size}"/>${ink ? `<color ${rgb(ink)}/>` : ""}<name val="Calibri"/><family val="2"/></font>`;
const solid = (colour: string): string => `<fill><patternFill patternType="solid"><fgColor ${rgb(colour)}/><bgColor indexed="64"/></patternFill></fill>`;
const lines = (colour: string): string =>
  `<border>${["left", "right", "top", "bottom"].map((side) => `<${side} style="thin"><color ${rgb(colour)}/></${side}>`).join("")}<diagonal/></border>`;

const FONTS: string[] = [];
// The first two fills and the first border are fixed by the format.
const FILLS = ['<fill><patternFill patternType="none"/></fill>', '<fill><patternFill patternType="gray125"/></fill>'];
const BORDERS = ["<border><left/><right/><top/><bottom/><diagonal/></border>"];

function placeIn(list: string[], part: string): number {
  const at = list.indexOf(part);
  return at < 0 ? list.push(part) - 1 : at;
}

function partsOf(look: StyleParts): Parts {
  const { fill, border, isLeft, isWrapped } = look;
  const alignment = element("alignment", {
    horizontal: isLeft ? "left" : undefined,
    vertical: isWrapped ? "center" : undefined,
    wrapText: isWrapped ? 1 : undefined,
  });
  return {
    font: placeIn(FONTS, font(look)),
    fill: fill ? placeIn(FILLS, solid(fill)) : 0,
    border: border ? placeIn(BORDERS, lines(border)) : 0,
    ...(isLeft || isWrapped ? { alignment } : {}),
  };
}

const PARTS = Object.fromEntries(Object.entries(STYLES).map(([look, parts]) => [look, partsOf(parts)])) as Record<CellStyle, Parts>;

/** Fills of verdicts, each once, in the order of their places in the file. */
const DXF_FILLS = [...new Set(VERDICT_FILLS.map(([, fill]) => fill))];
export const VERDICT_STYLES: readonly [word: string, style: number][] = VERDICT_FILLS.map(([word, fill]) => [word, DXF_FILLS.indexOf(fill)]);

/** Codes that every program knows by number; others are listed in the file. */
const KNOWN_FORMATS: Readonly<Record<string, number>> = { General: 0, "0": 1, "0.00": 2 };
const FIRST_OWN_FORMAT = 164;

/** Gathers the styles that cells need, each once, and writes the part that lists them. */
export class Styles {
  readonly #xfs = new Map<string, number>();
  readonly #formats = new Map<string, number>();
  readonly #written: string[] = [];

  constructor() {
    this.of({ style: "plain" });
  }

  /** The place of a cell's style in the list. */
  of({ style, format = "General" }: Pick<CellSpec, "style" | "format">): number {
    const key = `${style}|${format}`;
    let place = this.#xfs.get(key);
    if (place === undefined) {
      place = this.#written.push(this.#xf(PARTS[style], this.#formatId(format))) - 1;
      this.#xfs.set(key, place);
    }
    return place;
  }

  #formatId(code: string): number {
    const known = KNOWN_FORMATS[code] ?? this.#formats.get(code);
    if (known !== undefined) return known;
    const id = FIRST_OWN_FORMAT + this.#formats.size;
    this.#formats.set(code, id);
    return id;
  }

  #xf({ font, fill, border, alignment }: Parts, numFmtId: number): string {
    const attributes = {
      numFmtId,
      fontId: font,
      fillId: fill,
      borderId: border,
      xfId: 0,
      applyNumberFormat: numFmtId ? 1 : undefined,
      applyFont: font ? 1 : undefined,
      applyFill: fill ? 1 : undefined,
      applyBorder: border ? 1 : undefined,
      applyAlignment: alignment ? 1 : undefined,
    };
    return element("xf", attributes, alignment);
  }

  /** ECMA-376 part 1, 18.8.39. */
  part(): string {
    const formats = [...this.#formats].map(([formatCode, numFmtId]) => element("numFmt", { numFmtId, formatCode }));
    const dxfs = DXF_FILLS.map((colour) => `<dxf><fill><patternFill><bgColor ${rgb(colour)}/></patternFill></fill></dxf>`);
    const counted = (name: string, items: readonly string[]) => element(name, { count: items.length }, items.join(""));
    return `${HEADING}${element(
      "styleSheet",
      { xmlns: MAIN },
      [
        formats.length ? counted("numFmts", formats) : "",
        counted("fonts", FONTS),
        counted("fills", FILLS),
        counted("borders", BORDERS),
        '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>',
        counted("cellXfs", this.#written),
        '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>',
        counted("dxfs", dxfs),
        '<tableStyles count="0" defaultTableStyle="TableStyleMedium2" defaultPivotStyle="PivotStyleLight16"/>',
      ].join(""),
    )}`;
  }
}
