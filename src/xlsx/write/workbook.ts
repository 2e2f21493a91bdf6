import { strToU8, zipSync } from "fflate";
import { boxName } from "../../workbook/address.ts";
import { LAYOUT_SHEET, layoutForSheet } from "../../workbook/layout-sheet.ts";
import type { TableSpec } from "../../workbook/sheet-spec.ts";
import { storageXml } from "../../workbook/storage.ts";
import { titleColumns, titleRows } from "../../workbook/styles.ts";
import { storeFormulas } from "../formula-text.ts";
import { layoutSheetPart, partsBesideKept } from "../kept-parts.ts";
import { Styles } from "./styles.ts";
import type { NewSheetFile, NewWorkbookFile } from "./workbook-file.ts";
import { type Strings, worksheetPart } from "./worksheet.ts";
import { HEADING, MAIN, RELATIONS, xmlElement, xmlText } from "./xml.ts";

const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
/** Files made twice are the same byte for byte: no clock goes into them. */
const DATE = new Date(1980, 0, 1);

interface Relation {
  id: string;
  kind: string;
  target: string;
}

/**
 * Writes a described workbook as an .xlsx (ECMA-376, transitional): the parts that it needs and no
 * others. `kept` are texts of ours to be kept in it.
 */
export function writeXlsx(book: NewWorkbookFile, kept: ReadonlyMap<string, string> = new Map()): Uint8Array {
  const parts = storeFormulas(workbookParts(book, kept));
  return zipSync(Object.fromEntries([...parts].map(([path, text]) => [path, strToU8(text)])), { mtime: DATE, level: 9 });
}

/** The parts by path, formulas as people type them. */
function workbookParts(book: NewWorkbookFile, kept: ReadonlyMap<string, string>): Map<string, string> {
  const styles = new Styles();
  const strings = new SharedStrings();
  const parts = new Map<string, string>();
  const overrides: [path: string, type: string][] = [["/xl/workbook.xml", `${TYPES}.sheet.main+xml`]];
  let tables = 0;
  book.sheets.forEach((sheet, i) => {
    const own = sheet.tables.map((table): Relation & { table: TableSpec; number: number } => {
      const number = ++tables;
      return { id: `rId${number}`, kind: "table", target: `../tables/table${number}.xml`, table, number };
    });
    for (const { table, number } of own) {
      parts.set(`xl/tables/table${number}.xml`, tablePart(table, number));
      overrides.push([`/xl/tables/table${number}.xml`, `${TYPES}.table+xml`]);
    }
    if (own.length) parts.set(`xl/worksheets/_rels/sheet${i + 1}.xml.rels`, relationsPart(own));
    const ids = own.map(({ id }) => id);
    parts.set(`xl/worksheets/sheet${i + 1}.xml`, worksheetPart(sheet, i === 0, styles, strings, ids));
    overrides.push([`/xl/worksheets/sheet${i + 1}.xml`, `${TYPES}.worksheet+xml`]);
  });
  const relations: Relation[] = [
    ...book.sheets.map((_, i) => ({ id: `rId${i + 1}`, kind: "worksheet", target: `worksheets/sheet${i + 1}.xml` })),
    { id: "rIdStyles", kind: "styles", target: "styles.xml" },
    { id: "rIdStrings", kind: "sharedStrings", target: "sharedStrings.xml" },
  ];
  overrides.push(["/xl/styles.xml", `${TYPES}.styles+xml`], ["/xl/sharedStrings.xml", `${TYPES}.sharedStrings+xml`]);
  const layout = layoutForSheet(kept);
  const hidden = layout === "" ? [] : [LAYOUT_SHEET];
  for (const _ of hidden) {
    const number = book.sheets.length + 1;
    parts.set(`xl/worksheets/sheet${number}.xml`, layoutSheetPart(layout));
    overrides.push([`/xl/worksheets/sheet${number}.xml`, `${TYPES}.worksheet+xml`]);
    relations.push({ id: `rId${number}`, kind: "worksheet", target: `worksheets/sheet${number}.xml` });
  }
  if (kept.size) {
    parts.set("customXml/item1.xml", HEADING + storageXml(kept));
    relations.push({ id: "rIdKept", kind: "customXml", target: "../customXml/item1.xml" });
    for (const { path, xml, type } of partsBesideKept(1)) {
      parts.set(path, xml);
      if (!path.endsWith(".rels")) overrides.push([`/${path}`, type]);
    }
  }
  parts.set("xl/workbook.xml", workbookPart(book, hidden));
  parts.set("xl/styles.xml", styles.part());
  parts.set("xl/sharedStrings.xml", strings.part());
  parts.set("xl/_rels/workbook.xml.rels", relationsPart(relations));
  parts.set("docProps/core.xml", corePart(book.title));
  overrides.push(["/docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml"]);
  parts.set("_rels/.rels", packageRelations());
  // The list of types stands first in the archive, as readers of streams want it.
  return new Map([["[Content_Types].xml", contentTypes(overrides)], ...parts]);
}

/** Texts of all sheets, each once (ECMA-376 part 1, 18.4.9). */
class SharedStrings implements Strings {
  readonly #places = new Map<string, number>();
  #uses = 0;

  place(text: string): number {
    this.#uses++;
    const known = this.#places.get(text) ?? this.#places.size;
    this.#places.set(text, known);
    return known;
  }

  part(): string {
    const items = [...this.#places.keys()].map((text) => `<si><t xml:space="preserve">${xmlText(text)}</t></si>`);
    return HEADING + xmlElement("sst", { xmlns: MAIN, count: this.#uses, uniqueCount: items.length }, items.join(""));
  }
}

/** ECMA-376 part 1, 18.5.1.2. */
function tablePart({ name, row, column, rows, headings, hasFilter }: TableSpec, id: number): string {
  const ref = boxName({ row, column, rows: rows + 1, columns: headings.length });
  const columns = headings.map((heading, i) => xmlElement("tableColumn", { id: i + 1, name: heading })).join("");
  return (
    HEADING +
    xmlElement(
      "table",
      { xmlns: MAIN, id, name, displayName: name, ref, totalsRowShown: 0 },
      (hasFilter ? xmlElement("autoFilter", { ref }) : "") +
        xmlElement("tableColumns", { count: headings.length }, columns) +
        xmlElement("tableStyleInfo", { showFirstColumn: 0, showLastColumn: 0, showRowStripes: 0, showColumnStripes: 0 }),
    )
  );
}

/** ECMA-376 part 1, 18.2.27: sheets, names, and that everything is to be worked out anew on opening. */
function workbookPart({ sheets, names }: NewWorkbookFile, hidden: readonly string[]): string {
  const listed = [...sheets.map(({ name }) => name), ...hidden].map((name, i) =>
    xmlElement("sheet", { name, sheetId: i + 1, state: i < sheets.length ? undefined : "veryHidden", "r:id": `rId${i + 1}` }),
  );
  const titles = sheets.flatMap((sheet, i) => {
    const formula = printTitles(sheet);
    return formula ? [xmlElement("definedName", { name: "_xlnm.Print_Titles", localSheetId: i }, xmlText(formula))] : [];
  });
  const defined = [...titles, ...names.map(({ name, formula }) => xmlElement("definedName", { name }, xmlText(formula)))];
  return (
    HEADING +
    xmlElement(
      "workbook",
      { xmlns: MAIN, "xmlns:r": RELATIONS },
      [
        "<workbookPr/>",
        '<bookViews><workbookView xWindow="0" yWindow="0" windowWidth="24000" windowHeight="12000"/></bookViews>',
        xmlElement("sheets", {}, listed.join("")),
        defined.length ? xmlElement("definedNames", {}, defined.join("")) : "",
        '<calcPr calcId="191029" fullCalcOnLoad="1"/>',
      ].join(""),
    )
  );
}

/** Rows and columns that stay in view are printed on every page. */
function printTitles({ name, frozen: { rows, columns } }: NewSheetFile): string {
  const sheet = `'${name.replaceAll("'", "''")}'!`;
  return [columns ? `${sheet}${titleColumns(columns)}` : "", rows ? `${sheet}${titleRows(rows)}` : ""].filter(Boolean).join(",");
}

const relationsPart = (relations: readonly Relation[]): string =>
  HEADING +
  xmlElement(
    "Relationships",
    { xmlns: `${PACKAGE}/relationships` },
    relations.map(({ id, kind, target }) => xmlElement("Relationship", { Id: id, Type: `${RELATIONS}/${kind}`, Target: target })).join(""),
  );

const packageRelations = (): string =>
  HEADING +
  xmlElement(
    "Relationships",
    { xmlns: `${PACKAGE}/relationships` },
    xmlElement("Relationship", { Id: "rId1", Type: `${RELATIONS}/officeDocument`, Target: "xl/workbook.xml" }) +
      xmlElement("Relationship", { Id: "rId2", Type: `${PACKAGE}/relationships/metadata/core-properties`, Target: "docProps/core.xml" }),
  );

const corePart = (title: string): string =>
  HEADING +
  xmlElement(
    "cp:coreProperties",
    { "xmlns:cp": `${PACKAGE}/metadata/core-properties`, "xmlns:dc": "http://purl.org/dc/elements/1.1/" },
    xmlElement("dc:title", {}, xmlText(title)) + xmlElement("dc:creator", {}, "Crosshatch"),
  );

const contentTypes = (overrides: readonly [string, string][]): string =>
  HEADING +
  xmlElement(
    "Types",
    { xmlns: `${PACKAGE}/content-types` },
    xmlElement("Default", { Extension: "rels", ContentType: "application/vnd.openxmlformats-package.relationships+xml" }) +
      xmlElement("Default", { Extension: "xml", ContentType: "application/xml" }) +
      overrides.map(([path, type]) => xmlElement("Override", { PartName: path, ContentType: type })).join(""),
  );
