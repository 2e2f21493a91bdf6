import { NAMESPACE } from "../core/define.ts";

/**
 * How a workbook file spells what people see as `HATCH.TAPER(…)`: an add-in's function is stored as
 * `_xldudf_HATCH_TAPER(…)`, and a formula that may spill is an array formula whose cell points to
 * the workbook's dynamic-array metadata. That holds for every call of an add-in's function: stored
 * plainly it would be shown with `@` before it and give one cell only. Works on the parts of a
 * workbook, whoever wrote them.
 *
 * Source: ECMA-376 part 1, 18.3.1.40 (f), 18.9 (metadata); [MS-XLSX] 2.2.4.12 (XLDAPR). The spelling
 * of stored functions has not been compared with a file saved by Excel here.
 */
const STORED_PREFIX = `_xldudf_${NAMESPACE}_`;
const SHOWN_CALL = new RegExp(`\\b${NAMESPACE}\\.([A-Z]{3,})(?=\\s*\\()`, "gi");
const FORMULA = /(<f(?:\s[^>]*)?>)([^<]*)(<\/f>)/g;
const PLAIN_CELL = /(<c r="([A-Z]+\d+)"[^>]*>)<f>([^<]*)(?=<\/f>)/g;
const ARRAY_CELL = /<c ((?:(?!cm=)[^>])*)>(?=<f[^>]* t="array")/g;

const METADATA = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

/** `HATCH.TAPER(B2:C4)` as a file holds it. Text in quotes is left alone. */
export function storedFormula(formula: string): string {
  // Even pieces stand outside double quotes, odd ones inside.
  return formula
    .split('"')
    .map((piece, i) => (i % 2 ? piece : piece.replace(SHOWN_CALL, (_, name: string) => `${STORED_PREFIX}${name.toUpperCase()}`)))
    .join('"');
}

/** Rewrites the parts of a workbook so that its calls and spills are stored as Excel stores them. */
export function storeFormulas(parts: ReadonlyMap<string, string>): Map<string, string> {
  const stored = new Map(parts);
  let spills = false;
  for (const [path, xml] of parts) {
    if (!/^xl\/worksheets\/[^/]+\.xml$/.test(path)) continue;
    let sheet = xml.replace(FORMULA, (_, open: string, formula: string, close: string) => `${open}${storedFormula(formula.replaceAll("&quot;", '"'))}${close}`);
    sheet = sheet.replace(PLAIN_CELL, (whole, cell: string, address: string, formula: string) =>
      formula.includes(STORED_PREFIX) ? `${cell}<f t="array" ref="${address}">${formula}` : whole,
    );
    sheet = sheet.replace(ARRAY_CELL, (_, attributes: string) => `<c ${attributes} cm="1">`);
    spills ||= sheet.includes(' cm="1"');
    stored.set(path, sheet);
  }
  if (spills && !stored.has("xl/metadata.xml")) addMetadata(stored);
  return stored;
}

function addMetadata(parts: Map<string, string>): void {
  parts.set("xl/metadata.xml", METADATA);
  const types = parts.get("[Content_Types].xml") ?? "";
  const override = '<Override PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"/>';
  parts.set("[Content_Types].xml", types.replace("</Types>", `${override}</Types>`));
  const relations = parts.get("xl/_rels/workbook.xml.rels") ?? "";
  const relation =
    '<Relationship Id="rIdSheetMetadata" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata" Target="metadata.xml"/>';
  parts.set("xl/_rels/workbook.xml.rels", relations.replace("</Relationships>", `${relation}</Relationships>`));
}
