import type { Edges } from "../formula/template.ts";
import { columnLetters } from "../workbook/address.ts";
import { UnreadableFile } from "../xlsx/file-limits.ts";
import type { CellFile, SpillSize, WorkbookFile } from "../xlsx/model.ts";
import { cellsInCycles, type FormulaPrecedents, NotingGridSheets, TooManySteps } from "./cycles.ts";
import { noteFilteredRows } from "./grid/subtotals.ts";
import { type Model, type ModelData, modelOf, readBeyondReferences, refuseExhausted, signatures, startCalculation } from "./grid-model.ts";
import { areaOfReference, GridSheets, type SheetRectangle, Untranslatable } from "./references.ts";
import type { Computed, ComputedCell } from "./results.ts";
import { cycleContent, formulasOf, gridContent, type RefusedFormulas } from "./results.ts";
import { Translator } from "./translate.ts";

/** Room for spills, tried in turn: most workbooks need none. */
const ROOMS = [
  { rows: 1, columns: 1 },
  { rows: 200, columns: 50 },
  { rows: 5000, columns: 300 },
];

/** How often cycles that were found are taken out and the rest is looked through for more. */
const MOST_ROUNDS = 10;

interface Trial {
  model: Model;
  hurried: boolean;
  refused: RefusedFormulas;
  precedents: readonly FormulaPrecedents[];
}

/**
 * Calculates a workbook with the grid's model of a whole workbook, whatever its formulas do. The model
 * lets formulas in a cycle pass over the error of the others, one way or the other by the order in which
 * it comes to them: whatever goes round is found afterwards, added to `circular`, and not run again.
 */
export function evaluateWithModel(book: WorkbookFile, circular = new Set<CellFile>(), work?: number): Computed {
  let trial: Trial;
  let isLeft: boolean;
  let round = 0;
  do {
    trial = settled(book, circular, work);
    isLeft = addCycles(trial, circular);
  } while (isLeft && ++round < MOST_ROUNDS);
  const { model, hurried, refused } = trial;
  return {
    values: (sheet) => valuesOf(model, sheet),
    spillSize: (sheet, row, column) => reachOf(model, sheet, row, column),
    hurried: hurried || isLeft,
    refused,
  };
}

/** Cells of all sheets, blank ones among them: a sheet that ends far to the right takes much room for each row more. */
const MOST_CELLS = 20_000_000;

function mustFit(book: WorkbookFile, room: { rows: number; columns: number }): void {
  const cells = new GridSheets(book).all.reduce((total, { rows, columns }) => total + (rows + room.rows) * (columns + room.columns), 0);
  if (cells > MOST_CELLS)
    throw new UnreadableFile(`needs more room to calculate than there is for one workbook: its sheets reach too far for results that spill`);
}

/** With as much room as the results need. */
function settled(book: WorkbookFile, circular: ReadonlySet<CellFile>, work: number | undefined): Trial {
  startCalculation(work);
  const blocked = new Set<CellFile>();
  let trial = tryOut(book, ROOMS[0]!, { blocked, circular });
  let room = 1;
  while (room < ROOMS.length && isCrowded(book, trial.model)) {
    mustFit(book, ROOMS[room]!);
    trial = tryOut(book, ROOMS[room++]!, { blocked, circular });
  }
  // A formula that the file does not mark as spilling shows its first value where there is no room for more.
  for (const cell of blockedFormulas(book, trial.model)) blocked.add(cell);
  return blocked.size > 0 ? tryOut(book, ROOMS[room - 1]!, { blocked, circular }) : trial;
}

/** Adds what rests on itself; true where something did that was not known, or nobody can tell. */
function addCycles({ model, precedents }: Trial, circular: Set<CellFile>): boolean {
  const fills = ({ cell, sheet }: FormulaPrecedents): Edges => {
    const { row, column } = cell;
    const { rows, columns } = reachOf(model, sheet, row, column) ?? { rows: 1, columns: 1 };
    return { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 };
  };
  try {
    const found = cellsInCycles(precedents, fills);
    for (const cell of found) circular.add(cell);
    return found.length > 0;
  } catch (reason) {
    if (reason instanceof TooManySteps) return true;
    throw reason;
  }
}

function reachOf(model: Model, sheet: number, row: number, column: number): SpillSize | undefined {
  const zone = model.getters.getSpreadZone({ sheetId: idOf(sheet), row, col: column });
  return zone && { rows: zone.bottom - zone.top + 1, columns: zone.right - zone.left + 1 };
}

function* valuesOf(model: Model, sheet: number): Generator<ComputedCell> {
  for (const { row, col } of model.getters.getEvaluatedCellsPositions(idOf(sheet))) {
    const { value, type, message } = valueAt(model, sheet, row, col) as { value: ComputedCell["value"]; type: string; message?: unknown };
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
  const grids = new NotingGridSheets(book);
  const translator = new Translator(book, grids, signatures());
  const refused: RefusedFormulas = new Map();
  const contents = new Map<CellFile, string>();
  const areas = new Map<CellFile, SheetRectangle[]>();
  const cut: [CellFile, number][] = [];
  const put = (cell: CellFile, sheet: number): void => {
    grids.cut = false;
    grids.areas = [];
    contents.set(cell, circular.has(cell) ? cycleContent(cell) : gridContent(cell, sheet, translator, blocked.has(cell), refused));
    areas.set(cell, refused.get(cell)?.wholly ? [] : grids.areas);
    if (grids.cut) cut.push([cell, sheet]);
  };
  book.sheets.forEach(({ cells }, sheet) => {
    for (const cell of cells) put(cell, sheet);
  });
  grids.widen(room.rows, room.columns);
  // References to whole columns and rows reach as far as the sheets have turned out to go.
  for (const [cell, sheet] of cut.splice(0)) put(cell, sheet);
  const { model, hurried } = modelOf(dataOf(book, grids, contents));
  refuseExhausted();
  return { model, hurried, refused, precedents: precedentsIn(book, model, areas) };
}

/** The formulas that have run, with all that they have looked at. */
function precedentsIn(book: WorkbookFile, model: Model, areas: ReadonlyMap<CellFile, SheetRectangle[]>): FormulaPrecedents[] {
  const sheetOf = new Map(book.sheets.map((_, sheet) => [idOf(sheet), sheet]));
  const beyond = new Map<string, SheetRectangle[]>();
  for (const { sheetId, row, col, to } of readBeyondReferences()) {
    const place = `${sheetOf.get(sheetId)} ${row} ${col}`;
    const ways = beyond.get(place) ?? [];
    beyond.set(place, ways);
    ways.push({ ...to.zone, sheet: sheetOf.get(to.sheetId)! });
  }
  return [...formulasOf(book)]
    .filter(([cell, sheet]) => hasRun(model, sheet, cell))
    .map(([cell, sheet]) => ({ cell, sheet, areas: [...areas.get(cell)!, ...(beyond.get(`${sheet} ${cell.row} ${cell.column}`) ?? [])] }));
}

/** False for a formula that the grid could not make sense of, which has looked at nothing. */
function hasRun(model: Model, sheet: number, { row, column }: CellFile): boolean {
  const cell = model.getters.getCell({ sheetId: idOf(sheet), row, col: column });
  return cell?.isFormula === true && !cell.compiledFormula.isBadExpression;
}

function dataOf(book: WorkbookFile, grids: GridSheets, contents: ReadonlyMap<CellFile, string>): ModelData {
  const { all } = grids;
  const sheets = book.sheets.map((sheet, index) => {
    const cells: Record<string, string> = {};
    for (const cell of sheet.cells) cells[`${columnLetters(cell.column)}${cell.row + 1}`] = contents.get(cell)!;
    const rows = Object.fromEntries(sheet.hiddenRows.filter((row) => row < all[index]!.rows).map((row) => [row, { isHidden: true }]));
    noteFilteredRows(idOf(index), sheet.filteredRows ?? []);
    return { id: idOf(index), name: all[index]!.name, colNumber: all[index]!.columns, rowNumber: all[index]!.rows, cells, rows };
  });
  return { version: "19.3.2", sheets, namedRanges: namedCells(book, grids) } as unknown as ModelData;
}

/** Names that stand for cells, which INDIRECT may be told in text. */
function namedCells(book: WorkbookFile, grids: GridSheets): Record<string, string> {
  const named: Record<string, string> = {};
  for (const { name, sheet, formula } of book.names) {
    if (sheet !== undefined || !/^[a-z_]\w*$/i.test(name)) continue;
    try {
      const area = areaOfReference(formula, { sheet: -1, row: 0, column: 0 }, book);
      if (area && area.sheet >= 0 && grids.holds(area)) named[name] = grids.name(area, -1, true);
    } catch (reason) {
      if (!(reason instanceof Untranslatable)) throw reason;
    }
  }
  return named;
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
