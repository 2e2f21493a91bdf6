import { isCellError } from "../../core/cell.ts";
import { cellName } from "../../sheet/address.ts";
import { inCircles } from "../../sheet/headless/circles.ts";
import { filledBy, readersOf } from "../../sheet/headless/readers.ts";
import type { WorkbookSnapshot } from "../../sheet/sheet-host.ts";
import type { WorkbookFile } from "../../sheet/xlsx/model.ts";
import { Defect } from "./outcome.ts";

/** What rests on itself has no value, whatever functions it goes through. */
export function expectCirclesTold(book: WorkbookFile, { sheets }: WorkbookSnapshot): void {
  const readers = readersOf(book);
  const circular = new Set(inCircles(readers, ({ cell }) => filledBy(cell)));
  for (const { cell, sheet } of readers) {
    if (!circular.has(cell)) continue;
    const { name, values } = sheets[sheet]!;
    const value = values[cell.row]?.[cell.column];
    if (!isCellError(value)) throw new Defect(`${name}!${cellName(cell)} =${cell.formula!.slice(0, 200)} rests on itself and shows ${JSON.stringify(value)}`);
  }
}
