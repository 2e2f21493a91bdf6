import type { CellFile, SpillSize } from "../xlsx/model.ts";
import type { Refused } from "./contents.ts";

/** A cell and what it comes to, errors by the engine's own codes. */
export interface Placed {
  row: number;
  column: number;
  value: string | number | boolean | null;
  isError: boolean;
  message?: unknown;
  /** The cell of the file that it is, `undefined` for a spilled result; left out where it would have to be looked for. */
  cell?: CellFile | undefined;
}

/** A workbook that has been calculated, whichever way. */
export interface Computed {
  /** All cells of a sheet that hold something, results that have spilled among them. */
  values(sheet: number): Iterable<Placed>;
  /** How many cells the result of the formula at a place fills, where it fills more than its own. */
  reach(sheet: number, row: number, column: number): SpillSize | undefined;
  refused: Refused;
  /** Not all values may be settled. */
  hurried: boolean;
}
