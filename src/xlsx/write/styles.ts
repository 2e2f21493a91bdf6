import { MARK_FILL } from "../../workbook/port.ts";
import type { CellStyle } from "../../workbook/sheet-spec.ts";
import { STYLES, VERDICT_FILLS } from "../../workbook/styles.ts";
import type { FileCell, FileStyle } from "./workbook-file.ts";
import { HEADING, MAIN, xmlElement } from "./xml.ts";

/** Places of fonts, fills and borders in their lists. */
interface Parts {
  font: number;
  fill: number;
  border: number;
  alignment: string | undefined;
}

const rgb = (colour: string): string => `rgb="FF${colour.slice(1)}"`;

const font = ({ isBold, isItalic, size = 11, ink }: FileStyle): string =>
  `<font>${isBold ? "<b/>" : ""}${isItalic ? "<i/>" : ""}<sz val="${size}"/>${ink ? `<color ${rgb(ink)}/>` : ""}<name val="Calibri"/><family val="2"/></font>`;
const solid = (colour: string): string => `<fill><patternFill patternType="solid"><fgColor ${rgb(colour)}/><bgColor indexed="64"/></patternFill></fill>`;
const lines = (colour: string): string =>
  `<border>${["left", "right", "top", "bottom"].map((side) => `<${side} style="thin"><color ${rgb(colour)}/></${side}>`).join("")}<diagonal/></border>`;

function placeIn(list: string[], part: string): number {
  const at = list.indexOf(part);
  return at < 0 ? list.push(part) - 1 : at;
}

function alignment({ isLeft, isWrapped, isTop }: FileStyle): string | undefined {
  if (!isLeft && !isWrapped && !isTop) return undefined;
  return xmlElement("alignment", {
    horizontal: isLeft ? "left" : undefined,
    vertical: isTop ? "top" : isWrapped ? "center" : undefined,
    wrapText: isWrapped ? 1 : undefined,
  });
}

/** Fills of verdicts, each once, in the order of their places in the file. */
const DXF_FILLS = [...new Set(VERDICT_FILLS.map(([, fill]) => fill))];
export const VERDICT_STYLES: readonly [word: string, style: number][] = VERDICT_FILLS.map(([word, fill]) => [word, DXF_FILLS.indexOf(fill)]);
export const SHADED = DXF_FILLS.indexOf(MARK_FILL.outside);

/** Codes that every program knows by number; others are listed in the file. */
const KNOWN_FORMATS: Readonly<Record<string, number>> = { General: 0, "0": 1, "0.00": 2, "@": 49 };
const FIRST_OWN_FORMAT = 164;

/** Gathers the styles that cells need, each once, and writes the part that lists them. */
export class Styles {
  readonly #xfs = new Map<string, number>();
  readonly #formats = new Map<string, number>();
  readonly #written: string[] = [];
  readonly #fonts: string[] = [];
  // The first two fills and the first border are fixed by the format.
  readonly #fills = ['<fill><patternFill patternType="none"/></fill>', '<fill><patternFill patternType="gray125"/></fill>'];
  readonly #borders = ["<border><left/><right/><top/><bottom/><diagonal/></border>"];
  readonly #named: Readonly<Record<CellStyle, Parts>>;

  constructor() {
    this.#named = Object.fromEntries(Object.entries(STYLES).map(([name, style]) => [name, this.#partsOf(style)])) as Record<CellStyle, Parts>;
    this.of({ style: "plain" });
  }

  /** The place of a cell's style in the list. */
  of({ style, format = "General" }: Pick<FileCell, "style" | "format">): number {
    const key = `${typeof style === "string" ? style : JSON.stringify(style)}|${format}`;
    let place = this.#xfs.get(key);
    if (place === undefined) {
      place = this.#written.push(this.#xf(typeof style === "string" ? this.#named[style] : this.#partsOf(style), this.#formatId(format))) - 1;
      this.#xfs.set(key, place);
    }
    return place;
  }

  #partsOf(style: FileStyle): Parts {
    const { fill, border } = style;
    return {
      font: placeIn(this.#fonts, font(style)),
      fill: fill ? placeIn(this.#fills, solid(fill)) : 0,
      border: border ? placeIn(this.#borders, lines(border)) : 0,
      alignment: alignment(style),
    };
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
    return xmlElement("xf", attributes, alignment);
  }

  /** ECMA-376 part 1, 18.8.39. */
  part(): string {
    const formats = [...this.#formats].map(([formatCode, numFmtId]) => xmlElement("numFmt", { numFmtId, formatCode }));
    const dxfs = DXF_FILLS.map((colour) => `<dxf><fill><patternFill><bgColor ${rgb(colour)}/></patternFill></fill></dxf>`);
    const counted = (name: string, items: readonly string[]) => xmlElement(name, { count: items.length }, items.join(""));
    return `${HEADING}${xmlElement(
      "styleSheet",
      { xmlns: MAIN },
      [
        formats.length ? counted("numFmts", formats) : "",
        counted("fonts", this.#fonts),
        counted("fills", this.#fills),
        counted("borders", this.#borders),
        '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>',
        counted("cellXfs", this.#written),
        '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>',
        counted("dxfs", dxfs),
        '<tableStyles count="0" defaultTableStyle="TableStyleMedium2" defaultPivotStyle="PivotStyleLight16"/>',
      ].join(""),
    )}`;
  }
}
