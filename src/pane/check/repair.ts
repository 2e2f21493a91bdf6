import { recalculated } from "../../formula/recalculate.ts";
import { areasOf } from "../../workbook/address.ts";
import type { Edit, SheetHost } from "../../workbook/port.ts";
import { fromStoredFormula } from "../../xlsx/formula-text.ts";

/**
 * Enters every formula of ours again that the host shows as unknown, as one step; says how many there were.
 * Excel does not look for functions again that it did not find when the workbook was opened.
 */
export async function repairFormulas(host: SheetHost): Promise<number> {
  const { sheets, ...called } = await host.read();
  const { without } = recalculated({ sheets, ...called });
  const unknown = without.filter(({ why }) => why === "functions not known").map(({ cell }) => cell);
  const edits = sheets.flatMap(({ name, row, column, formulas }): Edit[] =>
    areasOf(unknown.filter(({ sheet }) => sheet === name)).map((area) => ({
      ...{ sheet: name, row: area.row, column: area.column },
      cells: Array.from({ length: area.rows }, (_, r) =>
        Array.from({ length: area.columns }, (__, c) => `=${fromStoredFormula(formulas[area.row + r - row]![area.column + c - column]!.slice(1))}`),
      ),
    })),
  );
  if (edits.length > 0) await host.write(edits);
  return unknown.length;
}
