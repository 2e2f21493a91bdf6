import type { Rectangle } from "../../workbook/address.ts";
import { boxName, cellName } from "../../workbook/address.ts";
import type { Validation } from "../../workbook/sheet-spec.ts";
import { type Allowed, allowed, FOOTER, MARGINS, REFUSED_TITLE, rowHeights } from "../../workbook/styles.ts";
import { SHADED, type Styles, VERDICT_STYLES } from "./styles.ts";
import type { FileCell, NewSheetFile } from "./workbook-file.ts";
import { HEADING, MAIN, RELATIONS, xmlElement, xmlText } from "./xml.ts";

/** Where the texts of all sheets stand once each. */
export interface Strings {
  place(text: string): number;
}

/** The part of one sheet, in the order of ECMA-376 part 1, 18.3.1.99. `tables` are the ids of relations to its tables. */
export function worksheetPart(sheet: NewSheetFile, isFirst: boolean, styles: Styles, strings: Strings, tables: readonly string[]): string {
  const { cells, widths, merges, print } = sheet;
  return `${HEADING}${xmlElement(
    "worksheet",
    { xmlns: MAIN, "xmlns:r": RELATIONS },
    [
      '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>',
      xmlElement("dimension", { ref: boxName(boundsOf(cells)) }),
      xmlElement("sheetViews", {}, viewOf(sheet, isFirst)),
      '<sheetFormatPr defaultRowHeight="15"/>',
      widths.length ? xmlElement("cols", {}, widths.map(column).join("")) : "",
      xmlElement("sheetData", {}, rowsOf(sheet, styles, strings)),
      merges.length ? xmlElement("mergeCells", { count: merges.length }, merges.map((box) => xmlElement("mergeCell", { ref: boxName(box) })).join("")) : "",
      formattings(sheet),
      validations(sheet.validations),
      xmlElement("pageMargins", MARGINS),
      xmlElement("pageSetup", { paperSize: print.paper === "A4" ? 9 : 1, orientation: print.isLandscape ? "landscape" : "portrait", fitToHeight: 0 }),
      xmlElement("headerFooter", {}, xmlElement("oddFooter", {}, xmlText(`&L${FOOTER.left}&R${FOOTER.right}`))),
      tables.length ? xmlElement("tableParts", { count: tables.length }, tables.map((id) => xmlElement("tablePart", { "r:id": id })).join("")) : "",
    ].join(""),
  )}`;
}

function boundsOf(cells: readonly FileCell[]): Rectangle {
  let rows = 1;
  let columns = 1;
  for (const { row, column } of cells) {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  }
  return { row: 0, column: 0, rows, columns };
}

function viewOf({ frozen: { rows, columns } }: NewSheetFile, isFirst: boolean): string {
  const attributes = { tabSelected: isFirst ? 1 : undefined, workbookViewId: 0 };
  if (rows === 0 && columns === 0) return xmlElement("sheetView", attributes);
  const activePane = rows && columns ? "bottomRight" : rows ? "bottomLeft" : "topRight";
  const pane = xmlElement("pane", {
    xSplit: columns || undefined,
    ySplit: rows || undefined,
    topLeftCell: cellName({ row: rows, column: columns }),
    activePane,
    state: "frozen",
  });
  const others = rows && columns ? xmlElement("selection", { pane: "topRight" }) + xmlElement("selection", { pane: "bottomLeft" }) : "";
  const activeCell = cellName({ row: rows, column: columns });
  return xmlElement("sheetView", attributes, pane + others + xmlElement("selection", { pane: activePane, activeCell, sqref: activeCell }));
}

const column = (width: number, i: number): string => xmlElement("col", { min: i + 1, max: i + 1, width, customWidth: 1 });

function rowsOf(sheet: NewSheetFile, styles: Styles, strings: Strings): string {
  const { cells } = sheet;
  const heights = new Map([...rowHeights(sheet), ...(sheet.heights ?? [])]);
  const byRow = new Map<number, FileCell[]>();
  for (const cell of cells) byRow.set(cell.row, [...(byRow.get(cell.row) ?? []), cell]);
  return [...byRow]
    .sort(([a], [b]) => a - b)
    .map(([row, own]) => {
      const inOrder = own.sort((a, b) => a.column - b.column);
      const ht = heights.get(row);
      return xmlElement("row", { r: row + 1, ht, customHeight: ht && 1 }, inOrder.map((cell) => cellPart(cell, styles, strings)).join(""));
    })
    .join("");
}

function cellPart(cell: FileCell, styles: Styles, strings: Strings): string {
  const { content } = cell;
  const attributes = { r: cellName(cell), s: styles.of(cell) || undefined };
  if (content === "") return xmlElement("c", attributes);
  if (typeof content === "number") return xmlElement("c", attributes, `<v>${content}</v>`);
  if (isFormula(cell)) return formulaPart(cell, content.slice(1), attributes);
  return xmlElement("c", { ...attributes, t: "s" }, `<v>${strings.place(content)}</v>`);
}

const isFormula = ({ content, isText }: FileCell): boolean => typeof content === "string" && content.startsWith("=") && !isText;

/** What a formula comes to is worked out anew when the workbook is opened; until then its cell shows what is known, or nothing. */
function formulaPart({ row, column, value = "", block }: FileCell, formula: string, attributes: Readonly<Record<string, string | number | undefined>>): string {
  const array = block ? { t: "array", ref: boxName({ row, column, ...block }) } : {};
  const [type, shown] = typeof value === "number" ? [undefined, String(value)] : ["str", xmlText(value)];
  return xmlElement("c", { ...attributes, t: type }, xmlElement("f", array, xmlText(formula)) + xmlElement("v", {}, shown));
}

function formattings({ verdicts, shaded }: NewSheetFile): string {
  const shadedOnes = shaded
    ? xmlElement(
        "conditionalFormatting",
        { sqref: boxName(shaded.area) },
        xmlElement("cfRule", { type: "expression", dxfId: SHADED, priority: 1 }, xmlElement("formula", {}, xmlText(shaded.formula))),
      )
    : "";
  return shadedOnes + judged(verdicts, shaded ? 2 : 1);
}

function judged(verdicts: readonly Rectangle[], first: number): string {
  if (verdicts.length === 0) return "";
  const rules = VERDICT_STYLES.map(([word, dxfId], i) =>
    xmlElement("cfRule", { type: "cellIs", dxfId, priority: first + i, operator: "equal" }, `<formula>"${word}"</formula>`),
  );
  return xmlElement("conditionalFormatting", { sqref: verdicts.map(boxName).join(" ") }, rules.join(""));
}

function validations(given: readonly Validation[]): string {
  if (given.length === 0) return "";
  const written = given.map(({ area, rule, sentence }) => {
    const only = allowed(rule);
    const attributes = {
      type: only.type,
      operator: "operator" in only ? only.operator : undefined,
      allowBlank: 1,
      showErrorMessage: 1,
      errorTitle: REFUSED_TITLE,
      error: sentence,
      sqref: boxName(area),
    };
    return xmlElement("dataValidation", attributes, `<formula1>${xmlText(boundOf(only))}</formula1>`);
  });
  return xmlElement("dataValidations", { count: written.length }, written.join(""));
}

function boundOf(only: Allowed): string {
  if (only.type === "custom") return only.formula;
  if (only.type !== "list") return String(only.bound).toUpperCase();
  return "words" in only ? `"${only.words.join(",")}"` : only.name;
}
