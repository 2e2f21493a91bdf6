import { isBlank } from "../core/cell.ts";
import { parseFormula } from "../formula/parse.ts";
import { argumentArea } from "../formula/precedents.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { repeatFieldOf } from "../vocabulary/headings.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";

/** Tables of a first and a second reading of the same thing, typed there or shown from where they are typed. */
export interface Repeats {
  /** The cell of a first reading, by the place of the second one. */
  firstOf: ReadonlyMap<string, { first: CellAddress; second: CellAddress }>;
  /** Rows that only bring the two together: what is worked out there is of the readings, not of the part. */
  isAboutReadings(cell: CellAddress): boolean;
}

export function repeatsIn(book: WorkbookCells): Repeats {
  const firstOf = new Map<string, { first: CellAddress; second: CellAddress }>();
  const rows = new Set<string>();
  for (const { name: sheet, row, column, values } of book.sheets) {
    let at: { first: number; second: number } | undefined;
    for (const [r, line] of values.entries()) {
      const fields = line.map((cell) => (typeof cell === "string" ? repeatFieldOf(cell) : undefined));
      const [first, second] = [fields.indexOf("first"), fields.indexOf("second")];
      if (first >= 0 && second >= 0) at = { first, second };
      else if (line.every(isBlank)) at = undefined;
      else if (at) {
        const [a, b] = [at.first, at.second].map((c) => shownIn(book, { sheet, row: row + r, column: column + c }));
        if (!a || !b) continue;
        rows.add(`${sheet}|${row + r}`);
        firstOf.set(placeName(b), { first: a, second: b });
      }
    }
  }
  const sources = new Set([...firstOf.values()].flatMap(({ first, second }) => [placeName(first), placeName(second)]));
  return { firstOf, isAboutReadings: (cell) => rows.has(`${cell.sheet}|${cell.row}`) && !sources.has(placeName(cell)) };
}

/** The cell whose content stands here: this one where it is typed, another where a formula does nothing but show it. */
function shownIn(book: WorkbookCells, cell: CellAddress): CellAddress | undefined {
  const formula = book.formula(cell);
  if (formula === null) return cell;
  const area = argumentArea(parseFormula(formula), { book, sheet: cell.sheet, cell });
  return area?.rows === 1 && area.columns === 1 ? { sheet: area.sheet, row: area.row, column: area.column } : undefined;
}
