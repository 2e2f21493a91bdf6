import { type Cell, type CellError, isCellError } from "../../core/cell.ts";
import { columnLetters, placeName } from "../address.ts";
import type { SheetSnapshot } from "../sheet-host.ts";
import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import { keyOf } from "../xlsx/place.ts";
import { type Model, type ModelData, modelOf, signatures } from "./engine.ts";
import { Grids } from "./grids.ts";
import { cellText, errorText } from "./literals.ts";
import { FILL, Translator } from "./translate.ts";
import { Untranslatable } from "./untranslatable.ts";

export interface Calculated {
  sheets: SheetSnapshot[];
  /** What a person should know about the calculation, in sentences. */
  notes: string[];
}

/** Room for spills, tried in turn: most workbooks need none. */
const ROOMS = [
  { rows: 1, columns: 1 },
  { rows: 200, columns: 50 },
  { rows: 5000, columns: 300 },
];

interface Trial {
  model: Model;
  grids: Grids;
  hurried: boolean;
  refused: Map<CellFile, Untranslatable>;
}

/** Calculates a workbook from what was typed into it; the values that its file holds for formulas are not looked at. */
export function calculate(book: WorkbookFile): Calculated {
  const blocked = new Set<CellFile>();
  let trial = tryOut(book, ROOMS[0]!, blocked);
  let room = 1;
  while (room < ROOMS.length && isCrowded(book, trial.model)) trial = tryOut(book, ROOMS[room++]!, blocked);
  // A formula that the file does not mark as spilling shows its first value where there is no room for more.
  for (const cell of blockedFormulas(book, trial.model)) blocked.add(cell);
  if (blocked.size > 0) trial = tryOut(book, ROOMS[room - 1]!, blocked);
  return { sheets: book.sheets.map((_, sheet) => snapshot(book, sheet, trial)), notes: notesOn(book, trial) };
}

const isFormula = ({ formula, beyond }: CellFile): boolean => formula !== undefined || beyond !== undefined;

const idOf = (sheet: number): string => `s${sheet}`;

function tryOut(book: WorkbookFile, room: { rows: number; columns: number }, blocked: ReadonlySet<CellFile>): Trial {
  const grids = new Grids(book);
  const translator = new Translator(book, grids, signatures());
  const refused: Trial["refused"] = new Map();
  const contents = new Map<CellFile, string>();
  const cut: [CellFile, number][] = [];
  const put = (cell: CellFile, sheet: number): void => {
    grids.cut = false;
    contents.set(cell, contentOf(cell, sheet, translator, blocked.has(cell), refused));
    if (grids.cut) cut.push([cell, sheet]);
  };
  book.sheets.forEach(({ cells }, sheet) => {
    for (const cell of cells) put(cell, sheet);
  });
  grids.widen(room.rows, room.columns);
  // References to whole columns and rows reach as far as the sheets have turned out to go.
  for (const [cell, sheet] of cut.splice(0)) put(cell, sheet);
  return { ...modelOf(dataOf(book, grids, contents)), grids, refused };
}

function contentOf(cell: CellFile, sheet: number, translator: Translator, blocked: boolean, refused: Trial["refused"]): string {
  if (!isFormula(cell)) return literalContent(cell.value);
  try {
    if (cell.formula === undefined) throw new Untranslatable("#VALUE!", cell.beyond!);
    const { array } = cell;
    const formula = translator.translate(cell.formula, { sheet, row: cell.row, column: cell.column }, array !== undefined);
    if (blocked) return `=${FILL}(${formula.slice(1)},1,1)`;
    return array && !array.grows ? `=${FILL}(${formula.slice(1)},${array.rows},${array.columns})` : formula;
  } catch (reason) {
    if (!(reason instanceof Untranslatable)) throw reason;
    refused.set(cell, reason);
    return `=${errorText(reason.code, `This formula ${reason.message}.`)}`;
  }
}

function literalContent(value: Cell): string {
  if (isCellError(value)) return `=${errorText(value.error)}`;
  if (typeof value === "string") return cellText(value);
  return typeof value === "boolean" ? String(value).toUpperCase() : String(value ?? "");
}

function dataOf(book: WorkbookFile, { all }: Grids, contents: ReadonlyMap<CellFile, string>): ModelData {
  const sheets = book.sheets.map((sheet, index) => {
    const cells: Record<string, string> = {};
    for (const cell of sheet.cells) cells[`${columnLetters(cell.column)}${cell.row + 1}`] = contents.get(cell)!;
    const rows = Object.fromEntries(sheet.hiddenRows.filter((row) => row < all[index]!.rows).map((row) => [row, { isHidden: true }]));
    return { id: idOf(index), name: all[index]!.name, colNumber: all[index]!.columns, rowNumber: all[index]!.rows, cells, rows };
  });
  return { version: "19.3.2", sheets } as unknown as ModelData;
}

const valueAt = (model: Model, sheet: number, row: number, column: number) => model.getters.getEvaluatedCell({ sheetId: idOf(sheet), row, col: column });

function* formulas({ sheets }: WorkbookFile): Generator<[CellFile, number]> {
  for (const [sheet, { cells }] of sheets.entries()) for (const cell of cells) if (isFormula(cell)) yield [cell, sheet];
}

/** True when a result found the end of the sheet in its way. */
function isCrowded(book: WorkbookFile, model: Model): boolean {
  for (const [cell, sheet] of formulas(book)) {
    const { value, message } = valueAt(model, sheet, cell.row, cell.column) as { value: unknown; message?: unknown };
    if (value === "#SPILL!" && String(message).includes("automatically expanded")) return true;
  }
  return false;
}

function blockedFormulas(book: WorkbookFile, model: Model): CellFile[] {
  return [...formulas(book)].filter(([cell, sheet]) => !cell.array && valueAt(model, sheet, cell.row, cell.column).value === "#SPILL!").map(([cell]) => cell);
}

function snapshot(book: WorkbookFile, sheet: number, { model }: Trial): SheetSnapshot {
  const { name, cells } = book.sheets[sheet]!;
  const own = new Map(cells.map((cell) => [keyOf(cell), cell]));
  const positions = model.getters.getEvaluatedCellsPositions(idOf(sheet));
  let rows = 0;
  let columns = 0;
  for (const { row, col } of positions) {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, col + 1);
  }
  const values: Cell[][] = Array.from({ length: rows }, () => new Array(columns).fill(null));
  const formulas: (string | null)[][] = Array.from({ length: rows }, () => new Array(columns).fill(null));
  for (const { row, col: column } of positions) {
    const cell = own.get(keyOf({ row, column }));
    values[row]![column] = cell && !isFormula(cell) ? cell.value : calculated(model, sheet, row, column);
    if (cell?.formula !== undefined) formulas[row]![column] = `=${cell.formula}`;
  }
  return { name, row: 0, column: 0, values, formulas };
}

/** The engine's own codes as other sheets write them. */
const CODES: Readonly<Record<string, string>> = { "#ERROR": "#VALUE!", "#BAD_EXPR": "#VALUE!", "#REF": "#REF!", "#CYCLE": "#REF!" };

function calculated(model: Model, sheet: number, row: number, column: number): Cell {
  const { value, type, message } = valueAt(model, sheet, row, column) as { value: Cell; type: string; message?: unknown };
  if (type !== "error") return value;
  const error: CellError = { error: CODES[String(value)] ?? String(value) };
  const sentence = value === "#CYCLE" ? "This formula depends on itself." : String(message ?? "");
  return sentence ? { ...error, message: sentence } : error;
}

function notesOn(book: WorkbookFile, { refused, hurried }: Trial): string[] {
  const notes: string[] = [];
  for (const [cell, sheet] of formulas(book)) {
    const reason = refused.get(cell);
    if (reason) notes.push(`${placeName({ sheet: book.sheets[sheet]!.name, ...cell })}: this formula ${reason.message}.`);
  }
  if (hurried) notes.push("Some formulas depend on one another through so many spills that their values may not be settled.");
  if (book.from1904) notes.push("Dates in this workbook count from 1904: functions of dates may be off by four years and a day.");
  return notes;
}
