import type { NameSnapshot, TableSnapshot } from "../../workbook/port.ts";

/** What is asked of Excel about the names and tables of a workbook, to be read after the next sync. */
export interface AskedNames {
  names(): NameSnapshot[];
  tables(): TableSnapshot[];
}

/** With the first sync: which tables there are, and what the names of the whole workbook stand for. */
export function askForNames(workbook: Excel.Workbook): void {
  workbook.names.load("items/name,items/formula");
  workbook.tables.load("items/name,items/showHeaders,items/showTotals");
}

/** With the second sync: where the tables are, how their columns are called, and the names of single sheets. */
export function askForPlaces(workbook: Excel.Workbook, sheets: readonly Excel.Worksheet[]): AskedNames {
  const tables = workbook.tables.items.map((table) => {
    const { columns, worksheet } = table;
    const range = table.getRange();
    range.load("rowIndex,columnIndex,rowCount,columnCount");
    columns.load("items/name");
    worksheet.load("name");
    return { table, range, columns, worksheet };
  });
  for (const { names } of sheets) names.load("items/name,items/formula");
  return {
    names: () => [
      ...workbook.names.items.flatMap((item) => nameOf(item)),
      ...sheets.flatMap(({ name, names }) => names.items.flatMap((item) => nameOf(item, name))),
    ],
    tables: () =>
      tables.map(({ table, range: { rowIndex, columnIndex, rowCount, columnCount }, columns, worksheet }) => ({
        name: table.name,
        sheet: worksheet.name,
        top: rowIndex,
        left: columnIndex,
        bottom: rowIndex + rowCount - 1,
        right: columnIndex + columnCount - 1,
        headerRows: table.showHeaders ? 1 : 0,
        totalsRows: table.showTotals ? 1 : 0,
        columns: columns.items.map(({ name }) => name),
      })),
  };
}

/** A name that has lost what it stood for says so by an error instead of a formula. */
const nameOf = ({ name, formula }: Excel.NamedItem, sheet?: string): NameSnapshot[] =>
  typeof formula === "string" && formula.startsWith("=") ? [{ name, formula, ...(sheet === undefined ? {} : { sheet }) }] : [];
