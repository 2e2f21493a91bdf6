import type { Result } from "../../core/cell.ts";
import type { Cells } from "../../core/param.ts";

/** One result per cell, laid out as the cells are. */
export function inShape({ rows, columns, values }: Cells, of: (cell: Cells["values"][number], index: number) => Result): Result[][] {
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (_, column) => of(values[row * columns + column]!, row * columns + column)));
}
