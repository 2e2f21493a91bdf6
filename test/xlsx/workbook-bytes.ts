import { strToU8, zipSync } from "fflate";
import { cellName } from "../../src/workbook/address.ts";

/** A cell of a workbook that a test writes by hand: a value, a formula with what the file says it came to, or raw XML. */
export type CellXml =
  | number
  | string
  | boolean
  | null
  | { error: string }
  | { f: string; v?: number | string; attributes?: string; cell?: string }
  | { raw: string };

export interface SheetXml {
  name: string;
  cells: CellXml[][];
  state?: "hidden" | "veryHidden";
  tables?: string[];
  /** More XML after the rows. */
  after?: string;
}

export interface BookXml {
  sheets: SheetXml[];
  /** `<definedName …>…</definedName>` elements. */
  names?: string;
  properties?: string;
  sharedStrings?: string;
  /** Parts to add or, with `null`, to leave out. */
  parts?: Record<string, string | Uint8Array | null>;
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";

const xmlText = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

function cellXml(cell: CellXml, row: number, column: number): string {
  const r = cellName({ row, column });
  if (cell === null) return "";
  if (typeof cell === "number") return `<c r="${r}"><v>${cell}</v></c>`;
  if (typeof cell === "boolean") return `<c r="${r}" t="b"><v>${Number(cell)}</v></c>`;
  if (typeof cell === "string") return `<c r="${r}" t="inlineStr"><is><t xml:space="preserve">${xmlText(cell)}</t></is></c>`;
  if ("raw" in cell) return cell.raw;
  if ("error" in cell) return `<c r="${r}" t="e"><v>${cell.error}</v></c>`;
  const text = typeof cell.v === "string";
  return `<c r="${r}"${text ? ' t="str"' : ""}${cell.cell ?? ""}><f${cell.attributes ?? ""}>${xmlText(cell.f)}</f>${cell.v === undefined ? "" : `<v>${xmlText(String(cell.v))}</v>`}</c>`;
}

function sheetXml({ cells, tables = [], after = "" }: SheetXml): string {
  const rows = cells.map((line, row) => `<row r="${row + 1}">${line.map((cell, column) => cellXml(cell, row, column)).join("")}</row>`).join("");
  const parts = tables.length ? `<tableParts count="${tables.length}">${tables.map((_, i) => `<tablePart r:id="rId${i + 1}"/>`).join("")}</tableParts>` : "";
  return `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheetData>${rows}</sheetData>${after}${parts}</worksheet>`;
}

const relation = (id: string, kind: string, target: string): string => `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${target}"/>`;
const relations = (inside: string): string => `${HEAD}<Relationships xmlns="${PACKAGE}">${inside}</Relationships>`;

/** The parts of a small workbook, as text. */
export function workbookParts(book: BookXml): Record<string, string> {
  const listed = book.sheets
    .map(({ name, state }, i) => `<sheet name="${xmlText(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"${state ? ` state="${state}"` : ""}/>`)
    .join("");
  const names = book.names ? `<definedNames>${book.names}</definedNames>` : "";
  const arrows = book.sheets.map((_, i) => relation(`rId${i + 1}`, "worksheet", `worksheets/sheet${i + 1}.xml`)).join("");
  const parts: Record<string, string> = {
    "[Content_Types].xml": `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`,
    "_rels/.rels": relations(relation("rId1", "officeDocument", "xl/workbook.xml")),
    "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${book.properties ?? ""}<sheets>${listed}</sheets>${names}</workbook>`,
    "xl/_rels/workbook.xml.rels": relations(arrows + (book.sharedStrings ? relation("rIdS", "sharedStrings", "sharedStrings.xml") : "")),
  };
  if (book.sharedStrings) parts["xl/sharedStrings.xml"] = `${HEAD}<sst xmlns="${MAIN}">${book.sharedStrings}</sst>`;
  book.sheets.forEach((sheet, i) => {
    parts[`xl/worksheets/sheet${i + 1}.xml`] = sheetXml(sheet);
    sheet.tables?.forEach((table, n) => {
      parts[`xl/tables/table${i + 1}${n + 1}.xml`] = `${HEAD}${table}`;
    });
    if (sheet.tables) {
      const toTables = sheet.tables.map((_, n) => relation(`rId${n + 1}`, "table", `../tables/table${i + 1}${n + 1}.xml`)).join("");
      parts[`xl/worksheets/_rels/sheet${i + 1}.xml.rels`] = relations(toTables);
    }
  });
  return parts;
}

/** The bytes of a small workbook. */
export function workbookBytes(book: BookXml): Uint8Array {
  const parts: Record<string, Uint8Array> = {};
  for (const [path, content] of Object.entries({ ...workbookParts(book), ...book.parts })) {
    if (content !== null) parts[path] = typeof content === "string" ? strToU8(content) : content;
  }
  return zipSync(parts);
}

/** A workbook of one sheet, "Sheet1". */
export const oneSheet = (cells: CellXml[][]): Uint8Array => workbookBytes({ sheets: [{ name: "Sheet1", cells }] });
