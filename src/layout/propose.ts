import { type Cell, isBlank } from "../core/cell.ts";
import { namesOwnFunction } from "../core/define.ts";
import { counted } from "../core/number-text.ts";
import { WorkbookCells } from "../formula/workbook-cells.ts";
import { isOfMoney } from "../vocabulary/identity.ts";
import { isLimitText } from "../vocabulary/limit-text.ts";
import { type ParsedHeading, parseHeading } from "../vocabulary/parse-heading.ts";
import { HEADING_FIELDS } from "../vocabulary/phrases.ts";
import { type CellArea, columnLetters, type Rectangle, rectanglesMeet } from "../workbook/address.ts";
import type { WorkbookSnapshot } from "../workbook/port.ts";
import { blocksOf } from "./blocks.ts";
import { axesRow, type HeadingContext, headerRowOf, headingContextOf, TITLE_TELLS } from "./header-rows.ts";
import { headingsAlong } from "./heading-fields.ts";
import { signatureOf } from "./locate.ts";
import { type RangeSummary, summaryOf } from "./mapped-readings.ts";
import type { Fixed, HeaderRow, MappedRange } from "./mapping.ts";
import { isNumeric, joinedOverGaps, type TableParts, tablesIn } from "./tables.ts";

/** A range that looks like readings or limits, for a person to accept or to put right. */
export interface Proposal {
  range: MappedRange;
  /** In words: `18 readings of bore of engine A, cylinders 1 to 3`. */
  what: string;
  readings: number;
  limits: number;
  /** What a person should look at before accepting, in sentences. */
  doubts: string[];
  /** False while nothing says what the numbers are: then a characteristic has to be named. */
  isComplete: boolean;
}

/** Everything on the sheets that header recognition takes for readings or limits. */
export function proposeLayout(snapshot: Pick<WorkbookSnapshot, "sheets">): Proposal[] {
  const book = new WorkbookCells(snapshot);
  return book.sheets.flatMap((sheet) => {
    const blocks = joinedOverGaps(book, sheet.name, blocksOf(sheet));
    const tables = blocks.flatMap((block) => tablesIn(book, sheet.name, block));
    return tables.flatMap((table) => proposalOf(book, table, headingContextOf(book, table, tables)) ?? []).filter(({ isComplete }) => isComplete);
  });
}

/**
 * What a workbook that keeps no layout looks as if it held, for whoever has found nothing to judge in it: `its sheets
 * look as if they held readings laid out in the shop's own way (6 readings of bore; cylinders 1, 2, 3)`. Nothing
 * where its headings say nothing that is known.
 */
export function unmappedText(snapshot: Pick<WorkbookSnapshot, "sheets">): string | undefined {
  // A workbook with functions of ours says itself what is judged, and by what.
  if (snapshot.sheets.some(({ formulas }) => formulas.some((line) => line.some((formula) => formula !== null && namesOwnFunction(formula))))) return undefined;
  const held = heldText(proposeLayout(snapshot));
  return held && `its sheets look as if they held readings laid out in the shop's own way (${held})`;
}

/** `3 readings of piston skirt; cylinders 1, 2, 3; and 2 more ranges` */
export function heldText(proposals: readonly Proposal[]): string | undefined {
  const [most, ...others] = proposals.filter(({ readings }) => readings > 0).sort((a, b) => b.readings - a.readings);
  if (!most) return undefined;
  const more = others.length > 0 ? `; and ${counted(others.length, "more range", "more ranges")}` : "";
  return `${most.what}${more}`;
}

/** One area that a person has pointed at, with or without its headings, and what they say that it is. */
export function proposeRange(snapshot: Pick<WorkbookSnapshot, "sheets">, area: CellArea, what: Fixed = {}): Proposal | undefined {
  const book = new WorkbookCells(snapshot);
  if (!book.block(area).some((line) => line.some(isNumeric))) return undefined;
  const box = withHeadings(book, area);
  const tables = tablesIn(book, area.sheet, box).filter(({ body }) => rectanglesMeet(body, area));
  const [table] = tables;
  const clipped = table ? { ...table, body: common(table.body, area) } : { sheet: area.sheet, titles: [], headRows: [], headColumns: [], body: area };
  // A title stands between its own table and the one above.
  const sheet = book.sheet(area.sheet);
  const others = (sheet ? blocksOf(sheet) : []).flatMap((block) => tablesIn(book, area.sheet, block)).filter(({ body }) => !rectanglesMeet(body, area));
  return proposalOf(book, clipped, headingContextOf(book, clipped, [clipped, ...others]), what, table === undefined);
}

function common(a: Rectangle, b: Rectangle): Rectangle {
  const [row, column] = [Math.max(a.row, b.row), Math.max(a.column, b.column)];
  return { row, column, rows: Math.min(a.row + a.rows, b.row + b.rows) - row, columns: Math.min(a.column + a.columns, b.column + b.columns) - column };
}

const MOST_ROWS_ABOVE = 4;
const MOST_COLUMNS_BESIDE = 6;

/** The area with the words that touch it above and on its left. */
function withHeadings(book: WorkbookCells, { sheet, row, column, rows, columns }: CellArea): Rectangle {
  const filled = (r: number, c: number): boolean => !isBlank(book.value({ sheet, row: r, column: c }));
  let left = column;
  while (left > 0 && column - left < MOST_COLUMNS_BESIDE && range(row, rows).some((r) => filled(r, left - 1))) left--;
  let top = row;
  while (top > 0 && row - top < MOST_ROWS_ABOVE && range(left, column + columns - left).some((c) => filled(top - 1, c))) top--;
  return { row: top, column: left, rows: row + rows - top, columns: column + columns - left };
}

const range = (first: number, count: number): number[] => Array.from({ length: count }, (_, i) => first + i);

function proposalOf(book: WorkbookCells, table: TableParts, context: HeadingContext, what: Fixed = {}, isBare = false): Proposal | undefined {
  const { sheet, body } = table;
  const cell = (row: number, column: number): Cell => book.value({ sheet, row, column });
  const rows = range(body.row, body.rows);
  const columns = range(body.column, body.columns);
  const corner = table.headColumns.at(-1);
  const heading = table.headRows.at(-1);
  // `Main journals, mm` over the names of the journals is said of all numbers beside them.
  const { characteristic, unit } = corner === undefined || heading === undefined ? {} : parseHeading(cell(heading, corner), TITLE_TELLS);
  const said = characteristic === undefined ? context : { ...context, characteristic, unit: unit ?? context.unit };
  // Beside words, the corner names the column below it; beside the numbers of cylinders, the row itself.
  const namesRow = (at: number): boolean => columns.every((column) => typeof cell(at, column) !== "string" || isBlank(cell(at, column)));
  const columnHeads = table.headRows.flatMap((at, i) => {
    const cells = columns.map((column) => cell(at, column));
    const name = corner !== undefined && namesRow(at) ? cell(at, corner) : null;
    const isInner = i === table.headRows.length - 1;
    return headerRowOf(at, cells, name, isInner && table.headRows.length > 1) ?? (isInner && characteristic !== undefined ? (axesRow(at, cells) ?? []) : []);
  });
  const inner = table.headColumns.filter((column) => column < body.column).at(-1);
  const rowHeads = table.headColumns.flatMap((at) => {
    const cells = rows.map((row) => cell(row, at));
    const name = heading === undefined || (at === corner && namesRow(heading)) ? null : cell(heading, at);
    return headerRowOf(at, cells, name, at === inner && table.headColumns.length > 1) ?? [];
  });
  const made = new Making(book, table, said, { rowHeads, columnHeads }, what, isBare);
  return made.proposal();
}

/** A range while it is made out of its lines of headings. */
class Making {
  readonly byRow: ParsedHeading[];
  readonly byColumn: ParsedHeading[];
  readonly doubts: string[] = [];

  constructor(
    readonly book: WorkbookCells,
    readonly table: TableParts,
    readonly context: HeadingContext,
    readonly lines: { rowHeads: HeaderRow[]; columnHeads: HeaderRow[] },
    readonly what: Fixed,
    readonly isBare: boolean,
  ) {
    const { row, column, rows, columns } = table.body;
    this.byRow = headingsAlong(rows, row, lines.rowHeads, (at, r) => this.#cell(r, at));
    this.byColumn = headingsAlong(columns, column, lines.columnHeads, (at, c) => this.#cell(at, c));
  }

  #cell(row: number, column: number): Cell {
    return this.book.value({ sheet: this.table.sheet, row, column });
  }

  proposal(): Proposal | undefined {
    const { sheet, body } = this.table;
    const without = { rows: this.#leftOutRows(), columns: this.#leftOutColumns() };
    if (without.columns.length === body.columns || without.rows.length === body.rows) return undefined;
    const shape: Omit<MappedRange, "signature"> = {
      sheet,
      ...body,
      ...this.lines,
      fixed: this.what,
      otherwise: this.#otherwise(),
      records: this.#records(),
      without,
      grows: this.#grows(),
    };
    const made: MappedRange = { ...shape, signature: signatureOf(this.book, shape) };
    const summary = summaryOf(this.book, made);
    if (summary.readings + summary.limits === 0) return undefined;
    this.#doubt(summary, without);
    return { range: made, ...summary, doubts: this.doubts };
  }

  /** Columns that hold no reading and no limit. */
  #leftOutColumns(): number[] {
    const { column, columns } = this.table.body;
    if (this.isBare) return [];
    const rowsSay =
      this.what.characteristic !== undefined || this.context.characteristic !== undefined || this.byRow.some((says) => says.characteristic !== undefined);
    // What somebody says that it is goes before.
    const isBill = this.what.characteristic === undefined && this.#isBill();
    return range(column, columns).filter((c) => {
      if (this.table.headColumns.includes(c)) return true;
      if (isBill && !this.table.headRows.some((at) => tellsAnything(parseHeading(this.#cell(at, c), HEADING_FIELDS)))) return true;
      const says = this.byColumn[c - column]!;
      const cells = this.#cellsOf(c);
      if (says.isNoReading || cells.every(isBlank)) return says.isNoReading === true || !tellsAnything(says);
      if (says.role === "unit") return false;
      if (cells.some(isLimitText)) return false;
      if (!cells.some(isNumeric)) return true;
      if (this.lines.columnHeads.length === 0) return false;
      return !tellsAnything(says) && !(rowsSay && says.rest.length === 0);
    });
  }

  /** A list of what is bought or charged for: its rows may be named as what is measured. */
  #isBill(): boolean {
    const { headRows, headColumns, body } = this.table;
    const across = [...headColumns, ...range(body.column, body.columns)];
    const headings = headRows.flatMap((at) => across.map((c) => this.#cell(at, c)));
    return headings.some((heading) => typeof heading === "string" && isOfMoney(heading));
  }

  #cellsOf(column: number): Cell[] {
    return range(this.table.body.row, this.table.body.rows).map((row) => this.#cell(row, column));
  }

  /** Between two parts of a table: without a name and a number. What merged names say of it is of the rows above. */
  #isEmptyRow(r: number): boolean {
    const { column, columns } = this.table.body;
    const heads = this.lines.rowHeads.map(({ at }) => at);
    return heads.length > 0 && heads.every((at) => isBlank(this.#cell(r, at))) && !range(column, columns).some((c) => isNumeric(this.#cell(r, c)));
  }

  #leftOutRows(): number[] {
    const { row, column, rows, columns } = this.table.body;
    return range(row, rows).filter((r) => {
      if (this.#isEmptyRow(r)) return true;
      const says = this.byRow[r - row]!;
      const isFormula = (c: number) => this.book.formula({ sheet: this.table.sheet, row: r, column: c }) !== null;
      // The largest of the readings above is worked out; the largest that may be is typed.
      if (says.role !== undefined && says.role !== "value" && range(column, columns).every((c) => isBlank(this.#cell(r, c)) || isFormula(c))) return true;
      const columnsSay = this.byColumn.some(({ characteristic, places }) => characteristic !== undefined || places.length > 0);
      return says.isNoReading === true || (this.lines.rowHeads.length > 0 && !tellsAnything(says) && !columnsSay);
    });
  }

  #records(): MappedRange["records"] {
    const isLimit = ({ role }: ParsedHeading) => role !== undefined && role !== "value";
    const { row, column, rows, columns } = this.table.body;
    const [down, along] = [range(row, rows), range(column, columns)];
    if (this.byColumn.some(isLimit) || along.some((c) => areLimitsInWords(down.map((r) => this.#cell(r, c))))) return "row";
    return this.byRow.some(isLimit) || down.some((r) => areLimitsInWords(along.map((c) => this.#cell(r, c)))) ? "column" : "cell";
  }

  #grows(): boolean {
    return (
      this.lines.rowHeads.some(({ tells }) => tells.some((tell) => tell === "cylinder" || tell === "engine" || tell === "characteristic")) &&
      this.#records() !== "column"
    );
  }

  /** What the titles say for numbers whose headings do not. */
  #otherwise(): MappedRange["otherwise"] {
    const { engine, characteristic, unit } = this.context;
    const unsaid = this.byColumn.filter((says) => says.characteristic === undefined && says.role === undefined);
    const places = [...(this.byRow.some((says) => says.characteristic !== undefined) ? [] : this.byRow), ...unsaid].flatMap((says) => says.places);
    const looksLikeBores = places.some(({ kind }) => kind === "height") && places.some(({ kind }) => kind === "axis");
    if (!characteristic && !this.what.characteristic && looksLikeBores) this.doubts.push("taken for bore readings, as heights and axes head them");
    const otherwise = { engine, characteristic: characteristic ?? (looksLikeBores ? "bore" : undefined), unit };
    return Object.fromEntries(Object.entries(otherwise).filter(([, value]) => value !== undefined));
  }

  /** A bare number under a word such as `Limit`; limits in words say their side. */
  #hasOneSidedLimit(): boolean {
    const { row, column, rows, columns } = this.table.body;
    return range(row, rows).some((r) =>
      range(column, columns).some((c) => (this.byRow[r - row]!.isOneSided || this.byColumn[c - column]!.isOneSided) && typeof this.#cell(r, c) === "number"),
    );
  }

  #doubt({ isComplete, isDouble }: RangeSummary, without: MappedRange["without"]): void {
    if (!isComplete) this.doubts.push("nothing says what these numbers are of");
    if (this.#hasOneSidedLimit()) this.doubts.push("a limit that does not say its side is taken for an upper one");
    if (isDouble) this.doubts.push("two limits of one side stand for the same reading, and the last one counts: where the other should, say so of its cells");
    const columns = without.columns.filter((c) => !this.table.headColumns.includes(c) && this.#cellsOf(c).some((cell) => !isBlank(cell)));
    if (columns.length) this.doubts.push(`left out: ${columns.length === 1 ? "column" : "columns"} ${columns.map(columnLetters).join(", ")}`);
    const rows = without.rows.filter((row) => !this.#isEmptyRow(row));
    if (rows.length) this.doubts.push(`left out: ${rows.length === 1 ? "row" : "rows"} ${rows.map((row) => row + 1).join(", ")}`);
  }
}

const areLimitsInWords = (cells: readonly Cell[]): boolean => cells.some(isLimitText) && cells.every((cell) => isBlank(cell) || isLimitText(cell));

const tellsAnything = ({ engine, cylinder, characteristic, places, role }: ParsedHeading): boolean =>
  engine !== undefined || cylinder !== undefined || characteristic !== undefined || places.length > 0 || role !== undefined;
