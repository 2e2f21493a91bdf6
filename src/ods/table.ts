import { type Cell, isErrorCode } from "../core/cell.ts";
import { roughCount } from "../core/number-text.ts";
import { keyOf, MOST_COLUMNS, MOST_ROWS } from "../workbook/address.ts";
import { type FileLimits, UnreadableFile } from "../xlsx/file-limits.ts";
import { apartFromFilled, type CellFile, type SheetFile } from "../xlsx/model.ts";
import type { XmlAttributes } from "../xlsx/xml.ts";
import { fromOpenFormula, Inexpressible } from "./open-formula.ts";
import { cellValue } from "./value.ts";

/** Cells and areas of a workbook so far, which all its sheets share. */
export class Amounts {
  #cells = 0;
  #area = 0;

  constructor(readonly limits: FileLimits) {}

  addCells(cells: number): void {
    this.#cells += cells;
    if (this.#cells > this.limits.cells) throw new UnreadableFile(`has too many cells: more than ${roughCount(this.limits.cells)} hold something`);
  }

  addArea(sheet: string, rows: number, columns: number): void {
    this.#area += rows * columns;
    if (this.#area > this.limits.area)
      throw new UnreadableFile(
        `has too many cells: the sheet ${JSON.stringify(sheet)} is spread over ${roughCount(rows)} rows and ${roughCount(columns)} columns`,
      );
  }
}

/** A sheet while its rows and cells are read, which may be repeated. */
export class TableReader {
  readonly #sheet: SheetFile;
  #row = 0;
  #column = 0;
  #rowRepeated = 1;
  /** The cells of the row at hand. */
  #line: CellFile[] = [];
  /** The other cells of array formulas: they hold what the last calculation left. */
  readonly #filled = new Set<number>();

  constructor(
    name: string,
    hidden: boolean,
    private readonly amounts: Amounts,
  ) {
    this.#sheet = { name, hidden, cells: [], hiddenRows: [] };
  }

  openRow(attributes: XmlAttributes): void {
    this.#rowRepeated = repeated(attributes["table:number-rows-repeated"]);
    this.#hideRows(attributes["table:visibility"]);
    this.#column = 0;
    this.#line = [];
  }

  cell(attributes: XmlAttributes, text: string): void {
    const times = repeated(attributes["table:number-columns-repeated"]);
    const found = this.#cellOf(attributes, text);
    if (found) {
      for (let i = 0; i < times; i++) this.#line.push({ row: this.#row, column: this.#column + i, ...found });
      this.amounts.addCells(times);
      if (this.#column + times > MOST_COLUMNS) throw new UnreadableFile(`has a cell right of the last column, on the sheet ${this.#sheet.name}`);
    }
    this.#column += times;
  }

  closeRow(): void {
    if (this.#line.length > 0) {
      if (this.#row + this.#rowRepeated > MOST_ROWS) throw new UnreadableFile(`has a cell below the last row, on the sheet ${this.#sheet.name}`);
      for (let i = 0; i < this.#rowRepeated; i++) {
        if (i > 0) this.amounts.addCells(this.#line.length);
        for (const cell of this.#line) this.#sheet.cells.push(i === 0 ? cell : { ...cell, row: cell.row + i });
      }
    }
    this.#row += this.#rowRepeated;
  }

  /** The whole sheet. */
  close(): SheetFile {
    const sheet = this.#sheet;
    const { cells, filled } = apartFromFilled(sheet.cells, this.#filled);
    Object.assign(sheet, { cells, ...filled });
    const rows = Math.max(0, ...sheet.cells.slice(-1).map(({ row, array }) => row + (array?.rows ?? 1)));
    const columns = sheet.cells.reduce((most, { column, array }) => Math.max(most, column + (array?.columns ?? 1)), 0);
    this.amounts.addArea(sheet.name, rows, columns);
    return sheet;
  }

  #hideRows(visibility: string | undefined): void {
    if (visibility !== "collapse" && visibility !== "filter") return;
    // Rows below all content are hidden as one long stretch, of which nobody asks.
    for (let i = 0; i < Math.min(this.#rowRepeated, 10_000); i++) this.#sheet.hiddenRows.push(this.#row + i);
  }

  #cellOf(attributes: XmlAttributes, text: string): Omit<CellFile, "row" | "column"> | undefined {
    const value: Cell = cellValue(attributes, text);
    const stored = attributes["table:formula"];
    if (stored === undefined) return value === null || value === "" ? undefined : { value };
    // A formula that has come to nothing has no type.
    const left = typeof value === "string" && isErrorCode(value) ? { error: value } : (value ?? "");
    const array = this.#arrayOf(attributes);
    try {
      return { value: left, formula: fromOpenFormula(stored), ...array };
    } catch (reason) {
      if (!(reason instanceof Inexpressible)) throw reason;
      return { value: left, beyond: reason.message, ...array };
    }
  }

  #arrayOf(attributes: XmlAttributes): Pick<CellFile, "array"> {
    if (attributes["table:number-matrix-columns-spanned"] === undefined) return {};
    const [rows, columns] = [repeated(attributes["table:number-matrix-rows-spanned"]), repeated(attributes["table:number-matrix-columns-spanned"])];
    this.amounts.addCells(rows * columns - 1);
    for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) if (r + c > 0) this.#filled.add(keyOf({ row: this.#row + r, column: this.#column + c }));
    return { array: { rows, columns, grows: false } };
  }
}

function repeated(count: string | undefined): number {
  const number = Number(count ?? 1);
  if (!(Number.isInteger(number) && number >= 1)) throw new UnreadableFile(`is damaged: a row or cell is repeated ${JSON.stringify(count)} times`);
  return number;
}
