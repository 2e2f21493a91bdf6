import { NAMESPACE } from "../../core/define.ts";
import { FILE_LIMITS } from "../file-limits.ts";
import { METADATA, METADATA_TYPE, storedFormula } from "../formula-text.ts";
import { readXlsx } from "../read/read.ts";
import { type Unpack, Zip } from "../zip.ts";
import { Package } from "./package.ts";
import { RelationsPatch, relationsPath } from "./parts.ts";

const SHEET = /^xl\/worksheets\/[^/]+\.xml$/i;
const WORKBOOK = "xl/workbook.xml";
/** A cell's tag and its formula; formulas of conditions and of rules for typing; what a name stands for. */
const CELL = /<c ([^>]*)>\s*<f((?:\s[^>]*)?)>([^<]*)(?=<\/f>)/g;
const CONDITION = /(<formula[12]?>)([^<]*)(?=<\/formula)/g;
const NAME = /(<definedName [^>]*>)([^<]*)(?=<\/definedName>)/g;
/** LibreOffice writes an empty name for every function that it does not know from Excel. */
const MACRO_NAME = new RegExp(`<definedName [^>]*name="${NAMESPACE}\\.[A-Z]+"[^>]*(?:/>|></definedName>)`, "gi");

/**
 * A workbook that LibreOffice has saved, with our calls stored as Excel stores them: `_xldudf_HATCH_TAPER`
 * in place of `HATCH.TAPER`, each an array formula that may spill, without the empty names of macros. All
 * else stays byte for byte. Values are worked out anew when Excel opens it.
 *
 * @throws UnreadableFile for what is no .xlsx.
 */
export function excelForm(bytes: Uint8Array, unpack?: Unpack): { bytes: Uint8Array; formulas: number } {
  readXlsx(bytes, FILE_LIMITS, unpack);
  const parts = new Package(bytes, new Zip(bytes, FILE_LIMITS, unpack));
  let formulas = 0;
  const count = () => formulas++;
  for (const name of parts.zip.spelledNames())
    if (SHEET.test(name))
      parts.change(
        name,
        inText((xml) => sheetForm(xml, count)),
      );
  parts.change(WORKBOOK, inText(workbookForm));
  if (formulas > 0 && !parts.zip.names().some((name) => /^xl\/metadata\d*\.xml$/.test(name))) addMetadata(parts);
  return { bytes: parts.written(), formulas };
}

const inText =
  (make: (xml: string) => string) =>
  (part: Uint8Array): Uint8Array =>
    new TextEncoder().encode(make(new TextDecoder().decode(part)));

/** Quotes need not be escaped in the text of an element, and only outside them there are calls. */
const stored = (formula: string): string => storedFormula(formula.replaceAll("&quot;", '"'));

function sheetForm(xml: string, count: () => void): string {
  const cells = xml.replace(CELL, (whole, cell: string, formula: string, text: string) => {
    const made = stored(text);
    if (made === text.replaceAll("&quot;", '"')) return whole;
    count();
    const isArray = /\st="(?:array|shared)"/.test(formula);
    const reach = isArray ? formula : `${formula} t="array" ref="${/(?:^|\s)r="([^"]+)"/.exec(cell)?.[1]}"`;
    return `<c ${cell}${/\bcm="/.test(cell) ? "" : ' cm="1"'}><f${reach}>${made}`;
  });
  return cells.replace(CONDITION, (_, tag: string, text: string) => tag + stored(text));
}

function workbookForm(xml: string): string {
  return xml
    .replace(MACRO_NAME, "")
    .replace(/<definedNames>\s*<\/definedNames>/, "")
    .replace(NAME, (_, tag: string, text: string) => tag + stored(text))
    .replace(/<calcPr(?![^>]*fullCalcOnLoad)/, '<calcPr fullCalcOnLoad="1"');
}

function addMetadata(parts: Package): void {
  const name = parts.add("xl/metadata", new TextEncoder().encode(METADATA), METADATA_TYPE);
  parts.change(relationsPath(WORKBOOK), (part) => {
    const relations = new RelationsPatch(part, relationsPath(WORKBOOK));
    relations.add("sheetMetadata", name.replace(/^xl\//, ""));
    return relations.result();
  });
}
