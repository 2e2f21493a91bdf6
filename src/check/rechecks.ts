import { isBlank } from "../core/cell.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { isRecheck, type RunInField, runInFieldOf } from "../vocabulary/run-in.ts";
import type { CellAddress } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";

/** Readings that are taken again after running in. Until the hours are there at which they fall due they are not missing. */
export class Rechecks {
  #isDue: boolean | undefined;

  constructor(
    readonly book: WorkbookCells,
    readonly labels: SheetLabels,
  ) {}

  /** True for a blank that is a re-check which does not fall due yet, as far as the sheets say so. */
  isAhead(cell: CellAddress): boolean {
    const { row, heading } = this.labels.partsOf(cell);
    if (![heading, ...row.map(({ text }) => text)].some((text) => text !== undefined && isRecheck(text))) return false;
    this.#isDue ??= isAnyDue(this.book.sheets);
    return !this.#isDue;
  }
}

/** A job of re-checking is due by the hours run now, or was done. */
function isAnyDue(sheets: readonly SheetSnapshot[]): boolean {
  const now = Math.max(...sheets.map(hoursNow));
  return sheets.some((sheet) => {
    let columns: Partial<Record<RunInField, number>> | undefined;
    return sheet.values.some((line) => {
      // A job's own row may say `due` as well.
      if (!line.some((cell) => typeof cell === "string" && isRecheck(cell))) {
        columns = headsOf(line) ?? columns;
        return false;
      }
      if (!columns) return false;
      const due = line[columns.due!];
      return typeof due === "number" && (due <= now || (columns.done !== undefined && !isBlank(line[columns.done])));
    });
  });
}

/** Columns of a row of headings that says when jobs fall due. */
function headsOf(line: SheetSnapshot["values"][number]): Partial<Record<RunInField, number>> | undefined {
  const at: Partial<Record<RunInField, number>> = {};
  for (const [c, cell] of line.entries()) {
    const field = typeof cell === "string" ? runInFieldOf(cell) : undefined;
    if (field && typeof line[c + 1] !== "number") at[field] ??= c;
  }
  return at.due === undefined ? undefined : at;
}

/** The hours that stand right of their name; none where they are not typed yet. */
function hoursNow({ values }: SheetSnapshot): number {
  let hours = Number.NEGATIVE_INFINITY;
  for (const line of values)
    for (const [c, cell] of line.entries()) {
      const beside = line[c + 1];
      if (typeof cell === "string" && typeof beside === "number" && runInFieldOf(cell) === "now") hours = Math.max(hours, beside);
    }
  return hours;
}
