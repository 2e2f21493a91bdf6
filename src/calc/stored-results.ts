import { isBlank } from "../core/cell.ts";
import { namesOwnFunction } from "../core/define.ts";
import { isSameResult, noResultOf } from "../formula/shown-results.ts";
import { keyOf } from "../workbook/address.ts";
import type { SheetSnapshot, StoredResult } from "../workbook/port.ts";
import type { CellFile, SheetFile } from "../xlsx/model.ts";

/** What gives something else on another day needs no mending. */
const CHANGES_BY_ITSELF = /\b(?:TODAY|NOW|RAND|RANDBETWEEN|RANDARRAY)\s*\(/i;

/** The results of our functions that a file keeps otherwise than they come out, apart from those of which it may know more. A file without values keeps none. */
export function storedOtherwise({ cells, filled }: SheetFile, { values }: Pick<SheetSnapshot, "values">, unknown: () => ReadonlySet<CellFile>): StoredResult[] {
  const found: StoredResult[] = [];
  for (const cell of cells) {
    const { row, column, value, formula, array = { rows: 1, columns: 1 } } = cell;
    if (formula === undefined || value === null || !namesOwnFunction(formula) || CHANGES_BY_ITSELF.test(formula)) continue;
    for (let r = row; r < row + array.rows; r++) {
      for (let c = column; c < column + array.columns; c++) {
        const kept = r === row && c === column ? value : (filled?.get(keyOf({ row: r, column: c })) ?? null);
        // Many programs keep nothing, or an empty text, for what they cannot calculate.
        // What knows nothing of our functions keeps #NAME? for all of them: they are calculated here, and nothing wrong is shown.
        if (isBlank(kept) || noResultOf(kept) !== undefined || isSameResult(values[r]?.[c] ?? "", kept)) continue;
        if (unknown().has(cell)) break;
        found.push({ cell: { row: r, column: c }, formulaAt: { row, column }, value: kept });
      }
    }
  }
  return found;
}
