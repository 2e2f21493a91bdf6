import type { Cell } from "../../core/cell.ts";
import { roughCount } from "../../core/number-text.ts";
import type { SheetSnapshot, WorkbookSnapshot } from "../../workbook/port.ts";
import { STORAGE_NAMESPACE, storedTextsIn } from "../../workbook/storage.ts";
import { FILE_LIMITS, type FileLimits, UnreadableFile } from "../file-limits.ts";
import { withoutLayoutSheet } from "../layout-sheet.ts";
import type { SheetFile, Table, WorkbookFile } from "../model.ts";
import { type Unpack, Zip } from "../zip.ts";
import { type Relation, readStrings, readTable, readWorkbookPart, relationsOf, workbookPath } from "./parts.ts";
import { readWorksheet } from "./worksheet.ts";

/**
 * What kind of file the bytes are, told by their beginning, so that each wrong kind is refused by
 * its own name. Sources: PKWARE APPNOTE 4.3.6 (zip), [MS-CFB] 2.2 (compound file), [MS-OFFCRYPTO]
 * 2.3.4.4 (EncryptedPackage), [MS-XLS] 2.1.2 (Workbook stream).
 */
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** Throws the refusal for anything that is not a zip archive. */
function expectZip(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new UnreadableFile("is empty");
  if (starts(bytes, COMPOUND)) throw new UnreadableFile(compoundReason(bytes));
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return;
  if (looksLikeText(bytes)) {
    throw new UnreadableFile("is a text file, not a workbook: if it holds readings separated by commas or semicolons, give it the ending .csv");
  }
  throw new UnreadableFile("is not an .xlsx workbook");
}

const starts = (bytes: Uint8Array, sign: readonly number[]): boolean => sign.every((byte, i) => bytes[i] === byte);

function compoundReason(bytes: Uint8Array): string {
  if (holdsName(bytes, "EncryptedPackage")) return "is protected by a password: open it, take the password off and save it again";
  if (holdsName(bytes, "Workbook") || holdsName(bytes, "Book")) return "is a workbook of the old .xls kind: save it as .xlsx";
  return "is an old Office file, not an .xlsx workbook";
}

/** A name in the compound file's directory: UTF-16, ended by a zero. */
function holdsName(bytes: Uint8Array, name: string): boolean {
  const wanted = [...name].flatMap((letter) => [letter.charCodeAt(0), 0]).concat(0, 0);
  for (let at = bytes.indexOf(wanted[0]!); at >= 0; at = bytes.indexOf(wanted[0]!, at + 1)) {
    if (wanted.every((byte, i) => bytes[at + i] === byte)) return true;
  }
  return false;
}

const LOOKED_AT = 4096;

function looksLikeText(bytes: Uint8Array): boolean {
  const marked = starts(bytes, [0xff, 0xfe]) || starts(bytes, [0xfe, 0xff]);
  return marked || bytes.subarray(0, LOOKED_AT).every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13);
}

/**
 * Reads an .xlsx (ECMA-376) into plain data. A file that is no workbook, is damaged, or asks for
 * more than the limits is refused with an `UnreadableFile` that says why; nothing is guessed.
 */
export function readXlsx(bytes: Uint8Array, limits: FileLimits = FILE_LIMITS, unpack?: Unpack): WorkbookFile {
  expectZip(bytes);
  const zip = new Zip(bytes, limits, unpack);
  const path = workbookPath(zip, limits);
  const { sheets: listed, names, printNames, from1904 } = readWorkbookPart(need(zip, path), path, limits);
  const relations = relationsOf(zip, path, limits);
  const strings = sharedStrings(zip, relations, limits);
  const counter = new Counter(limits);
  const sheets: SheetFile[] = [];
  const tables: Table[] = [];
  // A sheet of another kind (a chart, a dialog) has no cells, but keeps its place: names refer to sheets by it.
  for (const { name, relation, hidden } of listed) {
    const target = relations.find((one) => one.id === relation);
    if (!target) throw new UnreadableFile(`is damaged: the sheet ${JSON.stringify(name)} is missing in it`);
    const isGrid = target.kind === "worksheet";
    const cells = isGrid
      ? readWorksheet(need(zip, target.target), target.target, { strings, limits, count: () => counter.cell() })
      : { cells: [], hiddenRows: [] };
    const sheet: SheetFile = { name, hidden, ...cells };
    for (const { table, isFiltered } of isGrid ? tablesOf(zip, target.target, sheets.length, limits) : []) {
      tables.push(table);
      if (isFiltered) sheet.filteredRows = sheet.hiddenRows;
    }
    counter.sheet(sheet);
    sheets.push(sheet);
  }
  return withoutLayoutSheet({ sheets, names, printNames, tables, from1904, storedTexts: storedTexts(zip, [...relations, ...relationsOf(zip, "", limits)]) });
}

function need(zip: Zip, part: string): Uint8Array {
  const bytes = zip.read(part);
  if (!bytes) throw new UnreadableFile(`is damaged: its part ${part} is missing`);
  return bytes;
}

/** Some programs name the part where there are no texts to share, and leave it out: a cell that asks for one of them is told then. */
function sharedStrings(zip: Zip, relations: readonly Relation[], limits: FileLimits): string[] {
  const part = relations.find((relation) => relation.kind === "sharedStrings")?.target;
  const bytes = part === undefined ? undefined : zip.read(part);
  return bytes ? readStrings(bytes, part!, limits) : [];
}

function tablesOf(zip: Zip, part: string, sheet: number, limits: FileLimits): { table: Table; isFiltered: boolean }[] {
  return relationsOf(zip, part, limits)
    .filter((relation) => relation.kind === "table")
    .flatMap(({ target }) => readTable(need(zip, target), target, sheet, limits) ?? []);
}

/** What we keep in a workbook lies in a custom XML part, which some programs hang on the archive itself; those of other programs are not looked into. */
function storedTexts(zip: Zip, relations: readonly Relation[]): Map<string, string> {
  const decoder = new TextDecoder();
  for (const { target } of relations.filter((relation) => relation.kind === "customXml")) {
    const xml = decoder.decode(zip.read(target));
    if (xml.includes(`"${STORAGE_NAMESPACE}"`)) return storedTextsIn(xml);
  }
  return new Map();
}

/** Keeps the whole workbook within the limits on cells. */
class Counter {
  readonly #limits: FileLimits;
  #cells = 0;
  #area = 0;

  constructor(limits: FileLimits) {
    this.#limits = limits;
  }

  cell(): void {
    if (++this.#cells > this.#limits.cells) throw new UnreadableFile(`has too many cells: more than ${roughCount(this.#limits.cells)} hold something`);
  }

  sheet({ name, cells }: SheetFile): void {
    let rows = 0;
    let columns = 0;
    for (const { row, column, array } of cells) {
      rows = Math.max(rows, row + (array?.rows ?? 1));
      columns = Math.max(columns, column + (array?.columns ?? 1));
    }
    this.#area += rows * columns;
    if (this.#area <= this.#limits.area) return;
    throw new UnreadableFile(
      `has too many cells: the sheet ${JSON.stringify(name)} is spread over ${roughCount(rows)} rows and ${roughCount(columns)} columns`,
    );
  }
}

/**
 * A workbook as the program that saved it left it: the values of formulas are those in the file, and
 * nothing is calculated here. For places that have no calculating engine of their own.
 */
export const storedSnapshot = ({ sheets }: WorkbookFile, name: string): WorkbookSnapshot => ({ name, sheets: sheets.map(sheetOf) });

function sheetOf({ name, cells }: SheetFile): SheetSnapshot {
  const rows = cells.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const columns = cells.reduce((most, { column }) => Math.max(most, column + 1), 0);
  const blank = (): null[] => new Array(columns).fill(null);
  const values: Cell[][] = Array.from({ length: rows }, blank);
  const formulas: (string | null)[][] = Array.from({ length: rows }, blank);
  for (const { row, column, value, formula } of cells) {
    values[row]![column] = value;
    if (formula !== undefined) formulas[row]![column] = `=${formula}`;
  }
  return { name, row: 0, column: 0, values, formulas };
}

/** Formulas without a value in the file: nobody has calculated it yet. */
export const uncalculated = ({ sheets }: WorkbookFile): number =>
  sheets.reduce((sum, { cells }) => sum + cells.filter(({ formula, value }) => formula !== undefined && value === null).length, 0);
