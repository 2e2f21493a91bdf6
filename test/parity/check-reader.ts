import type { Cell } from "../../src/core/cell.ts";
import { CannotTell, evaluateFormula } from "../../src/formula/evaluate.ts";
import { WorkbookCells } from "../../src/formula/workbook-cells.ts";
import type { Answer } from "./answer.ts";
import { isError } from "./held.ts";
import type { Input } from "./inputs.ts";
import { layOut } from "./sheets.ts";

/** The reader with which Check works out the arguments of a judging formula, over a sheet's snapshot. */
export function checkReader(calls: readonly Input[]): Answer[] {
  const { cells, formulas, rows, columns } = layOut(calls, "Inputs");
  const values: Cell[][] = Array.from({ length: rows }, () => new Array(columns).fill(null));
  for (const { row, column, held } of cells) values[row]![column] = held.value;
  const book = new WorkbookCells({ sheets: [{ name: "Inputs", row: 0, column: 0, values, formulas: values.map((line) => line.map(() => null)) }] });
  return formulas.map(({ formula }) => {
    const found = evaluateFormula(`=${formula}`, { book, sheet: "Inputs" });
    if (found instanceof CannotTell) return { fault: found.why };
    if (Array.isArray(found)) return { rows: found };
    return isError(found) ? { fault: found.message ?? "" } : { rows: [[found]] };
  });
}
