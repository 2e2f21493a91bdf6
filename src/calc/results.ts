import { type Cell, isCellError } from "../core/cell.ts";
import type { CellFile, SpillSize, WorkbookFile } from "../xlsx/model.ts";
import { errorText, gridCellText } from "./grid-terms.ts";
import { Untranslatable } from "./references.ts";
import { FILL, type Translator } from "./translate.ts";

/** A cell and what it comes to, errors by the grid's own codes. */
export interface ComputedCell {
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
  values(sheet: number): Iterable<ComputedCell>;
  /** How many cells the result of the formula at a place fills, where it fills more than its own. */
  spillSize(sheet: number, row: number, column: number): SpillSize | undefined;
  refused: RefusedFormulas;
  /** Not all values may be settled. */
  hurried: boolean;
}

/** Why a formula, or only branches of it, could not be put into the grid's terms. */
interface Refusal {
  wholly: boolean;
  reasons: readonly Untranslatable[];
}

export type RefusedFormulas = Map<CellFile, Refusal>;

export const isFormula = ({ formula, beyond }: CellFile): boolean => formula !== undefined || beyond !== undefined;

/** Every cell with a formula, and its sheet by place. */
export function* formulasOf({ sheets }: WorkbookFile): Generator<[CellFile, number]> {
  for (const [sheet, { cells }] of sheets.entries()) for (const cell of cells) if (isFormula(cell)) yield [cell, sheet];
}

/** A formula that rests on itself is not run: its error stands in all cells that it filled when the file was saved. */
export function cycleContent({ array }: CellFile): string {
  const error = errorText("#CYCLE");
  return array ? `=${FILL}(${error},${array.rows},${array.columns})` : `=${error}`;
}

/** What is put into the grid's cell for a cell of the file. A `blocked` formula shows its first value alone. */
export function gridContent(cell: CellFile, sheet: number, translator: Translator, blocked: boolean, refused: RefusedFormulas): string {
  if (!isFormula(cell)) return literalContent(cell.value);
  try {
    if (cell.formula === undefined) throw new Untranslatable("#VALUE!", cell.beyond!);
    const { array } = cell;
    const formula = translator.translate(cell.formula, { sheet, row: cell.row, column: cell.column }, array !== undefined);
    if (translator.refusedBranches.length > 0) refused.set(cell, { wholly: false, reasons: translator.refusedBranches });
    if (blocked) return `=${FILL}(${formula.slice(1)},1,1)`;
    return array && !array.grows ? `=${FILL}(${formula.slice(1)},${array.rows},${array.columns})` : formula;
  } catch (reason) {
    if (!(reason instanceof Untranslatable)) throw reason;
    refused.set(cell, { wholly: true, reasons: [reason] });
    return `=${errorText(reason.code, reason.sentence)}`;
  }
}

function literalContent(value: Cell): string {
  if (isCellError(value)) return `=${errorText(value.error)}`;
  if (typeof value === "string") return gridCellText(value);
  return typeof value === "boolean" ? String(value).toUpperCase() : String(value ?? "");
}
