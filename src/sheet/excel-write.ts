import { noSheet, protectedSheet } from "./refusals.ts";
import type { Edit } from "./sheet-host.ts";

export async function write(context: Excel.RequestContext, edits: readonly Edit[]): Promise<void> {
  const sheets = await openSheets(
    context,
    edits.map(({ sheet }) => sheet),
  );
  for (const { sheet, row, column, cells } of edits) {
    const width = Math.max(0, ...cells.map((line) => line.length));
    if (width === 0) continue;
    // Excel leaves a cell alone where the block holds null.
    const block = cells.map((line) => Array.from({ length: width }, (_, c) => typed(line[c] ?? null)));
    sheets.get(sheet)!.getRangeByIndexes(row, column, block.length, width).formulas = block;
  }
  await context.sync();
}

/** Excel reads text as if it were typed: `'` in front keeps 73,02 or 3/4 from becoming something else. */
export function typed(value: number | string | boolean | null): number | string | boolean | null {
  return typeof value === "string" && value !== "" && !value.startsWith("=") ? `'${value}` : value;
}

/** The named sheets, once all of them are known to be there and open to changes. One sync. */
export async function openSheets(context: Excel.RequestContext, names: readonly string[]): Promise<Map<string, Excel.Worksheet>> {
  const sheets = new Map([...new Set(names)].map((name) => [name, context.workbook.worksheets.getItemOrNullObject(name)]));
  for (const sheet of sheets.values()) sheet.load("name,protection/protected");
  await context.sync();
  for (const [name, sheet] of sheets) {
    if (sheet.isNullObject) throw noSheet(name);
    if (sheet.protection.protected) throw protectedSheet(name);
  }
  return sheets;
}
