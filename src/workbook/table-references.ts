import type { Rectangle } from "./address.ts";

/** A table by its place on the sheet. */
export interface TablePlace {
  name: string;
  /** With its headings and totals. */
  area: Rectangle;
  headerRows: number;
  totalsRows: number;
  columns: readonly string[];
}

/** What a reference such as `Limits[[#This Row],[Upper]]` names of a table, as the parser takes it apart. */
export interface TablePart {
  sections?: readonly (string | null)[];
  columns?: readonly string[];
}

/** Why there is no such part, to follow on "This formula". */
export interface NoPart {
  code: "#REF!" | "#VALUE!";
  why: string;
}

/** The cells of a table that a reference names; `row` is that of the formula, for `@`. */
export function partOfTable(table: TablePlace, { sections = [], columns = [] }: TablePart, row: number | undefined): Rectangle | NoPart {
  const down = rowsOf(table, new Set(sections), row);
  if ("why" in down) return down;
  const [first, last] = down;
  if (first > last) return { code: "#REF!", why: `refers to rows that the table ${table.name} does not have` };
  const across = columnsOf(table, columns);
  if ("why" in across) return across;
  return { row: first, column: across[0], rows: last - first + 1, columns: across[1] - across[0] + 1 };
}

/** First and last row. */
function rowsOf(table: TablePlace, sections: ReadonlySet<string | null>, row: number | undefined): [number, number] | NoPart {
  const { row: top, rows } = table.area;
  const end = top + rows - 1;
  const first = top + table.headerRows;
  const last = end - table.totalsRows;
  if (sections.has("this row")) {
    if (row === undefined || row < first || row > last)
      return { code: "#VALUE!", why: `refers to its own row of the table ${table.name}, but stands beside none` };
    return [row, row];
  }
  if (sections.has("all")) return [top, end];
  const parts: [number, number][] = [];
  if (sections.has("headers")) parts.push([top, first - 1]);
  if (sections.has("data") || sections.size === 0) parts.push([first, last]);
  if (sections.has("totals")) parts.push([last + 1, end]);
  return [Math.min(...parts.map(([from]) => from)), Math.max(...parts.map(([, to]) => to))];
}

/** First and last column. */
function columnsOf(table: TablePlace, names: readonly string[]): [number, number] | NoPart {
  const places = names.map((name) => table.columns.findIndex((column) => column.toLowerCase() === name.toLowerCase()));
  const missing = places.indexOf(-1);
  if (missing >= 0) return { code: "#REF!", why: `names a column that the table ${table.name} does not have (${names[missing]})` };
  const { column, columns } = table.area;
  return places.length > 0 ? [column + Math.min(...places), column + Math.max(...places)] : [column, column + columns - 1];
}
