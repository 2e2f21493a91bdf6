import { isBlank } from "../core/cell.ts";
import { cellsOf, type WorkbookCells } from "../formula/workbook-cells.ts";
import type { CellAddress, CellArea } from "../workbook/address.ts";
import type { Edit } from "../workbook/port.ts";

/** Where and how a plan is to be written. */
export interface PlanTarget {
  /** The top left cell of what is written. */
  at: CellAddress;
  /** The day on which the plan is made, as it is to stand beside values: a plan in values does not follow the readings. */
  date: string;
  /** Values where somebody wants the plan frozen; otherwise formulas as far as formulas can express it. */
  as?: "formulas" | "values";
  /** Writes over cells that hold something. */
  overwrite?: boolean;
}

/**
 * What is to be written, as one call of the host's `write` and so one undoable step. `edits` is empty
 * while cells that hold something are in the way and nobody has said that they may be overwritten.
 */
export interface WrittenPlan {
  /** `null` when no place was given, or there is nothing to write yet. */
  as: "formulas" | "values" | null;
  /** All cells that the plan will take up, those that a formula fills included. */
  area: CellArea | null;
  edits: Edit[];
  inTheWay: CellAddress[];
  /** Why it cannot be written there at all. */
  refused: string | null;
}

export const NOTHING_WRITTEN: WrittenPlan = { as: null, area: null, edits: [], inTheWay: [], refused: null };

/** Text is only ever text: a formula says that it is one. */
export type PlannedContent = number | string | { formula: string };

/** A block of a plan, placed by its distance from the top left cell; blank content leaves a cell alone. */
export interface PlanBlock {
  row: number;
  column: number;
  cells: PlannedContent[][];
  /** The block that the formula in the first cell fills; without it the cells fill themselves. */
  fills?: { rows: number; columns: number };
}

/** Lays the parts out from the place on, and looks what is in their way. Cells that the plan is made from are never written over. */
export function planEdits(
  book: WorkbookCells,
  { at, overwrite = false }: PlanTarget,
  as: "formulas" | "values",
  parts: readonly PlanBlock[],
  sources: readonly CellArea[],
): WrittenPlan {
  const placed = parts.map((part) => ({ part, area: blockArea(part, at) }));
  const inTheWay = placed.flatMap(({ area }) => [...cellsOf(area)].filter((cell) => isFilled(book, cell)));
  const area = around(
    at,
    placed.map((one) => one.area),
  );
  if (placed.some((one) => sources.some((source) => overlap(one.area, source)))) return { as, area, edits: [], inTheWay, refused: OVER_SOURCE };
  if (inTheWay.length > 0 && !overwrite) return { as, area, edits: [], inTheWay, refused: null };
  return { as, area, edits: placed.map((one) => editOf(book, one.part, one.area)), inTheWay, refused: null };
}

const OVER_SOURCE = "the plan would stand on cells that it is made from: choose another place";

function overlap(a: CellArea, b: CellArea): boolean {
  const meet = (from: number, size: number, other: number, otherSize: number) => from < other + otherSize && other < from + size;
  return a.sheet === b.sheet && meet(a.row, a.rows, b.row, b.rows) && meet(a.column, a.columns, b.column, b.columns);
}

function blockArea({ row, column, cells, fills }: PlanBlock, at: CellAddress): CellArea {
  const size = fills ?? { rows: cells.length, columns: Math.max(...cells.map((line) => line.length)) };
  return { sheet: at.sheet, row: at.row + row, column: at.column + column, ...size };
}

const isFilled = (book: WorkbookCells, cell: CellAddress): boolean => book.formula(cell) !== null || !isBlank(book.value(cell));

/** What is in the way is emptied: a formula only fills cells that are. */
function editOf(book: WorkbookCells, { cells }: PlanBlock, area: CellArea): Edit {
  const { sheet, row, column, rows, columns } = area;
  const block = Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c): number | string | null => {
      const content = cells[r]?.[c] ?? "";
      if (typeof content === "object") return content.formula;
      // A host takes text with this sign in front for a formula.
      if (content !== "") return typeof content === "string" && content.startsWith("=") ? ` ${content}` : content;
      return isFilled(book, { sheet, row: row + r, column: column + c }) ? "" : null;
    }),
  );
  return { sheet, row, column, cells: block };
}

function around({ sheet }: CellAddress, areas: readonly CellArea[]): CellArea {
  const row = Math.min(...areas.map((area) => area.row));
  const column = Math.min(...areas.map((area) => area.column));
  const rows = Math.max(...areas.map((area) => area.row + area.rows)) - row;
  const columns = Math.max(...areas.map((area) => area.column + area.columns)) - column;
  return { sheet, row, column, rows, columns };
}

/** A table of values with its day below it. */
export const valueParts = (table: readonly PlannedContent[][], date: string): PlanBlock[] => [
  { row: 0, column: 0, cells: [...table, [`planned ${date}; values, which do not follow the readings`]] },
];
