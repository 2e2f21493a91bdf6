import { evaluateWithModel } from "../../src/calc/evaluate-with-model.ts";
import { commonCode } from "../../src/calc/grid/grid-text.ts";
import { startCalculation } from "../../src/calc/grid-model.ts";
import type { Cell } from "../../src/core/cell.ts";
import { fileHost } from "../../src/hosts/file.ts";
import type { CellFile, WorkbookFile } from "../../src/xlsx/model.ts";
import type { Answer } from "./answer.ts";
import type { Input } from "./inputs.ts";
import { answersIn, type Layout, layOut } from "./sheets.ts";

/** The workbook as its file would have it: values as values, formulas as formulas that may fill several cells. */
function bookOf({ cells, formulas }: Layout): WorkbookFile {
  const given = cells
    .filter(({ held }) => held.value !== null)
    .map(({ row, column, held: { value, typed } }): CellFile => {
      const isEmptyText = value === "" && typed !== undefined;
      return isEmptyText ? { row, column, value: null, formula: typed.slice(1) } : { row, column, value };
    });
  const results = formulas.map(({ row, formula }): CellFile => ({ row, column: 0, value: null, formula, array: { rows: 1, columns: 1, grows: true } }));
  const sheet = (name: string, held: CellFile[]) => ({ name, hidden: false, cells: held, hiddenRows: [] });
  return { sheets: [sheet("Inputs", given), sheet("Results", results)], names: [], tables: [], from1904: false, storedTexts: new Map() };
}

/** Answers are compared here, not how long they take: random blocks of the functions that take many steps are more than a workbook is allowed. */
const WORK = 2e9;

/** The headless engine as the command line uses it. */
export async function headless(calls: readonly Input[]): Promise<Answer[]> {
  const layout = layOut(calls, "Inputs");
  const host = fileHost(bookOf(layout), "inputs.xlsx", WORK);
  const [, results] = (await host.read()).sheets;
  return answersIn(results!.values, layout);
}

/** The same with the engine's model of the whole workbook, which it falls back on. */
export function headlessByModel(calls: readonly Input[]): Answer[] {
  const layout = layOut(calls, "Inputs");
  startCalculation();
  const values: Cell[][] = Array.from({ length: layout.rows }, () => new Array(layout.columns).fill(null));
  for (const { row, column, value, isError, message } of evaluateWithModel(bookOf(layout), undefined, WORK).values(1)) {
    values[row]![column] = isError ? { error: commonCode(String(value)), message: String(message) } : value;
  }
  return answersIn(values, layout);
}
