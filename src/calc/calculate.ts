import { type Cell, type CellError, isCellError, isErrorCode } from "../core/cell.ts";
import { namesOwnFunction } from "../core/define.ts";
import { keyOf, MOST_COLUMNS, placeName } from "../workbook/address.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import type { CalculatedWorkbook, CellFile, SpillSize, WorkbookFile } from "../xlsx/model.ts";
import { precedentsOf } from "./cycles.ts";
import { evaluateWithModel } from "./evaluate-with-model.ts";
import { evaluateWithoutModel } from "./evaluate-without-model.ts";
import { commonCode } from "./grid/grid-text.ts";
import { isNotHere } from "./grid/own-function.ts";
import { omissionNote } from "./grid-model.ts";
import type { SheetRectangle, Untranslatable } from "./references.ts";
import type { Computed, ComputedCell } from "./results.ts";
import { formulasOf, isFormula } from "./results.ts";
import { storedOtherwise } from "./stored-results.ts";

/**
 * Calculates a workbook from what was typed into it; the values that its file holds for formulas are not looked at. `work` is what
 * its formulas may take together, in reads of a cell.
 *
 * @throws UnreadableFile for one that takes more.
 */
export function calculate(book: WorkbookFile, work?: number): CalculatedWorkbook {
  const inCycles = new Set<CellFile>();
  const computed = evaluateWithoutModel(book, inCycles, work) ?? evaluateWithModel(book, inCycles, work);
  const beyond = omissionNote();
  const unsettled: CellFile[] = [];
  const sheets = book.sheets.map((_, sheet) => snapshot(book, sheet, computed, unsettled));
  const refused = refusedIn(book, sheets, computed);
  const likeErrors = book.sheets.flatMap(({ name, cells }) => cells.filter(readsAsError).map((cell) => ({ sheet: name, cell })));
  const unknown = unknownOnce(book, [...refused.keys(), ...inCycles, ...unsettled, ...likeErrors.map(({ cell }) => cell)], computed.hurried || book.from1904);
  return {
    sheets: sheets.map((sheet, i) => ({ ...sheet, stored: storedOtherwise(book.sheets[i]!, sheet, unknown) })),
    notes: [
      ...notesOn(book, refused, computed.hurried),
      ...noteOnTexts(likeErrors),
      ...(beyond ? [`Not everything in this workbook was calculated. ${beyond}`] : []),
    ],
    spillSizes: reachesOf(book, computed),
    unknown,
  };
}

interface Refused {
  sheet: string;
  reason: Untranslatable;
}

/** Found out when it is first asked for; apart from the calculation, which would be kept in memory as long as it can be asked. */
function unknownOnce(book: WorkbookFile, sources: readonly CellFile[], doubtful: boolean): () => ReadonlySet<CellFile> {
  let unknown: ReadonlySet<CellFile> | undefined;
  return () => {
    unknown ??= unknownFormulas(book, sources, doubtful);
    return unknown;
  };
}

function reachesOf(book: WorkbookFile, computed: Computed): Map<CellFile, SpillSize> {
  const reaches = new Map<CellFile, SpillSize>();
  for (const [sheet, { cells }] of book.sheets.entries()) {
    for (const cell of cells) {
      const reach = cell.array?.grows && isFormula(cell) ? computed.spillSize(sheet, cell.row, cell.column) : undefined;
      if (reach) reaches.set(cell, reach);
    }
  }
  return reaches;
}

/** Text that reads as an error's code, typed or as a formula of its own: the grid takes it for that error. */
const readsAsError = ({ value, formula, beyond }: CellFile): boolean => {
  if (beyond !== undefined) return false;
  const text = formula === undefined ? value : /^"(#[^"]*)"$/.exec(formula)?.[1];
  return typeof text === "string" && isErrorCode(text);
};

function noteOnTexts(cells: readonly { sheet: string; cell: CellFile }[]): string[] {
  const [first, ...more] = cells;
  if (!first) return [];
  const place = placeName({ sheet: first.sheet, ...first.cell });
  const others = more.length === 0 ? "" : more.length === 1 ? " and one more cell" : ` and ${more.length} more cells`;
  return [`${place}${others}: text that reads as an error counts as that error in the formulas that refer to it.`];
}

/** An error that is one of this calculation, not of the workbook. */
const isOfOurs = ({ value, message }: ComputedCell): boolean => value === "#CYCLE" || isNotHere(String(message ?? ""));

/** `unsettled` gets the formulas of the sheet whose errors are of ours. */
function snapshot(book: WorkbookFile, sheet: number, computed: Computed, unsettled: CellFile[]): SheetSnapshot {
  const { name, cells } = book.sheets[sheet]!;
  let own: Map<number, CellFile> | undefined;
  const cellAt = (placed: ComputedCell): CellFile | undefined => {
    own ??= new Map(cells.map((cell) => [keyOf(cell), cell]));
    return own.get(keyOf(placed));
  };
  let rows = 0;
  let columns = 0;
  for (const { row, column } of computed.values(sheet)) {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  }
  const values: Cell[][] = Array.from({ length: rows }, () => new Array(columns).fill(null));
  const formulas: (string | null)[][] = Array.from({ length: rows }, () => new Array(columns).fill(null));
  for (const placed of computed.values(sheet)) {
    const { row, column } = placed;
    const cell = "cell" in placed ? placed.cell : cellAt(placed);
    values[row]![column] = cell && !isFormula(cell) ? cell.value : cellOf(placed);
    if (cell && placed.isError && isFormula(cell) && isOfOurs(placed)) unsettled.push(cell);
    if (cell?.formula !== undefined) formulas[row]![column] = `=${cell.formula}`;
  }
  return { name, row: 0, column: 0, values, formulas };
}

/** What is said where the grid's model runs out of room, which no formula can say. */
const OVERFLOW = /call stack|too much recursion/;

function cellOf({ value, isError, message }: ComputedCell): Cell {
  if (!isError) return value;
  const error: CellError = { error: commonCode(String(value)) };
  const said = value === "#CYCLE" ? "This formula depends on itself." : String(message ?? "");
  const sentence = OVERFLOW.test(said) ? "This formula rests on too long a row of formulas, each on the next, to be calculated here." : said;
  return sentence ? { ...error, message: sentence } : error;
}

/** Formulas that could not be calculated, and why, in the order of the workbook. Of those refused in a branch only, the ones that show it. */
function refusedIn(book: WorkbookFile, sheets: readonly SheetSnapshot[], computed: Computed): Map<CellFile, Refused> {
  const { refused } = computed;
  const found = new Map<CellFile, Refused>();
  for (const [cell, sheet] of refused.size > 0 ? formulasOf(book) : []) {
    const { wholly = false, reasons = [] } = refused.get(cell) ?? {};
    const shown = sheets[sheet]!.values[cell.row]?.[cell.column];
    // In a block the other cells may show it.
    const isAny = wholly || computed.spillSize(sheet, cell.row, cell.column) !== undefined;
    const reason = reasons.find(({ sentence }) => isAny || (isCellError(shown) && shown.message === sentence));
    if (reason) found.set(cell, { sheet: sheets[sheet]!.name, reason });
  }
  return found;
}

function notesOn(book: WorkbookFile, refused: ReadonlyMap<CellFile, Refused>, hurried: boolean): string[] {
  const notes: string[] = [];
  for (const [cell, { sheet, reason }] of refused) notes.push(`${placeName({ sheet, ...cell })}: this formula ${reason.message}.`);
  if (hurried) notes.push("Some formulas depend on one another in so many ways that their values may not be settled.");
  if (book.from1904) notes.push("Dates in this workbook count from 1904: functions of dates may be off by four years and a day.");
  return notes;
}

/** References that are looked through; a workbook that needs more is taken to rest on what is unknown throughout. */
const MOST_LOOKS = 20_000_000;
/** Refers to what its formula does not name. */
const ROVING = /\b(?:INDIRECT|OFFSET)\s*\(/i;

/**
 * Formulas of which the file may say more than the calculation does: `sources`, that could not be
 * calculated, and all that rest on them. With `doubtful` values every formula counts that has a value in
 * the file and calls none of our functions.
 */
function unknownFormulas(book: WorkbookFile, sources: readonly CellFile[], doubtful: boolean): Set<CellFile> {
  const isDoubtful = ({ value, formula }: CellFile): boolean => value !== null && !namesOwnFunction(formula ?? "");
  return restingOn(book, doubtful ? [...sources, ...Array.from(formulasOf(book), ([cell]) => cell).filter(isDoubtful)] : sources);
}

/** These formulas, and all that rest on them. */
export function restingOn(book: WorkbookFile, sources: readonly CellFile[]): Set<CellFile> {
  const unknown = new Set(sources);
  if (unknown.size === 0) return unknown;
  const cells = book.sheets.map((): Set<number> => new Set());
  for (const [sheet, { cells: own }] of book.sheets.entries()) for (const cell of own) if (unknown.has(cell)) fill(cells[sheet]!, cell);
  let looks = 0;
  let left = precedentsOf(book).filter(({ cell }) => !unknown.has(cell));
  for (let found = true; found; ) {
    found = false;
    left = left.filter(({ cell, sheet, areas }) => {
      looks += areas.length;
      const roves = ROVING.test(cell.formula!);
      if (looks <= MOST_LOOKS && !roves && !areas.some((area) => holdsAny(area, cells[area.sheet]!, (steps) => (looks += steps)))) return true;
      unknown.add(cell);
      fill(cells[sheet]!, cell);
      found = true;
      return false;
    });
  }
  return unknown;
}

/** The cells that a formula filled when the file was saved. */
function fill(keys: Set<number>, { row, column, array = { rows: 1, columns: 1, grows: false } }: CellFile): void {
  for (let r = 0; r < array.rows; r++) for (let c = 0; c < array.columns; c++) keys.add(keyOf({ row: row + r, column: column + c }));
}

/** Looks at the cells of the area, or at those that are unknown, whichever are fewer. */
function holdsAny({ top, left, bottom, right }: SheetRectangle, keys: ReadonlySet<number>, count: (steps: number) => void): boolean {
  const size = (bottom - top + 1) * (right - left + 1);
  count(Math.min(size, keys.size));
  if (size <= keys.size) {
    for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) if (keys.has(keyOf({ row, column }))) return true;
    return false;
  }
  for (const key of keys) {
    const row = Math.floor(key / MOST_COLUMNS);
    const column = key % MOST_COLUMNS;
    if (row >= top && row <= bottom && column >= left && column <= right) return true;
  }
  return false;
}
