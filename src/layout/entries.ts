import { type Cell, isBlank } from "../core/cell.ts";
import { gaugeFieldOf } from "../vocabulary/headings.ts";
import { type IdentityField, identityFieldOf } from "../vocabulary/identity.ts";
import type { CellPosition } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";

/** A name that is known and, right of it, what was typed: `Serial number | 0417`. */
export interface Entry {
  name: string;
  field: IdentityField;
  entry: Cell;
  /** Right of that, such as a unit. */
  beside: Cell;
  /** Where the entry stands, counted from the first of the sheet's block. */
  at: CellPosition;
}

const isEntryName = (text: string): boolean => identityFieldOf(text) !== undefined || gaugeFieldOf(text) !== undefined;

/** Cells of one row from the left, up to the first gap; a longer run is a table. */
const LONGEST_RUN = 4;

export const lengthOfRun = (cells: readonly unknown[]): number => {
  const end = cells.findIndex((cell) => isBlank(cell));
  return end < 0 ? cells.length : end;
};

/** Entries on a sheet that say whose engine it is and how it was measured. A row of headings has none. */
export function* entriesOn({ values }: SheetSnapshot): Generator<Entry> {
  for (const [row, line] of values.entries()) {
    for (const [c, name] of line.entries()) {
      if (typeof name !== "string" || !isBlank(line[c - 1])) continue;
      const field = identityFieldOf(name);
      if (field === undefined) continue;
      const entry = line[c + 1];
      if (lengthOfRun(line.slice(c)) > LONGEST_RUN || isBlank(entry) || (typeof entry === "string" && isEntryName(entry))) continue;
      yield { name, field, entry, beside: line[c + 2], at: { row, column: c + 1 } };
    }
  }
}
