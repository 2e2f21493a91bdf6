import { columnLetters } from "../address.ts";
import type { CellFile, WorkbookFile } from "../xlsx/model.ts";
import type { Computed, Placed, Reach } from "./computed.ts";
import { contentOf, formulasOf, type Refused } from "./contents.ts";
import { type Model, type ModelData, modelOf, signatures, startCalculation } from "./engine.ts";
import { Grids } from "./grids.ts";
import { errorText } from "./literals.ts";
import { Translator } from "./translate.ts";

/** Room for spills, tried in turn: most workbooks need none. */
const ROOMS = [
  { rows: 1, columns: 1 },
  { rows: 200, columns: 50 },
  { rows: 5000, columns: 300 },
];

interface Trial {
  model: Model;
  hurried: boolean;
  refused: Refused;
}

/** Calculates a workbook with the engine's model of a whole workbook, whatever its formulas do. Those known to be `circular` are not run: some would pass over their own error. */
export function calculateByModel(book: WorkbookFile, circular: ReadonlySet<CellFile> = new Set()): Computed {
  startCalculation();
  const blocked = new Set<CellFile>();
  let trial = tryOut(book, ROOMS[0]!, { blocked, circular });
  let room = 1;
  while (room < ROOMS.length && isCrowded(book, trial.model)) trial = tryOut(book, ROOMS[room++]!, { blocked, circular });
  // A formula that the file does not mark as spilling shows its first value where there is no room for more.
  for (const cell of blockedFormulas(book, trial.model)) blocked.add(cell);
  if (blocked.size > 0) trial = tryOut(book, ROOMS[room - 1]!, { blocked, circular });
  const { model, hurried, refused } = trial;
  return { values: (sheet) => valuesOf(model, sheet), reach: (sheet, row, column) => reachOf(model, sheet, row, column), hurried, refused };
}

function reachOf(model: Model, sheet: number, row: number, column: number): Reach | undefined {
  const zone = model.getters.getSpreadZone({ sheetId: idOf(sheet), row, col: column });
  return zone && { rows: zone.bottom - zone.top + 1, columns: zone.right - zone.left + 1 };
}

function* valuesOf(model: Model, sheet: number): Generator<Placed> {
  for (const { row, col } of model.getters.getEvaluatedCellsPositions(idOf(sheet))) {
    const { value, type, message } = valueAt(model, sheet, row, col) as { value: Placed["value"]; type: string; message?: unknown };
    // Blank cells that a formula refers to are among them.
    if (value !== null) yield { row, column: col, value, isError: type === "error", message };
  }
}

const idOf = (sheet: number): string => `s${sheet}`;

/** Formulas of which something is known from before. */
interface Known {
  blocked: ReadonlySet<CellFile>;
  circular: ReadonlySet<CellFile>;
}

function tryOut(book: WorkbookFile, room: { rows: number; columns: number }, { blocked, circular }: Known): Trial {
  const grids = new Grids(book);
  const translator = new Translator(book, grids, signatures());
  const refused: Refused = new Map();
  const contents = new Map<CellFile, string>();
  const cut: [CellFile, number][] = [];
  const put = (cell: CellFile, sheet: number): void => {
    grids.cut = false;
    contents.set(cell, circular.has(cell) ? `=${errorText("#CYCLE")}` : contentOf(cell, sheet, translator, blocked.has(cell), refused));
    if (grids.cut) cut.push([cell, sheet]);
  };
  book.sheets.forEach(({ cells }, sheet) => {
    for (const cell of cells) put(cell, sheet);
  });
  grids.widen(room.rows, room.columns);
  // References to whole columns and rows reach as far as the sheets have turned out to go.
  for (const [cell, sheet] of cut.splice(0)) put(cell, sheet);
  return { ...modelOf(dataOf(book, grids, contents)), refused };
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

/** True when a result found the end of the sheet in its way. */
function isCrowded(book: WorkbookFile, model: Model): boolean {
  for (const [cell, sheet] of formulasOf(book)) {
    const { value, message } = valueAt(model, sheet, cell.row, cell.column) as { value: unknown; message?: unknown };
    if (value === "#SPILL!" && String(message).includes("automatically expanded")) return true;
  }
  return false;
}

function blockedFormulas(book: WorkbookFile, model: Model): CellFile[] {
  return [...formulasOf(book)].filter(([cell, sheet]) => !cell.array && valueAt(model, sheet, cell.row, cell.column).value === "#SPILL!").map(([cell]) => cell);
}
