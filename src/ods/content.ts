import { type Cell, isErrorCode } from "../core/cell.ts";
import { roughCount } from "../core/number-text.ts";
import { keyOf, MOST_COLUMNS, MOST_ROWS } from "../workbook/address.ts";
import { type FileLimits, UnreadableFile } from "../xlsx/file-limits.ts";
import type { CellFile, DefinedName, SheetFile } from "../xlsx/model.ts";
import type { Handlers, XmlAttributes } from "../xlsx/xml.ts";
import { fromOpenFormula, fromRangeAddress, Inexpressible } from "./open-formula.ts";
import { cellValue } from "./value.ts";

/** What is in cells or sheets but is not their content: notes, drawings, forms, changes that are remembered. */
const ASIDE = new Set(["annotation", "shapes", "forms", "tracked-changes", "detective", "table-source"]);
/** Days on which the counting of dates begins. */
const FIRST_DAYS = { usual: "1899-12-30", from1904: "1904-01-01" };

/** A cell while its element is being read. */
interface Draft {
  attributes: XmlAttributes;
  repeated: number;
  text: string;
  paragraphs: number;
}

interface Content {
  sheets: SheetFile[];
  names: DefinedName[];
  /** Database ranges, which are what tables become. */
  ranges: { name: string; address: string }[];
  from1904: boolean;
}

/** Reads the part `content.xml` of a spreadsheet. */
export class ContentReader implements Handlers {
  readonly #content: Content = { sheets: [], names: [], ranges: [], from1904: false };
  readonly #hiddenStyles = new Set<string>();
  #style = "";
  #sheet: SheetFile | null = null;
  #row = 0;
  #column = 0;
  #rowRepeated = 1;
  /** The cells of the row at hand, which may be repeated. */
  #line: CellFile[] = [];
  #draft: Draft | null = null;
  /** The other cells of array formulas: they hold what the last calculation left. */
  #filled = new Set<number>();
  #aside = 0;
  #cells = 0;
  #area = 0;

  constructor(readonly limits: FileLimits) {}

  open(name: string, attributes: XmlAttributes): void {
    if (this.#aside > 0 || ASIDE.has(name)) {
      this.#aside++;
      return;
    }
    switch (name) {
      case "style":
        this.#style = attributes["style:name"] ?? "";
        break;
      case "table-properties":
        if (attributes["table:display"] === "false") this.#hiddenStyles.add(this.#style);
        break;
      case "null-date":
        this.#nullDate(attributes["table:date-value"] ?? FIRST_DAYS.usual);
        break;
      case "table":
        this.#openSheet(attributes);
        break;
      case "table-row":
        this.#rowRepeated = this.#repeated(attributes["table:number-rows-repeated"]);
        this.#hideRows(attributes["table:visibility"]);
        this.#column = 0;
        this.#line = [];
        break;
      case "table-cell":
      case "covered-table-cell":
        this.#draft = { attributes, repeated: this.#repeated(attributes["table:number-columns-repeated"]), text: "", paragraphs: 0 };
        break;
      case "named-range":
        this.#name(attributes, () => fromRangeAddress(attributes["table:cell-range-address"] ?? ""));
        break;
      case "named-expression":
        this.#name(attributes, () => fromOpenFormula(`=${(attributes["table:expression"] ?? "").replace(/^of:=?/, "")}`));
        break;
      case "database-range":
        this.#range(attributes);
        break;
      default:
        this.#openText(name, attributes);
    }
  }

  text(piece: string): void {
    if (this.#draft && this.#aside === 0 && this.#draft.paragraphs > 0) this.#draft.text += piece;
  }

  close(name: string): void {
    if (this.#aside > 0) this.#aside--;
    else if (name === "table-cell" || name === "covered-table-cell") this.#closeCell();
    else if (name === "table-row") this.#closeRow();
    else if (name === "table") this.#closeSheet();
  }

  result(): Content {
    return this.#content;
  }

  /** Spaces, tabs and line ends within a paragraph stand as elements. */
  #openText(name: string, attributes: XmlAttributes): void {
    if (!this.#draft) return;
    if (name === "p" && this.#draft.paragraphs++ > 0) this.#draft.text += "\n";
    else if (name === "s") this.#draft.text += " ".repeat(Math.min(Number(attributes["text:c"] ?? 1) || 1, 1000));
    else if (name === "tab") this.#draft.text += "\t";
    else if (name === "line-break") this.#draft.text += "\n";
  }

  #openSheet(attributes: XmlAttributes): void {
    if (this.#sheet) throw new UnreadableFile("holds a table inside a table, which is not read");
    const name = attributes["table:name"] ?? "";
    if (this.#content.sheets.some((one) => one.name.toLowerCase() === name.toLowerCase()))
      throw new UnreadableFile(`is damaged: two of its sheets have the name ${JSON.stringify(name)}`);
    this.#sheet = { name, hidden: this.#hiddenStyles.has(attributes["table:style-name"] ?? ""), cells: [], hiddenRows: [] };
    this.#row = 0;
    this.#filled = new Set();
  }

  #closeSheet(): void {
    const sheet = this.#sheet!;
    if (this.#filled.size > 0)
      sheet.cells = sheet.cells.filter((cell) => cell.formula !== undefined || cell.beyond !== undefined || !this.#filled.has(keyOf(cell)));
    const rows = Math.max(0, ...sheet.cells.slice(-1).map(({ row, array }) => row + (array?.rows ?? 1)));
    const columns = sheet.cells.reduce((most, { column, array }) => Math.max(most, column + (array?.columns ?? 1)), 0);
    this.#area += rows * columns;
    if (this.#area > this.limits.area)
      throw new UnreadableFile(
        `has too many cells: the sheet ${JSON.stringify(sheet.name)} is spread over ${roughCount(rows)} rows and ${roughCount(columns)} columns`,
      );
    this.#content.sheets.push(sheet);
    this.#sheet = null;
  }

  #repeated(count: string | undefined): number {
    const number = Number(count ?? 1);
    if (!(Number.isInteger(number) && number >= 1)) throw new UnreadableFile(`is damaged: a row or cell is repeated ${JSON.stringify(count)} times`);
    return number;
  }

  #hideRows(visibility: string | undefined): void {
    if (visibility !== "collapse" && visibility !== "filter") return;
    // Rows below all content are hidden as one long stretch, of which nobody asks.
    for (let i = 0; i < Math.min(this.#rowRepeated, 10_000); i++) this.#sheet?.hiddenRows.push(this.#row + i);
  }

  #closeCell(): void {
    const { attributes, repeated, text } = this.#draft!;
    this.#draft = null;
    const found = this.#cellOf(attributes, text);
    if (found) {
      for (let i = 0; i < repeated; i++) this.#line.push({ row: this.#row, column: this.#column + i, ...found });
      this.#count(repeated);
      if (this.#column + repeated > MOST_COLUMNS) throw new UnreadableFile(`has a cell right of the last column, on the sheet ${this.#sheet?.name}`);
    }
    this.#column += repeated;
  }

  #closeRow(): void {
    if (this.#line.length > 0) {
      if (this.#row + this.#rowRepeated > MOST_ROWS) throw new UnreadableFile(`has a cell below the last row, on the sheet ${this.#sheet?.name}`);
      for (let i = 0; i < this.#rowRepeated; i++) {
        if (i > 0) this.#count(this.#line.length);
        for (const cell of this.#line) this.#sheet!.cells.push(i === 0 ? cell : { ...cell, row: cell.row + i });
      }
    }
    this.#row += this.#rowRepeated;
  }

  #count(cells: number): void {
    this.#cells += cells;
    if (this.#cells > this.limits.cells) throw new UnreadableFile(`has too many cells: more than ${roughCount(this.limits.cells)} hold something`);
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
    const [rows, columns] = [this.#repeated(attributes["table:number-matrix-rows-spanned"]), this.#repeated(attributes["table:number-matrix-columns-spanned"])];
    this.#count(rows * columns - 1);
    for (let r = 0; r < rows; r++) for (let c = 0; c < columns; c++) if (r + c > 0) this.#filled.add(keyOf({ row: this.#row + r, column: this.#column + c }));
    return { array: { rows, columns, grows: false } };
  }

  #name(attributes: XmlAttributes, formula: () => string): void {
    const name = attributes["table:name"] ?? "";
    // Print areas and the like, as .xlsx names them.
    if (name.startsWith("_xlnm.")) return;
    const own = this.#sheet ? { sheet: this.#content.sheets.length } : {};
    try {
      this.#content.names.push({ name, ...own, formula: formula() });
    } catch (reason) {
      // A name that leads elsewhere: formulas that use it say that there is none.
      if (!(reason instanceof Inexpressible)) throw reason;
    }
  }

  #range(attributes: XmlAttributes): void {
    const name = attributes["table:name"] ?? "";
    // Filters without a name of their own.
    if (name.startsWith("__Anonymous") || attributes["table:contains-header"] === "false") return;
    const address = attributes["table:target-range-address"] ?? "";
    if (/\.\$?[A-Z]+\$?\d+(?::.*\$?[A-Z]+\$?\d+)?$/.test(address)) this.#content.ranges.push({ name, address: fromRangeAddress(address) });
  }

  #nullDate(day: string): void {
    if (day.startsWith(FIRST_DAYS.from1904)) this.#content.from1904 = true;
    else if (!day.startsWith(FIRST_DAYS.usual)) throw new UnreadableFile(`counts its dates from ${day}, which is not read`);
  }
}
