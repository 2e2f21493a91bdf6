import { areasOf, boxName, type Rectangle } from "../../workbook/address.ts";
import { HostRefusal } from "../../workbook/port.ts";
import { nameTaken, refuseTaken } from "../../workbook/refusals.ts";
import { type CellSpec, type CellStyle, cellContents, type Rule, type SheetSpec, type Validation, type WorkbookSpec } from "../../workbook/sheet-spec.ts";
import {
  allowed,
  FOOTER,
  MARGINS,
  pixelsOf,
  REFUSED_TITLE,
  rowHeights,
  STYLES,
  type StyleParts,
  titleColumns,
  titleRows,
  VERDICT_FILLS,
} from "../../workbook/styles.ts";
import type { UndoableEdit } from "./change.ts";
import { pointsOf, typed } from "./write.ts";

/** The new sheets with all that is on them. One sync to look. `prints` for those that are set up for printing too. */
export async function addSheets(context: Excel.RequestContext, added: WorkbookSpec, prints = true): Promise<UndoableEdit> {
  const { workbook } = context;
  await refuseWhatIsThere(context, added);
  return {
    result: undefined,
    where: `the sheets ${added.sheets.map(({ name }) => name).join(", ")}`,
    order: () => {
      const sheets = added.sheets.map((described) => ({ described, sheet: workbook.worksheets.add(described.name) }));
      // Formulas and rules may speak of any sheet and of any name: first all sheets, then what is on them, then the names.
      for (const { described, sheet } of sheets) fill(sheet, described);
      for (const { name, formula } of added.names) workbook.names.add(name, `=${formula}`);
      for (const { described, sheet } of sheets) {
        dress(sheet, described);
        if (prints) setUpPage(sheet.pageLayout, described);
      }
    },
    takeBack: (again) => takeOut(again, added),
  };
}

/** None of the sheets and names was there before, so what is there now is ours. */
async function takeOut(context: Excel.RequestContext, added: WorkbookSpec): Promise<string> {
  const { worksheets, names } = context.workbook;
  const ours = async (): Promise<{ sheets: Excel.Worksheet[]; named: Excel.NamedItem[] }> => {
    worksheets.load("items/name");
    names.load("items/name");
    await context.sync();
    const among = <T extends { name: string }>(items: readonly T[], own: readonly { name: string }[]) =>
      items.filter(({ name }) => own.some((one) => one.name === name));
    return { sheets: among(worksheets.items, added.sheets), named: among(names.items, added.names) };
  };
  const { sheets, named } = await ours();
  // With a sheet go its tables, but not the names of its cells.
  for (const one of [...named, ...sheets]) one.delete();
  await context.sync();
  const left = await ours();
  const list = [...left.sheets.map(({ name }) => `the sheet ${name}`), ...left.named.map(({ name }) => `the name ${name}`)];
  return list.length > 0 ? `It could not be taken back wholly. Left of it: ${list.join(", ")}.` : "";
}

const protectedBook = (): HostRefusal =>
  new HostRefusal(
    "The structure of this workbook is protected, so that no sheet can be added: take the protection off, or work in a new workbook. Nothing was added.",
  );

const tableTaken = (name: string): HostRefusal =>
  new HostRefusal(`There is a table "${name}" in this workbook already: rename it, or work in a new workbook. Nothing was added.`);

async function refuseWhatIsThere(context: Excel.RequestContext, { sheets, names }: WorkbookSpec): Promise<void> {
  const { worksheets, names: there, tables, protection } = context.workbook;
  worksheets.load("items/name");
  there.load("items/name");
  tables.load("items/name");
  protection.load("protected");
  await context.sync();
  if (protection.protected) throw protectedBook();
  const taken = (items: readonly { name: string }[]) => items.map(({ name }) => name);
  refuseTaken(
    sheets.map(({ name }) => name),
    taken(worksheets.items),
  );
  const tableNames = sheets.flatMap((sheet) => sheet.tables.map(({ name }) => name));
  refuseTaken([...names.map(({ name }) => name), ...tableNames], taken(there.items), nameTaken);
  refuseTaken([...names.map(({ name }) => name), ...tableNames], taken(tables.items), tableTaken);
}

function fill(sheet: Excel.Worksheet, described: SheetSpec): void {
  const block = cellContents(described).map((line) => line.map(typed));
  if (block.length > 0) sheet.getRangeByIndexes(0, 0, block.length, block[0]!.length).formulas = block;
}

/** Everything of a sheet but what stands in its cells. */
function dress(sheet: Excel.Worksheet, described: SheetSpec): void {
  const { tables, merges, validations, verdicts, widths } = described;
  for (const { name, row, column, rows, headings, hasFilter = false } of tables) {
    const table = sheet.tables.add(rangeOf(sheet, { row, column, rows: rows + 1, columns: headings.length }), true);
    table.name = name;
    // The cells have fills of their own.
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
    table.showFilterButton = hasFilter;
  }
  const areas = styleAreas(described.cells);
  giveStyles(sheet, areas);
  giveFormats(sheet, areas);
  for (const box of merges) rangeOf(sheet, box).merge(false);
  widths.forEach((width, column) => {
    sheet.getRangeByIndexes(0, column, 1, 1).format.columnWidth = pointsOf(pixelsOf(width));
  });
  for (const [row, height] of rowHeights(described)) sheet.getRangeByIndexes(row, 0, 1, 1).format.rowHeight = height;
  for (const validation of validations) allow(sheet, validation);
  if (verdicts.length > 0) for (const areasAtOnce of inAddresses(verdicts)) repeatVerdicts(sheet.getRanges(areasAtOnce));
  freeze(sheet, described);
}

const rangeOf = (sheet: Excel.Worksheet, { row, column, rows, columns }: Rectangle): Excel.Range => sheet.getRangeByIndexes(row, column, rows, columns);

/** Rectangles of cells that look alike, each cell in one of them. */
interface StyleArea extends Rectangle {
  style: CellStyle;
  format: string;
}

/** Excel is told of many cells in few areas. */
const styleAreas = (cells: readonly CellSpec[]): StyleArea[] =>
  areasOf(cells, ({ style, format = "" }) => `${style} ${format}`).map(({ first: { style, format = "General" }, ...box }) => ({ ...box, style, format }));

/** One block; Excel leaves a cell alone where it holds null. */
function giveFormats(sheet: Excel.Worksheet, all: readonly StyleArea[]): void {
  const areas = all.filter(({ format }) => format !== "General");
  if (areas.length === 0) return;
  const most = (end: (area: StyleArea) => number) => areas.reduce((far, area) => Math.max(far, end(area)), 0);
  const columns = most((area) => area.column + area.columns);
  const block = Array.from({ length: most((area) => area.row + area.rows) }, () => new Array<string | null>(columns).fill(null));
  for (const { row, column, rows, columns: wide, format } of areas) for (let r = row; r < row + rows; r++) block[r]!.fill(format, column, column + wide);
  sheet.getRangeByIndexes(0, 0, block.length, columns).numberFormat = block;
}

function giveStyles(sheet: Excel.Worksheet, areas: readonly StyleArea[]): void {
  for (const [style, parts] of Object.entries(STYLES)) {
    const own = areas.filter((area) => area.style === style);
    if (Object.keys(parts).length > 0) for (const address of inAddresses(own)) wear(sheet.getRanges(address).format, parts);
    if (!parts.border) continue;
    // Excel refuses a line inside an area that has no inside.
    for (const [isHigh, isWide] of [
      [false, false],
      [true, false],
      [false, true],
      [true, true],
    ]) {
      const alike = own.filter(({ rows, columns }) => rows > 1 === isHigh && columns > 1 === isWide);
      const sides = [...EDGES, ...(isHigh ? (["InsideHorizontal"] as const) : []), ...(isWide ? (["InsideVertical"] as const) : [])];
      for (const address of inAddresses(alike)) draw(sheet.getRanges(address).format.borders, sides, parts.border);
    }
  }
}

function wear(format: Excel.RangeFormat, { isBold, isItalic, size, ink, fill: colour, isLeft, isWrapped }: StyleParts): void {
  if (isBold) format.font.bold = true;
  if (isItalic) format.font.italic = true;
  if (size) format.font.size = size;
  if (ink) format.font.color = ink;
  if (colour) format.fill.color = colour;
  if (isLeft) format.horizontalAlignment = "Left";
  if (!isWrapped) return;
  format.verticalAlignment = "Center";
  format.wrapText = true;
}

const EDGES = ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight"] as const;

function draw(borders: Excel.RangeBorderCollection, sides: readonly ((typeof EDGES)[number] | "InsideHorizontal" | "InsideVertical")[], colour: string): void {
  for (const side of sides) {
    const line = borders.getItem(side);
    line.style = "Continuous";
    line.color = colour;
  }
}

/** Excel takes several areas in one go as a list of addresses, up to 8 192 characters; this stays well within. */
const LONGEST_LIST = 2000;

function inAddresses(boxes: readonly Rectangle[]): string[] {
  const lists: string[] = [];
  for (const box of boxes) {
    const address = boxName(box);
    const last = lists.at(-1);
    if (last !== undefined && last.length + address.length < LONGEST_LIST) lists[lists.length - 1] = `${last},${address}`;
    else lists.push(address);
  }
  return lists;
}

function allow(sheet: Excel.Worksheet, { area, rule, sentence }: Validation): void {
  const { dataValidation } = rangeOf(sheet, area);
  dataValidation.rule = ruleOf(rule);
  dataValidation.ignoreBlanks = true;
  dataValidation.errorAlert = { message: sentence, showAlert: true, style: "Stop", title: REFUSED_TITLE };
}

function ruleOf(rule: Rule): Excel.DataValidationRule {
  const only = allowed(rule);
  if (only.type === "list") return { list: { inCellDropDown: true, source: "words" in only ? only.words.join(",") : `=${only.name}` } };
  if (only.type === "custom") return { custom: { formula: `=${only.formula}` } };
  const operator = only.operator === "greaterThan" ? "GreaterThan" : "GreaterThanOrEqualTo";
  // A day as a number would be taken for a text of a date.
  return only.type === "date" ? { date: { formula1: `=${only.bound}`, operator } } : { decimal: { formula1: only.bound, operator } };
}

function repeatVerdicts(areas: Excel.RangeAreas): void {
  for (const [word, colour] of VERDICT_FILLS) {
    const { cellValue } = areas.conditionalFormats.add("CellValue");
    cellValue.format.fill.color = colour;
    cellValue.rule = { formula1: `="${word}"`, operator: "EqualTo" };
  }
}

function freeze(sheet: Excel.Worksheet, { frozen: { rows, columns } }: SheetSpec): void {
  if (rows && columns) sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
  else if (rows) sheet.freezePanes.freezeRows(rows);
  else if (columns) sheet.freezePanes.freezeColumns(columns);
}

/** Where no printer is set up, Excel may refuse to set pages up; a build sheet is worth having without. */
export function isOfPrinting(refusal: unknown): boolean {
  const { cause } = refusal as { cause?: { debugInfo?: { errorLocation?: string } } };
  return /^(?:PageLayout|Headers?Footers?)/.test(cause?.debugInfo?.errorLocation ?? "");
}

/** Excel counts margins in points. */
const POINTS_OF_AN_INCH = 72;

function setUpPage(page: Excel.PageLayout, { print, frozen: { rows, columns } }: SheetSpec): void {
  page.orientation = print.isLandscape ? "Landscape" : "Portrait";
  page.paperSize = print.paper === "A4" ? "A4" : "Letter";
  page.zoom = { horizontalFitToPages: 1 };
  page.leftMargin = MARGINS.left * POINTS_OF_AN_INCH;
  page.rightMargin = MARGINS.right * POINTS_OF_AN_INCH;
  page.topMargin = MARGINS.top * POINTS_OF_AN_INCH;
  page.bottomMargin = MARGINS.bottom * POINTS_OF_AN_INCH;
  page.headerMargin = MARGINS.header * POINTS_OF_AN_INCH;
  page.footerMargin = MARGINS.footer * POINTS_OF_AN_INCH;
  const { defaultForAllPages } = page.headersFooters;
  defaultForAllPages.leftFooter = FOOTER.left;
  defaultForAllPages.rightFooter = FOOTER.right;
  if (rows) page.setPrintTitleRows(titleRows(rows));
  if (columns) page.setPrintTitleColumns(titleColumns(columns));
}
