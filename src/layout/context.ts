import { isBlank } from "../core/cell.ts";
import type { Book } from "../formula/workbook-cells.ts";
import { type ParsedHeading, parseHeading } from "../vocabulary/parse-heading.ts";
import type { HeadingField } from "./mapping.ts";
import type { TableParts } from "./tables.ts";

/** What stands around a table and holds for all of it. */
export interface Context {
  engine?: string | undefined;
  characteristic?: string | undefined;
  unit?: string | undefined;
}

const TITLE_TELLS: readonly HeadingField[] = ["engine", "characteristic", "unit"];
/** Rows between a table and a title that still belongs to it. */
const FARTHEST = 4;

/** Titles of the table first, then those above it, then the head of the sheet and its name. */
export function contextOf(book: Book, table: TableParts, all: readonly TableParts[]): Context {
  const titles = [...table.titles, ...titlesAbove(book, table, all)].map((title) => parseHeading(title, TITLE_TELLS));
  const head = headOf(book, table, all);
  const name = parseHeading(table.sheet, TITLE_TELLS);
  const first = (key: "engine" | "characteristic" | "unit", from: readonly ParsedHeading[]) => from.find((says) => says[key] !== undefined)?.[key];
  return {
    engine: first("engine", [...titles, ...head, name]),
    // The head of the sheet speaks of all its tables, so it does not say what one of them holds.
    characteristic: first("characteristic", [...titles, name]),
    unit: first("unit", [...titles, ...head, name]),
  };
}

/** Rows of one text above the table and over its columns, the nearest first, up to the next table. */
function titlesAbove(book: Book, table: TableParts, all: readonly TableParts[]): string[] {
  const { sheet, body } = table;
  const top = Math.min(body.row, ...table.headRows);
  const left = Math.min(body.column, ...table.headColumns);
  const right = body.column + body.columns;
  const titles: string[] = [];
  for (let row = top - 1; row >= Math.max(0, top - FARTHEST); row--) {
    if (
      all.some(
        ({ body: other }) => other !== body && row >= other.row && row < other.row + other.rows && other.column < right && left < other.column + other.columns,
      )
    )
      break;
    for (let column = left; column < right; column++) {
      const cell = book.value({ sheet, row, column });
      if (typeof cell === "string" && !isBlank(cell)) titles.push(cell);
    }
  }
  return titles;
}

/** The first row of the sheet, where it stands above every table and every other title agrees on the engine. */
function headOf(book: Book, { sheet }: TableParts, all: readonly TableParts[]): ParsedHeading[] {
  const page = book.sheet(sheet);
  const first = page?.values.findIndex((line) => line.some((cell) => !isBlank(cell))) ?? -1;
  if (!page || first < 0) return [];
  const row = page.row + first;
  if (all.some(({ body, headRows }) => Math.min(body.row, ...headRows) <= row)) return [];
  const says = page.values[first]!.filter((cell) => typeof cell === "string" && !isBlank(cell)).map((cell) => parseHeading(cell, TITLE_TELLS));
  const engines = new Set(all.flatMap(({ titles }) => titles.flatMap((title) => parseHeading(title, TITLE_TELLS).engine ?? [])));
  return engines.size > 1 ? says.map(({ engine: _, ...others }) => others) : says;
}
