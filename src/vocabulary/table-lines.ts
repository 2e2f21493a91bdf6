import { type Cell, isBlank, isCellError } from "../core/cell.ts";
import { READING_FIELDS } from "./heading-words.ts";
import { type Columns, type ComparisonField, readHeadings } from "./headings.ts";

/** One row of a table; rows count from the first of the sheet's block, `top` is that of the headings. */
export interface TableLine {
  columns: Columns;
  cells: ColumnFields;
  row: number;
  top: number;
}

/** Rows below headings that `serves` accepts, up to a gap with something else behind it. */
export function* tableLines(
  { values }: { values: readonly (readonly Cell[])[] },
  serves: (columns: Columns) => boolean,
  goesOn: (cells: ColumnFields) => boolean,
  fields: readonly ComparisonField[] = READING_FIELDS,
): Generator<TableLine> {
  let columns: Columns | undefined;
  let top = 0;
  let gap = false;
  for (const [r, line] of values.entries()) {
    const headings = headingsOf(line, serves);
    if (headings) {
      columns = headings;
      top = r;
      gap = false;
    } else if (columns) {
      const cells = fieldsOf(columns, line, fields);
      if (isBlankRow(cells)) gap = true;
      // Behind a gap something else may stand in the same columns.
      else if (gap && !goesOn(cells)) columns = undefined;
      else yield { columns, cells, row: r, top };
    }
  }
}

export type ColumnFields = Partial<Record<ComparisonField, Cell>>;

/** The columns, when the row is one of headings. */
function headingsOf(line: readonly Cell[], serves: (columns: Columns) => boolean): Columns | undefined {
  const texts = line.map((cell) => (typeof cell === "string" ? cell : ""));
  if (texts.filter(Boolean).length < 2) return undefined;
  const columns = readHeadings(texts);
  return serves(columns) ? columns : undefined;
}

const fieldsOf = ({ at }: Columns, line: readonly Cell[], fields: readonly ComparisonField[]): ColumnFields =>
  Object.fromEntries(fields.flatMap((field) => (at[field] === undefined ? [] : [[field, line[at[field]]]])));

const isBlankRow = (cells: ColumnFields): boolean => Object.values(cells).every(isBlank);

/** Every text with a number in the next cell of its row: `Hours run | 240`. */
export function* numbersBesideTexts(sheets: readonly { values: readonly (readonly Cell[])[] }[]): Generator<[text: string, number: number]> {
  for (const { values } of sheets) {
    for (const line of values) {
      for (const [c, cell] of line.entries()) {
        const beside = line[c + 1];
        if (typeof cell === "string" && typeof beside === "number") yield [cell, beside];
      }
    }
  }
}

/** A cell as the words that stand in it; an error says nothing. */
export const cellText = (cell: Cell): string => (isBlank(cell) || isCellError(cell) ? "" : String(cell));
