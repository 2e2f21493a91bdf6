import { NAMESPACE } from "../core/define.ts";
import { keyOf, MOST_COLUMNS } from "../workbook/address.ts";
import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import { formulasOf } from "./contents.ts";
import { readersOf } from "./readers.ts";
import type { Area } from "./references.ts";

/** References that are looked through; a workbook that needs more is taken to rest on what is unknown throughout. */
const MOST_LOOKS = 20_000_000;
/** Refers to what its formula does not name. */
const ROVING = /\b(?:INDIRECT|OFFSET)\s*\(/i;
const OURS = new RegExp(`\\b${NAMESPACE}\\.[A-Z]`, "i");

/**
 * Formulas of which the file may say more than the calculation does: `sources`, that could not be
 * calculated, and all that rest on them. With `doubtful` values every formula counts that has a value in
 * the file and calls none of our functions.
 */
export function unknownFormulas(book: WorkbookFile, sources: Iterable<CellFile>, doubtful: boolean): Set<CellFile> {
  const unknown = new Set(sources);
  if (doubtful) for (const [cell] of formulasOf(book)) if (cell.value !== null && !OURS.test(cell.formula ?? "")) unknown.add(cell);
  if (unknown.size === 0) return unknown;
  const cells = book.sheets.map((): Set<number> => new Set());
  for (const [cell, sheet] of formulasOf(book)) if (unknown.has(cell)) fill(cells[sheet]!, cell);
  let looks = 0;
  let left = readersOf(book).filter(({ cell }) => !unknown.has(cell));
  for (let found = true; found; ) {
    found = false;
    left = left.filter(({ cell, sheet, areas }) => {
      looks += areas.length;
      const roves = ROVING.test(cell.formula!);
      if (looks <= MOST_LOOKS && !roves && !areas.some((area) => holdsAny(area, cells[area.sheet]!, (steps) => (looks += steps)))) return true;
      unknown.add(cell);
      fill(cells[sheet]!, cell);
      found = true;
      return false;
    });
  }
  return unknown;
}

/** The cells that a formula filled when the file was saved. */
function fill(keys: Set<number>, { row, column, array = { rows: 1, columns: 1, grows: false } }: CellFile): void {
  for (let r = 0; r < array.rows; r++) for (let c = 0; c < array.columns; c++) keys.add(keyOf({ row: row + r, column: column + c }));
}

/** Looks at the cells of the area, or at those that are unknown, whichever are fewer. */
function holdsAny({ top, left, bottom, right }: Area, keys: ReadonlySet<number>, count: (steps: number) => void): boolean {
  const size = (bottom - top + 1) * (right - left + 1);
  count(Math.min(size, keys.size));
  if (size <= keys.size) {
    for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) if (keys.has(keyOf({ row, column }))) return true;
    return false;
  }
  for (const key of keys) {
    const row = Math.floor(key / MOST_COLUMNS);
    const column = key % MOST_COLUMNS;
    if (row >= top && row <= bottom && column >= left && column <= right) return true;
  }
  return false;
}
