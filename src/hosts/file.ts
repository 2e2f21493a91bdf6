import { calculate } from "../calc/calculate.ts";
import { isOpenDocument, readOds } from "../ods/read.ts";
import { areaOf, type CellAddress, type CellArea } from "../workbook/address.ts";
import { type Abilities, type AbilityNotes, type CellMark, type Edit, HostRefusal, type SheetHost, type WorkbookSnapshot } from "../workbook/port.ts";
import { nameTaken, noSheet, refuseTaken } from "../workbook/refusals.ts";
import { cellContents, tablePlaces, type WorkbookSpec } from "../workbook/sheet-spec.ts";
import { FILE_LIMITS, UnreadableFile } from "../xlsx/file-limits.ts";
import { fromStoredFormula } from "../xlsx/formula-text.ts";
import type { CalculatedWorkbook, CellFile, SheetFile, WorkbookFile } from "../xlsx/model.ts";
import { firstPictureOf } from "../xlsx/read/pictures.ts";
import { readXlsx } from "../xlsx/read/read.ts";
import type { Unpack } from "../xlsx/zip.ts";

export { UnreadableFile };

/** A workbook read from a file and calculated here. Writes and marks stay in memory; the file is not touched. */
export interface FileHost extends SheetHost {
  /** What a person should know about the calculation, in sentences: formulas that could not be calculated, and why. */
  notes(): readonly string[];
  /** The marks that are on. */
  marks(): readonly CellMark[];
  /** The workbook as it was read and as it is calculated, for whoever writes it to a file. */
  contents(): { book: WorkbookFile; calculated: CalculatedWorkbook };
}

/**
 * Opens the bytes of an .xlsx or an .ods. All formulas are calculated anew, whatever program saved the file:
 * values that it left there may be old or missing. A host that unpacks quicker than plain JavaScript
 * brings its own `unpack`; `work` is what its formulas may take (`calculate`), which shows when it is first read.
 *
 * @throws UnreadableFile with the name and the reason.
 */
export async function openWorkbook(bytes: Uint8Array, name: string, unpack?: Unpack, work?: number): Promise<FileHost> {
  try {
    if (isOpenDocument(bytes)) return fileHost(readOds(bytes, FILE_LIMITS, unpack), name, work);
    return fileHost(readXlsx(bytes, FILE_LIMITS, unpack), name, work, (sheet) => firstPictureOf(bytes, sheet, unpack));
  } catch (reason) {
    throw reason instanceof UnreadableFile ? reason.of(name) : reason;
  }
}

export const FILE_ABILITIES: Abilities = {
  "other names": "yes",
  tables: "yes",
  styles: "left out",
  "print set-up": "left out",
  pictures: "refused",
  undo: "left out",
  protection: "left out",
  "active cell": "left out",
};

export const FILE_NOTES: AbilityNotes = {
  protection: "what is written stays in memory",
  "all or nothing": "nothing is done before all is known to be possible",
};

/** `picture` reads a picture of a sheet from the file, where there is one. */
export function fileHost(book: WorkbookFile, name: string, work?: number, picture: (sheet: string) => string | null = () => null): FileHost {
  const watchers = new Set<() => void>();
  let marks: CellMark[] = [];
  let selected: CellArea | undefined;
  let calculated: CalculatedWorkbook | undefined;
  let isEdited = false;
  const edited = () => {
    isEdited = true;
    calculated = undefined;
    for (const changed of watchers) changed();
  };
  const current = (): CalculatedWorkbook => {
    calculated ??= calculate(book, work);
    return calculated;
  };
  const sheetNamed = (wanted: string): SheetFile => {
    const sheet = book.sheets.find((one) => one.name === wanted);
    if (!sheet) throw noSheet(wanted);
    return sheet;
  };

  return {
    abilities: FILE_ABILITIES,
    notes: () => current().notes,
    marks: () => marks,
    contents: () => ({ book, calculated: current() }),
    // What the file keeps is of no account once something else has been written here.
    read: async () => ({ name, sheets: isEdited ? current().sheets.map((sheet) => ({ ...sheet, stored: [] })) : current().sheets, ...calledIn(book) }),
    async select(place) {
      sheetNamed(place.sheet);
      selected = areaOf(place);
    },
    selection: async () => selected ?? { sheet: book.sheets[0]!.name, row: 0, column: 0, rows: 1, columns: 1 },
    async addSheets(added) {
      addTo(book, added);
      edited();
    },
    async write(edits) {
      const targets = edits.map((edit) => [sheetNamed(edit.sheet), edit] as const);
      for (const [sheet, edit] of targets) put(sheet, edit);
      edited();
    },
    async insertPicture() {
      throw new HostRefusal("A workbook that is read from its file takes no pictures: open it in a spreadsheet for that.");
    },
    firstPicture: async (sheet) => picture(sheet),
    async mark(wanted) {
      for (const { cell } of wanted) sheetNamed(cell.sheet);
      marks = lastOfEach(wanted);
    },
    async unmark() {
      const count = marks.length;
      marks = [];
      return count;
    },
    hasMarks: async () => marks.length > 0,
    async watch(changed) {
      watchers.add(changed);
      return async () => void watchers.delete(changed);
    },
    loadText: async (key) => book.storedTexts.get(key) ?? null,
    storeText: async (key, value) => void book.storedTexts.set(key, value),
  };
}

/** The names and tables of the file, with their sheets by name; one of a sheet that is not there is of no use. */
function calledIn({ sheets, names, tables }: WorkbookFile): Required<Pick<WorkbookSnapshot, "names" | "tables">> {
  return {
    names: names
      .filter(({ sheet }) => sheet === undefined || sheets[sheet])
      .map(({ name, sheet, formula }) => ({ name, formula: `=${formula}`, ...(sheet === undefined ? {} : { sheet: sheets[sheet]!.name }) })),
    tables: tables.map((table) => ({ ...table, sheet: sheets[table.sheet]!.name })),
  };
}

/** What counts for the calculation: cells, names and tables. Looks stay in the description, since the file is not touched. */
function addTo(book: WorkbookFile, { sheets, names }: WorkbookSpec): void {
  const taken = (list: readonly { name: string }[]) => list.map(({ name }) => name);
  refuseTaken(taken(sheets), taken(book.sheets));
  refuseTaken(taken(names), taken(book.names), nameTaken);
  for (const described of sheets) {
    const sheet: SheetFile = { name: described.name, hidden: false, cells: [], hiddenRows: [] };
    put(sheet, { sheet: sheet.name, row: 0, column: 0, cells: cellContents(described) });
    const place = book.sheets.push(sheet) - 1;
    book.tables.push(...tablePlaces(described).map((table) => ({ ...table, sheet: place })));
  }
  book.names.push(...names);
}

function put(sheet: SheetFile, { row, column, cells }: Edit): void {
  const byPlace = new Map(sheet.cells.map((cell) => [placeKey(cell), cell]));
  for (const [r, line] of cells.entries()) {
    for (const [c, content] of line.entries()) {
      if (content === null) continue;
      const place = { row: row + r, column: column + c };
      if (content === "") byPlace.delete(placeKey(place));
      else byPlace.set(placeKey(place), cellOf(place, content));
    }
  }
  sheet.cells = [...byPlace.values()].sort((a, b) => a.row - b.row || a.column - b.column);
}

const placeKey = ({ row, column }: { row: number; column: number }): string => `${row},${column}`;

/** A formula that someone types may fill as many cells as it has results. */
function cellOf(place: { row: number; column: number }, content: number | string | boolean): CellFile {
  if (typeof content !== "string" || !content.startsWith("=")) return { ...place, value: content };
  return { ...place, value: null, formula: fromStoredFormula(content.slice(1)), array: { rows: 1, columns: 1, grows: true } };
}

function lastOfEach(marks: readonly CellMark[]): CellMark[] {
  const place = ({ sheet, row, column }: CellAddress): string => `${row},${column},${sheet}`;
  return [...new Map(marks.map((mark) => [place(mark.cell), mark])).values()];
}
