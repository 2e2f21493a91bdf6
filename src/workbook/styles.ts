import { columnLetters } from "./address.ts";
import { MARK_FILL } from "./port.ts";
import type { CellStyle, Rule, SheetSpec } from "./sheet-spec.ts";

/** What a style is made of; what is not named is as in any other cell. Colours are `#RRGGBB`. */
export interface StyleParts {
  isBold?: true;
  isItalic?: true;
  /** Of the letters, in points. */
  size?: number;
  ink?: string;
  fill?: string;
  /** Thin lines of this colour on all four sides. */
  border?: string;
  isLeft?: true;
  /** In the middle of its height, in as many lines as it takes. */
  isWrapped?: true;
}

const BORDER = "#B8C0C6";

/** One place for every adapter and for the writer of files. */
export const STYLES: Readonly<Record<CellStyle, StyleParts>> = {
  plain: {},
  typed: { fill: "#FFF8E1", border: BORDER },
  // With an ink of its own: looks of tables may have white letters for headings.
  head: { isBold: true, ink: "#1F2A30", fill: "#E3E8EC", border: BORDER, isWrapped: true },
  title: { isBold: true, size: 14 },
  note: { ink: "#3C444A", isLeft: true, isWrapped: true },
  label: { border: BORDER, isLeft: true },
  result: { border: BORDER },
};

/** Fills that repeat the words of verdicts. */
export const VERDICT_FILLS: readonly [word: string, fill: string][] = [
  ["over", MARK_FILL.outside],
  ["under", MARK_FILL.outside],
  ["not proven", MARK_FILL.doubt],
  ["near limit", MARK_FILL.near],
];

/** Height in points of a row of headings: two lines of words, with room for the filter's button. */
const HEAD_HEIGHT = 33;
const TITLE_HEIGHT = 22;
/** Of a line of words. */
const LINE_HEIGHT = 15;
/** Of a column that has no width of its own, in characters, and how much of a width words fill at most: letters of a text are wider than figures now and then. */
const USUAL_WIDTH = 8;
const FILLED = 0.85;

/** What the heights of a sheet's rows follow from. */
interface Laid extends Pick<SheetSpec, "merges" | "widths"> {
  cells: readonly { row: number; column: number; content: number | string; style: unknown }[];
}

/** Heights in points of rows that need more than one line, by row: headings, and notes over several columns, for which no program finds the height. */
export function rowHeights({ cells, merges, widths }: Laid): Map<number, number> {
  const heights = new Map<number, number>();
  const atLeast = (row: number, height: number) => heights.set(row, Math.max(heights.get(row) ?? 0, height));
  for (const { row, column, content, style } of cells) {
    if (style === "head") atLeast(row, HEAD_HEIGHT);
    if (style === "title") atLeast(row, TITLE_HEIGHT);
    const merged = style === "note" ? merges.find((area) => area.row === row && area.column === column) : undefined;
    if (!merged) continue;
    const wide = Array.from({ length: merged.columns }, (_, i) => widths[column + i] ?? USUAL_WIDTH).reduce((sum, width) => sum + width, 0);
    const lines = Math.ceil(String(content).length / (wide * FILLED));
    if (lines > 1) atLeast(row, lines * LINE_HEIGHT + 2);
  }
  return heights;
}

/** A sheet's own measures on a screen at its usual size: a character of a width is 7 pixels (ECMA-376 part 1, 18.3.1.13). */
export const pixelsOf = (characters: number): number => Math.round(characters * 7);
export const POINTS_OF_A_PIXEL = 3 / 4;

/** Margins in inches. */
export const MARGINS = { left: 0.5, right: 0.5, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 } as const;

/** At the foot of a printed page, in the codes of a sheet (ECMA-376 part 1, 18.3.1.46). */
export const FOOTER = { left: "&F: &A", right: "Page &P of &N" } as const;

/** Rows and columns that are printed on every page. */
export const titleRows = (rows: number): string => `$1:$${rows}`;
export const titleColumns = (columns: number): string => `$A:$${columnLetters(columns - 1)}`;

/** Above what a person is told who types something that may not stand there. */
export const REFUSED_TITLE = "Not here";

/** Dates count in days; this one is the first of the year 2000. */
const EARLIEST_DATE = 36_526;

/** A rule as every sheet knows such: numbers and dates compared with one bound, or a list. */
export type Allowed =
  | { type: "decimal"; operator: "greaterThan" | "greaterThanOrEqual"; bound: number }
  | { type: "date"; operator: "greaterThan"; bound: number }
  | { type: "list"; words: readonly string[] }
  | { type: "list"; name: string }
  /** A condition that nothing typed meets. */
  | { type: "custom"; formula: "FALSE" };

export function allowed(rule: Rule): Allowed {
  switch (rule.kind) {
    case "above zero":
      return { type: "decimal", operator: "greaterThan", bound: 0 };
    case "at least zero":
      return { type: "decimal", operator: "greaterThanOrEqual", bound: 0 };
    case "number":
      return { type: "decimal", operator: "greaterThanOrEqual", bound: -1e300 };
    case "date":
      return { type: "date", operator: "greaterThan", bound: EARLIEST_DATE };
    case "one of":
      return { type: "list", words: rule.words };
    case "listed":
      return { type: "list", name: rule.name };
    case "calculated":
      return { type: "custom", formula: "FALSE" };
  }
}
