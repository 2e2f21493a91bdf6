import { strToU8, zipSync } from "fflate";

/** A cell: a number, text, or a formula that nobody has calculated yet, without its `=`. */
export type Content = number | string | { formula: string };

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const KIND = "application/vnd.openxmlformats-officedocument.spreadsheetml";

const escaped = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

function cellXml(content: Content): string {
  if (typeof content === "number") return `<c><v>${content}</v></c>`;
  if (typeof content === "string") return `<c t="inlineStr"><is><t>${escaped(content)}</t></is></c>`;
  return `<c><f>${escaped(content.formula)}</f></c>`;
}

/** The least .xlsx that every program opens: one sheet, from A1, without results. */
export function bookFile(rows: readonly (readonly Content[])[]): Uint8Array {
  const relation = (kind: string, target: string) =>
    `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/${kind}" Target="${target}"/></Relationships>`;
  const sheet = rows.map((row) => `<row>${row.map(cellXml).join("")}</row>`).join("");
  const parts = {
    "[Content_Types].xml": `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${KIND}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${KIND}.worksheet+xml"/></Types>`,
    "_rels/.rels": relation("officeDocument", "xl/workbook.xml"),
    "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Bores" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relation("worksheet", "worksheets/sheet1.xml"),
    "xl/worksheets/sheet1.xml": `${HEAD}<worksheet xmlns="${MAIN}"><sheetData>${sheet}</sheetData></worksheet>`,
  };
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

/** Readings of a fleet's bores and skirts, and what is judged of them, one row a cylinder. */
export interface Formulas {
  clearance(row: number): string;
  verdict(row: number): string;
}

export const OURS: Formulas = {
  clearance: (row) => `_xldudf_HATCH_CLEARANCE(A${row},B${row})`,
  verdict: (row) => `_xldudf_HATCH_VERDICT(C${row},0.02,0.13)`,
};

export const NATIVE: Formulas = {
  clearance: (row) => `A${row}-B${row}`,
  verdict: (row) => `IF(C${row}>0.13,"over",IF(C${row}<0.02,"under","within"))`,
};

/** So many formulas, two a row. About one row in thirty is outside its limits. */
export function clearanceRows(formulas: number, { clearance, verdict }: Formulas): Content[][] {
  const rows: Content[][] = [["bore", "skirt", "clearance", "verdict"]];
  for (let row = 2; rows.length <= formulas / 2; row++) {
    const bore = (73_000 + (row % 90)) / 1000;
    const skirt = (72_945 + ((row * 7) % 40)) / 1000;
    rows.push([bore, skirt, { formula: clearance(row) }, { formula: verdict(row) }]);
  }
  return rows;
}
