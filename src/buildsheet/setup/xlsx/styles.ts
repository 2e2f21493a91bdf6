import { MARK_FILL } from "../../../sheet/sheet-host.ts";
import type { DescribedCell, Look } from "../model.ts";
import { element, HEADING, MAIN } from "./xml.ts";

/** Places of fonts, fills and borders in the lists below, by look. */
interface Parts {
  font: number;
  fill: number;
  border: number;
  alignment?: string;
}

const FONTS = [
  '<font><sz val="11"/><name val="Calibri"/><family val="2"/></font>',
  '<font><b/><sz val="11"/><name val="Calibri"/><family val="2"/></font>',
  '<font><b/><sz val="14"/><name val="Calibri"/><family val="2"/></font>',
  '<font><i/><sz val="11"/><color rgb="FF5A646B"/><name val="Calibri"/><family val="2"/></font>',
];

const solid = (colour: string): string => `<fill><patternFill patternType="solid"><fgColor rgb="FF${colour}"/><bgColor indexed="64"/></patternFill></fill>`;

// The first two are fixed by the format.
const FILLS = ['<fill><patternFill patternType="none"/></fill>', '<fill><patternFill patternType="gray125"/></fill>', solid("FFF8E1"), solid("E3E8EC")];

const SIDE = (side: string): string => `<${side} style="thin"><color rgb="FFB8C0C6"/></${side}>`;
const BORDERS = [
  "<border><left/><right/><top/><bottom/><diagonal/></border>",
  `<border>${["left", "right", "top", "bottom"].map(SIDE).join("")}<diagonal/></border>`,
];

const LOOKS: Readonly<Record<Look, Parts>> = {
  plain: { font: 0, fill: 0, border: 0 },
  title: { font: 2, fill: 0, border: 0 },
  note: { font: 3, fill: 0, border: 0 },
  head: { font: 1, fill: 3, border: 1, alignment: '<alignment vertical="center" wrapText="1"/>' },
  label: { font: 0, fill: 0, border: 1, alignment: '<alignment horizontal="left"/>' },
  typed: { font: 0, fill: 2, border: 1 },
  result: { font: 0, fill: 0, border: 1 },
};

/** Fills that repeat the words of verdicts, in the order of their places in the file. */
const VERDICT_FILLS = [
  { words: ["over", "under"], colour: MARK_FILL.outside },
  { words: ["not proven"], colour: MARK_FILL.doubt },
  { words: ["near limit"], colour: MARK_FILL.near },
];
export const VERDICT_STYLES: readonly [word: string, style: number][] = VERDICT_FILLS.flatMap(({ words }, i) =>
  words.map((word) => [word, i] as [string, number]),
);

/** Codes that every program knows by number; others are listed in the file. */
const KNOWN_FORMATS: Readonly<Record<string, number>> = { General: 0, "0": 1, "0.00": 2 };
const FIRST_OWN_FORMAT = 164;

/** Gathers the styles that cells need, each once, and writes the part that lists them. */
export class Styles {
  readonly #xfs = new Map<string, number>();
  readonly #formats = new Map<string, number>();
  readonly #written: string[] = [];

  constructor() {
    this.of({ look: "plain" });
  }

  /** The place of a cell's style in the list. */
  of({ look, format = "General" }: Pick<DescribedCell, "look" | "format">): number {
    const key = `${look}|${format}`;
    let place = this.#xfs.get(key);
    if (place === undefined) {
      place = this.#written.push(this.#xf(LOOKS[look], this.#formatId(format))) - 1;
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
    const dxfs = VERDICT_FILLS.map(({ colour }) => `<dxf><fill><patternFill><bgColor rgb="FF${colour.slice(1)}"/></patternFill></fill></dxf>`);
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
