import type { CellAddress } from "../../src/sheet/address.ts";
import { openWorkbook } from "../../src/sheet/file.ts";
import { MARK_FILL } from "../../src/sheet/sheet-host.ts";
import { hostContract } from "./contract.ts";
import type { ContractSheet, Stage } from "./stage.ts";
import { type CellXml, workbookBytes } from "./xlsx/workbook-bytes.ts";

function cellXml(cell: ContractSheet["cells"][number][number]): CellXml {
  if (typeof cell !== "object" || cell === null) return cell ?? null;
  if ("date" in cell) return cell.date;
  // What the file says that a formula came to is old, and what it spilled is missing.
  if ("formula" in cell) return { f: cell.formula.slice(1), v: 12345 };
  return "spilled" in cell ? null : { error: cell.error };
}

async function stage(sheets: ContractSheet[]): Promise<Stage> {
  const bytes = workbookBytes({ sheets: sheets.map(({ name, cells }) => ({ name, cells: cells.map((line) => line.map(cellXml)) })) });
  const host = await openWorkbook(bytes, "contract.xlsx");
  const painted = new Map<string, string>();
  const key = (cell: CellAddress): string => JSON.stringify([cell.sheet, cell.row, cell.column]);
  return {
    host,
    fill: async (cell) => {
      const mark = host.marks().find((one) => key(one.cell) === key(cell));
      return mark ? MARK_FILL[mark.tone] : (painted.get(key(cell)) ?? null);
    },
    paint: async (cell, colour) => void painted.set(key(cell), colour),
    type: async ({ sheet, row, column }, content) => host.write([{ sheet, row, column, cells: [[content]] }]),
    again: async () => host,
  };
}

hostContract("file", stage, ["again"]);
