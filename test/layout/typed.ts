import { type MemoryCell, memoryHost } from "../../src/hosts/memory.ts";
import type { WorkbookSnapshot } from "../../src/workbook/port.ts";

/** A workbook as somebody typed it: rows of cells by sheet, `""` for a blank one. */
export async function typed(sheets: Record<string, readonly (readonly MemoryCell[])[]>): Promise<WorkbookSnapshot> {
  return await memoryHost(
    Object.entries(sheets).map(([name, rows]) => ({ name, cells: rows.map((row) => row.map((cell) => (cell === "" ? null : cell))) })),
  ).read();
}
