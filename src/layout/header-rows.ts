import { type Cell, isBlank } from "../core/cell.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { type ParsedHeading, parseHeading } from "../vocabulary/parse-heading.ts";
import { HEADING_FIELDS } from "../vocabulary/phrases.ts";
import type { HeaderRow, HeadingField } from "./mapping.ts";
import type { TableParts } from "./tables.ts";

/** What stands around a table and holds for all of it. */
export interface HeadingContext {
  engine?: string | undefined;
  characteristic?: string | undefined;
  unit?: string | undefined;
}

export const TITLE_TELLS: readonly HeadingField[] = ["engine", "characteristic", "unit"];

/** Rows between a table and a title that still belongs to it. */
const FARTHEST = 4;

/** Titles of the table first, then those above it, then the head of the sheet and its name. */
export function headingContextOf(book: WorkbookCells, table: TableParts, all: readonly TableParts[]): HeadingContext {
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
function titlesAbove(book: WorkbookCells, table: TableParts, all: readonly TableParts[]): string[] {
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
function headOf(book: WorkbookCells, { sheet }: TableParts, all: readonly TableParts[]): ParsedHeading[] {
  const page = book.sheet(sheet);
  const first = page?.values.findIndex((line) => line.some((cell) => !isBlank(cell))) ?? -1;
  if (!page || first < 0) return [];
  const row = page.row + first;
  if (all.some(({ body, headRows }) => Math.min(body.row, ...headRows) <= row)) return [];
  const says = page.values[first]!.filter((cell) => typeof cell === "string" && !isBlank(cell)).map((cell) => parseHeading(cell, TITLE_TELLS));
  const engines = new Set(all.flatMap(({ titles }) => titles.flatMap((title) => parseHeading(title, TITLE_TELLS).engine ?? [])));
  return engines.size > 1 ? says.map(({ engine: _, ...others }) => others) : says;
}

const WITH_PLACES: readonly HeadingField[] = ["height", "axis", "position"];

/**
 * What a line of headings tells: by the heading that it has itself, or by what most of its cells say.
 * `undefined` for words that are not known.
 */
export function headerRowOf(at: number, cells: readonly Cell[], name: Cell, isInnermost: boolean): HeaderRow | undefined {
  const tells = tellsOf(cells, name);
  if (tells.length === 0) return undefined;
  const firstBlank = cells.findIndex(isBlank);
  const merged = !isInnermost && firstBlank > 0;
  return { at, tells, merged };
}

function tellsOf(cells: readonly Cell[], name: Cell): HeadingField[] {
  const named = typeof name === "string" ? parseHeading(name, HEADING_FIELDS).names : undefined;
  switch (named) {
    case "engine":
    case "cylinder":
      return [named, ...limitRole(cells)];
    case "height":
    case "axis":
    case "position":
      return [named];
    case "characteristic":
      return ["characteristic", ...WITH_PLACES, ...limitRole(cells)];
    default: {
      const tells = tellsOfContents(cells);
      return tells.every((tell) => tell === "role") && areNumbered(cells) ? ["cylinder", ...tells] : tells;
    }
  }
}

/** A, B, C … over the readings of one size: the axes that it is measured along. */
export function axesRow(at: number, cells: readonly Cell[]): HeaderRow | undefined {
  const letters = cells.filter((cell) => !isBlank(cell)).map((cell) => String(cell).trim().toUpperCase());
  return letters.length > 1 && letters.every((letter, i) => letter === String.fromCharCode(65 + i)) ? { at, tells: ["axis"], merged: false } : undefined;
}

/** `Main 1`, `Main 2`, with names of limits between them: the journals of a crank are told apart as cylinders are. */
function areNumbered(cells: readonly Cell[]): boolean {
  const names = cells
    .filter((cell) => !isBlank(cell) && parseHeading(cell, HEADING_FIELDS).role === undefined)
    .map((cell) => String(cell).trim().toLowerCase());
  return names.length > 1 && new Set(names).size === names.length && names.every((name) => /^[\p{L}. ]{1,20}\d{1,2}$/u.test(name));
}

/** Limits stand below readings in one column with them. */
const limitRole = (cells: readonly Cell[]): HeadingField[] =>
  cells.some((cell) => (parseHeading(cell, HEADING_FIELDS).role ?? "value") !== "value") ? ["role"] : [];

function tellsOfContents(cells: readonly Cell[]): HeadingField[] {
  const said = cells.filter((cell) => !isBlank(cell)).map((cell) => parseHeading(cell, HEADING_FIELDS));
  const tells = new Set(said.flatMap(toldBy));
  // Upper and lower beside top and bottom are heights, not limits.
  const areHeights = said.some(({ places }) => places.some(({ kind }) => kind === "height"));
  const onlySides = cells.every(
    (cell) => typeof cell !== "string" || parseHeading(cell, HEADING_FIELDS).role === undefined || /^\s*(?:upper|lower)\b/i.test(cell),
  );
  if (tells.has("role") && areHeights && onlySides) tells.delete("role");
  if (tells.has("height") || tells.has("axis") || tells.has("position")) for (const tell of WITH_PLACES) tells.add(tell);
  return HEADING_FIELDS.filter((tell) => tells.has(tell));
}

function toldBy({ engine, cylinder, characteristic, places, role, unit }: ParsedHeading): HeadingField[] {
  return [
    ...(engine === undefined ? [] : (["engine"] as const)),
    ...(cylinder === undefined ? [] : (["cylinder"] as const)),
    ...(characteristic === undefined ? [] : (["characteristic"] as const)),
    ...places.map(({ kind }) => (kind === "place" ? ("position" as const) : kind)),
    ...(role === undefined ? [] : (["role"] as const)),
    ...(unit === undefined ? [] : (["unit"] as const)),
  ];
}
