import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import { cellsInCycles, filledBy, precedentsOf, TooManySteps } from "./cycles.ts";
import { Evaluation } from "./evaluation.ts";
import { omissionNote, startCalculation } from "./grid-model.ts";
import type { Computed } from "./results.ts";
import { NeedsModel } from "./template-cache.ts";

/**
 * Calculates a workbook with the grid's own formulas and functions, but without its model, whose making
 * costs most of the time: formulas that differ only in the cells that they name are compiled once, and
 * each runs over plain values when it is first asked for. Gives `undefined` for a workbook in which
 * anything depends on more than the values of cells (results that find no room, functions that ask about
 * the sheet); then the model has to say what it comes to. Formulas that rest on themselves are added to
 * `circular` where one of them was met.
 */
export function evaluateWithoutModel(book: WorkbookFile, circular = new Set<CellFile>(), work?: number): Computed | undefined {
  const first = tried(book, circular, work);
  if (first !== "cycle") return first;
  try {
    for (const cell of cellsInCycles(precedentsOf(book), ({ cell }) => filledBy(cell))) circular.add(cell);
  } catch (reason) {
    if (reason instanceof TooManySteps) return undefined;
    throw reason;
  }
  const second = tried(book, circular, work);
  // Cycles through results that spill are found where it is known how far they go.
  return second === "cycle" ? undefined : second;
}

function tried(book: WorkbookFile, circular: ReadonlySet<CellFile>, work: number | undefined): Computed | "cycle" | undefined {
  let direct: Evaluation | undefined;
  try {
    startCalculation(work);
    direct = new Evaluation(book, circular);
    // A result may have spilled into cells that were read as blank before.
    if (!direct.settles() && !direct.again().settles()) return undefined;
    // What is left out of a calculation that takes too much work rests on the order in which it goes.
    return omissionNote() ? undefined : direct;
  } catch (reason) {
    if (reason instanceof NeedsModel) return direct?.hasCycle ? "cycle" : undefined;
    throw reason;
  }
}
