/** A table by its place on the sheet; rows and columns count from 0. */
export interface TablePlace {
  name: string;
  top: number;
  left: number;
  /** Last row and column, totals included. */
  bottom: number;
  right: number;
  headerRows: number;
  totalsRows: number;
  columns: readonly string[];
}

/** What a reference such as `Limits[[#This Row],[Upper]]` names of a table, as the parser takes it apart. */
export interface TablePart {
  sections?: readonly (string | null)[];
  columns?: readonly string[];
}

export interface TableRange {
  top: number;
  left: number;
  bottom: number;
  right: number;
}

/** Why there is no such part, to follow on "This formula". */
export interface NoPart {
  code: "#REF!" | "#VALUE!";
  why: string;
}

/** The cells of a table that a reference names; `row` is that of the formula, for `@`. */
export function partOfTable(table: TablePlace, { sections = [], columns = [] }: TablePart, row: number | undefined): TableRange | NoPart {
  const rows = rowsOf(table, new Set(sections), row);
  if ("why" in rows) return rows;
  const [top, bottom] = rows;
  if (top > bottom) return { code: "#REF!", why: `refers to rows that the table ${table.name} does not have` };
  const across = columnsOf(table, columns);
  if ("why" in across) return across;
  return { top, bottom, left: across[0], right: across[1] };
}

function rowsOf(table: TablePlace, sections: ReadonlySet<string | null>, row: number | undefined): [number, number] | NoPart {
  const first = table.top + table.headerRows;
  const last = table.bottom - table.totalsRows;
  if (sections.has("this row")) {
    if (row === undefined || row < first || row > last)
      return { code: "#VALUE!", why: `refers to its own row of the table ${table.name}, but stands beside none` };
    return [row, row];
  }
  if (sections.has("all")) return [table.top, table.bottom];
  const parts: [number, number][] = [];
  if (sections.has("headers")) parts.push([table.top, first - 1]);
  if (sections.has("data") || sections.size === 0) parts.push([first, last]);
  if (sections.has("totals")) parts.push([last + 1, table.bottom]);
  return [Math.min(...parts.map(([top]) => top)), Math.max(...parts.map(([, bottom]) => bottom))];
}

function columnsOf(table: TablePlace, names: readonly string[]): [number, number] | NoPart {
  const places = names.map((name) => table.columns.findIndex((column) => column.toLowerCase() === name.toLowerCase()));
  const missing = places.indexOf(-1);
  if (missing >= 0) return { code: "#REF!", why: `names a column that the table ${table.name} does not have (${names[missing]})` };
  return places.length > 0 ? [table.left + Math.min(...places), table.left + Math.max(...places)] : [table.left, table.right];
}
