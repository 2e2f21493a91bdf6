import { layoutCells } from "../workbook/layout-sheet.ts";
import { STORAGE_NAMESPACE } from "../workbook/storage.ts";
import { HEADING, MAIN, xmlText } from "./write/xml.ts";

/** A part of a workbook's archive that is to stand in it. */
export interface NewPart {
  path: string;
  xml: string;
  type: string;
}

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";
/** Every such part has an identity of its own among those of its workbook. */
const IDENTITY = "{5C0B7A4E-2D1F-4C39-9E6A-6B7F0C2A91D4}";

/**
 * What stands beside the part in which we keep texts, `customXml/item1.xml` where `number` is 1: who it is (ECMA-376
 * part 1, 15.2.6 and 22.5). An office program that finds none drops the part when it saves the workbook.
 */
export const partsBesideKept = (number: number): NewPart[] => [
  {
    path: `customXml/itemProps${number}.xml`,
    xml: `${HEADING}<ds:datastoreItem xmlns:ds="${OFFICE}/customXml" ds:itemID="${IDENTITY}"><ds:schemaRefs><ds:schemaRef ds:uri="${STORAGE_NAMESPACE}"/></ds:schemaRefs></ds:datastoreItem>`,
    type: "application/vnd.openxmlformats-officedocument.customXmlProperties+xml",
  },
  {
    path: `customXml/_rels/item${number}.xml.rels`,
    xml: `${HEADING}<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${OFFICE}/relationships/customXmlProps" Target="itemProps${number}.xml"/></Relationships>`,
    type: "application/vnd.openxmlformats-package.relationships+xml",
  },
];

/** The part of the sheet on which a layout is kept once more; in its workbook the sheet is `veryHidden` (ECMA-376 part 1, 18.18.68). */
export function layoutSheetPart(layout: string): string {
  const rows = layoutCells(layout).map(
    (text, row) => `<row r="${row + 1}"><c r="A${row + 1}" t="inlineStr"><is><t xml:space="preserve">${xmlText(text)}</t></is></c></row>`,
  );
  return `${HEADING}<worksheet xmlns="${MAIN}"><sheetData>${rows.join("")}</sheetData></worksheet>`;
}
