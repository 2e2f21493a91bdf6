import { cellsInCycles, type FormulaPrecedents, filledBy, precedentsOf } from "../../src/calc/cycles.ts";
import { type Cell, isCellError } from "../../src/core/cell.ts";
import { cellName } from "../../src/workbook/address.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";
import type { WorkbookFile } from "../../src/xlsx/model.ts";
import { Defect } from "./outcome.ts";

/** Said of a formula that is not run at all, and so rests on nothing. */
const NOT_RUN = "Invalid number of arguments";

/** What rests on itself has no value, whatever functions it goes through. */
export function expectCirclesTold(book: WorkbookFile, { sheets }: WorkbookSnapshot): void {
  const shownBy = ({ cell, sheet }: FormulaPrecedents): Cell => sheets[sheet]!.values[cell.row]?.[cell.column];
  const readers = precedentsOf(book).filter((reader) => {
    const value = shownBy(reader);
    return !isCellError(value) || !value.message?.startsWith(NOT_RUN);
  });
  const circular = new Set(cellsInCycles(readers, ({ cell }) => filledBy(cell)));
  for (const reader of readers) {
    const { cell, sheet } = reader;
    const value = shownBy(reader);
    if (circular.has(cell) && !isCellError(value))
      throw new Defect(`${sheets[sheet]!.name}!${cellName(cell)} =${cell.formula!.slice(0, 200)} rests on itself and shows ${JSON.stringify(value)}`);
  }
}
