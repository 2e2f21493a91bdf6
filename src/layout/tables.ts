import { type Cell, isBlank } from "../core/cell.ts";
import type { WorkbookCells } from "../formula/workbook-cells.ts";
import { isLimitText } from "../vocabulary/limit-text.ts";
import { parseHeading } from "../vocabulary/parse-heading.ts";
import { HEADING_FIELDS, type HeadingField } from "../vocabulary/phrases.ts";
import { isReadingText } from "../vocabulary/reading-text.ts";
import { around, type Rectangle } from "../workbook/address.ts";

/** A table taken apart: rows and columns of the sheet that hold words, and those that hold numbers. */
export interface TableParts {
  sheet: string;
  /** Rows above that hold one text for the whole table, the nearest first. */
  titles: string[];
  headRows: number[];
  headColumns: number[];
  /** The numbers, with what lies between them. */
  body: Rectangle;
}

const MOST_HEAD_ROWS = 4;
const LARGEST_ORDINAL = 99;
/** What a heading must name for whole numbers below it to be names. */
const NAMING: ReadonlySet<HeadingField> = new Set(["engine", "cylinder", "characteristic", "position", "height", "axis"]);

/** The tables in a block, one below the other. */
export function tablesIn(book: WorkbookCells, sheet: string, box: Rectangle): TableParts[] {
  const look = new Look(book, sheet, box);
  const tables: TableParts[] = [];
  let row = box.row;
  while (row < look.end) {
    const words: number[] = [];
    while (row < look.end && look.isHeadRow(row)) words.push(row++);
    if (row >= look.end) break;
    const table = look.table(words, row);
    if (table) tables.push(table.headColumns.length ? table : { ...table, headColumns: headColumnsBeside(book, table) });
    row = table ? table.body.row + table.body.rows : row + 1;
  }
  return tables;
}

/** Blank rows inside a table. */
const WIDEST_ROW_GAP = 2;

/** Blocks below one another with no more than a gap between them, where the lower one goes on without headings of its own. */
export function joinedOverGaps(book: WorkbookCells, sheet: string, blocks: readonly Rectangle[]): Rectangle[] {
  const joined: Rectangle[] = [];
  for (const block of blocks) {
    const { row, column, columns } = block;
    const first = Array.from({ length: columns }, (_, c) => book.value({ sheet, row, column: column + c }));
    const goesOnWithNumbers =
      goesOn(first[0]) && first.slice(1).some(isNumeric) && first.slice(1).every((cell) => typeof cell !== "string" || isBlank(cell) || !isHeading(cell));
    const above = joined.findIndex(
      (one) => one.column === column && one.columns >= columns && row > one.row + one.rows && row - (one.row + one.rows) <= WIDEST_ROW_GAP,
    );
    if (goesOnWithNumbers && above >= 0 && tablesIn(book, sheet, joined[above]!).length > 0) joined[above] = around(joined[above]!, block);
    else joined.push(block);
  }
  return joined;
}

/** Blank columns between names and numbers, as where the names are merged over several columns. */
const WIDEST_GAP = 3;

/** Columns of names that a gap parts from their numbers: the nearest one that names most of the rows. */
function headColumnsBeside(book: WorkbookCells, { sheet, body: { row, column, rows } }: TableParts): number[] {
  for (let at = column - 1; at >= Math.max(0, column - 1 - WIDEST_GAP); at--) {
    const named = Array.from({ length: rows }, (_, r) => book.value({ sheet, row: row + r, column: at })).filter(
      (cell) => typeof cell === "string" && !isBlank(cell),
    );
    if (named.length * 2 > rows) return [at];
  }
  return [];
}

class Look {
  readonly end: number;
  readonly right: number;

  constructor(
    readonly book: WorkbookCells,
    readonly sheet: string,
    readonly box: Rectangle,
  ) {
    this.end = box.row + box.rows;
    this.right = box.column + box.columns;
  }

  cell(row: number, column: number): Cell {
    return this.book.value({ sheet: this.sheet, row, column });
  }

  row(row: number): Cell[] {
    return Array.from({ length: this.box.columns }, (_, c) => this.cell(row, this.box.column + c));
  }

  /** Words alone, or the numbers of cylinders behind the word or from 1 on. */
  isHeadRow(row: number): boolean {
    const cells = this.row(row);
    if (cells.some(isNumberText)) return false;
    const numbers = cells.filter((cell): cell is number => typeof cell === "number");
    if (numbers.length === 0) return cells.some((cell) => typeof cell === "string" && !isBlank(cell));
    if (!numbers.every(isOrdinal)) return false;
    const lead = cells.find((cell) => !isBlank(cell));
    if (typeof lead === "string")
      return numbers.length > 1 && names(lead) && cells.every((cell) => typeof cell !== "string" || isBlank(cell) || isHeading(cell));
    return (
      numbers.length > 1 &&
      numbers.every((number, i) => number === i + 1) &&
      cells.every((cell) => typeof cell !== "string" || isBlank(cell)) &&
      row + 1 < this.end
    );
  }

  table(words: readonly number[], first: number): TableParts | undefined {
    const heading = words.at(-1);
    const dense = this.#denseRows(first);
    const headColumns = this.#headColumns(heading, first, dense);
    const numeric = this.#columns().filter((column) => !headColumns.includes(column) && this.#has(column, first, dense, "number"));
    if (numeric.length === 0) return undefined;
    const left = numeric[0]!;
    const columns = Math.max(this.#lastHeaded(words, left), numeric.at(-1)!) - left + 1;
    const rows = this.#rowsFrom(first, numeric, headColumns);
    // A text left of all numbers is the table's title; over the numbers it is a heading.
    const isTitle = (row: number) =>
      this.#columns().every((column) => isBlank(this.cell(row, column)) || column < left) && !this.#headsColumn(row, words, headColumns);
    const titles = words.filter(isTitle).flatMap((row) => this.row(row).find((cell): cell is string => typeof cell === "string" && !isBlank(cell)) ?? []);
    const headRows = words.filter((row) => !isTitle(row)).slice(-MOST_HEAD_ROWS);
    return { sheet: this.sheet, titles: titles.reverse(), headRows, headColumns, body: { row: first, column: left, rows, columns } };
  }

  /** The last row of words may head the columns of names alone, where the numbers need no heading. */
  #headsColumn(row: number, words: readonly number[], headColumns: readonly number[]): boolean {
    return row === words.at(-1) && headColumns.some((column) => names(this.cell(row, column)));
  }

  #columns(): number[] {
    return Array.from({ length: this.box.columns }, (_, c) => this.box.column + c);
  }

  /** Rows with numbers, one after the other. */
  #denseRows(first: number): number {
    let rows = 0;
    while (first + rows < this.end && this.row(first + rows).some(isNumeric) && (rows === 0 || !this.isHeadRow(first + rows))) rows++;
    return rows;
  }

  #has(column: number, first: number, rows: number, type: "number" | "string"): boolean {
    for (let r = 0; r < rows; r++) {
      const cell = this.cell(first + r, column);
      if (type === "number" ? isNumeric(cell) : typeof cell === "string" && !isBlank(cell) && !isNumberText(cell)) return true;
    }
    return false;
  }

  #headColumns(heading: number | undefined, first: number, rows: number): number[] {
    const heads: number[] = [];
    let isLeft = true;
    for (const column of this.#columns()) {
      const numbers = this.#has(column, first, rows, "number");
      const texts = this.#has(column, first, rows, "string");
      const isNamed = heading !== undefined && names(this.cell(heading, column));
      if (numbers ? isNamed || (isLeft && !texts && this.#counts(column, first, rows)) : isNamed || (texts && (isLeft || this.#saysWhat(column, first, rows))))
        heads.push(column);
      else if (numbers) isLeft = false;
    }
    return heads;
  }

  /** Words, most of which name a characteristic, whatever heads them. */
  #saysWhat(column: number, first: number, rows: number): boolean {
    const words = Array.from({ length: rows }, (_, r) => this.cell(first + r, column)).filter((cell) => !isBlank(cell));
    return words.filter((cell) => parseHeading(cell, HEADING_FIELDS).characteristic !== undefined).length * 2 > words.length;
  }

  /** 1, 2, 3 down the first column, without a heading that says otherwise. */
  #counts(column: number, first: number, rows: number): boolean {
    const isFirst = column === this.box.column;
    return (
      isFirst && rows > 1 && this.box.columns > 1 && Array.from({ length: rows }, (_, r) => this.cell(first + r, column)).every((cell, i) => cell === i + 1)
    );
  }

  #lastHeaded(words: readonly number[], left: number): number {
    const heading = words.at(-1);
    return heading === undefined ? left : Math.max(left, ...this.#columns().filter((column) => !isBlank(this.cell(heading, column))));
  }

  /** Rows of the table: with numbers, or named and without any that could be read. */
  #rowsFrom(first: number, numeric: readonly number[], headColumns: readonly number[]): number {
    let rows = 0;
    for (let row = first; row < this.end; row++, rows++) {
      const cells = numeric.map((column) => this.cell(row, column));
      const hasNumber = cells.some(isNumeric);
      if (hasNumber ? row > first && this.isHeadRow(row) : !this.#isNamedRow(row, cells, headColumns) && !this.#isGap(row, numeric, headColumns)) break;
    }
    return rows;
  }

  /** A row without names and numbers, as between the parts of a table, with a named row of numbers behind it. */
  #isGap(row: number, numeric: readonly number[], headColumns: readonly number[]): boolean {
    const isEmpty = (r: number): boolean => [...headColumns, ...numeric].every((column) => isBlank(this.cell(r, column)));
    let next = row;
    while (next < this.end && next - row < WIDEST_ROW_GAP && isEmpty(next)) next++;
    return (
      next > row &&
      next < this.end &&
      numeric.some((column) => isNumeric(this.cell(next, column))) &&
      headColumns.some((column) => goesOn(this.cell(next, column)))
    );
  }

  #isNamedRow(row: number, cells: readonly Cell[], headColumns: readonly number[]): boolean {
    const heads = headColumns.map((column) => this.cell(row, column));
    return heads.some(tellsSubject) && !heads.some(names) && !cells.some((cell) => typeof cell === "string" && isHeading(cell));
  }
}

/** A number, limits in words, or a reading in words. */
export const isNumeric = (cell: Cell): boolean => typeof cell === "number" || isNumberText(cell);
const isNumberText = (cell: Cell): boolean => isLimitText(cell) || isReadingText(cell);

const isOrdinal = (number: number): boolean => Number.isInteger(number) && number >= 1 && number <= LARGEST_ORDINAL;

/** A heading that names what stands below or beside it. */
function names(cell: Cell): boolean {
  if (typeof cell !== "string") return false;
  const { names: field, characteristic, role, places } = parseHeading(cell, HEADING_FIELDS);
  return field !== undefined && NAMING.has(field) && characteristic === undefined && role === undefined && places.length === 0;
}

/** Any word of a heading. */
function isHeading(text: string): boolean {
  const { names: field, role, isNoReading, characteristic } = parseHeading(text, HEADING_FIELDS);
  return field !== undefined || role !== undefined || isNoReading === true || characteristic !== undefined;
}

/** A name by which a table goes on behind a gap: the next cylinder, or the limits below them all. */
function goesOn(cell: Cell): boolean {
  if (typeof cell === "number") return isOrdinal(cell);
  if (typeof cell !== "string") return false;
  const { cylinder, role, characteristic } = parseHeading(cell, HEADING_FIELDS);
  return characteristic === undefined && (cylinder !== undefined || role !== undefined);
}

/** A name of a row that readings are still to come for. */
function tellsSubject(cell: Cell): boolean {
  if (typeof cell === "number") return isOrdinal(cell);
  if (typeof cell !== "string") return false;
  if (/^\s*\d{1,2}\s*$/.test(cell)) return true;
  const { cylinder, characteristic, places, role, engine } = parseHeading(cell, HEADING_FIELDS);
  return cylinder !== undefined || (engine === undefined && (characteristic !== undefined || places.length > 0 || role !== undefined));
}
