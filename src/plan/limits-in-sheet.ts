import { indexOfRole } from "../core/define.ts";
import { evaluateNode } from "../formula/evaluate.ts";
import { callsOf, type OwnCall } from "../formula/own-calls.ts";
import { argumentArea } from "../formula/precedents.ts";
import { cellsOf, type WorkbookCells } from "../formula/workbook-cells.ts";
import { type CellArea, placeName } from "../workbook/address.ts";
import type { PlanInput } from "./inputs.ts";

/** The limits by which the sheet itself judges a cell. */
export interface LimitsInSheet {
  least: PlanInput;
  most: PlanInput;
}

/** By the name of the cell that a verdict, an explanation or a margin of the sheet is on; the first of several counts. */
export function limitsInSheet(book: WorkbookCells): Map<string, LimitsInSheet> {
  const found = new Map<string, LimitsInSheet>();
  for (const sheet of book.sheets) {
    for (const [r, line] of sheet.formulas.entries()) {
      for (const [c, formula] of line.entries()) {
        if (formula === null) continue;
        const at = { sheet: sheet.name, row: sheet.row + r, column: sheet.column + c };
        for (const call of callsOf(book, at, formula)) if (call.spec.role === "judges") note(call, found);
      }
    }
  }
  return found;
}

function note(call: OwnCall, found: Map<string, LimitsInSheet>): void {
  const value = argumentArea(call.args[indexOfRole(call.spec, "value")], call.context);
  if (!value) return;
  for (const cell of cellsOf(value)) {
    const place = placeName(cell);
    const limits = { least: limitOf(call, "lower", value, cell), most: limitOf(call, "upper", value, cell) };
    if (!found.has(place) && (limits.least !== null || limits.most !== null)) found.set(place, limits);
  }
}

/** The cell of a limit that goes with one of the cells judged, or the number that stands in the formula for it. */
function limitOf({ spec, args, context }: OwnCall, side: "lower" | "upper", value: CellArea, cell: { row: number; column: number }): PlanInput {
  const node = args[indexOfRole(spec, side)];
  const area = argumentArea(node, context);
  if (area) {
    const row = area.row + (area.rows === 1 ? 0 : cell.row - value.row);
    const column = area.column + (area.columns === 1 ? 0 : cell.column - value.column);
    return { sheet: area.sheet, row, column, rows: 1, columns: 1 };
  }
  const number = node ? evaluateNode(node, context) : null;
  return typeof number === "number" ? number : null;
}
