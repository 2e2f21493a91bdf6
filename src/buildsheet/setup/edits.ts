import type { Edit } from "../../sheet/sheet-host.ts";
import type { BuildSheet, DescribedSheet } from "./model.ts";

/** What stands in the cells of a build sheet, for a host that has its sheets: one edit a sheet. */
export const editsOf = ({ sheets }: BuildSheet): Edit[] => sheets.map(editOf);

function editOf({ name, cells }: DescribedSheet): Edit {
  const filled = cells.filter(({ content }) => content !== "");
  const rows = Math.max(...filled.map(({ row }) => row)) + 1;
  const columns = Math.max(...filled.map(({ column }) => column)) + 1;
  const block = Array.from({ length: rows }, () => new Array<number | string | null>(columns).fill(null));
  for (const { row, column, content } of filled) block[row]![column] = content;
  return { sheet: name, row: 0, column: 0, cells: block };
}
