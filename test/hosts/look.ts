import type { Cell } from "../../src/core/cell.ts";
import type { CellAddress } from "../../src/workbook/address.ts";
import { HostRefusal, type WorkbookSnapshot } from "../../src/workbook/port.ts";

export const at = (sheet: string, row: number, column: number): CellAddress => ({ sheet, row, column });

function look<T>(book: WorkbookSnapshot, pick: "values" | "formulas", { sheet, row, column }: CellAddress): T | null {
  const found = book.sheets.find((one) => one.name === sheet)!;
  return ((found[pick][row - found.row]?.[column - found.column] ?? null) as T | null) ?? null;
}

export const value = (book: WorkbookSnapshot, cell: CellAddress) => look<Cell>(book, "values", cell);
export const formula = (book: WorkbookSnapshot, cell: CellAddress) => look<string>(book, "formulas", cell);

/** The sentence of a refusal; anything else is none. */
export async function refusal(act: Promise<unknown>): Promise<string> {
  const outcome = await act.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(outcome).toBeInstanceOf(HostRefusal);
  return (outcome as HostRefusal).message;
}
