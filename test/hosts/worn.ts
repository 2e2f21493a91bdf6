import type { Model } from "@odoo/o-spreadsheet";
import { boxName } from "../../src/workbook/address.ts";
import type { NameSpec, SheetSpec } from "../../src/workbook/sheet-spec.ts";
import { allowed, pixelsOf, STYLES } from "../../src/workbook/styles.ts";
import type { ExcelBook, Note } from "./excel/book.ts";

/** What the contract looks at of how a sheet looks. */
export interface Worn {
  /** Where its tables stand. */
  tables: string[];
  frozen: { rows: number; columns: number };
  /** Of its columns, in pixels. */
  widths: number[];
  /** What may be typed, by area. */
  rules: Record<string, string>;
  formats: { B3: string; C4: string };
  fills: { A2: string; C4: string };
  /** `null` where nothing is set up for printing. */
  print: SheetSpec["print"] | null;
}

export function wornInMemory(sheet: SheetSpec, names: readonly NameSpec[]): Worn {
  const cell = (row: number, column: number) => sheet.cells.find((one) => one.row === row && one.column === column);
  const rules = sheet.validations.map(({ area, rule }) => {
    const only = allowed(rule);
    if (only.type === "custom") return [boxName(area), `custom ${only.formula}`];
    if (only.type !== "list") return [boxName(area), `${only.type} ${only.operator} ${only.bound}`];
    return [boxName(area), `list ${"words" in only ? only.words.join() : names.find(({ name }) => name === only.name)!.formula}`];
  });
  const fill = (row: number, column: number) => STYLES[cell(row, column)?.style ?? "plain"].fill ?? "";
  return {
    tables: sheet.tables.map(({ row, column, rows, headings }) => boxName({ row, column, rows: rows + 1, columns: headings.length })),
    frozen: sheet.frozen,
    widths: sheet.widths.map(pixelsOf),
    rules: Object.fromEntries(rules),
    formats: { B3: cell(2, 1)?.format ?? "", C4: cell(3, 2)?.format ?? "" },
    fills: { A2: fill(1, 0), C4: fill(3, 2) },
    print: sheet.print,
  };
}

const OPERATORS: Readonly<Record<string, string>> = {
  GreaterThan: "greaterThan",
  GreaterThanOrEqualTo: "greaterThanOrEqual",
  isGreaterThan: "greaterThan",
  isGreaterOrEqualTo: "greaterThanOrEqual",
  dateIsAfter: "greaterThan",
};

export function wornInExcel(book: ExcelBook, name: string): Worn {
  const { notes } = book.sheet(name)!;
  const value = (what: string) => notes.find((note) => note.what === what)?.value;
  const { names = [], tables = [] } = book.called;
  const own = tables.filter(({ sheet }) => sheet === name);
  const ruleOf = ({ value: rule }: Note): string => {
    const { decimal, date, list } = rule as Excel.DataValidationRule;
    if (list) return `list ${names.find((one) => `=${one.name}` === list.source)?.formula.slice(1) ?? list.source}`;
    const only = (decimal ?? date)!;
    return `${decimal ? "decimal" : "date"} ${OPERATORS[only.operator]} ${String(only.formula1).replace("=", "")}`;
  };
  const [corner] = (value("freezePanes.freezeAt") as unknown[] | undefined) ?? ["A0"];
  const [, columns = "@", rows = 0] = /:?([A-Z]+)(\d+)$/.exec(String(corner)) ?? [];
  const format = (row: number, column: number) => String((value("numberFormat") as string[][] | undefined)?.[row]?.[column] ?? "");
  return {
    tables: own.map(({ area }) => boxName(area)),
    frozen: { rows: Number(rows), columns: columns.charCodeAt(0) - 64 },
    widths: notes.filter(({ what }) => what === "format.columnWidth").map((note) => (Number(note.value) * 4) / 3),
    rules: Object.fromEntries(notes.filter(({ what }) => what === "dataValidation.rule").map((note) => [note.on, ruleOf(note)])),
    formats: { B3: format(2, 1), C4: format(3, 2) },
    fills: { A2: filled(notes, 1, 0), C4: filled(notes, 3, 2) },
    print: { paper: value("pageLayout.paperSize") === "A4" ? "A4" : "letter", isLandscape: value("pageLayout.orientation") === "Landscape" },
  };
}

function filled(notes: readonly Note[], row: number, column: number): string {
  const holds = (area: string): boolean => {
    const [, left, top, right = left, bottom = top] = /([A-Z])(\d+)(?::([A-Z])(\d+))?/.exec(area)!;
    const [c, r] = [String.fromCharCode(65 + column), row + 1];
    return left! <= c && c <= right! && Number(top) <= r && r <= Number(bottom);
  };
  return String(notes.find(({ on, what }) => what === "format.fill.color" && on.split(",").some(holds))?.value ?? "");
}

export function wornOnBench(model: Model, name: string): Worn {
  const { getters } = model;
  const sheetId = getters.getSheetIdByName(name)!;
  const text = (zone: { left: number; top: number; right: number; bottom: number }) => getters.zoneToXC(sheetId, zone);
  const rules = getters.getDataValidationRules(sheetId).map(({ ranges, criterion }) => {
    const { type, values } = criterion;
    const kind = type.startsWith("isValue") ? "list" : `${type.startsWith("date") ? "date" : "decimal"} ${OPERATORS[type]}`;
    return [ranges.map(({ zone }) => text(zone)).join(), `${kind} ${values.join()}`];
  });
  const { xSplit, ySplit } = getters.getPaneDivisions(sheetId);
  const widths = [];
  for (let column = 0; getters.getColSize(sheetId, column) !== 96; column++) widths.push(getters.getColSize(sheetId, column));
  const cell = (col: number, row: number) => getters.getCell({ sheetId, col, row });
  return {
    tables: getters.getCoreTables(sheetId).map(({ range }) => text(range.zone)),
    frozen: { rows: ySplit, columns: xSplit },
    widths,
    rules: Object.fromEntries(rules),
    formats: { B3: cell(1, 2)?.format ?? "", C4: cell(2, 3)?.format ?? "" },
    fills: { A2: cell(0, 1)?.style?.fillColor ?? "", C4: cell(2, 3)?.style?.fillColor ?? "" },
    print: null,
  };
}
