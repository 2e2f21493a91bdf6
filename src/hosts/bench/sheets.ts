import type { Model } from "@odoo/o-spreadsheet";
import { typedText } from "../../calc/grid/grid-text.ts";
import type { Rectangle } from "../../workbook/address.ts";
import { columnOf } from "../../workbook/address.ts";
import { HostRefusal } from "../../workbook/port.ts";
import { nameTaken, refuseTaken } from "../../workbook/refusals.ts";
import type { NameSpec, Rule, SheetSpec, TableSpec, Validation, WorkbookSpec } from "../../workbook/sheet-spec.ts";
import { allowed, POINTS_OF_A_PIXEL, pixelsOf, rowHeights, STYLES, type StyleParts, VERDICT_FILLS } from "../../workbook/styles.ts";
import { type GridCommand, step } from "./plugins.ts";

/**
 * The new sheets with all that is on them, as one step. The grid has no names for tables and no
 * sentence of one's own for what may not be typed: both are remembered with the table and the rule, for
 * the page and for a file that is saved. It has no set-up for printing.
 */
export function addGridSheets(model: Model, given: WorkbookSpec): void {
  const { getters } = model;
  // What comes from the pane's page is made of that page's lists, which the grid does not take for lists.
  const added = JSON.parse(JSON.stringify(given)) as WorkbookSpec;
  const there = getters.getSheetIds();
  refuseTaken(
    added.sheets.map(({ name }) => name),
    there.map(getters.getSheetName),
  );
  refuseTaken(
    added.names.map(({ name }) => name),
    getters.getNamedRanges().map(({ name }) => name),
    nameTaken,
  );
  const idOf = freeIds(new Set(there), added.sheets);
  step(model, [
    ...added.sheets.map((sheet, i) => creation(sheet, idOf(sheet.name), there.length + i)),
    ...added.sheets.flatMap((sheet) => cells(sheet, idOf(sheet.name))),
    ...added.names.map((name) => naming(name, idOf)),
    ...added.sheets.flatMap((sheet) => dress(sheet, added.names, idOf)),
  ]);
}

type IdOf = (sheet: string) => string;

function freeIds(taken: Set<string>, sheets: readonly SheetSpec[]): IdOf {
  const ids = new Map<string, string>();
  let number = taken.size;
  for (const { name } of sheets) {
    do number++;
    while (taken.has(`sheet${number}`));
    ids.set(name, `sheet${number}`);
  }
  return (sheet) => {
    const id = ids.get(sheet);
    if (id === undefined) throw new Error(`none of the new sheets is called ${sheet}`);
    return id;
  };
}

const SMALLEST = { rows: 100, cols: 26 };

function creation({ name, cells: all }: SheetSpec, sheetId: string, position: number): GridCommand {
  const rows = all.reduce((most, { row }) => Math.max(most, row + 1), SMALLEST.rows);
  const cols = all.reduce((most, { column }) => Math.max(most, column + 1), SMALLEST.cols);
  return { type: "CREATE_SHEET", sheetId, name, position, rows, cols };
}

const cells = (sheet: SheetSpec, sheetId: string): GridCommand[] =>
  sheet.cells.map(({ row, column, content, style, format }) => ({
    type: "UPDATE_CELL",
    sheetId,
    col: column,
    row,
    ...(content === "" ? {} : { content: typeof content === "string" && content.startsWith("=") ? content : typedText(content) }),
    ...(format && format !== "General" ? { format } : {}),
    style: styleOf(STYLES[style]),
  }));

const styleOf = ({ isBold, isItalic, size, ink, fill, isLeft, isWrapped }: StyleParts): object => ({
  ...(isBold ? { bold: true } : {}),
  ...(isItalic ? { italic: true } : {}),
  ...(size ? { fontSize: size } : {}),
  ...(ink ? { textColor: ink } : {}),
  ...(fill ? { fillColor: fill } : {}),
  ...(isLeft ? { align: "left" } : {}),
  ...(isWrapped ? { verticalAlign: "middle", wrapping: "wrap" } : {}),
});

const CELLS = /^(?:'((?:[^']|'')+)'|([^'!]+))!\$([A-Z]+)\$(\d+)(?::\$([A-Z]+)\$(\d+))?$/;

/** What a name stands for: cells of one of the new sheets. */
function cellsNamed({ name, formula }: NameSpec): { sheet: string; zone: Zone } {
  const [, quoted, plain, left, top, right = left, bottom = top] = CELLS.exec(formula) ?? [];
  const sheet = quoted?.replaceAll("''", "'") ?? plain;
  if (sheet === undefined) throw new HostRefusal(`The name "${name}" stands for ${formula}: the grid knows names of cells alone. Nothing was added.`);
  return { sheet, zone: { left: columnOf(left!), top: Number(top) - 1, right: columnOf(right!), bottom: Number(bottom) - 1 } };
}

interface Zone {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const zoneOf = ({ row, column, rows, columns }: Rectangle): Zone => ({ left: column, top: row, right: column + columns - 1, bottom: row + rows - 1 });
const rangeOf = (sheetId: string, zone: Zone): object => ({ _sheetId: sheetId, _zone: zone });

function naming(name: NameSpec, idOf: IdOf): GridCommand {
  const { sheet, zone } = cellsNamed(name);
  return { type: "CREATE_NAMED_RANGE", name: name.name, ranges: [rangeOf(idOf(sheet), zone)] };
}

/** Everything of a sheet but its cells. */
function dress(sheet: SheetSpec, names: readonly NameSpec[], idOf: IdOf): GridCommand[] {
  const { frozen, merges } = sheet;
  const sheetId = idOf(sheet.name);
  return [
    ...borders(sheet, sheetId),
    ...sheet.tables.map((table) => tableOf(table, sheetId)),
    ...(merges.length ? [{ type: "ADD_MERGE", sheetId, target: merges.map(zoneOf), force: true }] : []),
    ...sheet.validations.map((validation, i) => validating(validation, `${sheetId}-rule${i}`, sheetId, names, idOf)),
    ...repeatVerdicts(sheet, sheetId),
    ...sheet.widths.map((width, column) => ({ type: "RESIZE_COLUMNS_ROWS", dimension: "COL", sheetId, elements: [column], size: pixelsOf(width) })),
    ...[...rowHeights(sheet)].map(([row, height]) => ({
      type: "RESIZE_COLUMNS_ROWS",
      dimension: "ROW",
      sheetId,
      elements: [row],
      size: Math.round(height / POINTS_OF_A_PIXEL),
    })),
    ...(frozen.rows ? [{ type: "FREEZE_ROWS", sheetId, quantity: frozen.rows }] : []),
    ...(frozen.columns ? [{ type: "FREEZE_COLUMNS", sheetId, quantity: frozen.columns }] : []),
  ];
}

function borders({ cells: all }: SheetSpec, sheetId: string): GridCommand[] {
  const byColour = new Map<string, Zone[]>();
  for (const { row, column, style } of all) {
    const { border } = STYLES[style];
    if (border) byColour.set(border, [...(byColour.get(border) ?? []), zoneOf({ row, column, rows: 1, columns: 1 })]);
  }
  return [...byColour].map(([color, target]) => {
    const line = { style: "thin", color };
    return { type: "SET_BORDERS_ON_TARGET", sheetId, target, border: { top: line, bottom: line, left: line, right: line } };
  });
}

const tableOf = ({ name, row, column, rows, headings, hasFilter = false }: TableSpec, sheetId: string): GridCommand => ({
  type: "CREATE_TABLE",
  sheetId,
  tableType: "static",
  ranges: [rangeOf(sheetId, zoneOf({ row, column, rows: rows + 1, columns: headings.length }))],
  config: {
    hasFilters: hasFilter,
    totalRow: false,
    firstColumn: false,
    lastColumn: false,
    numberOfHeaders: 1,
    bandedRows: false,
    bandedColumns: false,
    automaticAutofill: true,
    styleId: "TableStyleLight1",
    // The grid keeps what else there is with a table.
    name,
  },
});

/** Names for the tables, each its own, in the order in which the grid writes those of more than one row. */
export function tableNames({ getters }: Model): string[] {
  const tables = getters.getSheetIds().flatMap((sheetId) => getters.getCoreTables(sheetId));
  const written = tables.filter(({ range: { zone } }) => zone.bottom > zone.top).map(({ config }) => (config as { name?: string }).name);
  const taken = new Set<string>();
  // A sheet that was copied has tables of the same names.
  const own = written.map((name) => {
    if (name === undefined || taken.has(name.toLowerCase())) return undefined;
    taken.add(name.toLowerCase());
    return name;
  });
  let number = 0;
  return own.map((name) => {
    if (name !== undefined) return name;
    do number++;
    while (taken.has(`table${number}`));
    return `Table${number}`;
  });
}

function validating({ area, rule, sentence }: Validation, id: string, sheetId: string, names: readonly NameSpec[], idOf: IdOf): GridCommand {
  const ranges = [rangeOf(sheetId, zoneOf(area))];
  return { type: "ADD_DATA_VALIDATION_RULE", sheetId, ranges, rule: { id, isBlocking: true, criterion: criterionOf(rule, names, idOf), sentence } };
}

function criterionOf(rule: Rule, names: readonly NameSpec[], idOf: IdOf): object {
  const only = allowed(rule);
  switch (only.type) {
    case "decimal":
      return { type: only.operator === "greaterThan" ? "isGreaterThan" : "isGreaterOrEqualTo", values: [String(only.bound)] };
    case "date":
      return { type: "dateIsAfter", values: [String(only.bound)], dateValue: "exactDate" };
    case "custom":
      return { type: "customFormula", values: [`=${only.formula}`] };
    case "list":
      return "words" in only ? { type: "isValueInList", values: only.words, displayStyle: "arrow" } : listedUnder(only.name, names, idOf);
  }
}

/** A list of the grid's is a range; it knows no name there. */
function listedUnder(wanted: string, names: readonly NameSpec[], idOf: IdOf): object {
  const name = names.find((one) => one.name === wanted);
  if (!name) throw new Error(`the name ${wanted} is not one of the new sheets`);
  idOf(cellsNamed(name).sheet);
  return { type: "isValueInRange", values: [name.formula], displayStyle: "arrow" };
}

function repeatVerdicts({ verdicts }: SheetSpec, sheetId: string): GridCommand[] {
  if (verdicts.length === 0) return [];
  const ranges = verdicts.map((box) => rangeOf(sheetId, zoneOf(box)));
  return VERDICT_FILLS.map(([word, fillColor], i) => ({
    type: "ADD_CONDITIONAL_FORMAT",
    sheetId,
    ranges,
    cf: { id: `${sheetId}-verdict${i}`, rule: { type: "CellIsRule", operator: "isEqual", values: [`="${word}"`], style: { fillColor } } },
  }));
}
