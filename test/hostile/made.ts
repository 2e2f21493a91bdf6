import { strToU8, zipSync } from "fflate";
import { LAYOUT_KEY, storageXml } from "../../src/workbook/storage.ts";

import { type CellXml, oneSheet, workbookBytes, workbookParts } from "../xlsx/workbook-bytes.ts";

/** How hostile files are made; none of them is kept. */
export const list = <T>(length: number, make: (i: number) => T): T[] => Array.from({ length }, (_, i) => make(i));

/** A formula that may fill as many cells as it likes. */
export const spill = (f: string): CellXml => ({ f, attributes: ' t="array" ref="A1"', cell: ' cm="1"' });

/** A sheet with this between its first row and its last. */
export const rows = (inside: string): Uint8Array => oneSheet([[{ raw: `</row>${inside}<row r="1048576">` }]]);

/** A workbook whose sheets are all the same part. */
export function sheetsOf(count: number): Uint8Array {
  const parts = workbookParts({ sheets: [{ name: "S", cells: [[1]] }] });
  const sheets = list(count, (i) => `<sheet name="S${i}" sheetId="${i + 1}" r:id="rId1"/>`).join("");
  parts["xl/workbook.xml"] = parts["xl/workbook.xml"]!.replace(/<sheets>.*<\/sheets>/, `<sheets>${sheets}</sheets>`);
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, xml]) => [name, strToU8(xml)])));
}

/** A workbook that keeps this as its layout. */
export const kept = (json: string, cells: CellXml[][] = list(2, (r) => [2 * r + 1, 2 * r + 2])): Uint8Array =>
  workbookBytes({ sheets: [{ name: "S", cells }], parts: keptParts(json) });

function keptParts(json: string): Record<string, string> {
  const relations = workbookParts({ sheets: [{ name: "S", cells: [] }] })["xl/_rels/workbook.xml.rels"]!;
  const relation =
    '<Relationship Id="rIdK" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../customXml/item1.xml"/>';
  return {
    "xl/_rels/workbook.xml.rels": relations.replace("</Relationships>", `${relation}</Relationships>`),
    "customXml/item1.xml": storageXml(new Map([[LAYOUT_KEY, json]])),
  };
}

/** A compound file's head with one name in its directory (MS-CFB 2.2 and 2.6), as legacy and encrypted workbooks have it. */
export function compound(name: string): Uint8Array {
  const bytes = new Uint8Array(2048);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...name].forEach((letter, i) => {
    bytes[1024 + 2 * i] = letter.charCodeAt(0);
  });
  return bytes;
}
