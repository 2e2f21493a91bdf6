import type { Model } from "@odoo/o-spreadsheet";
import { strToU8, type Zippable, zipSync } from "fflate";
import { isCellError } from "../core/cell.ts";
import { type GridPicture, picturesOn } from "../hosts/bench/pictures.ts";
import { tableNames } from "../hosts/bench/sheets.ts";
import { cellName, placeName } from "../workbook/address.ts";
import { LAYOUT_SHEET, layoutForSheet } from "../workbook/layout-sheet.ts";
import { storageXml } from "../workbook/storage.ts";
import { layoutSheetPart, partsBesideKept } from "../xlsx/kept-parts.ts";
import type { CellFile, DefinedName, PrintElement } from "../xlsx/model.ts";
import { rectangleIn } from "../xlsx/model.ts";
import { readXlsx } from "../xlsx/read/read.ts";
import { HEADING, xmlElement, xmlText } from "../xlsx/write/xml.ts";
import { escapedXml } from "../xlsx/xml.ts";
import { type SavedCell, SharedStrings, savedCells, type ToName, withCells, withFills } from "./save-cells.ts";
import { formulaForFile } from "./stored-formula.ts";
import { withMarks } from "./stored-marks.ts";
import { withTyping } from "./typing-rules.ts";
import type { BesideGrid } from "./workbook.ts";

/** What was to be saved: the sheets in order, each with its cells by name. */
type SavedSheets = readonly { name: string; cells: ReadonlyMap<string, SavedCell> }[];

/**
 * Reads a saved workbook as any other program would and compares it with what was to be saved: the
 * places of the cells that differ. Whoever saves over months of work should not find out later.
 */
function differences(bytes: Uint8Array, saved: SavedSheets): string[] {
  const book = readXlsx(bytes);
  const places: string[] = [];
  saved.forEach(({ name, cells }, i) => {
    const sheet = book.sheets[i];
    const read = new Map(sheet?.cells.map((cell) => [cellName(cell), cell]));
    const filled = filledBy(cells);
    for (const [address, cell] of cells) {
      // Cells that a formula fills are not read as cells of their own.
      if (filled.has(address)) continue;
      if (sheet?.name !== name || !isSame(cell, read.get(address))) places.push(placeOf(name, address));
      read.delete(address);
    }
    for (const address of read.keys()) places.push(placeOf(name, address));
  });
  return places;
}

/** The cells that formulas fill, without those of the formulas. */
function filledBy(cells: ReadonlyMap<string, SavedCell>): Set<string> {
  const filled = new Set<string>();
  for (const [address, { spill }] of cells) {
    if (spill === undefined) continue;
    const area = rectangleIn(spill, "");
    for (let row = area.row; row < area.row + area.rows; row++) {
      for (let column = area.column; column < area.column + area.columns; column++) filled.add(cellName({ row, column }));
    }
    filled.delete(address);
  }
  return filled;
}

function isSame(saved: SavedCell, read: CellFile | undefined): boolean {
  const { formula, spill, value } = saved;
  if (!read) return formula === undefined && (value === "" || value === null);
  if ((read.formula === undefined ? undefined : formulaForFile(read.formula)) !== formula) return false;
  if (spill !== undefined) {
    const { rows, columns } = rectangleIn(spill, "");
    if (read.array?.rows !== rows || read.array.columns !== columns) return false;
  }
  if (isCellError(value)) return isCellError(read.value);
  return (read.value ?? "") === (value ?? "");
}

const placeOf = (sheet: string, address: string): string => placeName({ sheet, ...rectangleIn(address, "") });

const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/**
 * Says that the values are of a current calculation: a program that does not have our functions then
 * shows them, where it would otherwise calculate anew and show `#NAME?`.
 */
const CALCULATED = '<calcPr calcId="191029"/>';

interface SavedWorkbook {
  bytes: Uint8Array;
  /** Cells that read otherwise in the file than in the workbook; none, unless something is wrong. */
  differences: string[];
}

/**
 * The workbook as an .xlsx: looks, widths, merged cells and the rest as the grid writes them,
 * contents as `withCells` does, and then read again and compared. Needs a page, because the grid
 * makes XML with one.
 */
export async function saveWorkbook(model: Model, beside: BesideGrid, toName: ToName): Promise<SavedWorkbook> {
  const parts = new Map<string, string>();
  const pictures = new Map<string, string>();
  for (const file of (await model.exportXLSX()).files) {
    if ("imageSrc" in file) pictures.set(file.path, file.imageSrc);
    else parts.set(file.path, tidy(file.content));
  }
  const strings = new SharedStrings();
  const sheets = model.getters.getSheetIds().map((sheetId) => ({ name: model.getters.getSheetName(sheetId), cells: savedCells(model, sheetId, toName) }));
  model.getters.getSheetIds().forEach((sheetId, i) => {
    change(parts, `xl/worksheets/sheet${i}.xml`, (xml) => {
      const filled = inOrder(withCells(xml, sheets[i]!.cells, strings));
      return withPrint(withTyping(model, sheetId, withFills(model, sheetId, filled)), beside.print.get(sheetId)?.elements ?? []);
    });
    const shown = picturesOn(model, sheetId);
    if (shown.length > 0) change(parts, `xl/drawings/drawing${i}.xml`, (xml) => withWords(xml, shown));
  });
  tableNames(model).forEach((name, i) => {
    change(parts, `xl/tables/table${i + 1}.xml`, (xml) => xml.replace(/ name="[^"]*" displayName="[^"]*"/, ` name="${name}" displayName="${name}"`));
  });
  parts.set("xl/sharedStrings.xml", strings.xml());
  change(parts, "xl/workbook.xml", (xml) => xml.replace("</workbook>", `${definedNames(model, beside, toName)}${CALCULATED}</workbook>`));
  beside.looks?.restoreIn(parts, model, toName);
  const texts = withMarks(model);
  addKept(parts, texts);
  addLayoutSheet(parts, layoutForSheet(texts), sheets.length);
  const bytes = zipSync(zippable(parts, bytesOf(pictures)));
  return { bytes, differences: differences(bytes, sheets) };
}

/**
 * The grid's XML writer repeats an empty namespace, which would hide the element from its readers,
 * and leaves out the opacity with which the format begins a colour (ECMA-376 part 1, 18.18.86).
 */
const tidy = (xml: string): string => xml.replaceAll(' xmlns=""', "").replaceAll(/\brgb="([\dA-F]{6})"/gi, 'rgb="FF$1"');

function change(parts: Map<string, string>, path: string, by: (xml: string) => string): void {
  const xml = parts.get(path);
  if (xml === undefined) throw new Error(`The engine wrote no ${path}`);
  parts.set(path, by(xml));
}

const PROTECTION = /<sheetProtection\b[^>]*\/>/;

/** A sheet's protection stands right after its cells (ECMA-376 part 1, 18.3.1.99); the grid puts merged cells between. */
function inOrder(xml: string): string {
  const protection = PROTECTION.exec(xml)?.[0];
  return protection ? xml.replace(protection, "").replace("</sheetData>", () => `</sheetData>${protection}`) : xml;
}

/** Set-up for printing, which the grid does not know, in its places (ECMA-376 part 1, 18.3.1.99): after rules and links, before pictures and tables. */
function withPrint(xml: string, print: readonly PrintElement[]): string {
  const written = (elements: readonly PrintElement[]) =>
    elements
      .map(({ name, attributes, within }) =>
        xmlElement(name, attributes, within.map((one) => xmlElement(one.name, {}, xmlText(one.text))).join("") || undefined),
      )
      .join("");
  const [fit, page] = [true, false].map((isFit) => written(print.filter(({ name }) => (name === "pageSetUpPr") === isFit)));
  const printed = xml.replace(/(?=<drawing\b|<tableParts\b|<\/worksheet>)/, () => page!);
  if (!fit) return printed;
  return printed.includes("</sheetPr>")
    ? printed.replace("</sheetPr>", () => `${fit}</sheetPr>`)
    : printed.replace(/<worksheet\b[^>]*>/, (start) => `${start}<sheetPr>${fit}</sheetPr>`);
}

/** Named ranges, which the grid reads and calculates with but does not write, and the names that it never knew. */
function definedNames(model: Model, { names: otherNames, print }: BesideGrid, toName: ToName): string {
  const fixed = (column: number, row: number) => toName(column, row).replace(/([A-Z]+)(\d+)/, "$$$1$$$2");
  const ranges = model.getters.getNamedRanges().map(({ name, range }): DefinedName => {
    const { left, top, right, bottom } = range.zone;
    const cells = left === right && top === bottom ? fixed(left, top) : `${fixed(left, top)}:${fixed(right, bottom)}`;
    return { name, formula: quotedSheet(model, range.sheetId) + cells };
  });
  const taken = new Set(ranges.map(({ name }) => name.toLowerCase()));
  const sheets = model.getters.getSheetIds().length;
  const others = otherNames.filter(({ name, sheet }) => (sheet === undefined ? !taken.has(name.toLowerCase()) : sheet < sheets));
  const printed = model.getters.getSheetIds().flatMap((sheetId, sheet) =>
    (print.get(sheetId)?.names ?? []).map(({ name, formula }) => ({
      name,
      sheet,
      formula: formula.replace(/[^,]+/g, (range) => quotedSheet(model, sheetId) + range),
    })),
  );
  const names = [...ranges, ...others, ...printed].map(({ name, sheet, formula }) => {
    const scope = sheet === undefined ? "" : ` localSheetId="${sheet}"`;
    return `<definedName name="${escapedXml(name)}"${scope}>${escapedXml(formulaForFile(formula))}</definedName>`;
  });
  return names.length ? `<definedNames>${names.join("")}</definedNames>` : "";
}

/** `'Bores'!`, before its cells. */
const quotedSheet = ({ getters }: Model, sheetId: string): string => `'${getters.getSheetName(sheetId).replaceAll("'", "''")}'!`;

/** What is kept in the workbook, as the part in which every host of ours finds it. */
function addKept(parts: Map<string, string>, texts: ReadonlyMap<string, string>): void {
  if (texts.size === 0) return;
  parts.set("customXml/item1.xml", HEADING + storageXml(texts));
  for (const { path, xml, type } of partsBesideKept(1)) {
    parts.set(path, xml);
    if (!path.endsWith(".rels")) {
      change(parts, "[Content_Types].xml", (types) => types.replace("</Types>", `<Override PartName="/${path}" ContentType="${type}"/></Types>`));
    }
  }
  change(parts, "xl/_rels/workbook.xml.rels", (xml) =>
    xml.replace("</Relationships>", `<Relationship Id="rIdKept" Type="${RELATIONS}/customXml" Target="../customXml/item1.xml"/></Relationships>`),
  );
}

/** A layout once more, on a sheet that nobody sees; a sheet of a person's own that has its name stays alone. */
function addLayoutSheet(parts: Map<string, string>, layout: string, sheets: number): void {
  if (layout === "" || parts.get("xl/workbook.xml")?.includes(`name="${LAYOUT_SHEET}"`)) return;
  const path = `worksheets/sheet${sheets}.xml`;
  parts.set(`xl/${path}`, layoutSheetPart(layout));
  const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
  change(parts, "[Content_Types].xml", (xml) => xml.replace("</Types>", `<Override PartName="/xl/${path}" ContentType="${type}"/></Types>`));
  change(parts, "xl/_rels/workbook.xml.rels", (xml) =>
    xml.replace("</Relationships>", `<Relationship Id="rIdLayout" Type="${RELATIONS}/worksheet" Target="${path}"/></Relationships>`),
  );
  const id = sheets + 1000;
  change(parts, "xl/workbook.xml", (xml) =>
    xml.replace("</sheets>", `<sheet xmlns:r="${RELATIONS}" name="${LAYOUT_SHEET}" sheetId="${id}" state="veryHidden" r:id="rIdLayout"/></sheets>`),
  );
}

/** The grid calls every picture an image and has no words for it. */
function withWords(xml: string, pictures: readonly GridPicture[]): string {
  let at = 0;
  return xml.replace(/(<xdr:cNvPr\b[^>]*?) name="[^"]*" title="[^"]*"/g, (whole, start: string) => {
    const picture = pictures[at++];
    return picture ? `${start} name="${escapedXml(picture.name)}" descr="${escapedXml(picture.description)}"` : whole;
  });
}

/** Pictures have their files in their addresses. */
function bytesOf(pictures: ReadonlyMap<string, string>): Zippable {
  const bytes = (address: string) => Uint8Array.from(atob(address.slice(address.indexOf(",") + 1)), (sign) => sign.charCodeAt(0));
  return Object.fromEntries([...pictures].map(([path, address]) => [path, bytes(address)]));
}

const zippable = (parts: ReadonlyMap<string, string>, pictures: Zippable): Zippable => ({
  ...Object.fromEntries([...parts].map(([path, xml]) => [path, strToU8(xml.startsWith("<?xml") ? xml : HEADING + xml)])),
  ...pictures,
});
