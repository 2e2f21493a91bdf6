import { FILE_ABILITIES, openWorkbook } from "../../src/hosts/file.ts";
import { boxName, type CellAddress } from "../../src/workbook/address.ts";
import { MARK_FILL } from "../../src/workbook/port.ts";
import { type CellXml, workbookBytes } from "../xlsx/workbook-bytes.ts";
import { hostContract } from "./contract.ts";
import type { Called, ContractSheet, Stage } from "./stage.ts";

function cellXml(cell: ContractSheet["cells"][number][number]): CellXml {
  if (typeof cell !== "object" || cell === null) return cell ?? null;
  if ("date" in cell) return cell.date;
  // What the file says that a formula came to is old, and what it spilled is missing.
  if ("formula" in cell) return { f: cell.formula.slice(1), v: 12345 };
  return "spilled" in cell ? null : { error: cell.error };
}

/** Names and tables as ECMA-376 part 1 has them, 18.2.5 and 18.5.1.2. */
const namesXml = ({ names = [] }: Called, sheets: readonly string[]): string =>
  names
    .map(({ name, sheet, formula }) => {
      const scope = sheet === undefined ? "" : ` localSheetId="${sheets.indexOf(sheet)}"`;
      return `<definedName name="${name}"${scope}>${formula.slice(1)}</definedName>`;
    })
    .join("");

function tablesXml({ tables = [] }: Called, sheet: string): { tables?: string[] } {
  const own = tables.filter((table) => table.sheet === sheet);
  const xml = own.map(({ name, area, headerRows, totalsRows, columns }, i) => {
    const ref = boxName(area);
    const rows = `headerRowCount="${headerRows}" totalsRowCount="${totalsRows}"`;
    const inside = columns.map((column, n) => `<tableColumn id="${n + 1}" name="${column}"/>`).join("");
    return `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="${i + 1}" name="${name}" displayName="${name}" ref="${ref}" ${rows}><tableColumns count="${columns.length}">${inside}</tableColumns></table>`;
  });
  return xml.length > 0 ? { tables: xml } : {};
}

async function stage(sheets: ContractSheet[], called: Called = {}): Promise<Stage> {
  const bytes = workbookBytes({
    sheets: sheets.map(({ name, cells }) => ({ name, cells: cells.map((line) => line.map(cellXml)), ...tablesXml(called, name) })),
    names: namesXml(
      called,
      sheets.map(({ name }) => name),
    ),
  });
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

hostContract("file", stage, FILE_ABILITIES);
