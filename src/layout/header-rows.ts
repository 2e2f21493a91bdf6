import { type Cell, isBlank } from "../core/cell.ts";
import { type ParsedHeading, parseHeading } from "../vocabulary/parse-heading.ts";
import { HEADING_FIELDS } from "../vocabulary/phrases.ts";
import type { HeadingField, HeadLine } from "./mapping.ts";

const WITH_PLACES: readonly HeadingField[] = ["height", "axis", "position"];

/**
 * What a line of headings tells: by the heading that it has itself, or by what most of its cells say.
 * `undefined` for words that are not known.
 */
export function headLineOf(at: number, cells: readonly Cell[], name: Cell, isInnermost: boolean): HeadLine | undefined {
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
    default:
      return tellsOfContents(cells);
  }
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
