import type { BookXml, CellXml } from "../../xlsx/workbook-bytes.ts";
import { DATA, NAMES } from "./cases.ts";

/** The formulas stand below the data and to its right, so that none lies in a column that others count. */
export const FIRST_ROW = 20;
export const FORMULA_COLUMN = 12;

/** Functions that files write with this before them, since they came after the format was fixed. */
const LATER =
  /\b(ACOT|AGGREGATE|DAYS|IFS|SWITCH|CONCAT|TEXTJOIN|MAXIFS|MINIFS|NUMBERVALUE|UNICHAR|FORECAST\.LINEAR|MODE\.SNGL|STDEV\.[SP]|VAR\.[SP]|COVARIANCE\.[SP]|RANK\.(?:AVG|EQ)|NORM\.(?:S\.)?(?:DIST|INV)|T\.(?:DIST|INV)(?:\.2T|\.RT)?|F\.DIST\.RT|CONFIDENCE\.(?:NORM|T)|XLOOKUP|XMATCH|LET)\(/g;

export function caseBook(formulas: readonly string[]): BookXml {
  const rows: CellXml[][] = Array.from({ length: FIRST_ROW + formulas.length }, (_, row) => [...(DATA[row] ?? [])]);
  formulas.forEach((formula, i) => {
    const line = rows[FIRST_ROW + i]!;
    while (line.length < FORMULA_COLUMN) line.push(null);
    line.push({ f: formula.replace(LATER, "_xlfn.$1(") });
  });
  return { sheets: [{ name: "Data", cells: rows }], names: NAMES, parts: { "[Content_Types].xml": TYPES } };
}

const OFFICE = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const part = (name: string, type: string): string => `<Override PartName="/xl/${name}.xml" ContentType="${OFFICE}.${type}+xml"/>`;
/** LibreOffice opens no workbook without them. */
const TYPES = `<?xml version="1.0" encoding="UTF-8"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${part("workbook", "sheet.main")}${part("worksheets/sheet1", "worksheet")}</Types>`;
