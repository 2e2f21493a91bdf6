import type { Cell } from "../../src/core/cell.ts";
import type { BenchPage } from "../bench/stand.ts";
import type { Answer } from "./answer.ts";
import { typedInto } from "./held.ts";
import type { Input } from "./inputs.ts";
import { answersIn, layOut } from "./sheets.ts";

/** The bench in its page: every cell and formula goes into the grid as the text that a person types there. */
export async function onBench({ page }: BenchPage, calls: readonly Input[]): Promise<Answer[]> {
  const layout = layOut(calls, "Inputs");
  const typed = [
    ...layout.cells.map(({ row, column, held }) => ({ sheetId: "inputs", row, col: column, content: typedInto(held) })),
    ...layout.formulas.map(({ row, formula }) => ({ sheetId: "results", row, col: 0, content: `=${formula}` })),
  ].filter(({ content }) => content !== "");
  const values = await page.evaluate(
    async ({ cells, rows, columns }) => {
      const { host, model } = window.crosshatchBench!;
      model.dispatch("CREATE_SHEET", { sheetId: "inputs", name: "Inputs", position: 0, cols: columns, rows });
      model.dispatch("CREATE_SHEET", { sheetId: "results", name: "Results", position: 0, cols: columns, rows });
      for (const cell of cells) model.dispatch("UPDATE_CELL", cell);
      const shown = (await host.read()).sheets.find(({ name }) => name === "Results")!.values;
      model.dispatch("DELETE_SHEET", { sheetId: "inputs", sheetName: "Inputs" });
      model.dispatch("DELETE_SHEET", { sheetId: "results", sheetName: "Results" });
      return shown as unknown[][];
    },
    { cells: typed, rows: layout.rows, columns: layout.columns },
  );
  return answersIn(values as Cell[][], layout);
}
