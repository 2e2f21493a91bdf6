import type { Box } from "../workbook/address.ts";
import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import { formulasOf } from "./contents.ts";
import { signatures } from "./grid-model.ts";
import { Grids } from "./grids.ts";
import type { Area } from "./references.ts";
import { Translator } from "./translate.ts";
import { Untranslatable } from "./untranslatable.ts";

/** A formula and the cells that it looks at, with its names and tables resolved. */
export interface Reader {
  cell: CellFile;
  sheet: number;
  areas: readonly Area[];
}

/** The cells that a formula fills, as far as the file tells: how far a result that grows goes is not known before. */
export function filledBy({ row, column, array }: CellFile): Box {
  const { rows, columns } = array && !array.grows ? array : { rows: 1, columns: 1 };
  return { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 };
}

export function readersOf(book: WorkbookFile): Reader[] {
  const grids = new NotingGrids(book);
  const translator = new Translator(book, grids, signatures());
  const readers: Reader[] = [];
  for (const [cell, sheet] of formulasOf(book)) {
    if (cell.formula === undefined) continue;
    grids.areas = [];
    try {
      translator.translate(cell.formula, { sheet, row: cell.row, column: cell.column }, cell.array !== undefined);
    } catch (reason) {
      if (!(reason instanceof Untranslatable)) throw reason;
      grids.areas = [];
    }
    readers.push({ cell, sheet, areas: grids.areas });
  }
  return readers;
}

/** Takes note of every area that a formula looks into. */
export class NotingGrids extends Grids {
  areas: Area[] = [];

  override name(area: Area, home: number, place = false): string {
    if (!place) this.areas.push(area);
    return super.name(area, home, place);
  }
}
