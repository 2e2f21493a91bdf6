import type { WorkbookFile } from "../xlsx/model.ts";
import { type Area, areaName } from "./references.ts";

/** How far beyond what a sheet holds a reference makes it larger. References that go on are cut: there is nothing. */
const REACH = { rows: 2000, columns: 100 };

interface Grid {
  /** The sheet's name in the engine. */
  name: string;
  rows: number;
  columns: number;
  readonly mostRows: number;
  readonly mostColumns: number;
}

/** The engine's sheets: their names and how large they have to be. It visits every cell, so none larger than needed. */
export class Grids {
  readonly all: readonly Grid[];
  /** A reference was cut since this was last set to false. */
  cut = false;

  constructor({ sheets }: WorkbookFile) {
    const taken = new Set(sheets.map((sheet) => sheet.name.toLowerCase()));
    this.all = sheets.map(({ name, cells }) => {
      let rows = 1;
      let columns = 1;
      for (const { row, column, array } of cells) {
        rows = Math.max(rows, row + (array?.rows ?? 1));
        columns = Math.max(columns, column + (array?.columns ?? 1));
      }
      return { name: engineSheetName(name, taken), rows, columns, mostRows: rows + REACH.rows, mostColumns: columns + REACH.columns };
    });
  }

  /** Makes room for results below and beside what is there. */
  widen(rows: number, columns: number): void {
    for (const grid of this.all) {
      grid.rows += rows;
      grid.columns += columns;
    }
  }

  /** True when the area lies where the sheet is or can be made to reach. */
  holds({ sheet, bottom, right }: Area): boolean {
    const { mostRows, mostColumns } = this.all[sheet]!;
    return bottom < mostRows && right < mostColumns;
  }

  /** An area as the engine names it in a formula on the sheet `home`, which looks into it unless its `place` is enough. */
  name(area: Area, home: number, _place = false): string {
    const grid = this.all[area.sheet]!;
    let { bottom, right } = area;
    if (this.holds(area)) {
      grid.rows = Math.max(grid.rows, bottom + 1);
      grid.columns = Math.max(grid.columns, right + 1);
    } else {
      this.cut = true;
      bottom = Math.max(area.top, Math.min(bottom, grid.rows - 1));
      right = Math.max(area.left, Math.min(right, grid.columns - 1));
    }
    const range = areaName({ top: area.top, left: area.left, bottom, right });
    return area.sheet === home ? range : `'${grid.name}'!${range}`;
  }
}

/** The engine cannot read a sheet's name with an apostrophe in it. */
function engineSheetName(name: string, taken: Set<string>): string {
  if (!name.includes("'")) return name;
  const bare = name.replaceAll("'", "’");
  let unused = bare;
  for (let n = 2; taken.has(unused.toLowerCase()); n++) unused = `${bare} ${n}`;
  taken.add(unused.toLowerCase());
  return unused;
}
