import type { Model } from "@odoo/o-spreadsheet";
import { commonCode, typedText } from "../../calc/grid/grid-text.ts";
import type { Cell } from "../../core/cell.ts";
import { areaOf, areaText, type CellAddress, type CellArea } from "../../workbook/address.ts";
import {
  type Abilities,
  type AbilityNotes,
  type CellMark,
  type Edit,
  MARK_FILL,
  type NameSnapshot,
  type SheetHost,
  type SheetSnapshot,
  type WorkbookSnapshot,
} from "../../workbook/port.ts";
import { hiddenSheet, noSheet, protectedSheet } from "../../workbook/refusals.ts";
import { firstGridPicture, insertGridPicture } from "./pictures.ts";
import { type GridCommand, type MarkedCell, remember, rememberedMarks, step } from "./plugins.ts";
import { addGridSheets } from "./sheets.ts";

interface Position {
  sheetId: string;
  col: number;
  row: number;
}

export const BENCH_ABILITIES: Abilities = {
  "other names": "refused",
  tables: "left out",
  styles: "yes",
  "print set-up": "left out",
  pictures: "yes",
  undo: "yes",
  protection: "yes",
  "active cell": "yes",
};

export const BENCH_NOTES: AbilityNotes = {
  tables: "they stand on the sheet, but the grid has no names for tables; ours stay with each table and come back when it is saved",
  "print set-up": "the grid has none; that of a file is in it again when it is saved",
  pictures: "PNG, with a name and alternative text; PNG, JPEG, GIF and WebP are read from files, shown and saved",
  undo: "one step; the last 99 are kept, and older ones let go, so that a page open all day does not grow",
  "all or nothing": "taken back before the history hears of it",
};

/**
 * The bench's spreadsheet engine as a sheet host. The model must come from a grid that
 * `extendGrid` has been told of. What is kept stays with the model; `storedTexts` hands it to
 * whoever saves the workbook.
 */
export function benchHost(model: Model, name = ""): SheetHost {
  return {
    abilities: BENCH_ABILITIES,
    read: async () => snapshotOf(model, name),
    select: async (place) => select(model, areaOf(place)),
    selection: async () => selection(model),
    addSheets: async (added) => addGridSheets(model, added),
    write: async (edits) => write(model, edits),
    insertPicture: async (corner, picture) => insertGridPicture(model, corner, picture),
    firstPicture: async (sheet) => firstGridPicture(model, sheet),
    mark: async (marks) => mark(model, marks),
    unmark: async () => unmark(model),
    hasMarks: async () => rememberedMarks(model).length > 0,
    watch: async (changed) => watch(model, changed),
    loadText: async (key) => storedTexts(model).get(key) ?? null,
    storeText: async (key, value) => void storedTexts(model).set(key, value),
  };
}

const kept = new WeakMap<Model, Map<string, string>>();

/** The texts kept in a workbook by their keys. They are no step of its history: undo is for what a person does to cells. */
export function storedTexts(model: Model): Map<string, string> {
  const texts = kept.get(model) ?? new Map<string, string>();
  kept.set(model, texts);
  return texts;
}

export function snapshotOf(model: Model, name: string): WorkbookSnapshot {
  return { name, sheets: model.getters.getSheetIds().map((sheetId) => sheetOf(model, sheetId)), names: namesIn(model) };
}

function sheetOf(model: Model, sheetId: string): SheetSnapshot {
  const { getters } = model;
  const positions = getters.getEvaluatedCellsPositions(sheetId);
  let rows = 0;
  let columns = 0;
  for (const { row, col } of positions) {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, col + 1);
  }
  const values: Cell[][] = Array.from({ length: rows }, () => new Array<Cell>(columns).fill(null));
  const formulas: (string | null)[][] = Array.from({ length: rows }, () => new Array<string | null>(columns).fill(null));
  for (const position of positions) {
    values[position.row]![position.col] = gridValue(model, position);
    formulas[position.row]![position.col] = gridFormulaAt(model, position);
  }
  return { name: getters.getSheetName(sheetId), row: 0, column: 0, values, formulas };
}

/** The calculated value of a cell as the port has it. */
export function gridValue(model: Model, position: Position): Cell {
  const cell = model.getters.getEvaluatedCell(position);
  if (cell.type === "error") return { error: commonCode(String(cell.value)), ...(cell.message ? { message: String(cell.message) } : {}) };
  return cell.value;
}

/** The formula of a cell with its `=`, or `null`; a spilled cell has none. `bounded` ends open ranges where the sheet ends. */
export function gridFormulaAt(model: Model, position: Position, bounded = false): string | null {
  const cell = model.getters.getCell(position);
  return cell?.isFormula ? cell.compiledFormula.toFormulaString(model.getters, { useBoundedReference: bounded }) : null;
}

function positionOf(model: Model, { sheet, row, column }: CellAddress): Position {
  const sheetId = model.getters.getSheetIdByName(sheet);
  if (sheetId === undefined) throw noSheet(sheet);
  return { sheetId, col: column, row };
}

function select(model: Model, area: CellArea): void {
  const { sheetId, col, row } = positionOf(model, area);
  const { getters } = model;
  if (!getters.isSheetVisible(sheetId)) throw hiddenSheet(getters.getSheetName(sheetId));
  const active = getters.getActiveSheetId();
  if (active !== sheetId) model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: active, sheetIdTo: sheetId });
  const zone = { left: col, right: col + area.columns - 1, top: row, bottom: row + area.rows - 1 };
  model.selection.selectZone({ cell: { col, row }, zone }, { scrollIntoView: false });
  model.dispatch("SCROLL_TO_CELL", { col, row });
}

function selection({ getters }: Model): CellArea {
  const { left, right, top, bottom } = getters.getSelectedZone();
  return { sheet: getters.getSheetName(getters.getActiveSheetId()), row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

function write(model: Model, edits: readonly Edit[]): void {
  const commands: GridCommand[] = [];
  const reach = new Map<string, { columns: number; rows: number }>();
  for (const { sheet, row, column, cells } of edits) {
    const { sheetId } = positionOf(model, { sheet, row, column });
    refuseProtected(model, sheetId);
    const far = reach.get(sheetId) ?? { columns: 0, rows: 0 };
    cells.forEach((line, r) => {
      line.forEach((cell, c) => {
        if (cell === null) return;
        far.columns = Math.max(far.columns, column + c + 1);
        far.rows = Math.max(far.rows, row + r + 1);
        commands.push({ type: "UPDATE_CELL", sheetId, col: column + c, row: row + r, content: contentOf(cell) });
      });
    });
    reach.set(sheetId, far);
  }
  step(model, [...[...reach].flatMap(([sheetId, far]) => growth(model, sheetId, far)), ...commands]);
}

const contentOf = (cell: number | string | boolean): string => (typeof cell === "string" && cell.startsWith("=") ? cell : typedText(cell));

/** The commands that make a sheet large enough to be written to. */
function growth({ getters }: Model, sheetId: string, { columns, rows }: { columns: number; rows: number }): GridCommand[] {
  const sheetName = getters.getSheetName(sheetId);
  const more = (dimension: "COL" | "ROW", wanted: number, there: number): GridCommand[] =>
    wanted > there ? [{ type: "ADD_COLUMNS_ROWS", dimension, sheetId, sheetName, base: there - 1, position: "after", quantity: wanted - there }] : [];
  return [...more("COL", columns, getters.getNumberCols(sheetId)), ...more("ROW", rows, getters.getNumberRows(sheetId))];
}

function refuseProtected({ getters }: Model, sheetId: string): void {
  if (getters.isSheetLocked(sheetId)) throw protectedSheet(getters.getSheetName(sheetId));
}

function mark(model: Model, marks: readonly CellMark[]): void {
  const off = takingOff(model);
  const restored = new Map(off.cells.map((cell) => [keyOf(cell), cell.earlier]));
  const marked = new Map<string, MarkedCell>();
  for (const { cell, tone } of marks) {
    const position = positionOf(model, cell);
    refuseProtected(model, position.sheetId);
    const key = keyOf(position);
    const earlier = restored.get(key) ?? fillAt(model, position);
    // Of two marks on one cell the first, which is the worse one, stands.
    if (!marked.has(key)) marked.set(key, { ...position, fill: MARK_FILL[tone], earlier });
  }
  const cells = [...marked.values()];
  step(model, [...off.commands, ...cells.map((cell) => painting(cell, cell.fill)), remember(cells)]);
}

function unmark(model: Model): number {
  const off = takingOff(model);
  if (off.count > 0) step(model, [...off.commands, remember([])]);
  return off.count;
}

/** How to take the remembered marks off. A cell that somebody has coloured since keeps that colour. */
function takingOff(model: Model): { count: number; cells: MarkedCell[]; commands: GridCommand[] } {
  const marks = rememberedMarks(model);
  for (const { sheetId } of marks) refuseProtected(model, sheetId);
  const cells = marks.filter((cell) => fillAt(model, cell) === cell.fill);
  return { count: marks.length, cells, commands: cells.map((cell) => painting(cell, cell.earlier)) };
}

const keyOf = ({ sheetId, col, row }: Position): string => `${sheetId}\n${col},${row}`;

/** Fill colour of a cell, `""` for none. */
export function fillAt(model: Model, { sheetId, col, row }: Position): string {
  return model.getters.getCell({ sheetId, col, row })?.style?.fillColor ?? "";
}

function painting({ sheetId, col, row }: Position, fillColor: string): GridCommand {
  const target = [{ left: col, right: col, top: row, bottom: row }];
  return { type: "SET_FORMATTING", sheetId, target, style: { fillColor } };
}

/** Changes of looks, of the selection and of the view are none of the watcher's business. */
const CHANGING = new Set(["UPDATE_CELL", "UNDO", "REDO", "CREATE_SHEET", "DELETE_SHEET", "DUPLICATE_SHEET", "RENAME_SHEET", "ADD_COLUMNS_ROWS"]);

function watch(model: Model, changed: () => void): () => void {
  const watcher = {};
  const on = model.on as unknown as (event: string, owner: object, heard: (command: GridCommand) => void) => void;
  let pending = false;
  on.call(model, "command-dispatched", watcher, (command) => {
    pending ||= CHANGING.has(command.type) && (command.type !== "UPDATE_CELL" || "content" in command);
  });
  on.call(model, "update", watcher, () => {
    if (!pending) return;
    pending = false;
    changed();
  });
  return () => {
    model.off("command-dispatched", watcher);
    model.off("update", watcher);
  };
}

/** The grid's named ranges. It has no names for anything else, and tables of the grid have none. */
const namesIn = ({ getters }: Model): NameSnapshot[] =>
  getters.getNamedRanges().map(({ name, range: { sheetId, zone } }) => {
    const { left, top, right, bottom } = zone;
    const place = areaText({ sheet: getters.getSheetName(sheetId), row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 });
    const mark = place.lastIndexOf("!");
    // A named range stays where it is, whatever formula uses it.
    return { name, formula: `=${place.slice(0, mark)}${place.slice(mark).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2")}` };
  });
