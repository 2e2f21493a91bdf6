import type { Cell } from "../core/cell.ts";
import { LAYOUT_KEY, LAYOUT_ON_SHEET } from "./storage.ts";

/**
 * The sheet on which a layout of the shop's own is kept a second time, very hidden: its first cell says what it is,
 * the cells below hold the layout's text in pieces. It is known by its name and that cell, shown or hidden, as some
 * programs show it; no host tells of it as one of the workbook's sheets.
 */
export const LAYOUT_SHEET = "Crosshatch layout";
const TITLE = "Crosshatch keeps the layout of this workbook here once more, for programs that drop it elsewhere. Leave this sheet as it is.";

/** A cell takes 32,767 characters (Microsoft, "Excel specifications and limits"), some programs fewer bytes. */
const LONGEST = 8000;
/** Around each piece, so that none is taken for a number or a formula and none loses a space at its end. */
const EDGE = "|";

/** What stands in its first column. */
export function layoutCells(layout: string): string[] {
  const pieces: string[] = [];
  for (let at = 0; at < layout.length; at += LONGEST) pieces.push(EDGE + layout.slice(at, at + LONGEST) + EDGE);
  return [TITLE, ...pieces];
}

/** The layout in the first column of a sheet; nothing where the sheet is another one. */
export function layoutInCells(name: string, column: readonly Cell[]): string | undefined {
  if (name !== LAYOUT_SHEET || column[0] !== TITLE) return undefined;
  const pieces = column.slice(1).filter((cell) => typeof cell === "string" && cell.startsWith(EDGE) && cell.endsWith(EDGE) && cell.length > 1);
  return pieces.map((piece) => (piece as string).slice(1, -1)).join("");
}

/** What is to stand on the sheet of a workbook that keeps these texts; an empty text for no sheet. */
export const layoutForSheet = (texts: ReadonlyMap<string, string>): string => texts.get(LAYOUT_ON_SHEET) ?? texts.get(LAYOUT_KEY) ?? "";
