import type { Cell } from "../../src/core/cell.ts";
import type { FileHost } from "../../src/hosts/file.ts";
import { cellName } from "../../src/workbook/address.ts";
import { isError } from "../parity/held.ts";
import type { Office } from "./office.ts";

/** What is open there. */
export interface Compared {
  /** Formula cells looked at, and those of them that call our functions. */
  formulas: number;
  own: number;
  /** Where LibreOffice shows something else than we calculate. */
  differences: string[];
}

/** A fault that is an error elsewhere is its sentence in LibreOffice. */
function same(ours: Cell, shown: Cell): boolean {
  if (isError(ours)) return isError(shown) ? ours.error === shown.error : String(shown).startsWith("check: ");
  if (typeof ours === "boolean") return shown === (ours ? 1 : 0);
  // AVERAGE and SUM add up in another way there, which shows in the last digits.
  if (typeof ours === "number" && typeof shown === "number") return Math.abs(ours - shown) <= 1e-12 * Math.abs(ours);
  return (ours ?? "") === (shown ?? "") || (ours === null && shown === 0);
}

/** Each formula cell of an open workbook, and each cell that an array formula fills, held against what we calculate of the same file. */
export async function compared(office: Office, key: string, host: FileHost): Promise<Compared> {
  const found: Compared = { formulas: 0, own: 0, differences: [] };
  const { book } = host.contents();
  const calculated = (await host.read()).sheets;
  for (const [i, sheet] of book.sheets.entries()) {
    const values = await office.ask<Cell[][]>("cells", { key, sheet: sheet.name });
    for (const { row, column, formula, array } of sheet.cells) {
      if (formula === undefined) continue;
      found.formulas++;
      if (/HATCH\./.test(formula)) found.own++;
      for (let r = row; r < row + (array?.rows ?? 1); r++) {
        for (let c = column; c < column + (array?.columns ?? 1); c++) {
          const ours = calculated[i]!.values[r - calculated[i]!.row]?.[c - calculated[i]!.column] ?? null;
          const shown = values[r]?.[c] ?? null;
          if (!same(ours, shown))
            found.differences.push(`${sheet.name}!${cellName({ row: r, column: c })} =${formula}: ${JSON.stringify(ours)}, here ${JSON.stringify(shown)}`);
        }
      }
    }
  }
  return found;
}

/** Types what is typed in the workbook into the one that is open. */
export async function typeInto(office: Office, key: string, host: FileHost): Promise<void> {
  for (const { name, cells } of host.contents().book.sheets) {
    const typed = cells.filter(({ formula, value }) => formula === undefined && value !== null).map(({ row, column, value }) => [column, row, value]);
    await office.ask("put", { key, sheet: name, cells: typed });
  }
}
