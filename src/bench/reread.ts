import { isCellError } from "../core/cell.ts";
import { cellName, placeName } from "../sheet/address.ts";
import type { CellFile } from "../sheet/xlsx/model.ts";
import { boxOf } from "../sheet/xlsx/place.ts";
import { readXlsx } from "../sheet/xlsx/read.ts";
import type { SavedCell } from "./save-cells.ts";
import { storedFormula } from "./stored-formula.ts";

/** What was to be saved: the sheets in order, each with its cells by name. */
export type SavedSheets = readonly { name: string; cells: ReadonlyMap<string, SavedCell> }[];

/**
 * Reads a saved workbook as any other program would and compares it with what was to be saved: the
 * places of the cells that differ. Whoever saves over months of work should not find out later.
 */
export function differences(bytes: Uint8Array, saved: SavedSheets): string[] {
  const book = readXlsx(bytes);
  const places: string[] = [];
  saved.forEach(({ name, cells }, i) => {
    const sheet = book.sheets[i];
    const read = new Map(sheet?.cells.map((cell) => [cellName(cell), cell]));
    const filled = filledBy(cells);
    for (const [address, cell] of cells) {
      // Cells that a formula fills are not read as cells of their own.
      if (filled.has(address)) continue;
      if (sheet?.name !== name || !isSame(cell, read.get(address))) places.push(placeOf(name, address));
      read.delete(address);
    }
    for (const address of read.keys()) places.push(placeOf(name, address));
  });
  return places;
}

/** The cells that formulas fill, without those of the formulas. */
function filledBy(cells: ReadonlyMap<string, SavedCell>): Set<string> {
  const filled = new Set<string>();
  for (const [address, { spill }] of cells) {
    if (spill === undefined) continue;
    const { top, left, bottom, right } = boxOf(spill, "");
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) filled.add(cellName({ row, column }));
    }
    filled.delete(address);
  }
  return filled;
}

function isSame(saved: SavedCell, read: CellFile | undefined): boolean {
  const { formula, spill, value } = saved;
  if (!read) return formula === undefined && (value === "" || value === null);
  if ((read.formula === undefined ? undefined : storedFormula(read.formula)) !== formula) return false;
  if (spill !== undefined) {
    const { top, left, bottom, right } = boxOf(spill, "");
    if (read.array?.rows !== bottom - top + 1 || read.array.columns !== right - left + 1) return false;
  }
  if (isCellError(value)) return isCellError(read.value);
  return (read.value ?? "") === (value ?? "");
}

const placeOf = (sheet: string, address: string): string => {
  const { top, left } = boxOf(address, "");
  return placeName({ sheet, row: top, column: left });
};
