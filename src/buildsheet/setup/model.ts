/**
 * A build sheet as data: what stands where, how it looks, what may be typed. Whoever writes it, into
 * a file or through a host, finds everything here and decides nothing. Rows and columns count from 0.
 */
export interface BuildSheet {
  title: string;
  /** In the order of the tabs. */
  sheets: DescribedSheet[];
  names: DescribedName[];
}

export interface Box {
  row: number;
  column: number;
  rows: number;
  columns: number;
}

export interface DescribedSheet {
  name: string;
  /** Of the columns from A on, in characters. */
  widths: number[];
  /** Rows and columns that stay in view. */
  frozen: { rows: number; columns: number };
  cells: DescribedCell[];
  tables: DescribedTable[];
  validations: Validation[];
  /** Cells that show verdicts: their fill repeats the word. */
  verdicts: Box[];
  merges: Box[];
  print: { paper: "A4" | "letter"; isLandscape: boolean };
}

/** Height in points of a row of headings: two lines of words, with room for the filter's button. */
export const HEAD_HEIGHT = 33;

/** How a cell looks: what people type stands out from what is calculated. */
export type Look = "title" | "note" | "head" | "label" | "typed" | "result" | "plain";

export interface DescribedCell {
  row: number;
  column: number;
  /** A formula starts with `=`, in the names that people type; `""` is a cell that is only styled. */
  content: number | string;
  look: Look;
  /** Number format code, such as `0.000`. */
  format?: string;
}

/** A table of the sheet; `row` and `column` are its first heading. */
export interface DescribedTable {
  name: string;
  row: number;
  column: number;
  /** Rows below the headings. */
  rows: number;
  headings: string[];
}

/** What may be typed into a cell. Nothing at all always may. */
export type Rule =
  | { kind: "above zero" | "at least zero" | "number" | "date" }
  | { kind: "one of"; words: readonly string[] }
  | { kind: "listed"; name: string };

export interface Validation {
  area: Box;
  rule: Rule;
  /** Said when something else is typed. */
  sentence: string;
}

export interface DescribedName {
  name: string;
  /** What it stands for, without `=`. */
  formula: string;
}
