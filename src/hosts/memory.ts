import type { Cell } from "../core/cell.ts";
import { areaOf, type CellAddress, type CellArea, keyOf } from "../workbook/address.ts";
import {
  type Abilities,
  type AbilityNotes,
  type CellMark,
  type Edit,
  MARK_FILL,
  type SheetHost,
  type SheetPicture,
  type SheetSnapshot,
  type WorkbookSnapshot,
} from "../workbook/port.ts";
import { nameTaken, noSheet, protectedSheet, refuseTaken } from "../workbook/refusals.ts";
import { emptySheet, type NameSpec, type SheetSpec, tablePlaces } from "../workbook/sheet-spec.ts";

/** A cell of a workbook in memory: its value, and the formula that it is said to come from. */
export type MemoryCell = Cell | { formula: string; value: Cell };

export interface MemorySheet {
  name: string;
  /** From A1. */
  cells: MemoryCell[][];
}

/** A workbook in memory that calculates nothing, and what a person could do at it. */
export interface MemoryHost extends SheetHost {
  fill(cell: CellAddress): string | null;
  paint(cell: CellAddress, colour: string): void;
  type(cell: CellAddress, content: number | string): void;
  protect(sheet: string): void;
  undo(): void;
  active(): CellAddress | null;
  /** The person selects a range. */
  choose(area: CellArea): void;
  /** How a sheet was described when it was added; nothing on one that was there before. */
  described(sheet: string): SheetSpec;
  pictures(): readonly PlacedPicture[];
}

export interface PlacedPicture {
  corner: CellAddress;
  picture: SheetPicture;
}

interface Content {
  value: Cell;
  formula: string | null;
}

type Called = Pick<WorkbookSnapshot, "names" | "tables">;

/** Everything that a step can change; one copy is one step back. Cells are keyed by place. */
interface State {
  sheets: readonly SheetSpec[];
  names: readonly NameSpec[];
  pictures: readonly PlacedPicture[];
  cells: Map<string, { at: CellAddress; content: Content }>;
  fills: Map<string, string>;
  /** What each marked cell looked like before. */
  marks: Map<string, string | null>;
}

const key = ({ sheet, row, column }: CellAddress): string => `${row},${column},${sheet}`;

function contentOf(cell: MemoryCell): Content {
  if (typeof cell === "object" && cell !== null && "formula" in cell) return { value: cell.value, formula: cell.formula };
  if (typeof cell === "string" && cell.startsWith("=")) return { value: null, formula: cell };
  return { value: cell ?? null, formula: null };
}

export const MEMORY_ABILITIES: Abilities = {
  "other names": "yes",
  tables: "yes",
  styles: "yes",
  "print set-up": "yes",
  pictures: "yes",
  undo: "yes",
  protection: "yes",
  "active cell": "yes",
};

export const MEMORY_NOTES: AbilityNotes = {
  styles: "as they were described",
  "all or nothing": "nothing is done before all is known to be possible",
};

/** A host over values and formulas that are given, not calculated: for tests and for input that is no workbook. */
export function memoryHost(sheets: readonly MemorySheet[], name = "memory", called: Called = {}): MemoryHost {
  const guarded = new Set<string>();
  const kept = new Map<string, string>();
  const watchers = new Set<() => void>();
  const past: State[] = [];
  let state: State = { sheets: sheets.map((sheet) => emptySheet(sheet.name)), names: [], pictures: [], cells: new Map(), fills: new Map(), marks: new Map() };
  let chosen: CellArea | null = null;

  const put = (at: CellAddress, cell: MemoryCell): void => {
    const content = contentOf(cell);
    if (content.formula === null && (content.value === null || content.value === "")) state.cells.delete(key(at));
    else state.cells.set(key(at), { at, content });
  };
  const step = (act: () => void): void => {
    past.push({ ...state, cells: new Map(state.cells), fills: new Map(state.fills), marks: new Map(state.marks) });
    act();
  };
  const tell = (): void => {
    for (const changed of watchers) changed();
  };
  const known = (sheet: string): SheetSpec => {
    const found = state.sheets.find((one) => one.name === sheet);
    if (!found) throw noSheet(sheet);
    return found;
  };
  const open = (sheet: string): void => {
    known(sheet);
    if (guarded.has(sheet)) throw protectedSheet(sheet);
  };
  const unmarkAll = (): void => {
    for (const [place, before] of state.marks) before === null ? state.fills.delete(place) : state.fills.set(place, before);
    state.marks.clear();
  };

  for (const sheet of sheets) {
    sheet.cells.forEach((line, row) => {
      line.forEach((cell, column) => {
        put({ sheet: sheet.name, row, column }, cell);
      });
    });
  }

  return {
    abilities: MEMORY_ABILITIES,
    fill: (cell) => state.fills.get(key(cell)) ?? null,
    paint: (cell, colour) => void state.fills.set(key(cell), colour),
    type: (cell, content) => {
      step(() => put(cell, content));
      tell();
    },
    protect: (sheet) => void guarded.add(sheet),
    undo: () => {
      state = past.pop() ?? state;
    },
    active: () => chosen && { sheet: chosen.sheet, row: chosen.row, column: chosen.column },
    choose: (area) => {
      chosen = area;
    },

    described: known,
    pictures: () => state.pictures,

    read: async () => ({ name, sheets: state.sheets.map((sheet) => snapshot(sheet.name, state)), ...calledIn(state, called) }),
    async select(place) {
      known(place.sheet);
      chosen = areaOf(place);
    },
    selection: async () => chosen ?? { sheet: state.sheets[0]!.name, row: 0, column: 0, rows: 1, columns: 1 },
    async addSheets(added) {
      const names = (list: readonly { name: string }[]) => list.map((one) => one.name);
      refuseTaken(names(added.sheets), names(state.sheets));
      refuseTaken(names(added.names), names(state.names), nameTaken);
      step(() => {
        state.sheets = [...state.sheets, ...added.sheets];
        state.names = [...state.names, ...added.names];
        for (const sheet of added.sheets) for (const { row, column, content } of sheet.cells) put({ sheet: sheet.name, row, column }, content);
      });
      tell();
    },
    async write(edits) {
      for (const { sheet } of edits) open(sheet);
      step(() => {
        for (const edit of edits) for (const [at, cell] of written(edit)) put(at, cell);
      });
      tell();
    },
    async insertPicture(corner, picture) {
      open(corner.sheet);
      step(() => {
        state.pictures = [...state.pictures, { corner, picture }];
      });
    },
    async firstPicture(sheet) {
      const [first] = state.pictures.filter(({ corner }) => corner.sheet === sheet).sort((a, b) => keyOf(a.corner) - keyOf(b.corner));
      return first?.picture.png ?? null;
    },
    async mark(marks) {
      for (const { cell } of marks) open(cell.sheet);
      step(() => {
        unmarkAll();
        for (const mark of marks) colour(state, mark);
      });
    },
    async unmark() {
      const count = state.marks.size;
      if (count > 0) step(unmarkAll);
      return count;
    },
    hasMarks: async () => state.marks.size > 0,
    async watch(changed) {
      watchers.add(changed);
      return async () => void watchers.delete(changed);
    },
    loadText: async (label) => kept.get(label) ?? null,
    storeText: async (label, value) => void kept.set(label, value),
  };
}

/** What was given as called so, and what the added sheets brought. */
function calledIn({ sheets, names }: State, given: Called): Called {
  const tables = sheets.flatMap((sheet) => tablePlaces(sheet).map((table) => ({ ...table, sheet: sheet.name })));
  return {
    ...(given.names || names.length ? { names: [...(given.names ?? []), ...names.map(({ name, formula }) => ({ name, formula: `=${formula}` }))] } : {}),
    ...(given.tables || tables.length ? { tables: [...(given.tables ?? []), ...tables] } : {}),
  };
}

function colour(state: State, { cell, tone }: CellMark): void {
  const place = key(cell);
  if (!state.marks.has(place)) state.marks.set(place, state.fills.get(place) ?? null);
  state.fills.set(place, MARK_FILL[tone]);
}

/** The cells of an edit that it changes, with their places. */
function* written({ sheet, row, column, cells }: Edit): Generator<[CellAddress, MemoryCell]> {
  for (const [r, line] of cells.entries()) {
    for (const [c, cell] of line.entries()) if (cell !== null) yield [{ sheet, row: row + r, column: column + c }, cell];
  }
}

function snapshot(sheet: string, { cells }: State): SheetSnapshot {
  const own = [...cells.values()].filter((one) => one.at.sheet === sheet);
  if (own.length === 0) return { name: sheet, row: 0, column: 0, values: [], formulas: [] };
  const [row, bottom] = span(own.map((one) => one.at.row));
  const [column, right] = span(own.map((one) => one.at.column));
  const blank = (): null[] => new Array(right - column + 1).fill(null);
  const values: Cell[][] = Array.from({ length: bottom - row + 1 }, blank);
  const formulas: (string | null)[][] = values.map(blank);
  for (const { at, content } of own) {
    values[at.row - row]![at.column - column] = content.value;
    formulas[at.row - row]![at.column - column] = content.formula;
  }
  return { name: sheet, row, column, values, formulas };
}

/** Least and greatest of a list too long to be spread into arguments. */
function span(list: readonly number[]): [number, number] {
  return [list.reduce((least, one) => Math.min(least, one)), list.reduce((most, one) => Math.max(most, one))];
}
